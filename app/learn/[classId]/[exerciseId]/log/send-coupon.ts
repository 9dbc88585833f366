import { newId } from '@/app/learn/new-id'
import { photoProblem, type PhotoProblem } from '@/app/learn/send-photo'
import { findEntry, outboxState, queueEntry, reopenEntry, removeEntry, sendFor, sendOutbox, type OutboxPerson } from '@/app/_components/outbox/outbox'
import { postCoupon, postPhoto } from '@/app/_components/outbox/post-entry'
import type { Refused } from '@/app/_components/use-sent-form'
import { QUEUE_SCHEMA, type OutboxAbout, type OutboxEntry, type OutboxPhoto } from '@/lib/outbox/outbox-entry'

/** A network that has not taken the coupon by then is treated as none: the coupon is on the device and goes on from there. */
const PATIENCE_MS = 25_000
/** Behind others that wait, perhaps with photos on a slow link, nobody stands that long before a button. */
const BEHIND_OTHERS_MS = 3_000

export type CouponToLog = {
  readonly id: string
  readonly by: OutboxPerson
  /** The coupon as the form sends it. */
  readonly coupon: Readonly<Record<string, unknown>>
  readonly photos: readonly (Omit<OutboxPhoto, 'id'> & { readonly id?: string })[]
  readonly about: OutboxAbout
}

export type Logged =
  /** The server has it. `photo`: what became of the photo when it is not there too. */
  | { readonly kind: 'sent'; readonly photo: PhotoProblem | 'waits' | null }
  /** The server says no, or wants a password first; the form goes on with it. */
  | { readonly kind: 'refused'; readonly refused: Refused }
  /** Kept on this device, to be sent later; `lasting` is false where the page alone holds it. */
  | { readonly kind: 'waiting'; readonly lasting: boolean }
  /** Neither kept nor sent: no room on the device and no connection. */
  | { readonly kind: 'full' }

/**
 * Logs a coupon by way of the device's queue: kept first, then sent. Sending again under the same id replaces what is kept and never makes
 * a second coupon.
 */
export async function logCoupon({ id, by, coupon, photos, about }: CouponToLog): Promise<Logged> {
  sendFor(by)
  const entry: OutboxEntry = {
    id, kind: 'coupon', schema: QUEUE_SCHEMA, ...by, payload: coupon, photos: photos.map((photo) => ({ ...photo, id: photo.id ?? newId() })), about,
    createdAt: Date.now(), attempts: 0, failures: 0, refusal: null, state: 'waiting', number: null,
  }
  try {
    await queueEntry(entry)
  } catch {
    return sendUnkept(entry) // full, in nearly every case; whatever it was, the coupon can still be sent
  }
  const patience = outboxState().entries.some((other) => other.personId === by.personId && other.state === 'waiting' && other.id !== id) ? BEHIND_OTHERS_MS : PATIENCE_MS
  await Promise.race([sendOutbox(), new Promise((resolve) => setTimeout(resolve, patience))])
  return becameOf(id)
}

async function becameOf(id: string): Promise<Logged> {
  const left = await findEntry(id)
  if (!left) return { kind: 'sent', photo: null }
  if (left.number !== null) {
    if (left.state !== 'refused') return { kind: 'sent', photo: 'waits' }
    await removeEntry(id) // the coupon's own page asks for the photo again
    return { kind: 'sent', photo: photoProblem(left.refusal?.code ?? '') }
  }
  if (left.state === 'refused' && left.refusal) {
    await reopenEntry(id) // the form is open: it is corrected there
    return { kind: 'refused', refused: { ok: false, ...left.refusal } }
  }
  if (outboxState().end === 'signed-out') return { kind: 'refused', refused: { ok: false, code: 'SIGNED_OUT', message: '', fields: {} } }
  return { kind: 'waiting', lasting: outboxState().lasting }
}

/** Straight to the server, for a device that has no room to keep it first. */
async function sendUnkept(entry: OutboxEntry): Promise<Logged> {
  const outcome = await postCoupon(entry)
  if (outcome.kind === 'refused') return { kind: 'refused', refused: { ok: false, code: outcome.code, message: outcome.message, fields: outcome.fields } }
  if (outcome.kind === 'held' && outcome.why === 'signed-out') return { kind: 'refused', refused: { ok: false, code: 'SIGNED_OUT', message: '', fields: {} } }
  if (outcome.kind !== 'taken') return { kind: 'full' }
  for (const photo of entry.photos) {
    const answer = await postPhoto(entry, photo)
    if (answer.kind !== 'taken') return { kind: 'sent', photo: answer.kind === 'refused' ? photoProblem(answer.code) : 'photoFailed' }
  }
  return { kind: 'sent', photo: null }
}
