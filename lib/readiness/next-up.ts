import type { Advice } from './decide'

/** What is known of a student in an exercise they have practised. */
export type Practised = { readonly advice: Advice | null; readonly lastCouponAt: Date | null }

/** Readiness fades; that it was once reached is enough to go on. */
export const isBehind = (skill: Practised | undefined): boolean => skill?.advice === 'test' || skill?.advice === 'stale'

/**
 * What to go on with: the exercise last welded, until a test makes sense in it; then the first one not started after it.
 *
 * @param rows the exercises of a class in their order
 * @returns null when the class has none
 */
export function nextUp<T extends { readonly skill: Practised | undefined }>(rows: readonly T[]): T | null {
  const time = ({ skill }: T): number => skill?.lastCouponAt?.getTime() ?? -Infinity
  const last = rows.reduce<T | null>((latest, each) => (time(each) > (latest ? time(latest) : -Infinity) ? each : latest), null)
  if (!last) return rows[0] ?? null
  if (!isBehind(last.skill)) return last
  return rows.slice(rows.indexOf(last) + 1).find(({ skill }) => !skill) ?? rows.find(({ skill }) => !isBehind(skill)) ?? last
}
