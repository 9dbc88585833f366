/**
 * The shape of a queued coupon's payload. Raised when an older payload could no longer be read as it stands; the server's intake keeps
 * reading every number up to its own.
 */
export const QUEUE_SCHEMA = 1

/** A photo waiting with its coupon, under the id it will have on the server. */
export type OutboxPhoto = {
  readonly id: string
  readonly blob: Blob
  /** Widths measured on it and the marks, as the server takes them; absent when nothing was measured. */
  readonly measurement?: unknown
}

/** What the student's own screens say about a queued coupon without opening it. */
export type OutboxAbout = {
  readonly exercise: string
  /** The log form it was typed in. */
  readonly href: string
  /** Where that form keeps its draft on this device, and the draft itself, for correcting a refused coupon. */
  readonly draftKey: string
  readonly draft: unknown
  readonly stations: number
  readonly indications: number
}

/** What the server said no with: its sentence, and one for each field by its path. FAILED is the queue's own: the server broke on it. */
export type OutboxRefusal = { readonly code: string; readonly message: string; readonly fields: Readonly<Record<string, string>> }

/** A coupon on this device that the server does not have yet, or not with all its photos. */
export type OutboxEntry = {
  /** The coupon's own id, made on this device: however often it is sent there is one coupon. */
  readonly id: string
  readonly kind: 'coupon'
  readonly schema: number
  readonly personId: string
  readonly signInName: string
  /** The short name of their program, to sign in again with. */
  readonly program: string
  /** The coupon as its form sends it. */
  readonly payload: Readonly<Record<string, unknown>>
  readonly photos: readonly OutboxPhoto[]
  readonly about: OutboxAbout
  /** The device's clock when it was queued: shown, never used for order. */
  readonly createdAt: number
  /** How often sending it was tried. */
  readonly attempts: number
  /** How often the server failed on this very coupon. */
  readonly failures: number
  /** Why it was not taken; null while nobody refused it. */
  readonly refusal: OutboxRefusal | null
  /** waiting: sends itself. refused: kept until the student decides. reopened: being corrected in its form. */
  readonly state: 'waiting' | 'refused' | 'reopened'
  /** The coupon's number once the server has it and only photos are left. */
  readonly number: number | null
}

/** Entries kept on a device, oldest first. Each call is one transaction. */
export type OutboxStore = {
  list(): Promise<readonly OutboxEntry[]>
  /** Adds at the end; an entry with the same id is replaced and keeps its place. */
  put(entry: OutboxEntry): Promise<void>
  /** Changes an entry that is still there; does nothing when it is gone. */
  update(id: string, change: (entry: OutboxEntry) => OutboxEntry): Promise<void>
  remove(id: string): Promise<void>
}
