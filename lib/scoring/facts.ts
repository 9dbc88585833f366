import type { Quantity } from '../criteria/types'
import type { NotMeasuredReason } from './reason'
import type { Station, Weld } from './types'

/** A weld whose numbers have been checked; null is not known. */
export type Facts = {
  readonly fillet: boolean
  readonly lengthMm: number
  readonly thicknessMm: number | null
  readonly electrodeDiameterMm: number | null
  readonly nominalLegMm: number | null
  readonly completePenetration: boolean
  readonly transverseToTension: boolean
  readonly stiffenerToWeb: boolean
}

function knownLength(value: number | null | undefined, what: string): number | null {
  if (value === null || value === undefined) return null
  if (typeof value !== 'number' || !Number.isFinite(value) || value <= 0) {
    throw new RangeError(`The weld's ${what} must be a number of millimetres over 0, not ${String(value)}; leave it null when it is not known.`)
  }
  return value
}

/** A fact that nobody stated does not hold; "yes" written in some other way is refused, not taken for no. */
function saidSo(value: boolean | null | undefined, what: string): boolean {
  if (value === undefined || value === null) return false
  if (typeof value !== 'boolean') throw new RangeError(`Whether the weld ${what} is answered true or false, not "${String(value)}".`)
  return value
}

/** @throws RangeError naming the fact that is not usable. */
export function factsOf(weld: Weld): Facts {
  if (typeof weld !== 'object' || weld === null) throw new RangeError('There is no weld to judge: give its type, length and plate.')
  if (weld.type !== 'fillet' && weld.type !== 'groove') {
    throw new RangeError(`The weld's type is 'fillet' or 'groove', not "${String(weld.type)}".`)
  }
  const lengthMm = knownLength(weld.lengthMm, 'length')
  if (lengthMm === null) throw new RangeError('The weld needs a length: readings are placed along it.')
  return {
    fillet: weld.type === 'fillet',
    lengthMm,
    thicknessMm: knownLength(weld.thicknessMm, 'plate thickness'),
    electrodeDiameterMm: knownLength(weld.electrodeDiameterMm, 'electrode diameter'),
    nominalLegMm: knownLength(weld.nominalLegMm, 'nominal leg'),
    completePenetration: saidSo(weld.completePenetration, 'has complete penetration'),
    transverseToTension: saidSo(weld.transverseToTension, 'runs across the tension'),
    stiffenerToWeb: saidSo(weld.stiffenerToWeb, 'joins a stiffener to a web'),
  }
}

/** Throat of a flat equal-leg fillet over its leg, as ISO 2553 and ISO 5817 round it. */
const THROAT_OF_LEG = 0.7071

/** The widths at the place judged: a station, or the narrowest of all. */
export type Widths = Pick<Station, 'widthMm' | 'rootWidthMm'>

/** The value of a quantity, or null when it is not known. `at` null: the place has no width. */
export function quantityOf(quantity: Quantity, weld: Facts, at: Widths | null): number | null {
  switch (quantity) {
    case 'thickness': return weld.thicknessMm
    case 'electrode-diameter': return weld.electrodeDiameterMm
    case 'nominal-leg': return weld.nominalLegMm
    case 'nominal-throat': return weld.nominalLegMm === null ? null : THROAT_OF_LEG * weld.nominalLegMm
    case 'nominal-size': return quantityOf(weld.fillet ? 'nominal-throat' : 'thickness', weld, at)
    case 'width': return at?.widthMm ?? null
    case 'root-width': return at?.rootWidthMm ?? null
  }
}

/** What to say when a quantity is not known. */
export function reasonWithout(quantity: Quantity, weld: Facts): NotMeasuredReason {
  switch (quantity) {
    case 'thickness': return 'no-thickness'
    case 'electrode-diameter': return 'no-electrode-diameter'
    case 'nominal-leg':
    case 'nominal-throat': return 'no-nominal-leg'
    case 'nominal-size': return weld.fillet ? 'no-nominal-leg' : 'no-thickness'
    case 'width': return 'station-without-width'
    case 'root-width': return 'station-without-root-width'
  }
}
