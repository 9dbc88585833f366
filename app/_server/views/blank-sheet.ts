import 'server-only'
import { kindNames } from '@/lib/language/kind-names'
import { readingsWords } from '@/lib/language/readings'
import { say, type Locale } from '@/lib/language/say'
import { stationPlaces } from '@/lib/procedure/exercise'
import { dateText, printedText } from '@/lib/reports/dates'
import { NO_LIMIT, scorecardView } from '@/lib/reports/scorecard-view'
import { sheetLanguages } from '@/lib/reports/sheet-languages'
import type { StationBox } from '@/lib/schemas/readings'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Inspection } from '@/lib/scoring/types'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'
import { formatForReader } from '@/lib/units/display'
import type { Viewer } from '../auth/viewer'
import { findStaffClass } from '../data/classes'
import { criteriaSet } from '../data/criteria'
import { listClassExercises } from '../data/exercises'
import { listClassLanguages } from '../data/people'
import { findProgram } from '../data/program'
import { readingsSetup } from './log-view'
import { footOf } from './print-foot'

export type BlankSheet = {
  readonly className: string
  readonly title: string
  readonly units: 'in' | 'mm'
  /** Where each station is from the start of the weld, and the weld's length, in the reader's units. */
  readonly places: readonly string[]
  readonly length: string
  /** Where each station is along the weld, from 0 to 1. */
  readonly along: readonly number[]
  /** The sheet once for each language its class reads. */
  readonly languages: readonly {
    readonly locale: Locale
    readonly sizes: readonly string[]
    readonly kinds: readonly string[]
    /** A limit that follows from what is measured is null: a rule of convexity goes by the width of the face. */
    readonly rules: readonly { readonly key: string; readonly name: string; readonly limit: string | null; readonly source: string }[]
    readonly foot: readonly string[]
  }[]
  readonly printedAt: string
}

/** Nobody has looked yet: judged, it names the rules that will apply and their limits. */
const NOTHING_READ: Inspection = { stations: [], indications: [], lookedFor: [], cratersFilled: null, fusionComplete: null }

/** The inspection of one exercise as a sheet to fill in by hand; null when the viewer does not keep the class or the exercise is not of it. `asked`: see sheetLanguages. */
export async function blankSheet(viewer: Viewer, classId: string, exerciseId: string, asked: string | undefined, asOf: Date): Promise<BlankSheet | null> {
  const kept = await findStaffClass(viewer, classId)
  if (!kept) return null
  const exercise = (await listClassExercises(viewer, classId)).find((each) => each.exercise.id === exerciseId)?.exercise
  if (!exercise) return null
  const [criteria, setup, program, read] = await Promise.all([
    criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version), readingsSetup(viewer, exercise), findProgram(viewer), listClassLanguages(viewer, classId),
  ])
  const { units } = viewer
  const weld = weldOfExercise(exercise)
  const sizeName = (box: StationBox, locale: Locale): string => say(readingsWords, locale, setup.vertical && (box === 'legA' || box === 'legB') ? `${box}Vertical` : box)
  const scorecard = scoreInspection(weld, NOTHING_READ, criteria)
  return {
    className: kept.name, title: exercise.title, units,
    places: setup.blank.stations.map(({ at }) => at), length: formatForReader(exercise.lengthMm, units),
    along: stationPlaces(1, exercise.stationCount),
    languages: sheetLanguages(asked, read).map((locale) => ({
      locale,
      sizes: setup.boxes.map((box) => sizeName(box, locale)),
      kinds: INDICATION_KINDS.map((kind) => say(kindNames, locale, kind)),
      rules: scorecardView(scorecard, { locale, units, weld, inspection: NOTHING_READ, criteria }).lines
        .filter(({ verdict }) => verdict !== 'not-applicable').map(({ rule, name, limit, source }) => ({ key: rule, name, limit: limit === NO_LIMIT ? null : limit, source })),
      foot: footOf({ criteria: [criteria], printedOn: dateText(asOf, locale, program.timeZone) }, locale).slice(0, -1),
    })),
    printedAt: printedText(asOf, viewer.locale, program.timeZone),
  }
}
