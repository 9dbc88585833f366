import type { PhotoMarks } from '@/lib/measure/photo-marks'

/** Marks on their way to the server stay on this device until it has kept them: refused on the way they would be gone without a word. */
const KEY = 'toeline.photo-marks'
/** Older ones give way: nobody came back for them. */
const MOST = 20

type Kept = readonly { readonly photoId: string; readonly marks: PhotoMarks }[]

function all(): Kept {
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(KEY) ?? '[]')
    return Array.isArray(kept) ? (kept as Kept) : []
  } catch {
    return []
  }
}

function write(kept: Kept): void {
  try {
    if (kept.length === 0) window.localStorage.removeItem(KEY)
    else window.localStorage.setItem(KEY, JSON.stringify(kept.slice(-MOST)))
  } catch {
    // No room on the device: the marks travel all the same, only their refusal cannot be told.
  }
}

export const marksOnDevice = (photoId: string): PhotoMarks | null => all().find((each) => each.photoId === photoId)?.marks ?? null

/** Keeps the marks of a photo in place of earlier ones; null forgets them. */
export function keepOnDevice(photoId: string, marks: PhotoMarks | null): void {
  const others = all().filter((each) => each.photoId !== photoId)
  write(marks === null ? others : [...others, { photoId, marks }])
}
