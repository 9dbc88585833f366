import { boothCardView } from '@/lib/reports/booth-card-view'
import type { CouponRecord } from '@/app/_server/data/coupon-record'
import type { MarksByPhoto } from '@/app/_server/views/photo-marks'
import { CouponPhotos } from './coupon-photos'

/** `marks`: the instructor's own until the look is submitted. */
type Props = { readonly coupon: Pick<CouponRecord, 'exercise' | 'number' | 'photos'>; readonly units: 'in' | 'mm'; readonly marks: MarksByPhoto }

/** What the coupon is, and its photos; no reading of the student's. */
export function CouponFacts({ coupon, units, marks }: Props) {
  const card = boothCardView(coupon.exercise, { locale: 'en', units })
  return (
    <section aria-label="The coupon" className="grid gap-4 sm:grid-cols-2 xl:sticky xl:top-6 xl:grid-cols-1 xl:self-start">
      <dl className="content-start divide-y divide-line border-y border-line">
        {card.facts.map((fact) => (
          <div key={fact.key} className="flex justify-between gap-4 py-1"><dt className="text-ink-2">{fact.term}</dt><dd className="text-right font-bold">{fact.value}</dd></div>
        ))}
      </dl>
      <CouponPhotos number={coupon.number} photos={coupon.photos} marks={marks} units={units} />
    </section>
  )
}
