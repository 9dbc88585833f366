import Link from 'next/link'
import type { EyeOverTime } from '@/lib/reports/eye-over-time'
import { biasText } from '@/lib/reports/gauge-study-words'
import { shareText } from '@/lib/reports/share-text'
import type { LengthUnit } from '@/lib/units/length'
import { AgreementDrawing } from '../charts/agreement-drawing'
import { FigureRows } from '../charts/figure-rows'

type StudentEyesProps = { readonly students: readonly { readonly id: string; readonly name: string; readonly eye: EyeOverTime }[]; readonly units: LengthUnit }

const WORDS = 'How many of a hundred verdicts were the instructor’s, with the 95 % interval. The last 40 coupons of each in this class at most, against the verdict that stands. By name: most intervals overlap, and nobody is ranked by this.'

/** Student by student: how often their verdict was the instructor’s, and whose widths lie over whose. No rate where there are too few. */
export function StudentEyes({ students, units }: StudentEyesProps) {
  return (
    <FigureRows
      title="Student by student" words={WORDS} heads={['Student', 'Verdicts alike, widths over the instructor’s']} scale={['0', '50', '100 %']}
      rows={students.map(({ id, name, eye }) => ({
        key: id,
        label: <Link href={`/teach/students/${id}`} className="inline-flex min-h-12 items-center underline underline-offset-4">{name}</Link>,
        drawing: <AgreementDrawing share={eye.agreement && { ...eye.agreement, rate: eye.agreement.share }} />,
        figures: <Figures eye={eye} units={units} />,
      }))}
    />
  )
}

function Figures({ eye, units }: { readonly eye: EyeOverTime; readonly units: LengthUnit }) {
  const { agreement, agreed, compared, tooKind, tooStrict, least, widthBias, widthCoupons } = eye
  const apart = [tooKind > 0 && `${tooKind} accepted alone`, tooStrict > 0 && `${tooStrict} rejected alone`].filter(Boolean).join(', ')
  return (
    <>
      {agreement
        ? <p><span className="figures text-lg">{agreed} of {compared}</span>, {shareText(agreement.share)} ({shareText(agreement.low)} to {shareText(agreement.high)})</p>
        : <p>not enough yet, {compared} of {least} coupons</p>}
      {apart !== '' && <p className="text-base text-ink-2">{apart}</p>}
      <p className="text-base text-ink-2">widths {widthBias ? biasText(widthBias, units) : `not enough yet, ${widthCoupons} of ${least} coupons`}</p>
    </>
  )
}
