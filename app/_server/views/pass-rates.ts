import 'server-only'
import { passRates, type PassRates } from '@/lib/reports/pass-rates'
import type { Viewer } from '../auth/viewer'
import { countVerdicts, exerciseTitles, listCountedClasses, type CountedClass } from '../data/pass-counts'
import { countAttempts, countFirstAttempts } from '../data/test-attempts'

/** The address of all terms together. */
export const ALL_TERMS = 'all'

/**
 * The pass rates of the classes the viewer can see, for the screen and for its CSV.
 *
 * @param asked a term's id, or 'all'; anything else is the latest term that has begun
 */
export async function passRatesView(viewer: Viewer, asked: string | undefined, asOf: Date): Promise<PassRates> {
  const [classes, coupons, tests, firstTests, titles] = await Promise.all([
    listCountedClasses(viewer), countVerdicts(viewer), countAttempts(viewer), countFirstAttempts(viewer), exerciseTitles(viewer),
  ])
  return passRates({ classes, coupons, tests, firstTests, exerciseTitles: titles }, chosenTerm(classes, asked, asOf))
}

function chosenTerm(classes: readonly CountedClass[], asked: string | undefined, asOf: Date): string | null {
  if (asked === ALL_TERMS) return null
  const known = classes.find(({ term }) => term.id === asked) ?? classes.find(({ term }) => term.startsOn <= asOf)
  return known?.term.id ?? null
}
