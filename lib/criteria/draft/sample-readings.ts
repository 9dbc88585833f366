import { parseLength, type LengthUnit } from '../../units/length'
import { inches } from '../limits'
import type { Indication } from '../../scoring/types'
import type { SampleCoupon } from './sample-coupons'

/** Readings typed over a sample coupon's own, as text; an empty box leaves what the sample has. */
export type SampleReadings = {
  /** The bead's width at every station. */
  readonly width: string
  /** The depth of one undercut in place of the sample's; 0 is none. */
  readonly undercut: string
  /** The diameter of one pore in place of the sample's; 0 is none. */
  readonly pore: string
}

/** The sample as it is. */
export const SAMPLE_AS_IT_IS: SampleReadings = { width: '', undercut: '', pore: '' }

/** What is wrong with a box, by its name. */
export type SampleReadingProblems = Partial<Record<keyof SampleReadings, string>>

export type ReadSample = { readonly ok: true; readonly value: SampleCoupon } | { readonly ok: false; readonly problems: SampleReadingProblems }

/** Nothing on a sample plate is larger. */
const MOST_MM = inches(2)
const UNREADABLE = 'This is no size. Write it like 1/32, .05 in or 1 mm.'

/** A sample coupon with the typed readings in place of its own, or what is wrong with the boxes. */
export function withReadings(sample: SampleCoupon, typed: SampleReadings, units: LengthUnit): ReadSample {
  const [width, undercut, pore] = [sizeOf(typed.width, units), sizeOf(typed.undercut, units), sizeOf(typed.pore, units)]
  const problems = {
    ...(typeof width === 'string' ? { width } : width === 0 ? { width: 'A bead has a width. Empty the box for the sample’s own.' } : {}),
    ...(typeof undercut === 'string' && { undercut }), ...(typeof pore === 'string' && { pore }),
  }
  if (typeof width === 'string' || typeof undercut === 'string' || typeof pore === 'string' || Object.keys(problems).length > 0) return { ok: false, problems }
  const { inspection } = sample
  const indications = [
    ...inspection.indications.filter(({ kind }) => !(kind === 'undercut' && undercut !== null) && !(kind === 'pore' && pore !== null)),
    ...(undercut ? [{ kind: 'undercut', atMm: inches(4), lengthMm: inches(1 / 2), depthMm: undercut, toe: 'A' } satisfies Indication] : []),
    ...(pore ? [{ kind: 'pore', atMm: inches(3), diameterMm: pore } satisfies Indication] : []),
  ]
  const stations = width === null ? inspection.stations : inspection.stations.map((station) => ({ ...station, widthMm: width }))
  return { ok: true, value: { ...sample, inspection: { ...inspection, stations, indications } } }
}

/** The size in mm; null for an empty box; a sentence for what is no size. */
function sizeOf(text: string, units: LengthUnit): number | null | string {
  if (text.trim() === '') return null
  try {
    const size = parseLength(text, units)
    return size > MOST_MM ? 'No sample plate has anything that large.' : size
  } catch {
    return UNREADABLE
  }
}
