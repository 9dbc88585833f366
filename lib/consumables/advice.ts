import type { AdvisedRange } from '../procedure/booth-card'
import type { Process } from '../procedure/process'
import type { Source } from '../source'
import { fromInches } from '../units/length'
import type { Consumable } from './consumable'

/** Advice with where it comes from. Millimetres. */
export type Advice = { readonly range: AdvisedRange; readonly source: Source }

const ANNEX: Source = { title: 'AWS A5.20/A5.20M, annex on intended use', clause: null, status: 'memory' }
const MAKERS: Source = { title: 'Makers’ data sheets of T-11 wires', clause: null, status: 'memory', note: 'Makers differ: read the sheet of your wire.' }
const BOOK: Source = { title: 'Welding Fundamentals (Goodheart-Willcox, 2017)', clause: 'Fig. 17-4', status: 'secondary' }
const SHOP: Source = { title: 'Common shop practice', clause: null, status: 'common-practice', note: 'No document stands behind it; read the sheet of your wire.' }

const upTo = (inches: number, source: Source): Advice => ({ range: { min: null, max: fromInches(inches) }, source })
const between = (low: number, high: number, source: Source): Advice => ({ range: { min: fromInches(low), max: fromInches(high) }, source })

/**
 * Thickest plate a wire is commonly advised for, strictest first; empty where nothing is said.
 * T-11: makers say about 5/16 in up to 0.045 in wire and 1/2 in for larger; the specification's annex 3/4 in unless preheat and
 * interpass temperature are held. T-3 and T-14 are sheet-metal wires, to 3/16 in.
 */
export function plateAdvice(consumable: Consumable, electrodeDiameterMm: number | null): Advice[] {
  if (consumable.standard !== 'AWS A5.20') return []
  if (consumable.usability === '11') {
    const makers = electrodeDiameterMm === null ? [] : [upTo(electrodeDiameterMm <= SMALL_WIRE_MM ? 5 / 16 : 1 / 2, MAKERS)]
    return [...makers, upTo(3 / 4, ANNEX)]
  }
  return consumable.usability === '3' || consumable.usability === '14' ? [upTo(3 / 16, ANNEX)] : []
}

/** Wires up to 0.045 in count as small. */
const SMALL_WIRE_MM = fromInches(0.045) + 1e-6
/** Self-shielded groups run at three-quarters to one inch; the others take long extensions that grow with the wire. */
const SHORT_EXTENSION = ['8', '11', '13', '14', 'G', 'GS']

/**
 * Advised electrode extension, read here as contact-tip-to-work distance less the arc; null for covered electrodes.
 * Where a wire's group or diameter is not known the wider range of its process is given.
 */
export function stickOutAdvice(consumable: Consumable, electrodeDiameterMm: number | null): Advice | null {
  switch (consumable.process) {
    case 'SMAW': return null
    case 'GMAW': return between(1 / 4, 1, { ...BOOK, note: 'Short circuit 1/4 to 1/2 in, spray 1/2 to 1 in.' })
    case 'FCAW-G': return between(3 / 4, 1 + 1 / 2, BOOK)
    case 'FCAW-S': return selfShielded(consumable.usability, electrodeDiameterMm)
  }
}

function selfShielded(usability: string, electrodeDiameterMm: number | null): Advice {
  if (!SHORT_EXTENSION.includes(usability)) return between(3 / 4, 3 + 3 / 4, { ...BOOK, note: 'Larger wire, longer extension.' })
  if (electrodeDiameterMm === null) return between(3 / 8, 1, SHOP)
  return electrodeDiameterMm <= SMALL_WIRE_MM ? between(3 / 8, 3 / 4, SHOP) : between(3 / 4, 1, SHOP)
}

/** Whether a process runs with a shielding gas: true, false, or null for a covered electrode, where the question does not arise. */
export function usesGas(process: Process): boolean | null {
  switch (process) {
    case 'SMAW': return null
    case 'FCAW-S': return false
    case 'FCAW-G':
    case 'GMAW': return true
  }
}
