import type { Locale } from '../language/say'
import type { Indication, Station } from '../scoring/types'
import type { LengthUnit } from '../units/length'

/** What the strip is drawn from. Lengths in millimetres from the start of the weld. */
export type BeadStripInput = {
  readonly weld: { readonly lengthMm: number; readonly position: string }
  readonly inspection: { readonly stations: readonly Station[]; readonly indications: readonly Indication[] }
  /** The allowed width; null where the criteria set none. */
  readonly widthBand: { readonly minMm: number | null; readonly maxMm: number | null } | null
  /** Places where the arc was stopped and started again. */
  readonly restartsMm?: readonly number[]
  /** Stretches a rule rejected, with the rule in the reader's words. */
  readonly rejected?: readonly { readonly fromMm: number; readonly toMm: number; readonly rule: string }[]
  readonly reader: { readonly units: LengthUnit; readonly locale: Locale }
}

/** @throws RangeError when something lies off the weld or is not a size that can be drawn */
export function checkBeadStrip({ weld, inspection, widthBand, restartsMm = [], rejected = [] }: BeadStripInput): void {
  if (!(weld.lengthMm > 0 && Number.isFinite(weld.lengthMm))) throw new RangeError(`A weld ${weld.lengthMm} mm long cannot be drawn.`)
  const places = [
    ...inspection.stations.map((station) => station.atMm),
    ...inspection.indications.map((indication) => indication.atMm),
    ...restartsMm,
    ...rejected.flatMap(({ fromMm, toMm }) => [fromMm, toMm]),
  ]
  const off = places.find((at) => !(at >= 0 && at <= weld.lengthMm + 1e-6))
  if (off !== undefined) throw new RangeError(`${off} mm does not lie on a weld ${weld.lengthMm} mm long.`)
  const sizes = [
    ...inspection.stations.flatMap((station) => station.widthMm ?? []),
    ...inspection.indications.flatMap((indication) => indication.lengthMm ?? []),
    ...[widthBand?.minMm, widthBand?.maxMm].flatMap((limit) => limit ?? []),
  ]
  const unsized = sizes.find((value) => !(value >= 0 && Number.isFinite(value)))
  if (unsized !== undefined) throw new RangeError(`${unsized} mm is not a size that can be drawn.`)
}
