import 'server-only'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import type { PhotoMeasurement } from '@/lib/measure/photo-measurement'
import type { Viewer } from '../auth/viewer'
import { listMeasurements } from '../data/photo-measurements'

export type MarksByPhoto = ReadonlyMap<string, readonly { readonly name: string; readonly own: boolean; readonly measurement: PhotoMeasurement }[]>

/** Marks this viewer may see on the photos of a coupon, by photo. */
export async function marksByPhoto(viewer: Viewer, couponId: string): Promise<MarksByPhoto> {
  const byPhoto = new Map<string, { name: string; own: boolean; measurement: PhotoMeasurement }[]>()
  for (const { photoId, person, own, measurement } of await listMeasurements(viewer, couponId)) {
    byPhoto.set(photoId, [...(byPhoto.get(photoId) ?? []), { name: person.name, own, measurement }])
  }
  return byPhoto
}

/** The viewer's own among them. */
export const ownMarks = (marks: MarksByPhoto): Readonly<Record<string, PhotoMarks>> =>
  Object.fromEntries([...marks].flatMap(([photoId, all]) => all.filter(({ own }) => own).map(({ measurement }) => [photoId, measurement.marks])))
