/**
 * The header with which a device says that it asks by itself: its queue sends, its worker renews a copy. Nobody may be standing there, so
 * such a request does not keep a session from going idle. public/sw.js names it too.
 */
export const BY_ITSELF = 'x-toeline-by-itself'
