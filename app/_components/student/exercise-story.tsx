import { ReadinessTrackInteractive } from '../charts/readiness-track-interactive'
import type { ReadinessTrackProps } from '../charts/readiness-track-words'
import { LinkButton } from '../ui/link-button'
import { BeadStripColumn, type StripRow } from '../weld/bead-strip-column'

type Readiness = {
  readonly kind: string
  readonly answer: string
  readonly advice: string | null
  readonly level: number | null
  readonly holdsBack: string | null
  readonly reasons: readonly string[]
  readonly afterMore: readonly string[]
  readonly selfTrust: string
  readonly track: Omit<ReadinessTrackProps, 'level' | 'locale'>
}
type Props = {
  readonly studentId: string
  readonly exercise: { readonly id: string; readonly title: string }
  readonly readiness: Readiness | null
  readonly whyWide: readonly string[]
  readonly rows: readonly (Omit<StripRow, 'href'> & { readonly id: string })[]
  readonly couponHref: (couponId: string) => string
}

/** One exercise of a student: where they stand and why, and the latest coupons drawn one under the other. */
export function ExerciseStory({ studentId, exercise, readiness, whyWide, rows, couponHref }: Props) {
  const behind = readiness?.kind === 'estimate' ? [...readiness.reasons, ...readiness.afterMore, ...whyWide] : []
  return (
    <section id="story" aria-labelledby="story-title" className="grid min-w-0 scroll-mt-4 content-start gap-5">
      <h2 id="story-title" className="text-3xl">{exercise.title}</h2>
      {readiness && <p className="max-w-prose text-lg">{[readiness.answer, readiness.advice && `${readiness.advice}.`, readiness.holdsBack].filter(Boolean).join(' ')}</p>}
      {rows.length > 0 && <BeadStripColumn title="Latest coupons, oldest first" rows={rows.map((row) => ({ ...row, href: couponHref(row.id) }))} />}
      {readiness?.kind === 'estimate' && <ReadinessTrackInteractive {...readiness.track} level={readiness.level ?? 0.95} locale="en" />}
      {behind.length > 0 && <ul className="list-disc pl-5">{behind.map((text) => <li key={text}>{text}</li>)}</ul>}
      {readiness && <p>{readiness.selfTrust}</p>}
      <div className="flex flex-wrap gap-2">
        <LinkButton href={`/print/readiness/${studentId}/${exercise.id}`}>Print the readiness report</LinkButton>
        <LinkButton href={`/print/booth-card/${exercise.id}`}>Print the booth card</LinkButton>
      </div>
    </section>
  )
}
