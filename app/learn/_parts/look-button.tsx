'use client'

import { useRouter } from 'next/navigation'
import { classLife } from '@/lib/language/class-life'
import { say, type Locale } from '@/lib/language/say'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { MOST_LOOK_NOTE } from '@/lib/schemas/note-length'
import { askInstructor, needNoLook } from './actions'

type Props = {
  readonly locale: Locale
  readonly classId: string
  readonly exerciseId: string | null
  /** The request that waits, in words; null when none does. */
  readonly asked: { readonly text: string; readonly note: string | null } | null
}

/** One tap asks the instructor to come; while it waits it says since when, and can be taken back. */
export function LookButton({ locale, classId, exerciseId, asked }: Props) {
  const router = useRouter()
  const { onSubmit, busy, refused } = useSentForm<object>(
    (fields) => (asked ? needNoLook({ classId }) : askInstructor({ classId, exerciseId, note: fields['note'] ?? '' })),
    () => router.refresh(),
    say(classLife, locale, 'notSent'),
  )
  const word = asked ? (busy ? 'takingBack' : 'takeBack') : busy ? 'asking' : 'ask'
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-3">
      {refused && <Notice kind="problem" word={say(classLife, locale, 'notAsked')} live>{refused.message}</Notice>}
      <div role="status">
        {asked && <Notice kind="ok" word={say(classLife, locale, 'asked')}><p>{asked.text}</p>{asked.note && <p>{asked.note}</p>}</Notice>}
      </div>
      {!asked && <p className="text-base text-ink-2">{say(classLife, locale, 'askLead')}</p>}
      {!asked && <TextInput label={say(classLife, locale, 'askNote')} name="note" maxLength={MOST_LOOK_NOTE} autoComplete="off" />}
      <div><SendButton busy={busy}>{say(classLife, locale, word)}</SendButton></div>
    </form>
  )
}
