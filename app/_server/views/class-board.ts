import 'server-only'
import { boardAddress, boothShown, orderOf, sortBoard, type BoardOptions } from '@/lib/reports/board-options'
import { momentText } from '@/lib/reports/dates'
import { fullName } from '@/lib/reports/full-name'
import { queueOrder } from '@/lib/reports/queue-order'
import { standing, type Standing } from '@/lib/reports/standing'
import { writeCode } from '@/lib/schemas/person'
import { shortTitle } from '@/lib/procedure/exercise'
import { formatForReader } from '@/lib/units/display'
import type { Viewer } from '../auth/viewer'
import { findTaughtClass, listArchivedWaiting, listClasses, listClassStudents, type ClassRecord, type EnrolledStudent } from '../data/classes'
import { listWaiting } from '../data/waiting-coupons'
import { listClassExercises, type ClassExerciseRecord } from '../data/exercises'
import { findClassCode } from '../data/people'
import { findProgram, type ProgramRecord } from '../data/program'
import { listQueue, printOfQueue, type QueueEntry } from '../data/queue'
import { listClassSkills, type SkillRecord } from '../data/skills'
import { classToday, type NeedsRow } from './class-today'

/** `notes` are the wire or rod, and its size. */
export type BoardColumn = { readonly id: string; readonly title: string; readonly notes: readonly string[] }
export type BoardCell = { readonly standing: Standing; readonly waiting: number }
/** On a projector `name` is a booth, and nothing leads to the student. */
export type BoardRow = { readonly key: string; readonly booth: number | null; readonly name: string; readonly href: string | null; readonly lastCoupon: string | null; readonly cells: readonly BoardCell[] }

type Line = { readonly key: string; readonly booth: number | null; readonly who: string; readonly what: string; readonly since: string }
/** One line of the queue. `taken`: who has the coupon open, and since when. */
export type QueueRow =
  | ({ readonly kind: 'coupon'; readonly href: string | null; readonly taken: string | null } & Line)
  | ({ readonly kind: 'look'; readonly lookId: string; readonly note: string | null } & Line)

/** How many coupons of an exercise wait, and where they are graded one after the other by keyboard. */
export type GridLink = { readonly exerciseId: string; readonly title: string; readonly count: number; readonly href: string }

export type ClassBoard = {
  readonly classRecord: ClassRecord
  readonly options: BoardOptions
  readonly address: string
  readonly needs: readonly NeedsRow[]
  readonly queue: readonly QueueRow[]
  /** A print of what waits, to be compared with later ones. */
  readonly state: string
  readonly asOf: string
  readonly counts: { readonly coupons: number; readonly looks: number }
  /** The coupon to take next: the first in the queue that nobody else has open. */
  readonly first: { readonly href: string; readonly booth: number | null } | null
  readonly grids: readonly GridLink[]
  readonly columns: readonly BoardColumn[]
  readonly rows: readonly BoardRow[]
  /** Active students, shown or not. */
  readonly students: number
  readonly choices: { readonly processes: readonly string[]; readonly exercises: readonly { readonly id: string; readonly title: string }[]; readonly booths: readonly number[] }
  readonly code: { readonly code: string; readonly until: string } | null
}

/** The class as its instructor sees it: who needs them, what waits, and who stands where. null when the viewer does not teach it. */
export async function classBoard(viewer: Viewer, classId: string, options: BoardOptions, asOf: Date): Promise<ClassBoard | null> {
  const classRecord = await findTaughtClass(viewer, classId)
  if (!classRecord) return null
  // Read before the rest, so that what the page shows is never older than what it says it has seen.
  const queue = await listQueue(viewer, classId)
  const [students, exercises, skills, code, program] = await Promise.all([
    listClassStudents(viewer, classId), listClassExercises(viewer, classId), listClassSkills(viewer, classId, asOf), findClassCode(viewer, classId), findProgram(viewer),
  ])
  const { timeZone } = program
  const address = `/teach/classes/${classId}`
  const needs = options.projector ? [] : await classToday(viewer, { classRecord, students, exercises, skills, queue, timeZone }, asOf)
  const shown = exercises.filter(({ exercise }) => (options.exercise === null || exercise.id === options.exercise) && (options.process === null || exercise.process === options.process))
  const ordered = queueOrder(queue, orderOf(options))
  const rows = ordered.map((entry) => queueRow(entry, options.projector, timeZone))
  const next = ordered.find((entry) => entry.kind === 'coupon' && (entry.takenBy === null || entry.takenBy.self))
  return {
    classRecord, options, address: boardAddress(address, options), needs, queue: rows, state: printOfQueue(queue), asOf: momentText(asOf, viewer.locale, timeZone),
    counts: { coupons: queue.filter(({ kind }) => kind === 'coupon').length, looks: queue.filter(({ kind }) => kind === 'look').length },
    first: next && !options.projector ? { href: `/teach/coupons/${next.id}`, booth: next.booth } : null,
    grids: exercises.map(({ exercise }) => ({
      exerciseId: exercise.id, title: shortTitle(exercise), href: `${address}/grid/${exercise.id}`,
      count: queue.filter((entry) => entry.kind === 'coupon' && entry.exerciseId === exercise.id).length,
    })).filter(({ count }) => count > 0),
    columns: shown.map(({ exercise }) => ({
      id: exercise.id, title: shortTitle(exercise),
      notes: [exercise.electrodeClass, ...(exercise.electrodeDiameterMm === null ? [] : [formatForReader(exercise.electrodeDiameterMm, viewer.units)])],
    })),
    rows: boardRows(students, shown, exercises, skills, program, viewer, options),
    students: students.length,
    choices: {
      processes: [...new Set(exercises.map(({ exercise }) => exercise.process))],
      exercises: exercises.map(({ exercise }) => ({ id: exercise.id, title: shortTitle(exercise) })),
      booths: [...new Set(students.flatMap(({ booth }) => booth ?? []))].sort((a, b) => a - b),
    },
    code: code && { code: writeCode(code.code), until: momentText(code.expiresAt, viewer.locale, timeZone) },
  }
}

