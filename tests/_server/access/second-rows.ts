import * as blind from '@/app/_server/data/blind-coupons'
import * as secondReadings from '@/app/_server/data/second-readings'
import * as secondShare from '@/app/_server/data/second-share'
import * as waiting from '@/app/_server/data/waiting-coupons'
import * as agreement from '@/app/program/agreement/actions'
import { db } from '@/app/_server/db'
import { readingsSchema } from '@/lib/schemas/readings'
import { cleanReadings, LENGTH_MM } from '../../support/school'
import type { ActionRow } from './action-rows'
import type { DataRow, Fixture, Person } from './fixture'

const COORDINATORS = ['coordinator', 'foreign coordinator'] as const satisfies readonly Person[]

/** Runs while the coupon waits for a second reader; its class has one instructor. */
async function offered<T>({ couponId }: Fixture, run: () => Promise<T>): Promise<T> {
  await db().coupon.updateMany({ where: { id: couponId }, data: { waitingSince: null, secondWaitingSince: new Date() } })
  try {
    return await run()
  } finally {
    await db().coupon.updateMany({ where: { id: couponId }, data: { waitingSince: new Date(), secondWaitingSince: null } })
  }
}

/** A second reading by someone who does not teach the class. */
async function readFromElsewhere({ school: { programId, people }, couponId }: Fixture): Promise<void> {
  if ((await db().inspection.count({ where: { couponId, kind: 'second' } })) > 0) return
  const readings = readingsSchema({ locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: 0.79 }).parse(cleanReadings())
  await db().inspection.create({ data: { programId, couponId, inspectorId: people.otherInstructor, kind: 'second', readings: readings as unknown as object } })
}

export const SECOND_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'blind-coupons.findBlindCoupon': { seenBy: ['instructor'], call: (viewer, { couponId }) => blind.findBlindCoupon(viewer, couponId) },
  'blind-coupons.listBlindWaiting': { seenBy: ['instructor'], call: (viewer, { school }) => blind.listBlindWaiting(viewer, school) },
  'waiting-coupons.listWaiting': { seenBy: ['instructor'], call: (viewer, { school }) => waiting.listWaiting(viewer, school.classId) },
  'waiting-coupons.takeCoupon': {
    seenBy: ['instructor'],
    call: async (viewer, { couponId }) => {
      await db().coupon.updateMany({ where: { id: couponId }, data: { takenById: null, takenAt: null } })
      await waiting.takeCoupon(viewer, couponId)
      return (await db().coupon.count({ where: { id: couponId, takenById: { not: null } } })) > 0 || null
    },
  },
  'waiting-coupons.releaseCoupon': {
    seenBy: ['instructor'],
    call: async (viewer, { school, couponId }) => {
      await db().coupon.updateMany({ where: { id: couponId }, data: { takenById: school.people.instructor, takenAt: new Date() } })
      await waiting.releaseCoupon(viewer, couponId)
      return (await db().coupon.count({ where: { id: couponId, takenById: null } })) > 0 || null
    },
  },
  'second-readings.listElsewhere': { seenBy: ['otherInstructor'], call: (viewer, fixture) => offered(fixture, () => secondReadings.listElsewhere(viewer)) },
  'second-readings.findElsewhere': { seenBy: ['otherInstructor'], call: (viewer, fixture) => offered(fixture, () => secondReadings.findElsewhere(viewer, fixture.couponId)) },
  'second-readings.findOwnReading': {
    seenBy: ['otherInstructor'],
    call: async (viewer, fixture) => {
      await readFromElsewhere(fixture)
      return secondReadings.findOwnReading(viewer, fixture.couponId)
    },
  },
  'second-share.findSecondShare': { seenBy: COORDINATORS, call: (viewer) => secondShare.findSecondShare(viewer) },
  'second-share.setSecondShare': { seenBy: COORDINATORS, call: (viewer) => secondShare.setSecondShare(viewer, { share: 0 }).then(() => true) },
}

export const SECOND_INTERNAL: Readonly<Record<string, string>> = {
  'coupon-record.toCoupon': 'pure: a row as a record',
  'scope.inspectionScope': 'the scopes themselves',
  'scope.secondLookScope': 'the scopes themselves',
  'scope.waitingCouponScope': 'the scopes themselves',
  'second-offers.elsewhereScope': 'a scope that has to ask which classes have one instructor',
  'second-offers.wantsSecondReader': 'part of submitInspection, after its check',
  'staff-notes.keepStaffNote': 'part of writeStaffNote and submitInspection, after their check',
  'waiting-coupons.takenOf': 'pure: who has a coupon open',
}

export const SECOND_ACTION_ROWS: Readonly<Record<string, ActionRow>> = {
  'program/agreement.saveSecondShare': { allowed: COORDINATORS, call: () => agreement.saveSecondShare({ percent: '0' }) },
}
