import { steelMassKg } from '../consumables/steel'
import { MM_PER_INCH } from '../units/length'
import { KG_PER_POUND } from '../units/mass'
import type { Source } from '../source'
import type { Process } from './process'

/** A figure known only within bounds. */
export type Bounds = { readonly low: number; readonly high: number }

/**
 * What a metre of cored wire weighs against a metre of solid wire of the same diameter: the core is powder.
 * From memory and wide; the maker's sheet has the true figure for a wire.
 */
export const CORED_SHARE: Bounds & { readonly source: Source } = {
  low: 0.75, high: 0.9, source: { title: 'Cored against solid wire, mass for each length', clause: null, status: 'memory', note: 'Weigh a known length of your wire for the true figure.' },
}

/**
 * Inches of solid steel wire in a pound, from the density of steel. Cored wire runs longer: see `CORED_SHARE`.
 *
 * @throws RangeError unless the diameter is above zero
 */
export function wireInchesPerPound(diameterMm: number): number {
  return KG_PER_POUND / (solidWireKgPerMm(diameterMm) * MM_PER_INCH)
}

/**
 * Mass of one millimetre of solid steel wire, in kg.
 *
 * @throws RangeError unless the diameter is above zero
 */
export function solidWireKgPerMm(diameterMm: number): number {
  return steelMassKg((Math.PI / 4) * above0(diameterMm, 'The wire diameter', 'mm') ** 2)
}

/** Share of a solid wire's mass that a process's wire has: exactly 1 for solid wire, bounds for cored wire. Covered electrodes are not fed: null. */
export function wireShare(process: Process): Bounds | null {
  switch (process) {
    case 'SMAW': return null
    case 'GMAW': return { low: 1, high: 1 }
    case 'FCAW-S':
    case 'FCAW-G': return { low: CORED_SHARE.low, high: CORED_SHARE.high }
  }
}

/**
 * Melt-off: wire consumed in kg for each hour of arc. `share` is the wire's mass against solid wire of its diameter.
 *
 * @throws RangeError unless feed and diameter are above zero and the share is in (0, 1]
 */
export function meltOffKgPerHour(wire: { readonly feedMmPerS: number; readonly diameterMm: number; readonly share?: number }): number {
  return above0(wire.feedMmPerS, 'The wire feed speed', 'mm/s') * solidWireKgPerMm(wire.diameterMm) * inShare(wire.share ?? 1, 'The wire’s share of solid mass') * 3600
}

/**
 * Deposition rate: the part of the melt-off that becomes weld metal, kg for each hour of arc.
 *
 * @throws RangeError as `meltOffKgPerHour`, and unless the efficiency is in (0, 1]
 */
export function depositionKgPerHour(wire: { readonly feedMmPerS: number; readonly diameterMm: number; readonly share?: number; readonly efficiency: number }): number {
  return meltOffKgPerHour(wire) * inShare(wire.efficiency, 'The deposition efficiency')
}

/**
 * Wire fed in a pass, in kg.
 *
 * @throws RangeError as `meltOffKgPerHour`, and unless the arc time is above zero
 */
export function wireFedKg(pass: { readonly feedMmPerS: number; readonly diameterMm: number; readonly share?: number; readonly arcSeconds: number }): number {
  return (meltOffKgPerHour(pass) * above0(pass.arcSeconds, 'The arc time', 's')) / 3600
}

/** Share of the consumable bought that ends up in the weld. */
export type DepositionEfficiency = { readonly efficiency: number; readonly source: Source }

const HANDBOOK: Source = {
  title: 'ESAB, Calculating Filler Metal Consumption, deposition efficiencies', clause: null, status: 'secondary',
  note: 'The figures were read; which process each belongs to is from memory.',
}
const EFFICIENCY: Readonly<Record<Process, DepositionEfficiency>> = {
  SMAW: { efficiency: 0.62, source: { ...HANDBOOK, note: '14 in electrode with a 2 in stub. 12 in: 0.59; 18 in: 0.66. Which process each figure belongs to is from memory.' } },
  'FCAW-S': { efficiency: 0.78, source: HANDBOOK },
  'FCAW-G': { efficiency: 0.86, source: HANDBOOK },
  GMAW: { efficiency: 0.96, source: { ...HANDBOOK, note: 'Argon with 25 % carbon dioxide. Carbon dioxide alone: 0.93; argon with 2 % oxygen: 0.98.' } },
}

export function depositionEfficiency(process: Process): DepositionEfficiency {
  return EFFICIENCY[process]
}

/**
 * Consumable to buy for a mass of weld metal, in kg.
 *
 * @throws RangeError when the mass is below zero
 */
export function consumableNeededKg(weldMetalKg: number, process: Process): number {
  if (!(weldMetalKg >= 0 && Number.isFinite(weldMetalKg))) throw new RangeError(`A weld metal mass of ${weldMetalKg} kg is not possible.`)
  return weldMetalKg / depositionEfficiency(process).efficiency
}

function above0(value: number, what: string, unit: string): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${what} must be above zero; it is ${value} ${unit}.`)
  return value
}

function inShare(value: number, what: string): number {
  if (!(value > 0 && value <= 1)) throw new RangeError(`${what} must be above 0 and at most 1; it is ${value}.`)
  return value
}
