import type { OutboxEntry } from '@/lib/outbox/outbox-entry'

/** A queued coupon of ana's, or of whoever is given. */
export function entry(id: string, given: Partial<OutboxEntry> = {}): OutboxEntry {
  return {
    id, kind: 'coupon', schema: 1, personId: 'ana', signInName: 'a.first', program: 'north', payload: { id }, photos: [],
    about: { exercise: '2F', href: '/learn/c/e/log', draftKey: 'draft', draft: {}, stations: 1, indications: 0 },
    createdAt: 0, attempts: 0, failures: 0, refusal: null, state: 'waiting', number: null, ...given,
  }
}
