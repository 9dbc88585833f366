import 'server-only'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { scorecardWords } from '@/lib/language/scorecard'
import { shortTitle } from '@/lib/procedure/exercise'
import { momentText } from '@/lib/reports/dates'
import { wireUsed } from '@/lib/reports/wire-used'
import type { StudentAsked } from '@/lib/schemas/student-asked'
import type { Viewer } from '../auth/viewer'
import { listRemarks } from '../data/comments'
import { listPassUse } from '../data/pass-use'
import { listStaffNotes } from '../data/staff-notes'
import { eyeOf, type EyeView } from './eye-view'
import { totalsOf, type Total } from './progress-map'
import { readinessView, type ReadinessView } from './readiness-view'
import { storyOf, type Story } from './story'
import { studentNow, type StudentNow } from './student-now'
import { studentPlaces, type StudentPlace } from './student-places'
import { studentRecord, type StudentRecord, type StudentSkill } from './student-record'

/** One exercise of the student, drawn. */
export type ShownExercise = {
  readonly skill: StudentSkill
  readonly readiness: ReadinessView | null
  /** Why the limits are as wide as they are, each in a sentence. */
  readonly whyWide: readonly string[]
  readonly rows: Story['rows']
}

/** `verdict`: that of the coupon; null before a look. */
export type Remark = { readonly id: string; readonly body: string; readonly by: string; readonly couponId: string; readonly about: string; readonly verdict: { readonly kind: 'accept' | 'reject' | 'incomplete'; readonly word: string } | null }

export type OneStudent = {
  readonly record: StudentRecord
  /** Where a test makes sense, in a sentence. */
  readonly answer: string
  readonly now: readonly StudentNow[]
  readonly shown: ShownExercise | null
  readonly remarks: { readonly rows: readonly Remark[]; readonly next: string | null }
  readonly eye: EyeView
  readonly totals: readonly Total[]
  /** Coupons that were made in classes the viewer does not see. */
  readonly elsewhere: number
  readonly places: readonly StudentPlace[]
  readonly notes: readonly { readonly id: string; readonly body: string; readonly by: string }[]
}

const STRIPS = 12
const REMARKS = 6

/** Everything staff know of one student, what to do next first, with the exercise asked for or else the one practised last; null when the student is not the viewer's to see. */
export async function oneStudent(viewer: Viewer, studentId: string, asked: StudentAsked, asOf: Date): Promise<OneStudent | null> {
  const record = await studentRecord(viewer, studentId)
  if (!record) return null
  const { timeZone } = record.program
  const skill = record.skills.find(({ exercise }) => exercise.id === asked.exerciseId) ?? record.skills[0]
  const [now, shown, remarks, eye, use, places, notes] = await Promise.all([
    studentNow(viewer, studentId, asOf), skill ? shownExercise(viewer, studentId, skill, asOf) : null, remarksOf(viewer, studentId, asked.remarksAfter, timeZone),
    eyeOf(viewer, studentId), listPassUse(viewer, studentId), studentPlaces(viewer, studentId), listStaffNotes(viewer, studentId),
  ])
  return {
    record, now, shown, remarks, eye, places, answer: answerOf(record.skills),
    totals: totalsOf(record.skills.map((each) => each.skill), wireUsed(use), viewer.locale, viewer.units),
    elsewhere: Math.max(0, record.coupons - use.length),
    notes: notes.map(({ id, body, author, writtenAt }) => ({ id, body, by: `${author}, ${momentText(writtenAt, 'en', timeZone)}` })),
  }
}

function answerOf(skills: readonly StudentSkill[]): string {
  const ready = skills.filter(({ skill }) => skill.advice === 'test').map(({ exercise }) => shortTitle(exercise))
  return ready.length === 0 ? 'No exercise is at the point where a test is suggested.' : `A test makes sense in ${ready.join(', ')}.`
}

async function shownExercise(viewer: Viewer, studentId: string, skill: StudentSkill, asOf: Date): Promise<ShownExercise> {
  const key = { studentId, exerciseId: skill.exercise.id }
  const [readiness, story] = await Promise.all([readinessView(viewer, key, asOf), storyOf(viewer, key, STRIPS)])
  return { skill, readiness, rows: story.rows, whyWide: (readiness?.whyWide ?? []).map((why) => say(learn, 'en', 'whyWide', { why })) }
}

async function remarksOf(viewer: Viewer, studentId: string, after: string | null, timeZone: string): Promise<OneStudent['remarks']> {
  const found = await listRemarks(viewer, studentId, { most: REMARKS + 1, after })
  const rows = found.slice(0, REMARKS)
  return {
    rows: rows.map(({ id, body, at, author, coupon: { verdict, ...coupon } }) => ({
      id, body, by: `${author}, ${momentText(at, 'en', timeZone)}`, couponId: coupon.id, about: `${coupon.exerciseTitle}, no.\u00a0${coupon.number}`,
      verdict: verdict && { kind: verdict, word: say(scorecardWords, 'en', verdict) },
    })),
    next: found.length > REMARKS ? (rows.at(-1)?.id ?? null) : null,
  }
}
