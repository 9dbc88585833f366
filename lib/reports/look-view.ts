import type { CriteriaSet } from '../criteria/types'
import { scorecardWords } from '../language/scorecard'
import { say, type Locale } from '../language/say'
import type { ExerciseFacts } from '../procedure/exercise'
import type { Finding, Inspection, Scorecard, Station } from '../scoring/types'
import { weldOfExercise } from '../scoring/weld-of-exercise'
import type { LengthUnit } from '../units/length'
import type { BeadStripInput } from './bead-strip'
import type { FilletSectionInput } from './fillet-section'
import { ruleName } from './rule-names'
import { scorecardView, type ScorecardReader, type ScorecardView } from './scorecard-view'

/** What every picture and table of one inspection is drawn from. */
export type LookInput = {
  readonly exercise: ExerciseFacts
  readonly inspection: Inspection
  readonly scorecard: Scorecard
  readonly criteria: CriteriaSet
  readonly reader: { readonly units: LengthUnit; readonly locale: Locale }
  /** The instructor's own verdict over the computed one. */
  readonly override?: ScorecardReader['override']
}

/** One inspection of a coupon, ready to show: the scorecard in words, the strip, and the section of its worst station. */
export type LookView = {
  readonly scorecard: ScorecardView
  readonly strip: BeadStripInput
  readonly section: (FilletSectionInput & { readonly where: string }) | null
}

/** The one definition of how an inspection is shown: screen, print and comparison take it from here. */
export function lookView(input: LookInput): LookView {
  const { exercise, inspection, scorecard, criteria, reader } = input
  const weld = weldOfExercise(exercise)
  return {
    scorecard: scorecardView(scorecard, { ...reader, weld, inspection, criteria, override: input.override ?? null }),
    strip: stripOf(input),
    section: exercise.weldType === 'fillet' ? sectionOf(input) : null,
  }
}

/** The strip of an inspection: its widths and indications over the band its criteria allow. */
export function stripOf({ exercise, inspection, scorecard, criteria, reader }: LookInput): BeadStripInput {
  const rejected = scorecard.findings.flatMap((finding) =>
    finding.verdict === 'reject' && finding.where ? [{ ...within(finding.where, exercise.lengthMm), rule: ruleName(finding.rule, reader.locale, criteria) }] : [])
  return {
    weld: { lengthMm: exercise.lengthMm, position: exercise.position },
    inspection,
    widthBand: widthBand(scorecard),
    rejected,
    reader,
  }
}

const within = (where: { fromMm: number; toMm: number }, lengthMm: number) => ({ fromMm: Math.max(0, where.fromMm), toMm: Math.min(lengthMm, where.toMm) })

/** The band of the rule that keeps the width inside two limits; null where the criteria have none. */
function widthBand(scorecard: Scorecard): BeadStripInput['widthBand'] {
  const finding = scorecard.findings.find((each) => each.rule === 'width-in-band')
  if (!finding || (finding.limit.min === null && finding.limit.max === null)) return null
  return { minMm: finding.limit.min, maxMm: finding.limit.max }
}

/** The section of the station where the legs came closest to their limit; the first fully measured one when no rule points to one. */
function sectionOf({ exercise, inspection, scorecard, reader }: LookInput): LookView['section'] {
  const drawable = inspection.stations.map((station, index) => ({ station, number: index + 1 })).filter(({ station }) => hasLegs(station))
  const pointed = scorecard.findings.find((finding) => finding.rule.startsWith('leg') && finding.where !== null)
  const chosen = drawable.find(({ station }) => pointed && covers(pointed, station)) ?? drawable[0]
  if (!chosen) return null
  return {
    station: chosen.station, position: exercise.position, joint: exercise.joint, thicknessMm: exercise.plateThicknessMm,
    nominalLegMm: exercise.nominalLegMm, reader, where: say(scorecardWords, reader.locale, 'station', { n: chosen.number }),
  }
}

/** Legs that can be drawn: both read, and neither of no size. */
const hasLegs = ({ legAMm, legBMm }: Station): boolean => legAMm !== undefined && legBMm !== undefined && legAMm > 0 && legBMm > 0
const covers = (finding: Finding, station: Station): boolean => finding.where !== null && station.atMm >= finding.where.fromMm - 1e-6 && station.atMm <= finding.where.toMm + 1e-6
