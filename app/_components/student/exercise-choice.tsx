import { HeatCell } from '../ui/heat-cell'

type Line = {
  readonly exercise: { readonly id: string; readonly title: string }
  readonly skill: { readonly acceptedCount: number; readonly inspectedCount: number; readonly couponCount: number; readonly waitingCount: number }
  readonly standing: { readonly probability: number | null; readonly text: string; readonly spoken: string }
}

/** The exercises a student has practised, the latest first; each leads to its story on the same page. */
export function ExerciseChoice({ lines, chosen }: { readonly lines: readonly Line[]; readonly chosen: string | null }) {
  return (
    <nav aria-label="Exercises">
      <ul className="divide-y divide-line border-y border-line">
        {lines.map(({ exercise, skill, standing }) => (
          <li key={exercise.id} className="flex items-center gap-3 py-2">
            <HeatCell probability={standing.probability} text={standing.text} spoken={standing.spoken} waiting={skill.waitingCount > 0} />
            <a href={`?exercise=${exercise.id}#story`} aria-current={exercise.id === chosen || undefined} className="inline-flex min-h-12 min-w-0 flex-1 items-center font-bold aria-current:no-underline">
              <span>{exercise.title}<span className="block text-base font-normal text-ink-2">{countsOf(skill)}</span></span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}

function countsOf({ acceptedCount, inspectedCount, couponCount, waitingCount }: Line['skill']): string {
  const waiting = waitingCount === 0 ? '' : `, ${waitingCount} waiting`
  return inspectedCount === 0 ? `${couponCount} logged, none inspected yet${waiting}` : `${acceptedCount} accepted of ${inspectedCount} inspected, ${couponCount} logged${waiting}`
}
