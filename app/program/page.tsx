import type { Metadata } from 'next'
import type { ReactNode } from 'react'
import { program } from '@/lib/language/program'
import { say } from '@/lib/language/say'
import type { RateGroup } from '@/lib/reports/pass-rates'
import { passRatesAnswer, ratesNote } from '@/lib/reports/pass-rates-words'
import { DownloadLink } from '@/app/_components/ui/download-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { ALL_TERMS, passRatesView } from '@/app/_server/views/pass-rates'
import { RateBars } from './rate-bars'
import { TermForm } from './term-form'

export const metadata: Metadata = { title: 'Pass rates' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export default async function ProgramPage({ searchParams }: Props) {
  const viewer = await requireRole('coordinator')
  const { locale } = viewer
  const asked = (await searchParams)['term']
  const rates = await passRatesView(viewer, typeof asked === 'string' ? asked : undefined, new Date())
  const told = (key: keyof typeof program.en): string => say(program, locale, key)
  if (rates.terms.length === 0) return <EmptyState title={told('noRatesTitle')}><p>{told('noRatesText')}</p></EmptyState>

  const chosen = rates.term?.id ?? ALL_TERMS
  const [answer, ...more] = passRatesAnswer(rates, locale)
  // Where several terms are shown, every name carries its term.
  const nameOf = (of: 'className' | 'exercise') => (group: RateGroup): string => [group[of], rates.term ? null : group.term].filter(Boolean).join(', ')
  const tested = rates.byClass.filter((each) => each.tests.n > 0)
  return (
    <div className="grid gap-10">
      <PageHead
        eyebrow={rates.term?.name ?? told('allTerms')} title={told('passRates')} lead={answer}
        aside={<div className="flex flex-wrap items-end gap-2"><TermForm terms={rates.terms} chosen={chosen} locale={locale} /><DownloadLink href={`/api/exports/pass-rates?term=${encodeURIComponent(chosen)}`}>{told('download')}</DownloadLink></div>}
      />
      <div className="-mt-6 grid max-w-prose gap-2">{more.map((sentence) => <p key={sentence}>{sentence}</p>)}</div>

      <div className="grid gap-x-10 gap-y-10 xl:grid-cols-2">
        <RateBars title={told('ratesByClass')} groupWord={told('classWord')} groups={rates.byClass} labelOf={nameOf('className')} rateOf={(group) => group.coupons} withApart locale={locale} />
        <RateBars title={told('ratesByTerm')} groupWord={told('termWord')} groups={rates.byTerm} labelOf={(group) => group.term ?? ''} rateOf={(group) => group.coupons} withApart locale={locale} />
      </div>

      {tested.length > 0 && (
        <section className="grid gap-4">
          <h2 className="text-2xl">{told('testsHead')}</h2>
          <div className="grid gap-x-10 gap-y-10 xl:grid-cols-2">
            <RateBars title={told('testsByClass')} groupWord={told('classWord')} groups={rates.byClass} labelOf={nameOf('className')} rateOf={(group) => group.tests} locale={locale} />
            <RateBars title={told('firstByClass')} groupWord={told('classWord')} groups={rates.byClass} labelOf={nameOf('className')} rateOf={(group) => group.firstTests} locale={locale} />
          </div>
          <Folded title={told('testsByExercise')}>
            <RateBars
              title={told('testsByExercise')} groupWord={told('exerciseWord')} groups={rates.byExercise.filter((group) => group.tests.n > 0)}
              labelOf={nameOf('exercise')} rateOf={(group) => group.tests} locale={locale}
            />
          </Folded>
        </section>
      )}

      <RateBars title={told('ratesByExercise')} groupWord={told('exerciseWord')} groups={rates.byExercise} labelOf={nameOf('exercise')} rateOf={(group) => group.coupons} withApart locale={locale} />
      <section className="grid gap-3">
        <h2 className="text-2xl">{told('classesHead')}</h2>
        {rates.byClass.filter((each) => each.exercises.length > 0).map((each) => (
          <Folded key={each.key} title={nameOf('className')(each)}>
            <RateBars
              title={say(program, locale, 'ofClass', { name: nameOf('className')(each) })} groupWord={told('exerciseWord')} groups={each.exercises}
              labelOf={(group) => group.exercise ?? ''} rateOf={(group) => group.coupons} withApart locale={locale}
            />
          </Folded>
        ))}
      </section>

      <div className="grid max-w-prose gap-2 text-base text-ink-2">
        <p>{ratesNote(locale)}</p>
        <p>{told('independent')}</p>
      </div>
    </div>
  )
}

function Folded({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <details className="border border-line bg-plate px-4">
      <summary className="ring-inside min-h-12 cursor-pointer py-3 font-head text-xl leading-tight font-semibold">{title}</summary>
      <div className="pb-4">{children}</div>
    </details>
  )
}
