import { randomUUID } from 'node:crypto'
import * as studies from '@/app/_server/data/gauge-studies'
import * as studyReadings from '@/app/_server/data/study-readings'
import * as actions from '@/app/teach/studies/actions'
import { db } from '@/app/_server/db'
import { nextTurn, type Turn } from '@/lib/reports/gauge-study-order'
import { logAs } from '../../support/school'
import type { ActionRow } from './action-rows'
import { STAFF_OF_CLASS, type DataRow, type Fixture } from './fixture'

const PLACE = 'Week 14: 2 in from the start'

/** The fixture's coupon and another of the same class. */
async function twoCoupons({ school, viewers, couponId }: Fixture): Promise<string[]> {
  const other = randomUUID()
  await logAs(school, viewers.student, other)
  return [couponId, other]
}

/** A study of the class that nobody has read in yet. */
async function openedStudy(fixture: Fixture): Promise<{ studyId: string; couponIds: string[] }> {
  const { programId, classId, people } = fixture.school
  const couponIds = await twoCoupons(fixture)
  const { id } = await db().gaugeStudy.create({ data: { programId, classId, name: PLACE, rounds: 2, openedById: people.instructor } })
  await db().gaugeStudyCoupon.createMany({ data: couponIds.map((couponId, index) => ({ programId, studyId: id, couponId, sequence: index + 1 })) })
  return { studyId: id, couponIds }
}

/** The first turn of the class's instructor in a new study. */
async function firstTurn(fixture: Fixture): Promise<Turn & { studyId: string }> {
  const { studyId, couponIds } = await openedStudy(fixture)
  const turn = nextTurn({ id: studyId, rounds: 2, couponIds }, fixture.school.people.instructor, [])
  if (!turn) throw new Error('The study has nothing to read.')
  return { studyId, ...turn }
}

export const STUDY_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'gauge-studies.findStudy': { seenBy: STAFF_OF_CLASS, call: async (viewer, fixture) => studies.findStudy(viewer, (await openedStudy(fixture)).studyId) },
  'gauge-studies.listTaughtStudies': { seenBy: ['instructor'], call: async (viewer, fixture) => openedStudy(fixture).then(() => studies.listTaughtStudies(viewer)) },
  'gauge-studies.listProgramStudies': { seenBy: ['coordinator'], call: async (viewer, fixture) => openedStudy(fixture).then(() => studies.listProgramStudies(viewer)) },
  'gauge-studies.listCouponChoices': { seenBy: ['instructor'], call: (viewer, { school }) => studies.listCouponChoices(viewer, school.classId) },
  'gauge-studies.openStudy': {
    seenBy: ['instructor'],
    call: async (viewer, fixture) => studies.openStudy(viewer, { id: randomUUID(), classId: fixture.school.classId, name: PLACE, rounds: 2, couponIds: await twoCoupons(fixture) }),
  },
  'gauge-studies.closeStudy': {
    seenBy: STAFF_OF_CLASS, call: async (viewer, fixture) => studies.closeStudy(viewer, { studyId: (await openedStudy(fixture)).studyId, as: 'given-up' }).then(() => true),
  },
  'study-readings.addReading': { seenBy: ['instructor'], call: async (viewer, fixture) => studyReadings.addReading(viewer, { ...(await firstTurn(fixture)), width: 6.35 }) },
}

export const STUDY_INTERNAL: Readonly<Record<string, string>> = {
  'gauge-studies.holdStudy': 'takes the transaction of closeStudy and addReading; shows nothing',
}

export const STUDY_ACTION_ROWS: Readonly<Record<string, ActionRow>> = {
  'teach/studies.beginStudy': {
    allowed: ['instructor'],
    call: async (fixture) => actions.beginStudy({ id: randomUUID(), classId: fixture.school.classId, name: 'Week 14', place: '2 in from the start', rounds: '2', couponIds: await twoCoupons(fixture) }),
  },
  'teach/studies.sendReading': { allowed: ['instructor'], call: async (fixture) => actions.sendReading({ ...(await firstTurn(fixture)), width: '1/4' }) },
  'teach/studies.endStudy': { allowed: STAFF_OF_CLASS, call: async (fixture) => actions.endStudy({ studyId: (await openedStudy(fixture)).studyId, as: 'given-up' }) },
}
