import type { OutboxEntry } from '@/lib/outbox/outbox-entry'
import { readDraft, writeDraft } from '@/app/_components/use-draft'

/** Drops the form's draft of a coupon that has arrived, so that nobody sends it once more believing it was not sent. */
export function forgetDraft({ id, about }: OutboxEntry): void {
  const draft = readDraft<{ id?: unknown }>(about.draftKey)
  if (draft?.id === id) writeDraft(about.draftKey, null)
}

/** Puts a refused coupon back in its form, as it was typed, under the same id. */
export function restoreDraft({ about }: OutboxEntry): void {
  writeDraft(about.draftKey, about.draft)
}
