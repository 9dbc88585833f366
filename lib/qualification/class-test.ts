import type { TestParts } from '../schemas/test-attempt'
import { judgeGuidedBend } from './bend'
import { judgeFilletBreak } from './fillet-break'
import type { UnitSystem } from './limits'
import { judgeMacroetch } from './macroetch'
import { combineTestResult, type TestOutcome } from './test-result'
import { specimensNeeded, type SpecimensNeeded } from './thickness'

/** What was welded for the test. Lengths in millimetres. */
export type TestPlate = { readonly weldType: 'fillet' | 'groove'; readonly plateThicknessMm: number; readonly nominalLegMm: number | null }

/**
 * The result of a test as it was taken, by the structural code.
 *
 * How many specimens each kind of examination takes is the code's. A macroetch counts only where one was made: a class may break its
 * fillets without etching any. Bends of a fillet are the root bends of the soundness plate.
 *
 * @throws RangeError for a size that is negative or not a number, or a thickness that is not over 0
 */
export function judgeTestParts(parts: TestParts, plate: TestPlate, system: UnitSystem): TestOutcome {
  const { visual, bends, filletBreak, macroetch } = parts
  return combineTestResult({
    visual,
    needed: neededFor(parts, plate, system),
    bends: (bends ?? []).map(({ face, indications }) => ({ kind: face, judgement: judgeGuidedBend(indications, system) })),
    breaks: filletBreak ? [judgeFilletBreak(filletBreak, system)] : [],
    macroetches: macroetch ? [judgeMacroetch({ type: plate.weldType, nominalLegMm: plate.nominalLegMm, ...macroetch }, system)] : [],
  })
}

function neededFor({ bends, macroetch }: TestParts, { weldType, plateThicknessMm }: TestPlate, system: UnitSystem): SpecimensNeeded {
  const filletPlate = bends === null ? 't-joint' : 'soundness'
  return { ...specimensNeeded({ type: weldType, thicknessMm: plateThicknessMm, filletPlate }, system), macroetches: macroetch ? 1 : 0 }
}
