import { qualification } from '../language/qualification'
import { say, type Locale } from '../language/say'
import { BEND_LIMITS, ISO_BEND_LIMITS } from '../qualification/bend'
import { FILLET_BREAK_LIMITS } from '../qualification/fillet-break'
import type { UnitSystem } from '../qualification/limits'
import { MACROETCH_UNDERCUT_MM } from '../qualification/macroetch'
import type { CoverageReason, PlatePosition } from '../qualification/positions'
import type { TestReason } from '../qualification/test-result'
import { THINNEST_GROOVE_PLATE_MM, type ThicknessQualified, type ThicknessReason } from '../qualification/thickness'
import { formatForReader } from '../units/display'

/** Which rules judged the test: the structural code in one of its unit systems, or ISO 9606-1. */
export type TestRules = UnitSystem | 'iso'

export type QualificationReason = TestReason | CoverageReason | ThicknessReason

/** A reason of a test result, a coverage answer or a thickness answer as a sentence, its limit in the units the rule is written in. */
export function explainQualificationReason(reason: QualificationReason, { locale, rules }: { readonly locale: Locale; readonly rules: TestRules }): string {
  const limitMm = limitOf(reason, rules)
  return say(qualification, locale, reason, limitMm === null ? {} : { limit: formatForReader(limitMm, rules === 'us' ? 'in' : 'mm') })
}

/** ISO 9606-1 is written in SI; where it has no limit of its own here, the SI column stands in. */
function limitOf(reason: QualificationReason, rules: TestRules): number | null {
  const system: UnitSystem = rules === 'us' ? 'us' : 'si'
  switch (reason) {
    case 'discontinuity-too-large': return rules === 'iso' ? ISO_BEND_LIMITS.rejectFromMm : BEND_LIMITS[system].singleMm
    case 'discontinuities-sum-too-large': return rules === 'iso' ? ISO_BEND_LIMITS.sumMm : BEND_LIMITS[system].sumMm
    case 'corner-crack-too-large': return BEND_LIMITS[system].cornerMm
    case 'inclusion-too-large': return FILLET_BREAK_LIMITS[system].singleMm
    case 'inclusions-sum-too-large': return FILLET_BREAK_LIMITS[system].sumMm
    case 'undercut-too-deep': return MACROETCH_UNDERCUT_MM[system]
    case 'plate-too-thin': return THINNEST_GROOVE_PLATE_MM[system]
    default: return null
  }
}

/** A thickness range in the reader's units: '1/8 in to 3/4 in', '3 mm and over'; or why nothing is covered. */
export function explainThickness(range: ThicknessQualified, { locale, units, rules }: { readonly locale: Locale; readonly units: 'in' | 'mm'; readonly rules: TestRules }): string {
  if (range.kind === 'not-covered') return explainQualificationReason(range.reason, { locale, rules })
  const from = formatForReader(range.minMm, units)
  return range.maxMm === null
    ? say(qualification, locale, 'range-open', { from })
    : say(qualification, locale, 'range-closed', { from, to: formatForReader(range.maxMm, units) })
}

const POSITION_WORDS = { F: 'flat', H: 'horizontal', V: 'vertical', OH: 'overhead' } as const

/** 'flat', 'overhead' for a production position. */
export const positionName = (position: PlatePosition, locale: Locale): string => say(qualification, locale, POSITION_WORDS[position])
