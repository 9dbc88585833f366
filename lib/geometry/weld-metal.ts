import { steelMassKg } from '../consumables/steel'

/**
 * Volume of a weld of constant cross-section, mm³.
 *
 * @throws RangeError unless the area is zero or more and the length above zero
 */
export function weldVolume(areaMm2: number, lengthMm: number): number {
  if (!(areaMm2 >= 0 && Number.isFinite(areaMm2))) throw new RangeError(`A weld area of ${areaMm2} mm² is not possible.`)
  if (!(lengthMm > 0 && Number.isFinite(lengthMm))) throw new RangeError(`A weld ${lengthMm} mm long is not possible.`)
  return areaMm2 * lengthMm
}

/** Mass of steel weld metal, kg. @throws RangeError as `weldVolume` */
export function weldMetalKg(areaMm2: number, lengthMm: number): number {
  return steelMassKg(weldVolume(areaMm2, lengthMm))
}

/**
 * Volume of a weld measured at stations: each section stands for the stretch half-way to its neighbours, ends to the ends.
 *
 * @param sections places and areas, in any order
 * @throws RangeError when there are none, or one lies outside the weld or has an impossible area
 */
export function weldVolumeOfSections(sections: readonly { readonly atMm: number; readonly areaMm2: number }[], lengthMm: number): number {
  if (sections.length === 0) throw new RangeError('A weld volume needs at least one measured section.')
  for (const { atMm, areaMm2 } of sections) {
    weldVolume(areaMm2, lengthMm)
    if (!(atMm >= 0 && atMm <= lengthMm)) throw new RangeError(`A section at ${atMm} mm lies outside a weld ${lengthMm} mm long.`)
  }
  const along = [...sections].sort((one, other) => one.atMm - other.atMm)
  return along.reduce((sum, section, i) => {
    const from = i === 0 ? 0 : (section.atMm + (along[i - 1]?.atMm ?? 0)) / 2
    const to = i === along.length - 1 ? lengthMm : (section.atMm + (along[i + 1]?.atMm ?? 0)) / 2
    return sum + section.areaMm2 * (to - from)
  }, 0)
}
