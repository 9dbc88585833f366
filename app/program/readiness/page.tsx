import type { Metadata } from 'next'
import { program } from '@/lib/language/program'
import { say } from '@/lib/language/say'
import { shareText } from '@/lib/reports/share-text'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { modelVersions } from '@/app/_server/views/model-versions'
import { programReadiness } from '@/app/_server/views/program-readiness'
import { wereWeRightView } from '@/app/_server/views/were-we-right'
import { CostForm } from './cost-form'
import { ModelVersions } from './model-versions'
import { OperatingCurve } from './operating-curve'
import { RuleForm } from './rule-form'
import { WereWeRightPanel } from './were-we-right-panel'

export const metadata: Metadata = { title: 'Readiness' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export default async function ReadinessPage({ searchParams }: Props) {
  const viewer = await requireRole('coordinator')
  const { locale } = viewer
  const asked = (await searchParams)['cost']
  const [view, right, models] = await Promise.all([programReadiness(viewer, typeof asked === 'string' ? asked : undefined), wereWeRightView(viewer), modelVersions(viewer)])
  const { threshold, curve } = view
  const { own } = curve
  const [lowest, highest] = [curve.rows[0], curve.rows.at(-1)]
  const lead = [
    say(program, locale, 'ruleNow', { threshold: threshold.toFixed(2) }),
    own?.firstTimePass != null
      ? say(program, locale, 'ownAnswer', { pass: shareText(own.firstTimePass), coupons: Math.round(own.coupons) })
      : say(program, locale, 'ownOutside', { least: (lowest?.threshold ?? 0).toFixed(2), most: (highest?.threshold ?? 1).toFixed(2) }),
  ]
  return (
    <div className="grid gap-10">
      <PageHead title={say(program, locale, 'readiness')} lead={lead.join(' ')} />
      <section className="grid gap-4">
        <h2 className="text-2xl">{say(program, locale, 'settingsHead')}</h2>
        <div className="grid gap-x-10 gap-y-4 lg:grid-cols-2">
          <RuleForm locale={locale} values={view.values} hints={view.hints} />
          <p className="max-w-prose">{say(program, locale, 'advises')}</p>
        </div>
      </section>
      <section className="grid gap-4">
        <h2 className="text-2xl">{say(program, locale, 'curveHead')}</h2>
        <CostForm typed={view.cost.typed} problem={view.cost.problem} locale={locale} />
        <OperatingCurve curve={curve} threshold={threshold} cost={view.cost.used} locale={locale} />
      </section>
      <WereWeRightPanel found={right} locale={locale} />
      <ModelVersions view={models} locale={locale} />
    </div>
  )
}
