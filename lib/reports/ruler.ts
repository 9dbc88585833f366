import { formatForReader } from '../units/display'
import { formatLength, mm, MM_PER_INCH, type LengthUnit } from '../units/length'

export type RulerTick = {
  readonly x: number
  readonly long: boolean
  /** With its unit: '2 in'. */
  readonly label: string | null
  readonly anchor: 'start' | 'middle' | 'end'
}

/** Distances between labels and between the ticks under them, in the unit itself: what rules in that unit are divided into. */
const STEPS: Readonly<Record<LengthUnit, readonly (readonly [number, number])[]>> = {
  in: [[0.5, 0.125], [1, 0.25], [2, 0.5], [3, 1], [6, 1], [12, 3], [24, 6], [48, 12], [96, 24], [240, 48]],
  mm: [[5, 1], [10, 5], [20, 5], [50, 10], [100, 20], [200, 50], [500, 100], [1000, 200], [2000, 500], [5000, 1000]],
}

/** A place along a weld, as people say one: to the sixteenth of an inch or the millimetre. Sizes are read finer; places are not. */
export function placeText(atMm: number, units: LengthUnit): string {
  return formatLength(mm(atMm), units === 'in' ? { unit: 'in', denominator: 16 } : { unit: 'mm', digits: 0 })
}

/**
 * The rule under a weld: ticks in the reader's unit from its start, a label wherever there is room for one, and always the start and
 * the end.
 *
 * @param labelRoom the least distance between two labels, in the drawing's units
 * @throws RangeError when the weld has no length or the drawing no width
 */
export function ruler({ lengthMm, units, left, right, labelRoom }: {
  readonly lengthMm: number
  readonly units: LengthUnit
  readonly left: number
  readonly right: number
  readonly labelRoom: number
}): RulerTick[] {
  if (!(lengthMm > 0 && Number.isFinite(lengthMm)) || !(right > left)) throw new RangeError(`A rule ${lengthMm} mm long cannot be drawn from ${left} to ${right}.`)
  const perUnit = units === 'in' ? MM_PER_INCH : 1
  const px = ((right - left) / lengthMm) * perUnit
  const coarsest = lengthMm / perUnit
  const [major, minor] = STEPS[units].find(([step]) => step * px >= labelRoom) ?? [coarsest, coarsest]
  const x = (inUnit: number): number => Math.round((left + inUnit * px) * 100) / 100
  const count = Math.floor(lengthMm / perUnit / minor + 1e-9)

  const ticks = Array.from({ length: count + 1 }, (_, i): RulerTick => {
    const at = i * minor
    const long = Math.abs(at / major - Math.round(at / major)) < 1e-6
    const roomy = right - x(at) >= labelRoom
    return { x: x(at), long, label: long && (roomy || i === 0) ? placeText(at * perUnit, units) : null, anchor: i === 0 ? 'start' : 'middle' }
  })
  const end: RulerTick = { x: right, long: true, label: formatForReader(lengthMm, units), anchor: 'end' }
  return [...ticks.filter((tick) => tick.x < right - 0.5), end]
}
