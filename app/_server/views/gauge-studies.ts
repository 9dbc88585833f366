import 'server-only'
import { dateText } from '@/lib/reports/dates'
import { nextTurn, type Turn } from '@/lib/reports/gauge-study-order'
import { closingOf, readingsEach, stillMissing, type Closing } from '@/lib/reports/gauge-study-progress'
import type { SizePadFrame } from '@/lib/reports/size-frame'
import type { Viewer } from '../auth/viewer'
import { findTaughtClass, listClasses, type ClassRecord } from '../data/classes'
import { findStudy, listCouponChoices, listProgramStudies, listTaughtStudies, type StudyLine, type StudyRecord } from '../data/gauge-studies'
import { findProgram } from '../data/program'
import { studyResult, type StudyResult } from './gauge-study-result'
import { widthPad } from './width-pad'

/** One line of a list: what it is, and how far it is. */
export type StudyRow = { readonly key: string; readonly href: string; readonly name: string; readonly where: string; readonly facts: string; readonly state: string }
export type StudyLists = { readonly waiting: readonly StudyRow[]; readonly open: readonly StudyRow[]; readonly closed: readonly StudyRow[] }

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

/** The studies of an instructor's classes: those that wait for the viewer's readings, the other open ones, and the closed ones. */
export async function taughtStudyLists(viewer: Viewer): Promise<StudyLists> {
  return listsOf(viewer, await listTaughtStudies(viewer), '/teach/studies')
}

/** Every study of the program; nothing waits for a coordinator's own readings. */
export async function programStudyLists(viewer: Viewer): Promise<StudyLists> {
  return listsOf(viewer, (await listProgramStudies(viewer)).map((line) => ({ ...line, own: { reads: false, done: 0 } })), '/program/studies')
}

async function listsOf(viewer: Viewer, lines: readonly StudyLine[], room: string): Promise<StudyLists> {
  const { timeZone } = await findProgram(viewer)
  const row = (line: StudyLine): StudyRow => ({
    key: line.id, href: `${room}/${line.id}`, name: line.name, where: `${line.className}, ${line.term}`,
    facts: `${counted(line.coupons, 'coupon', 'coupons')}, ${counted(line.rounds, 'round', 'rounds')}`, state: stateOf(line, timeZone),
  })
  const open = lines.filter(({ closedAt }) => closedAt === null)
  return {
    waiting: open.filter(isForViewer).map(row), open: open.filter((line) => !isForViewer(line)).map(row),
    closed: lines.filter(({ closedAt }) => closedAt !== null).map(row),
  }
}

const isForViewer = ({ own, rounds, coupons, archived }: StudyLine): boolean => own.reads && !archived && own.done < rounds * coupons

function stateOf(line: StudyLine, timeZone: string): string {
  const { own, rounds, coupons, closedAt, finished, readers, archived } = line
  const all = rounds * coupons
  if (closedAt !== null) return `Closed ${dateText(closedAt, 'en', timeZone)}.`
  if (archived) return 'The class is archived: nothing more is read.'
  if (isForViewer(line)) return own.done === 0 ? `${all} readings, none yet.` : `${own.done} of your ${all} readings are in.`
  return `${finished} of ${counted(readers, 'reader has', 'readers have')} read everything.`
}

/** The coupons of one exercise that a study may be made of. */
export type CouponGroup = { readonly exerciseId: string; readonly title: string; readonly coupons: readonly { readonly id: string; readonly label: string }[] }
export type NewStudyView = { readonly classRecord: ClassRecord; readonly groups: readonly CouponGroup[] }

/** Classes in which the viewer may open a study. */
export async function classesToStudy(viewer: Viewer): Promise<ClassRecord[]> {
  return (await listClasses(viewer)).filter(({ instructors }) => instructors.some(({ id }) => id === viewer.personId))
}

/** The latest coupons of an exercise that a form offers. */
const MOST_OF_ONE = 40

