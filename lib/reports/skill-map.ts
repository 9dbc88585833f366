import type { ExerciseFacts } from '../procedure/exercise'
import { PROCESSES, type Process } from '../procedure/process'

/** What the map needs to know of an exercise to place it. */
export type Placeable = { readonly exercise: Pick<ExerciseFacts, 'process' | 'position' | 'progression'> }

/** One line of the map: a test position and progression, with the exercises welded in it in the order given. */
export type SkillMapRow<T> = { readonly position: string; readonly progression: 'up' | 'down' | null; readonly cells: readonly T[] }
export type SkillMapBlock<T> = { readonly process: Process; readonly rows: readonly SkillMapRow<T>[] }

/** Exercises by process, then by position: fillets before grooves, flat before overhead. An exercise in two classes is shown once, the first. */
export function skillMap<T extends Placeable & { readonly id: string }>(entries: readonly T[]): readonly SkillMapBlock<T>[] {
  const once = entries.filter(({ id }, index) => entries.findIndex((each) => each.id === id) === index)
  return PROCESSES.flatMap((process) => {
    const rows = rowsOf(once.filter(({ exercise }) => exercise.process === process))
    return rows.length > 0 ? [{ process, rows }] : []
  })
}

function rowsOf<T extends Placeable>(entries: readonly T[]): SkillMapRow<T>[] {
  const rows = new Map<string, { position: string; progression: 'up' | 'down' | null; cells: T[] }>()
  for (const entry of entries) {
    const { position, progression } = entry.exercise
    const key = `${position} ${progression ?? ''}`
    const row = rows.get(key) ?? { position, progression, cells: [] }
    row.cells.push(entry)
    rows.set(key, row)
  }
  return [...rows.values()].sort((a, b) => kindOf(a.position).localeCompare(kindOf(b.position)) || a.position.localeCompare(b.position, 'en', { numeric: true }) || (a.progression ?? '').localeCompare(b.progression ?? ''))
}

/** 'F' of '2F', 'G' of '3G': fillets come first. */
const kindOf = (position: string): string => position.replace(/^\d+/, '')
