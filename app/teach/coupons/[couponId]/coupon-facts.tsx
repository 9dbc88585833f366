import { boothCardView } from '@/lib/reports/booth-card-view'
import type { BlindCoupon } from '@/app/_server/data/coupon-record'
import { CouponPhotos } from './coupon-photos'

type Props = { readonly coupon: BlindCoupon; readonly units: 'in' | 'mm' }

/** What the coupon is, and its photos; no reading of the student's. */
export function CouponFacts({ coupon, units }: Props) {
  const card = boothCardView(coupon.exercise, { locale: 'en', units })
  return (
    <section aria-label="The coupon" className="grid gap-4 sm:grid-cols-2 xl:sticky xl:top-6 xl:grid-cols-1 xl:self-start">
      <dl className="content-start divide-y divide-line border-y border-line">
        {card.facts.map((fact) => (
          <div key={fact.key} className="flex justify-between gap-4 py-1"><dt className="text-ink-2">{fact.term}</dt><dd className="text-right font-bold">{fact.value}</dd></div>
        ))}
      </dl>
      <CouponPhotos number={coupon.number} photos={coupon.photos} />
    </section>
  )
}
