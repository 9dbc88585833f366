import 'server-only'
import type { StudentHome } from './student-home'

/** So many exercises are kept ahead of being opened; any other is kept once it was. */
const MOST_EXERCISES = 4

/** The pages a device keeps for a student before they are opened: booth card and log form of what is next, then of what comes around it. */
export function offlinePages({ classes }: StudentHome): string[] {
  const open = classes.flatMap(({ exercises }) => exercises.filter(({ after }) => after === null))
  const inOrder = [...classes.flatMap(({ next }) => next ?? []), ...open].map(({ href }) => href)
  return [...new Set(inOrder)].slice(0, MOST_EXERCISES).flatMap((href) => [href, `${href}/log`])
}
