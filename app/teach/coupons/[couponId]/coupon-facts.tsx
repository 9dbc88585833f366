import { boothCardView } from '@/lib/reports/booth-card-view'
import type { BlindCoupon } from '@/app/_server/data/coupon-record'

type Props = { readonly coupon: BlindCoupon; readonly units: 'in' | 'mm' }

/** What the coupon is, and its photos; no reading of the student's. */
export function CouponFacts({ coupon, units }: Props) {
  const card = boothCardView(coupon.exercise, { locale: 'en', units })
  return (
    <section className="grid gap-4">
      <p>{card.facts.map((fact) => `${fact.term}: ${fact.value}`).join(' · ')}</p>
      {coupon.photos.length > 0 && (
        <div className="grid gap-3 sm:grid-cols-2 lg:grid-cols-3">
          {coupon.photos.map((photo, index) => (
            // A private picture behind its own route, already sized: the framework's image component has nothing to add.
            // eslint-disable-next-line @next/next/no-img-element
            <img key={photo.id} src={`/api/photos/${photo.id}`} width={photo.widthPx} height={photo.heightPx} alt={`Coupon ${coupon.number}, photo ${index + 1}`} className="h-auto w-full" />
          ))}
        </div>
      )}
    </section>
  )
}