const boothName = (booth: number | null): string => (booth === null ? 'No booth' : `Booth ${booth}`)

function queueRow(entry: QueueEntry, projector: boolean, timeZone: string): QueueRow {
  const line = { key: `${entry.kind} ${entry.id}`, booth: entry.booth, who: projector ? boothName(entry.booth) : entry.student.name, since: momentText(entry.since, 'en', timeZone) }
  if (entry.kind === 'look') return { kind: 'look', ...line, lookId: entry.id, what: entry.exercise?.title ?? '', note: projector ? null : entry.note }
  const { takenBy } = entry
  const taken = takenBy && `${takenBy.self ? 'You have it open' : `${takenBy.name} has it open`}, since ${momentText(takenBy.since, 'en', timeZone)}.`
  return { kind: 'coupon', ...line, what: `${entry.exerciseTitle}, no.\u00a0${entry.number}`, href: projector ? null : `/teach/coupons/${entry.id}`, taken }
}

function boardRows(
  students: readonly EnrolledStudent[], shown: readonly ClassExerciseRecord[], all: readonly ClassExerciseRecord[], skills: readonly SkillRecord[],
  program: ProgramRecord, viewer: Viewer, options: BoardOptions,
): BoardRow[] {
  const bySkill = new Map(skills.map((skill) => [`${skill.studentId} ${skill.exerciseId}`, skill]))
  const skillsOf = (student: EnrolledStudent, of: readonly ClassExerciseRecord[]) => of.map(({ exercise }) => bySkill.get(`${student.id} ${exercise.id}`))
  const sortable = students.filter(({ booth }) => boothShown(booth, options)).map((student) => ({
    student, booth: student.booth, familyName: student.familyName, givenName: student.givenName,
    lastCoupon: skillsOf(student, all).reduce<Date | null>((latest, skill) => (skill?.lastCouponAt && (!latest || skill.lastCouponAt > latest) ? skill.lastCouponAt : latest), null),
    chance: options.exercise === null ? null : (bySkill.get(`${student.id} ${options.exercise}`)?.probability ?? null),
  }))
  return sortBoard(sortable, options.sort).map(({ student, lastCoupon }) => ({
    key: student.id, booth: student.booth,
    name: options.projector ? boothName(student.booth) : fullName(student),
    href: options.projector ? null : `/teach/students/${student.id}`,
    lastCoupon: lastCoupon && momentText(lastCoupon, viewer.locale, program.timeZone),
    cells: skillsOf(student, shown).map((skill) => ({ standing: standing(skill, program.minimumCoupons, viewer.locale), waiting: skill?.waitingCount ?? 0 })),
  }))
}

export type TaughtClass = { readonly record: ClassRecord; readonly students: number; readonly waiting: number }

/** The classes an instructor teaches, with what waits in each; last the archived ones in which something still does. */
export async function taughtClasses(viewer: Viewer): Promise<TaughtClass[]> {
  const [classes, archived] = await Promise.all([listClasses(viewer), listArchivedWaiting(viewer)])
  const taught = [...classes.filter((each) => each.instructors.some(({ id }) => id === viewer.personId)), ...archived]
  return Promise.all(taught.map(async (record) => ({
    record, students: (await listClassStudents(viewer, record.id)).length, waiting: (await listWaiting(viewer, record.id)).length,
  })))
}
