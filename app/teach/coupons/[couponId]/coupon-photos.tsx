import type { PhotoRecord } from '@/app/_server/data/photos'

type Props = { readonly number: number; readonly photos: readonly PhotoRecord[] }

/** The photos of a coupon, in their own size up to the width there is; nothing where there are none. */
export function CouponPhotos({ number, photos }: Props) {
  if (photos.length === 0) return null
  return (
    <div className="grid max-w-4xl content-start gap-3">
      {photos.map((photo, index) => (
        // A private picture behind its own route, already sized: the framework's image component has nothing to add.
        <img key={photo.id} src={`/api/photos/${photo.id}`} width={photo.widthPx} height={photo.heightPx} alt={`Coupon ${number}, photo ${index + 1}`} className="h-auto max-w-full" />
      ))}
    </div>
  )
}
