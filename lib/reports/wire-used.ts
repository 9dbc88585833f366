import { weldMetalKg } from '../geometry/weld-metal'
import type { PassSettings } from '../procedure/booth-card'
import { couponMaterial } from '../procedure/coupon-material'
import type { ExerciseFacts } from '../procedure/exercise'
import type { Bounds } from '../procedure/wire'

/** A coupon as far as its wire or rod goes. */
export type WireCoupon = {
  readonly exercise: Pick<ExerciseFacts, 'process' | 'electrodeDiameterMm' | 'weldType' | 'nominalLegMm' | 'lengthMm'>
  readonly passes: readonly Pick<PassSettings, 'wireFeedMmPerS' | 'arcSeconds'>[]
}

/** Wire or rod used, kg, over the `counted` of `coupons` it can be worked out for. */
export type WireUsed = { readonly coupons: number; readonly counted: number; readonly kg: Bounds | null }

/**
 * Wire or rod used over some coupons: from wire feed and arc time where both were written down for every pass, else from the nominal
 * size of the fillet. A coupon with neither is not counted; it never counts as nothing.
 */
export function wireUsed(coupons: readonly WireCoupon[]): WireUsed {
  const used = coupons.flatMap(({ exercise, passes }) => couponMaterial({
    process: exercise.process, plates: null, electrodeDiameterMm: exercise.electrodeDiameterMm, weldMetalKg: nominalKg(exercise),
    passes: passes.map(({ wireFeedMmPerS, arcSeconds }) => ({ wireFeedMmPerS: above0(wireFeedMmPerS), arcSeconds: above0(arcSeconds) })),
  }).consumableKg ?? [])
  return {
    coupons: coupons.length, counted: used.length,
    kg: used.length === 0 ? null : used.reduce((sum, { low, high }) => ({ low: sum.low + low, high: sum.high + high }), { low: 0, high: 0 }),
  }
}

/** A flat fillet of the nominal leg over the whole length; null for grooves, whose size no exercise states. */
function nominalKg({ weldType, nominalLegMm, lengthMm }: WireCoupon['exercise']): number | null {
  return weldType === 'fillet' && nominalLegMm !== null ? weldMetalKg(nominalLegMm ** 2 / 2, lengthMm) : null
}

/** A feed or time of nothing was not run: it says nothing of what was used. */
const above0 = (value: number | null): number | null => (value !== null && value > 0 ? value : null)
