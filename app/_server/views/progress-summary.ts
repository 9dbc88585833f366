import 'server-only'
import { dateText } from '@/lib/reports/dates'
import type { CouponMark } from '@/lib/reports/marks-over-time'
import type { Paper } from '@/lib/reports/paper'
import { LEAST_EXERCISES, MOST_EXERCISES, summaryRoom, type SummaryRoom } from '@/lib/reports/progress-summary'
import type { ReadinessTrackInput } from '@/lib/reports/readiness-track'
import { SCORING_VERSION } from '@/lib/scoring/version'
import type { Viewer } from '../auth/viewer'
import { listStudentClasses } from '../data/classes'
import { criteriaSet } from '../data/criteria'
import { modelInUse } from '../data/model-in-use'
import { listCouponVerdicts } from '../data/pass-counts'
import { footOf } from './print-foot'
import { drawnOf, stripsOf, type SummaryDefects, type SummaryStrips } from './progress-story'
import { answerOf, arcTimeOf, datesOf, notesOf, rowOf, testsOf, type SummaryRow } from './progress-words'
import { readinessView } from './readiness-view'
import { storyOf } from './story'
import { studentRecord } from './student-record'

/** The exercise drawn. `track` is null before its first judged coupon. */
export type SummaryExercise = SummaryStrips & {
  readonly title: string
  readonly track: ReadinessTrackInput | null
  readonly level: number
  readonly marks: readonly CouponMark[]
  readonly defects: SummaryDefects
}

export type ProgressSummary = {
  readonly name: string
  /** Classes with their terms, and the program. */
  readonly classes: string
  readonly dates: string | null
  readonly coupons: number
  readonly arcTime: string
  readonly answer: readonly string[]
  readonly rows: readonly SummaryRow[]
  /** Small print under the table, tests taken last. */
  readonly notes: readonly string[]
  /** null before the first coupon. */
  readonly exercise: SummaryExercise | null
  readonly room: SummaryRoom
  readonly foot: readonly string[]
}

export type SummaryAsked = {
  readonly paper: Paper
  /** The exercise to draw; the one practised last when it is not among the student's. */
  readonly exerciseId?: string | undefined
}

/** More coupons of one exercise than any student makes: the same bound the readiness model reads. */
const MOST_COUPONS = 200
/** Letters that fill a line of the sheet: a title in the table, the answer, small print, the classes in the head. */
const LETTERS = { title: 48, answer: 96, small: 124, head: 72 } as const
const linesOf = (texts: readonly string[], letters: number): number => texts.reduce((sum, text) => sum + Math.ceil(text.length / letters), 0)

/** One student's progress for one sheet of paper, from the same views as the screens; null when they are not the viewer's to see. */
export async function progressSummary(viewer: Viewer, studentId: string, asked: SummaryAsked, asOf: Date): Promise<ProgressSummary | null> {
  const record = await studentRecord(viewer, studentId)
  if (!record) return null
  const { locale } = viewer
  const { skills, program } = record
  const current = skills.find(({ exercise }) => exercise.id === asked.exerciseId) ?? skills[0]
  const key = current && { studentId, exerciseId: current.exercise.id }
  const [enrolled, coupons, readiness, story] = await Promise.all([
    listStudentClasses(viewer, studentId), listCouponVerdicts(viewer, studentId), key ? readinessView(viewer, key, asOf) : null, key ? storyOf(viewer, key, MOST_COUPONS) : null,
  ])
  const criteria = await Promise.all(skills.map(({ exercise }) => criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version)))
  const drawn = current && story && await drawnOf(viewer, current.exercise, story)
  const classes = [enrolled.map((each) => `${each.name}, ${each.term.name}`).join('; '), program.name].filter(Boolean).join(' · ')
  const today = dateText(asOf, locale, program.timeZone)
  const scored = new Set(story?.coupons.flatMap(({ counts }) => counts?.scorecard.scoringVersion ?? []))
  const judged = {
    scoring: [...(scored.size > 0 ? scored : [SCORING_VERSION])].join(', '),
    model: skills.some(({ skill }) => skill.probability !== null) ? (await modelInUse(viewer.programId)).version : null,
  }

  /** The words with so many exercises listed, and what they leave for the drawings. */
  const laidOut = (listed: number) => {
    const rows = skills.slice(0, listed).map((each) => rowOf(each, coupons.filter(({ exerciseId }) => exerciseId === each.exercise.id), record, locale))
    const answer = answerOf(record, current && readiness ? [`${current.exercise.title}: ${readiness.answer}`, readiness.holdsBack] : [], locale)
    const notes = [...notesOf(record, coupons, listed, today, locale), testsOf(record, locale)]
    const foot = footOf({ criteria: criteria.slice(0, listed), judged, printedOn: today }, locale)
    const own = drawn?.seen.some(({ counts }) => counts.kind === 'self') ?? false
    const decided = drawn?.seen.some(({ counts }) => counts.override !== null) ?? false
    const room = summaryRoom({
      paper: asked.paper, exercises: rows.length, longTitles: rows.filter(({ title }) => title.length > LETTERS.title).length,
      answerLines: linesOf([answer.join(' ')], LETTERS.answer), noteLines: linesOf(notes, LETTERS.small) + linesOf([classes], LETTERS.head) - 1 + (own && decided ? 2 : 0),
      footLines: linesOf([foot.join(' ')], LETTERS.small), defects: drawn?.defects?.rows.length ?? 0, coupons: drawn?.seen.length ?? 0,
      ownLooks: own || decided,
    })
    return { rows, answer, notes, foot, room }
  }
  let listed = Math.min(MOST_EXERCISES, skills.length)
  while (listed > LEAST_EXERCISES && !laidOut(listed).room.fits) listed -= 1
  const words = laidOut(listed)

  return {
    ...words,
    name: record.name,
    classes,
    dates: datesOf(coupons, record, locale),
    coupons: record.coupons,
    arcTime: arcTimeOf(record, locale),
    exercise: current && story && drawn ? {
      title: current.exercise.title,
      marks: story.marks,
      track: readiness && readiness.track.points.length > 0 ? readiness.track : null,
      level: readiness?.level ?? 0.95,
      defects: drawn.defects && { each: drawn.defects.each, rows: drawn.defects.rows.slice(0, words.room.defects) },
      ...stripsOf(drawn.seen, words.room, locale),
    } : null,
  }
}
