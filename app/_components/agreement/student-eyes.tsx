import Link from 'next/link'
import type { EyeOverTime } from '@/lib/reports/eye-over-time'
import { biasText } from '@/lib/reports/gauge-study-words'
import { shareText } from '@/lib/reports/share-text'
import type { LengthUnit } from '@/lib/units/length'
import { Table } from '../ui/table'

type StudentEyesProps = { readonly students: readonly { readonly id: string; readonly name: string; readonly eye: EyeOverTime }[]; readonly units: LengthUnit }

/** Student by student, by name: how often their verdict was the instructor's, and whose widths lie over whose. No rate where there are too few. */
export function StudentEyes({ students, units }: StudentEyesProps) {
  return (
    <section className="grid gap-3">
      <Table
        caption="Student by student"
        columns={[
          { key: 'name', head: 'Student' }, { key: 'alike', head: 'Verdict as the instructor’s' }, { key: 'apart', head: 'Accepted alone, rejected alone', numeric: true },
          { key: 'widths', head: 'Widths over the instructor’s' },
        ]}
        rows={students.map(({ id, name, eye }) => ({
          key: id,
          cells: [
            <Link key="name" href={`/teach/students/${id}`} className="inline-flex min-h-12 items-center underline underline-offset-4">{name}</Link>,
            alike(eye), eye.compared === 0 ? '' : `${eye.tooKind}, ${eye.tooStrict}`, eye.widthBias ? biasText(eye.widthBias, units) : `not enough yet, ${eye.widthCoupons} of ${eye.least}`,
          ],
        }))}
      />
      <p className="max-w-prose text-base text-ink-2">The last 40 coupons of each in this class at most, against the verdict that stands. In the order of names: the intervals of two students overlap more often than not, and nobody is ranked by this.</p>
    </section>
  )
}

function alike({ agreement, agreed, compared, least }: EyeOverTime): string {
  if (!agreement) return `not enough yet, ${compared} of ${least}`
  return `${agreed} of ${compared}, ${shareText(agreement.share)} (${shareText(agreement.low)} to ${shareText(agreement.high)})`
}
