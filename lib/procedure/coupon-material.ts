import { plateMassKg } from '../consumables/steel'
import type { Process } from './process'
import { consumableNeededKg, wireFedKg, wireShare, type Bounds } from './wire'

/** What a coupon used up. null means it was not written down, and never counts as nothing. Masses in kg, gas in litres. */
export type MaterialUse = {
  readonly plateKg: number | null
  readonly consumableKg: Bounds | null
  /** null: gas ran and its flow or time is not known. Zero where the process uses none. */
  readonly gasLitres: number | null
}

/** One pass as far as material goes. */
export type PassUse = { readonly wireFeedMmPerS: number | null; readonly arcSeconds: number | null }

/**
 * Material of one coupon: plates by their sizes; consumable from wire feed and arc time of every pass, or where the process has
 * no wire feed (or a pass was not timed) from the weld metal its size calls for; gas from flow and arc time.
 *
 * @param weldMetalKg weld metal that the nominal size calls for, from lib/geometry; null when unknown
 * @param gasFlowLPerMin null when the flow is not known; left out when the process uses no gas
 * @throws RangeError when a size, a time or a flow is not possible
 */
export function couponMaterial(coupon: {
  readonly process: Process
  readonly plates: readonly { readonly lengthMm: number; readonly widthMm: number; readonly thicknessMm: number }[] | null
  readonly electrodeDiameterMm: number | null
  readonly passes: readonly PassUse[]
  readonly weldMetalKg: number | null
  readonly gasFlowLPerMin?: number | null
}): MaterialUse {
  return {
    plateKg: coupon.plates === null ? null : coupon.plates.reduce((sum, plate) => sum + plateMassKg(plate), 0),
    consumableKg: fedKg(coupon) ?? neededKg(coupon.process, coupon.weldMetalKg),
    gasLitres: coupon.gasFlowLPerMin === undefined ? 0 : gasLitres(coupon.gasFlowLPerMin, coupon.passes),
  }
}

/** Prices in the program's own currency; null when the program has not set one. */
export type Prices = { readonly platePerKg: number | null; readonly consumablePerKg: number | null; readonly gasPerM3: number | null }

export type MaterialPart = 'plate' | 'consumable' | 'gas'
export type MaterialCost =
  | { readonly kind: 'cost'; readonly cost: Bounds }
  /** Something used has no quantity or no price: the sum of the rest is a part, not the cost. */
  | { readonly kind: 'partial'; readonly known: Bounds; readonly missing: readonly MaterialPart[] }

/**
 * Cost of the material of a coupon.
 *
 * @throws RangeError when a price is below zero
 */
export function materialCost(use: MaterialUse, prices: Prices): MaterialCost {
  for (const price of Object.values(prices)) {
    if (price !== null && !(price >= 0 && Number.isFinite(price))) throw new RangeError(`A price of ${price} is not possible.`)
  }
  const parts: readonly (readonly [MaterialPart, Bounds | null, number | null])[] = [
    ['plate', exactly(use.plateKg), prices.platePerKg],
    ['consumable', use.consumableKg, prices.consumablePerKg],
    ['gas', exactly(use.gasLitres === null ? null : use.gasLitres / 1000), prices.gasPerM3],
  ]
  const isUsed = (amount: Bounds | null): boolean => amount === null || amount.high > 0
  const missing = parts.filter(([, amount, price]) => isUsed(amount) && (amount === null || price === null)).map(([part]) => part)
  const known = parts.reduce((sum, [, amount, price]) => ({ low: sum.low + (amount?.low ?? 0) * (price ?? 0), high: sum.high + (amount?.high ?? 0) * (price ?? 0) }), { low: 0, high: 0 })
  return missing.length > 0 ? { kind: 'partial', known, missing } : { kind: 'cost', cost: known }
}

/** Wire actually fed; null unless every pass has its feed and its time. */
function fedKg(coupon: { readonly process: Process; readonly electrodeDiameterMm: number | null; readonly passes: readonly PassUse[] }): Bounds | null {
  const share = wireShare(coupon.process)
  if (share === null || coupon.electrodeDiameterMm === null || coupon.passes.length === 0) return null
  let solid = 0
  for (const { wireFeedMmPerS, arcSeconds } of coupon.passes) {
    if (wireFeedMmPerS === null || arcSeconds === null) return null
    solid += wireFedKg({ feedMmPerS: wireFeedMmPerS, diameterMm: coupon.electrodeDiameterMm, arcSeconds })
  }
  return { low: solid * share.low, high: solid * share.high }
}

function neededKg(process: Process, weldMetalKg: number | null): Bounds | null {
  return weldMetalKg === null ? null : exactly(consumableNeededKg(weldMetalKg, process))
}

function gasLitres(flowLPerMin: number | null, passes: readonly PassUse[]): number | null {
  if (flowLPerMin !== null && !(flowLPerMin >= 0 && Number.isFinite(flowLPerMin))) throw new RangeError(`A gas flow of ${flowLPerMin} L/min is not possible.`)
  const seconds = passes.map((pass) => pass.arcSeconds)
  if (flowLPerMin === null || seconds.length === 0 || seconds.includes(null)) return null
  return (flowLPerMin * seconds.reduce<number>((sum, each) => sum + (each ?? 0), 0)) / 60
}

function exactly(value: number | null): Bounds | null {
  return value === null ? null : { low: value, high: value }
}
