import type { Process } from './process'
import { processFacts } from './process-facts'

/**
 * Travel speed in mm/s from the length welded and the time the arc burned.
 *
 * @throws RangeError unless both are above zero
 */
export function travelSpeed(lengthMm: number, seconds: number): number {
  return above0(lengthMm, 'the length welded') / above0(seconds, 'the arc time')
}

/**
 * Arc energy in kJ/mm: volts × amps / speed, with no efficiency factor (ISO/TR 18491; the heat input of AWS and ASME codes).
 *
 * @throws RangeError unless every figure is above zero
 */
export function arcEnergy(arc: { readonly volts: number; readonly amps: number; readonly travelSpeedMmPerS: number }): number {
  return (above0(arc.volts, 'the voltage') * above0(arc.amps, 'the current')) / above0(arc.travelSpeedMmPerS, 'the travel speed') / 1000
}

/**
 * Heat input in kJ/mm: arc energy times the process factor k of ISO/TR 17671-1.
 * A record must say which of the two it holds; the factor and its source are in `processFacts`.
 *
 * @throws RangeError unless every figure is above zero and the process is one taught here
 */
export function heatInput(arc: { readonly volts: number; readonly amps: number; readonly travelSpeedMmPerS: number; readonly process: Process }): number {
  return arcEnergy(arc) * processFacts(arc.process).efficiency
}

function above0(value: number, what: string): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`Heat input needs ${what} above zero; it is ${value}.`)
  return value
}
