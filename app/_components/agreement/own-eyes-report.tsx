import type { Compared } from '@/lib/reports/agreement'
import { STUDENTS_USE, widthWords } from '@/lib/reports/agreement-words'
import type { LengthUnit } from '@/lib/units/length'
import { LeaningList } from './leaning-list'
import { RuleAgreement } from './rule-agreement'

type Lines = Parameters<typeof LeaningList>[0]['lines']
type OwnEyesReportProps = { readonly compared: Compared; readonly leanings: { readonly lines: Lines; readonly caution: string | null }; readonly units: LengthUnit }

const SIDES: [string, string] = ['the student', 'the instructor']

/** Students as one side, their instructors as the other: which way they part, rule by rule, and whose widths lie over whose. */
export function OwnEyesReport({ compared, leanings, units }: OwnEyesReportProps) {
  return (
    <>
      <LeaningList title="What students see otherwise" {...leanings} none="Over no rule do students and instructors part one way, as far as these coupons can tell." use={STUDENTS_USE} />
      <RuleAgreement title="Student and instructor, rule by rule" rules={compared.rules} sides={SIDES} whole={compared.verdicts} />
      <section className="grid gap-2">
        <h2 className="text-2xl">Measured widths</h2>
        <div className="max-w-prose">{widthWords(compared.widths, 'The student', 'the instructor', units).map((sentence) => <p key={sentence}>{sentence}</p>)}</div>
      </section>
    </>
  )
}
