import { MarksOnPhoto } from '@/app/_components/photo-gauge/marks-on-photo'
import type { PhotoRecord } from '@/app/_server/data/photos'
import type { MarksByPhoto } from '@/app/_server/views/photo-marks'

type Props = { readonly number: number; readonly photos: readonly PhotoRecord[]; readonly marks: MarksByPhoto; readonly units: 'in' | 'mm' }

/** The photos of a coupon, in their own size up to the width there is, with the marks the viewer may see; nothing where there are none. */
export function CouponPhotos({ number, photos, marks, units }: Props) {
  if (photos.length === 0) return null
  return (
    <div className="grid max-w-4xl content-start gap-3">
      {photos.map((photo, index) => (
        <MarksOnPhoto key={photo.id} locale="en" units={units} photo={photo} alt={`Coupon ${number}, photo ${index + 1}`} marks={marks.get(photo.id) ?? []} />
      ))}
    </div>
  )
}
