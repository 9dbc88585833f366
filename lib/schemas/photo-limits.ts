/** What a photo may be: asked on the device before it travels, and again by the server. */
export const MOST_PHOTO_MB = 15
/** A phone photograph is 3 to 12 MB; more is a mistake or an attack. */
export const MOST_PHOTO_BYTES = MOST_PHOTO_MB * 1024 * 1024
export const PHOTO_TYPES: readonly string[] = ['image/jpeg', 'image/png', 'image/webp']
