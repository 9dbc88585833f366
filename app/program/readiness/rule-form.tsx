'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { program } from '@/lib/language/program'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { saveReadinessRule } from '@/app/program/actions'

type RuleFormProps = {
  readonly locale: Locale
  /** As they stand, written as a reader writes them. */
  readonly values: { readonly readinessThreshold: string; readonly minimumCoupons: string; readonly staleAfterDays: string }
  readonly hints: { readonly threshold: string; readonly minimum: string; readonly stale: string }
}

/** The coordinator's rule. Saving works every standing out again, which takes a moment. */
export function RuleForm({ locale, values, hints }: RuleFormProps) {
  const router = useRouter()
  const [standings, setStandings] = useState<number | null>(null)
  const { onSubmit, busy, refused, error } = useSentForm((fields) => saveReadinessRule(fields), (value) => {
    setStandings(value.standings)
    router.refresh()
  }, say(program, locale, 'failed'))
  return (
    <form method="post" onSubmit={onSubmit} className="grid max-w-xl gap-5" noValidate>
      {refused && <Notice kind="problem" word={say(program, locale, 'notSaved')} live>{refused.message}</Notice>}
      {standings !== null && !refused && !busy && <Notice kind="ok" word={say(program, locale, 'saved')} live>{say(program, locale, 'savedText', { n: standings })}</Notice>}
      <TextInput label={say(program, locale, 'threshold')} hint={hints.threshold} error={error('readinessThreshold')} name="readinessThreshold" defaultValue={values.readinessThreshold} figures inputMode="decimal" autoComplete="off" />
      <TextInput label={say(program, locale, 'minimum')} hint={hints.minimum} error={error('minimumCoupons')} name="minimumCoupons" defaultValue={values.minimumCoupons} figures inputMode="numeric" autoComplete="off" />
      <TextInput label={say(program, locale, 'stale')} hint={hints.stale} error={error('staleAfterDays')} name="staleAfterDays" defaultValue={values.staleAfterDays} figures inputMode="numeric" autoComplete="off" />
      <div><Button type="submit" kind="primary" aria-disabled={busy || undefined}>{say(program, locale, busy ? 'saving' : 'save')}</Button></div>
    </form>
  )
}
