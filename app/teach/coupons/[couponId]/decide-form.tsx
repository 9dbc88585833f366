'use client'

import { useRouter } from 'next/navigation'
import { door } from '@/lib/language/door'
import { LEAST_REASON } from '@/lib/schemas/override'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { TextArea } from '@/app/_components/ui/text-area'
import { useSentForm } from '@/app/_components/use-sent-form'
import { decideVerdict } from '@/app/teach/coupons/actions'

type Props = { readonly couponId: string; readonly inspectionId: string; readonly computed: 'accept' | 'reject' | 'incomplete' }

const WORD = { accept: 'Accept', reject: 'Reject', incomplete: 'Incomplete' } as const

/** The instructor's own verdict over the computed one, folded away: it is the exception, and it needs a reason the student reads. */
export function DecideForm({ couponId, inspectionId, computed }: Props) {
  const router = useRouter()
  const { onSubmit, busy, refused, error } = useSentForm(
    (fields) => decideVerdict({ couponId, inspectionId, verdict: fields['verdict'], reason: fields['reason'] ?? '' }), () => router.refresh(), door.en.failed,
  )
  const decided = computed === 'reject' ? 'accept' : 'reject'
  return (
    <details className="border-y border-line" open={refused !== null || undefined}>
      <summary className="flex min-h-12 cursor-pointer items-center font-head text-xl font-semibold underline underline-offset-4">Decide the verdict yourself</summary>
      <form method="post" noValidate onSubmit={onSubmit} className="grid gap-4 pb-4">
        <p className="max-w-prose">
          The readings give {WORD[computed]}. You can say otherwise once; both verdicts and your reason stay on record and the student sees them.
          {computed === 'incomplete' && ' What nobody measured cannot be accepted: measure it and correct the inspection instead.'}
        </p>
        <RadioPills legend="Your verdict" name="verdict" defaultValue={decided} pills={[{ value: decided, label: WORD[decided] }]} error={error('verdict') ?? null} />
        <TextArea label="Reason" name="reason" hint={`${LEAST_REASON} characters or more. What you saw that the readings do not say.`} error={error('reason')} rows={3} />
        {refused && Object.keys(refused.fields).length === 0 && <Notice kind="problem" word="Not decided" live>{refused.message}</Notice>}
        <div><SendButton busy={busy}>{busy ? 'Deciding' : 'Decide it'}</SendButton></div>
      </form>
    </details>
  )
}
