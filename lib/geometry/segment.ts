/** Below this rise for each unit of chord, the arc is a parabola to better than nine digits, and the exact formula only loses them. */
const SHALLOW = 1e-4

/**
 * Radius of the arc over a chord: (w²/4 + k²) / 2k.
 *
 * @param chord straight width w
 * @param rise height k of the arc over the middle of the chord
 * @throws RangeError unless both are above zero
 */
export function arcRadius(chord: number, rise: number): number {
  if (!(chord > 0 && rise > 0 && Number.isFinite(chord) && Number.isFinite(rise))) throw new RangeError(`An arc of width ${chord} and rise ${rise} is not possible.`)
  return (chord ** 2 / 4 + rise ** 2) / (2 * rise)
}

/**
 * Area between an arc and its chord. A shallow one is two thirds of width times rise.
 *
 * @throws RangeError when the chord is not above zero or the rise is below zero
 */
export function segmentArea(chord: number, rise: number): number {
  if (!(chord > 0 && rise >= 0 && Number.isFinite(chord) && Number.isFinite(rise))) throw new RangeError(`An arc of width ${chord} and rise ${rise} is not possible.`)
  if (rise / chord < SHALLOW) return (2 / 3) * chord * rise
  const radius = arcRadius(chord, rise)
  const halfAngle = 2 * Math.atan((2 * rise) / chord)
  return radius ** 2 * (halfAngle - Math.sin(halfAngle) * Math.cos(halfAngle))
}
