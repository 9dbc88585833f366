import 'server-only'
import { readClassification } from '@/lib/consumables/classification'
import { checkBoothCard } from '@/lib/consumables/setup-checks'
import { scorecardWords } from '@/lib/language/scorecard'
import { say } from '@/lib/language/say'
import type { ExerciseFacts } from '@/lib/procedure/exercise'
import { explainSetup } from '@/lib/reports/explain-setup'
import type { Viewer } from '../auth/viewer'

export type SetupWarning = { readonly text: string; readonly source: string }

/** What goes against the wire or rod in an exercise and its booth card, each with its source and how sure that is. Staff pages are in English. */
export function setupWarnings(facts: ExerciseFacts, { units }: Pick<Viewer, 'units'>): SetupWarning[] {
  return checkBoothCard(readClassification(facts.electrodeClass), facts, facts.boothCard).map((check) => ({
    text: explainSetup(check, 'en', units),
    source: [check.source.title, check.source.clause, say(scorecardWords, 'en', check.source.status), check.source.note].filter(Boolean).join('; '),
  }))
}
