/**
 * Seconds of arc needed to weld a length at a travel speed.
 *
 * @throws RangeError unless both are above zero
 */
export function arcOnSeconds(lengthMm: number, travelSpeedMmPerS: number): number {
  if (!(lengthMm > 0 && travelSpeedMmPerS > 0 && Number.isFinite(lengthMm) && Number.isFinite(travelSpeedMmPerS))) {
    throw new RangeError(`Arc time needs a length and a travel speed above zero; they are ${lengthMm} mm and ${travelSpeedMmPerS} mm/s.`)
  }
  return lengthMm / travelSpeedMmPerS
}

/**
 * Arc time of all passes of a coupon. Passes whose time was not written down are counted, never taken as zero:
 * `seconds` is null when no pass has a time, and a lower bound when `notTimed` is above zero.
 *
 * @throws RangeError when a time is below zero or not a number
 */
export function totalArcSeconds(passes: readonly { readonly arcSeconds: number | null }[]): { readonly seconds: number | null; readonly notTimed: number } {
  const timed = passes.flatMap(({ arcSeconds }) => (arcSeconds === null ? [] : [arcSeconds]))
  const wrong = timed.find((each) => !(each >= 0 && Number.isFinite(each)))
  if (wrong !== undefined) throw new RangeError(`An arc time of ${wrong} seconds is not possible.`)
  return { seconds: timed.length === 0 ? null : timed.reduce((sum, each) => sum + each, 0), notTimed: passes.length - timed.length }
}

/**
 * Operating factor: the share of the shift in which the arc burned.
 *
 * @throws RangeError unless 0 <= arc time <= whole time and the whole time is above zero
 */
export function operatingFactor(arcSeconds: number, wholeSeconds: number): number {
  if (!(arcSeconds >= 0 && wholeSeconds > 0 && arcSeconds <= wholeSeconds && Number.isFinite(wholeSeconds))) {
    throw new RangeError(`Operating factor needs an arc time within the whole time; they are ${arcSeconds} s and ${wholeSeconds} s.`)
  }
  return arcSeconds / wholeSeconds
}
