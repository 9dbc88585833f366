import { passFigureWords } from '../language/pass-figures'
import { say, type Locale } from '../language/say'
import type { PassSettings } from '../procedure/booth-card'
import { arcEnergy, heatInput, travelSpeed } from '../procedure/heat-input'
import type { Process } from '../procedure/process'
import { processFacts } from '../procedure/process-facts'
import { formatEnergyPerLength } from '../units/energy-per-length'
import type { LengthUnit } from '../units/length'
import { formatTravelSpeed, travelSpeedMmPerS } from '../units/travel-speed'

/**
 * What follows from a pass's boxes, in the reader's words: travel speed from length and arc time; with volts and amps arc energy and
 * heat input too. Empty while something it takes is missing.
 */
export function passFigures(pass: PassSettings, process: Process, { locale, units }: { readonly locale: Locale; readonly units: LengthUnit }): string[] {
  const { lengthMm, arcSeconds, volts, amps } = pass
  if (lengthMm === null || arcSeconds === null) return []
  const speed = travelSpeed(lengthMm, arcSeconds)
  const travel = say(passFigureWords, locale, 'travel', { speed: formatTravelSpeed(travelSpeedMmPerS(speed), { unit: units === 'in' ? 'in/min' : 'mm/s', digits: 1 }) })
  if (volts === null || amps === null) return [travel]
  const arc = { volts, amps, travelSpeedMmPerS: speed }
  const energy = (kJPerMm: number): string => formatEnergyPerLength(kJPerMm, units === 'in' ? 'kJ/in' : 'kJ/mm')
  return [
    travel,
    say(passFigureWords, locale, 'arcEnergy', { energy: energy(arcEnergy(arc)) }),
    say(passFigureWords, locale, 'heatInput', { heat: energy(heatInput({ ...arc, process })), k: processFacts(process).efficiency }),
  ]
}
