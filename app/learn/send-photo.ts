import type { Answer } from '@/app/_components/use-sent-form'

/** Why a photo was not taken, as a key of the catalogue. */
export type PhotoProblem = 'photoTooLarge' | 'photoWrongType' | 'photoTooMany' | 'photoFailed'

const BY_CODE: Readonly<Record<string, PhotoProblem>> = { TOO_LARGE: 'photoTooLarge', INVALID: 'photoWrongType', TOO_MANY: 'photoTooMany' }

export const photoProblem = (code: string): PhotoProblem => BY_CODE[code] ?? 'photoFailed'

/** Sends the photo of a logged coupon; returns what went wrong, or null. The id makes a second sending harmless. */
export async function sendPhoto(couponId: string, id: string, photo: Blob): Promise<PhotoProblem | null> {
  try {
    const response = await fetch(`/api/photos?coupon=${couponId}&id=${id}`, { method: 'POST', headers: { 'Content-Type': photo.type }, body: photo })
    const answer = (await response.json()) as Answer<unknown>
    return answer.ok ? null : photoProblem(answer.code)
  } catch {
    return 'photoFailed'
  }
}
