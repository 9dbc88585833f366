import { COVERAGE } from './band-call'
import { fixed } from '../units/quantity'
import { mm, toInches, type LengthUnit } from '../units/length'

/**
 * An uncertainty as it stands after '±', in decimals of the reader's unit, for about 95 of 100 errors: a fraction of an inch would claim a
 * step of a rule.
 *
 * @param sdMm one standard deviation
 * @throws RangeError when it is not a finite number
 */
export function uncertaintyText(sdMm: number, units: LengthUnit): string {
  const value = COVERAGE * sdMm
  return units === 'in' ? `${fixed(toInches(mm(value)), 3)} in` : `${fixed(value, 2)} mm`
}
