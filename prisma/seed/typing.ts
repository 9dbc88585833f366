import { formatLength, mm, MM_PER_INCH, toInches, type LengthUnit } from '@/lib/units/length'
import { nearestStep, type GaugeUnit } from '@/lib/units/gauge-steps'
import type { Dice } from './dice'

/** How a person writes sizes down. */
export type Typist = {
  readonly units: LengthUnit
  readonly locale: 'en' | 'es'
  /** How often a size is read off a caliper and typed as a decimal instead of off the gauge as a fraction. */
  readonly decimals: number
  /** How often the unit is typed as well. */
  readonly namesUnit: number
}

export function typistOf(dice: Dice, units: LengthUnit, locale: 'en' | 'es'): Typist {
  return { units, locale, decimals: dice.pick([0, 0, 0.05, 0.15, 0.6]), namesUnit: dice.pick([0, 0, 0, 0.1, 0.5]) }
}

const withUnit = (text: string, typist: Typist, dice: Dice): string => {
  if (!dice.chance(typist.namesUnit)) return text
  return typist.units === 'mm' ? `${text} mm` : dice.chance(0.6) ? `${text}"` : `${text} in`
}
/** '8.5', and '8,5' where that is how it is written. */
const decimalMark = (text: string, { locale }: Typist): string => (locale === 'es' ? text.replace('.', ',') : text)
const halfMillimetres = (sizeMm: number): string => String(Math.round(sizeMm * 2) / 2)
const fraction = (sizeMm: number, gauge: GaugeUnit): string => nearestStep(sizeMm, gauge).label.replace(/ (in|mm)$/, '')

/** A bead's size, read to the gauge or off a caliper. */
export function typeSize(sizeMm: number, gauge: GaugeUnit, typist: Typist, dice: Dice): string {
  const size = Math.max(0, sizeMm)
  if (dice.chance(typist.decimals)) return typeCaliper(size, typist, dice)
  return withUnit(typist.units === 'mm' ? decimalMark(halfMillimetres(size), typist) : fraction(size, gauge), typist, dice)
}

/** Off a caliper: thousandths of an inch to the nearest five, or tenths of a millimetre. */
export function typeCaliper(sizeMm: number, typist: Typist, dice: Dice): string {
  const size = Math.max(0, sizeMm)
  if (typist.units === 'mm') return withUnit(decimalMark(size.toFixed(1), typist), typist, dice)
  const thousandths = Math.round((size / MM_PER_INCH) * 200) * 5
  const text = (thousandths / 1000).toFixed(3)
  return withUnit(dice.chance(0.7) ? text.replace(/^0\./, '.') : text, typist, dice)
}

/** The depth of an undercut or the size of a pore, which never reads as nothing: to a 64th, or to a hundredth on a depth gauge. */
export function typeDepth(sizeMm: number, typist: Typist, dice: Dice): string {
  if (typist.units === 'mm') return decimalMark(String(Math.max(1, Math.round(sizeMm * 10)) / 10), typist)
  if (dice.chance(0.5)) return `.${String(Math.max(1, Math.round(toInches(mm(sizeMm)) * 100))).padStart(2, '0')}`
  return fraction(Math.max(sizeMm, MM_PER_INCH / 64), 'in64')
}

/** A place or a length along the weld, read off a rule laid beside it: to an eighth of an inch or a millimetre, never past `mostMm`. */
export function typeAlong(sizeMm: number, mostMm: number, typist: Typist): string {
  const step = typist.units === 'mm' ? 1 : MM_PER_INCH / 8
  const steps = Math.min(Math.round(sizeMm / step), Math.floor(mostMm / step + 1e-6))
  return typist.units === 'mm' ? String(steps) : formatLength(mm(steps * step), { unit: 'in', denominator: 16 }).replace(/ in$/, '')
}

/** Where a typed place lies. */
export const alongMm = (sizeMm: number, mostMm: number, { units }: Typist): number => {
  const step = units === 'mm' ? 1 : MM_PER_INCH / 8
  return Math.min(Math.round(sizeMm / step), Math.floor(mostMm / step + 1e-6)) * step
}