/** What the form of a new study offers, exercise by exercise; null for a class the viewer does not teach. */
export async function newStudyView(viewer: Viewer, classId: string): Promise<NewStudyView | null> {
  const classRecord = await findTaughtClass(viewer, classId)
  if (!classRecord) return null
  const [choices, { timeZone }] = await Promise.all([listCouponChoices(viewer, classId), findProgram(viewer)])
  const groups = new Map<string, { exerciseId: string; title: string; coupons: { id: string; label: string }[] }>()
  for (const { id, exerciseId, exerciseTitle, student, number, receivedAt } of choices) {
    const group = groups.get(exerciseId) ?? { exerciseId, title: exerciseTitle, coupons: [] }
    if (group.coupons.length < MOST_OF_ONE) group.coupons.push({ id, label: `${student}, no.\u00a0${number}, ${dateText(receivedAt, 'en', timeZone)}` })
    groups.set(exerciseId, group)
  }
  return { classRecord, groups: [...groups.values()] }
}

/** A coupon on the bench: whose it is, its exercise where they differ, and its tap pad; null where the size is typed. */
export type BenchCoupon = { readonly id: string; readonly number: number; readonly tag: string; readonly pad: SizePadFrame | null }

export type StudyHead = { readonly id: string; readonly name: string; readonly className: string; readonly facts: string; readonly bench: readonly BenchCoupon[] }
/** A study in which there is nothing for the viewer to read. */
export type StandingScreen = StudyHead & (
  | { readonly stage: 'waiting'; readonly missing: readonly string[]; readonly closing: Closing }
  | { readonly stage: 'closed'; readonly result: StudyResult }
)
export type ReadingScreen = StudyHead & { readonly stage: 'reading'; readonly turn: Turn; readonly done: number; readonly all: number; readonly rounds: number; readonly closing: Closing }

const planOf = ({ id, rounds, coupons }: StudyRecord) => ({ id, rounds, couponIds: coupons.map((coupon) => coupon.id) })

/** A study as one of its readers finds it: the coupon to read next, who is still missing, or the result. null for anyone who does not read in it. */
export async function studyToRead(viewer: Viewer, studyId: string): Promise<ReadingScreen | StandingScreen | null> {
  const study = await findStudy(viewer, studyId)
  const own = study?.readers.find(({ id, reads }) => reads && id === viewer.personId)
  if (!study || !own) return null
  const turn = study.closedAt === null && !study.archived ? nextTurn(planOf(study), own.id, own.done) : null
  if (!turn) return standing(viewer, study, own.done.length)
  const plan = planOf(study)
  return { ...(await headOf(viewer, study)), stage: 'reading', turn, done: own.done.length, all: readingsEach(plan), rounds: study.rounds, closing: closingOf(plan, study.readers) }
}

/** The same for a coordinator, who reads nothing in it. */
export async function studyToFollow(viewer: Viewer, studyId: string): Promise<StandingScreen | null> {
  const study = await findStudy(viewer, studyId)
  return study && standing(viewer, study)
}

/** `own`: how many readings of the viewer's are in, where they are a reader. */
async function standing(viewer: Viewer, study: StudyRecord, own: number | null = null): Promise<StandingScreen> {
  const [head, plan] = [await headOf(viewer, study), planOf(study)]
  if (study.closedAt !== null) return { ...head, stage: 'closed', result: await studyResult(viewer, study) }
  const missing = study.archived ? ['The class is archived: nothing more is read. Close the study.'] : stillMissing(plan, study.readers)
  return { ...head, stage: 'waiting', missing: own === null ? missing : [`Your readings are in: ${own} of ${readingsEach(plan)}.`, ...missing], closing: closingOf(plan, study.readers) }
}

async function headOf(viewer: Viewer, study: StudyRecord): Promise<StudyHead> {
  const { timeZone } = await findProgram(viewer)
  const { coupons, rounds, closedAt } = study
  const titles = new Set(coupons.map(({ exercise }) => exercise.title))
  return {
    id: study.id, name: study.name, className: study.className,
    facts: [
      ...(titles.size === 1 ? titles : []), counted(coupons.length, 'coupon', 'coupons'), counted(rounds, 'round', 'rounds'), `opened by ${study.openedBy}, ${dateText(study.createdAt, 'en', timeZone)}`,
      ...(closedAt === null ? [] : [`closed ${dateText(closedAt, 'en', timeZone)}`]),
    ].join(' · '),
    bench: await Promise.all(coupons.map(async ({ id, sequence, student, number, exercise }) => ({
      id, number: sequence, tag: [student, ...(titles.size === 1 ? [] : [exercise.title]), `no.\u00a0${number}`].join(', '), pad: await widthPad(viewer, exercise),
    }))),
  }
}
