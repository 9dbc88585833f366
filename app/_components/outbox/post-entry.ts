import { BY_ITSELF } from '@/lib/outbox/by-itself'
import type { OutboxEntry, OutboxPhoto } from '@/lib/outbox/outbox-entry'
import { readOutcome, type SendOutcome } from '@/lib/outbox/send-outcome'

const COUPON_MS = 30_000
/** A photo of some megabytes on a slow link. */
const PHOTO_MS = 5 * 60_000

/** More than a photo weighs that was made small. */
const LARGE_BYTES = 4 * 1024 * 1024

/** A photo that was queued as large as the camera took it, because what makes it small could not be fetched then, is made small now. */
async function lighter(photo: Blob): Promise<Blob> {
  if (photo.size <= LARGE_BYTES) return photo
  try {
    return await (await import('@/app/_components/photo-gauge/open-photo')).shrunk(photo)
  } catch {
    return photo // the browser cannot read it, or still cannot fetch what would: the server looks at it as it is
  }
}

/** Nobody may be there when a queue sends; whoever presses a button goes on to a page, which counts as use. */
async function post(address: string, type: string, body: BodyInit, patience: number): Promise<SendOutcome> {
  try {
    const response = await fetch(address, { method: 'POST', body, headers: { 'Content-Type': type, [BY_ITSELF]: '1' }, signal: AbortSignal.timeout(patience) })
    return readOutcome(response.status, await response.json().catch(() => undefined))
  } catch {
    return { kind: 'unreachable' }
  }
}

/** Sends a queued coupon to the intake, with the device's clock beside it. */
export function postCoupon({ schema, personId, payload }: OutboxEntry): Promise<SendOutcome> {
  const body = JSON.stringify({ schema, personId, sentAt: new Date().toISOString(), coupon: payload })
  return post('/api/intake/coupons', 'application/json', body, COUPON_MS)
}

/**
 * Sends a photo of a coupon the server has, then the marks set on it. Marks that are refused hold up nothing: the widths they gave are in
 * the coupon, and asking again would be refused again.
 */
export async function postPhoto({ id, personId }: OutboxEntry, photo: OutboxPhoto): Promise<SendOutcome> {
  const blob = await lighter(photo.blob)
  const of = new URLSearchParams({ coupon: id, id: photo.id, person: personId })
  const sent = await post(`/api/photos?${of}`, blob.type, blob, PHOTO_MS)
  if (sent.kind !== 'taken' || photo.measurement === undefined) return sent
  const marks = await postMarks(photo.id, photo.measurement)
  return marks.kind === 'refused' || marks.kind === 'failed' ? sent : marks
}

/** Sends the marks set on a photo the server has. */
export function postMarks(photoId: string, marks: unknown): Promise<SendOutcome> {
  return post(`/api/photos/${photoId}/marks`, 'application/json', JSON.stringify(marks), COUPON_MS)
}
