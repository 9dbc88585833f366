import type { ComponentProps, ReactNode } from 'react'
import type { Locale } from '@/lib/language/say'
import { EyeFigure } from '../progress/eye-figure'
import { TotalsList } from '../progress/totals-list'
import { EmptyState } from '../ui/empty-state'
import { LinkButton } from '../ui/link-button'
import { PageHead } from '../ui/page-head'
import { ExerciseChoice } from './exercise-choice'
import { ExerciseStory } from './exercise-story'
import { RemarkList, type RemarkLine } from './remark-list'
import { StaffNotesPanel, type NoteActions, type StaffNoteLine } from './staff-notes-panel'
import { StudentNow, type NowInClass } from './student-now'
import { StudentPlaces, type StudentPlace } from './student-places'
import { TestList } from './test-list'

type Story = ComponentProps<typeof ExerciseStory>

/** What is known of one student. */
export type StudentKnown = {
  readonly record: {
    readonly student: { readonly id: string }
    readonly name: string
    readonly coupons: number
    readonly arcTime: string | null
    readonly to: string | null
    readonly skills: ComponentProps<typeof ExerciseChoice>['lines']
    readonly attempts: ComponentProps<typeof TestList>['attempts']
  }
  readonly answer: string
  readonly now: readonly NowInClass[]
  readonly shown: (Pick<Story, 'readiness' | 'whyWide' | 'rows'> & { readonly skill: { readonly exercise: Story['exercise'] } }) | null
  readonly remarks: { readonly rows: readonly RemarkLine[]; readonly next: string | null }
  readonly eye: Pick<ComponentProps<typeof EyeFigure>, 'sentences' | 'drawing'>
  readonly totals: ComponentProps<typeof TotalsList>['totals']
  readonly elsewhere: number
  readonly places: readonly StudentPlace[]
  readonly notes: readonly StaffNoteLine[]
}

type Props = {
  readonly known: StudentKnown
  /** The instructor's room, where coupons are looked at, or the coordinator's. */
  readonly room: 'teach' | 'program'
  readonly locale: Locale
  readonly eyeFrame: ComponentProps<typeof EyeFigure>['frame']
  /** The remark after which the shown ones begin; null when they are the newest. */
  readonly remarksAfter: string | null
  readonly notes: NoteActions
  /** What the room can do to the account. */
  readonly account: ReactNode
}

const COUPON = { teach: '/teach/coupons', program: '/program/criteria/coupons' } as const

/** Everything about one student on one page, what to do next first. */
export function StudentScreen({ known, room, locale, eyeFrame, remarksAfter, notes, account }: Props) {
  const { record, now, shown, remarks, eye, totals, elsewhere, places } = known
  const chosen = shown?.skill.exercise.id ?? null
  const couponHref = (couponId: string): string => `${COUPON[room]}/${couponId}`
  const remarksHref = (after: string | null): string => `?${new URLSearchParams({ ...(chosen !== null && { exercise: chosen }), ...(after !== null && { remarks: after }) }).toString()}#remarks`
  return (
    <div className="grid gap-10">
      <PageHead
        eyebrow={whereText(places)} title={record.name} lead={leadOf(record)}
        aside={<LinkButton href={`/print/progress/${record.student.id}${chosen === null ? '' : `?exercise=${chosen}`}`}>Print the progress summary</LinkButton>}
      />
      <StudentNow answer={known.answer} now={room === 'teach' ? now : null} note={known.notes[0] ?? null} />
      {record.skills.length === 0 ? <EmptyState title="No coupons yet"><p>When this student logs a coupon it appears here.</p></EmptyState> : (
        <div className="grid gap-8 lg:grid-cols-[22rem_minmax(0,1fr)]">
          <ExerciseChoice lines={record.skills} chosen={chosen} />
          {shown && <ExerciseStory studentId={record.student.id} exercise={shown.skill.exercise} readiness={shown.readiness} whyWide={shown.whyWide} rows={shown.rows} couponHref={couponHref} />}
        </div>
      )}
      <div className="grid gap-10 *:min-w-0 lg:grid-cols-2">
        <RemarkList remarks={remarks.rows} couponHref={couponHref} older={remarks.next === null ? null : remarksHref(remarks.next)} newest={remarksAfter === null ? null : remarksHref(null)} />
        <div className="grid content-start gap-10">
          <EyeFigure {...eye} frame={eyeFrame} locale={locale} who="other" />
          <section aria-labelledby="totals" className="grid content-start gap-2">
            <h2 id="totals" className="text-2xl">So far</h2>
            <TotalsList totals={totals} />
            {elsewhere > 0 && <p className="text-base text-ink-2">{elsewhere === 1 ? '1 of these coupons was' : `${elsewhere} of these coupons were`} made in classes you do not see; the wire and the remarks leave them out.</p>}
          </section>
        </div>
        <TestList attempts={record.attempts} testHref={room === 'teach' ? (testId) => `/teach/tests/${testId}` : null} />
        <StudentPlaces places={places} />
        <StaffNotesPanel studentId={record.student.id} notes={known.notes} {...notes} />
        {account}
      </div>
    </div>
  )
}

function whereText(places: readonly StudentPlace[]): string {
  const now = places.filter(({ active }) => active)
  return now.length === 0 ? 'In no class now' : now.map(({ name, booth }) => (booth === null ? name : `${name} · booth ${booth}`)).join('; ')
}

function leadOf({ coupons, arcTime, to }: StudentKnown['record']): string {
  if (coupons === 0) return 'No coupon logged yet.'
  return `${coupons} ${coupons === 1 ? 'coupon' : 'coupons'}${arcTime === null ? '' : `, ${arcTime} under the arc`}${to === null ? '' : `, the last on ${to}`}.`
}
