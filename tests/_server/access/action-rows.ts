import { randomUUID } from 'node:crypto'
import * as account from '@/app/account/actions'
import * as learn from '@/app/learn/actions'
import * as learnParts from '@/app/learn/_parts/actions'
import * as program from '@/app/program/actions'
import * as rosterActions from '@/app/program/people/actions'
import * as teach from '@/app/teach/actions'
import * as notes from '@/app/teach/classes/[classId]/notes/actions'
import * as tablet from '@/app/teach/classes/[classId]/tablet/actions'
import * as grading from '@/app/teach/coupons/actions'
import * as studentPage from '@/app/teach/students/[studentId]/actions'
import { db } from '@/app/_server/db'
import { makeClassCode } from '@/app/_server/data/people'
import { addSnippet } from '@/app/_server/data/snippets'
import { modelRow } from '../../support/readiness-model'
import { cleanReadings, couponForm } from '../../support/school'
import { COURSE_ACTION_ROWS } from './course-rows'
import { CRITERIA_ACTION_ROWS } from './criteria-rows'
import { PEOPLE_ACTION_ROWS } from './people-rows'
import { SECOND_ACTION_ROWS } from './second-rows'
import { STUDY_ACTION_ROWS } from './study-rows'
import { asAtFirst, gradedLook, ROSTER, twoTeachers } from './data-rows'
import { EVERYONE, SEES_COUPON, sharedTablet, standingNote, staffNote, waitingLook, type Fixture, type Person } from './fixture'

/** `allowed`: who gets ok; everyone else NOT_FOUND. `open`: why a stranger may call it. */
export type ActionRow =
  | { readonly open: string; readonly allowed?: never; readonly fresh?: never; readonly call?: never }
  | { readonly open?: never; readonly allowed: readonly Person[]; readonly fresh?: boolean; readonly call: (fixture: Fixture) => Promise<unknown> }

export const ACTION_ROWS: Readonly<Record<string, ActionRow>> = {
  ...COURSE_ACTION_ROWS,
  ...CRITERIA_ACTION_ROWS,
  ...PEOPLE_ACTION_ROWS,
  ...SECOND_ACTION_ROWS,
  ...STUDY_ACTION_ROWS,
  '(door)/tablet.tabletSignIn': { open: 'nobody is signed in on a shared tablet yet; its secret and the PIN are the right, and tries are counted' },
  '(door).join': { open: 'a newcomer has no account; the class code is the right, and tries are counted' },
  '(door).setUp': { open: 'the first visitor has no account; the code of the server’s log is the right, and tries are counted' },
  'account.savePreferences': { allowed: EVERYONE, call: () => account.savePreferences({ locale: 'en', units: 'us' }) },
  'account.changePassword': {
    // Nobody in the fixture has a password, so everyone is told at the field that the current one is wrong.
    allowed: EVERYONE,
    call: async () => {
      const result = await account.changePassword({ current: 'not it', password: 'four-words-in-a-row-7' })
      return !result.ok && result.code === 'INVALID' && result.fields['current'] ? { ok: true } : result
    },
  },
  'account.savePin': { allowed: ['student', 'classmate', 'otherStudent', 'foreign student'], call: () => account.savePin({ current: '', pin: '4826' }) },
  'account.leaveElsewhere': { allowed: EVERYONE, call: () => account.leaveElsewhere({}) },
  'account.joinOneMore': {
    allowed: ['student', 'classmate', 'otherStudent', 'foreign student'],
    fresh: true,
    call: async ({ school, viewers }) => {
      const { code } = await makeClassCode(viewers.instructor, { classId: school.classId })
      const result = await account.joinOneMore({ code })
      // In another program the code opens nothing, and is said to: the action itself is a student's.
      return !result.ok && result.code === 'INVALID' && result.fields['code'] ? { ok: true } : result
    },
  },
  'learn.sendCoupon': { allowed: ['student', 'classmate'], call: ({ school }) => learn.sendCoupon(couponForm(school, randomUUID())) },
  'learn.confirmCautions': {
    allowed: ['student', 'classmate'], call: ({ school }) => learn.confirmCautions({ classId: school.classId, exerciseId: school.exerciseId }),
  },
  'learn.sendComment': {
    allowed: SEES_COUPON.filter((who) => who !== 'coordinator'), call: ({ couponId }) => learn.sendComment({ couponId, body: 'Even toes.' }),
  },
  'learn/_parts.askInstructor': {
    allowed: ['student', 'classmate'], call: ({ school }) => learnParts.askInstructor({ classId: school.classId, exerciseId: school.exerciseId, note: '' }),
  },
  'learn/_parts.needNoLook': {
    allowed: ['student', 'classmate'],
    call: async ({ school }) => {
      await waitingLook(school)
      return learnParts.needNoLook({ classId: school.classId })
    },
  },
  'learn/_parts.stillHere': { allowed: ['student', 'classmate', 'otherStudent', 'foreign student'], call: () => learnParts.stillHere({}) },
  'program.saveReadinessRule': {
    allowed: ['coordinator', 'foreign coordinator'],
    call: () => program.saveReadinessRule({ readinessThreshold: '0.70', minimumCoupons: '5', staleAfterDays: '45' }),
  },
  'program.adoptReadinessModel': {
    allowed: ['coordinator'], // a version of this program means nothing in another one
    call: async ({ school }) => {
      const version = `refit ${randomUUID()}`
      await db().readinessModel.create({ data: modelRow(school.programId, version) })
      return program.adoptReadinessModel({ version })
    },
  },
  'teach.sendInspection': {
    allowed: ['instructor'], fresh: true,
    call: ({ couponId }) => teach.sendInspection({ couponId, revision: 1, comment: '', readings: cleanReadings() }),
  },
  'program/people.checkRoster': { allowed: ['coordinator'], call: ({ school }) => rosterActions.checkRoster({ classId: school.classId, text: ROSTER }) },
  'program/people.bringRoster': {
    allowed: ['coordinator'], call: ({ school }) => rosterActions.bringRoster({ classId: school.classId, text: ROSTER, shown: 'a'.repeat(64) }),
  },
  'program/people.withdraw': {
    allowed: ['coordinator'],
    call: async (fixture) => {
      const result = await rosterActions.withdraw({ classId: fixture.school.classId, studentId: fixture.school.people.student })
      await asAtFirst(fixture)
      return result
    },
  },
  'program/people.readmit': { allowed: ['coordinator'], call: ({ school }) => rosterActions.readmit({ classId: school.classId, studentId: school.people.student }) },
  'program/people.move': {
    allowed: ['coordinator'],
    call: async (fixture) => {
      const { classId, otherClassId, people } = fixture.school
      const result = await rosterActions.move({ classId, studentId: people.student, toClassId: otherClassId })
      await asAtFirst(fixture)
      return result
    },
  },
  'program/people.addTeacher': {
    allowed: ['coordinator'],
    call: async (fixture) => {
      const result = await rosterActions.addTeacher({ classId: fixture.school.classId, instructorId: fixture.school.people.otherInstructor })
      await asAtFirst(fixture)
      return result
    },
  },
  'program/people.removeTeacher': {
    allowed: ['coordinator'],
    call: async (fixture) => {
      await twoTeachers(fixture)
      const result = await rosterActions.removeTeacher({ classId: fixture.school.classId, instructorId: fixture.school.people.otherInstructor })
      await asAtFirst(fixture)
      return result
    },
  },
  'teach.beenThere': { allowed: ['instructor'], call: async ({ school }) => teach.beenThere({ lookId: await waitingLook(school) }) },
  'teach/classes/[classId]/notes.saveNote': {
    allowed: ['instructor'],
    call: ({ school }) => notes.saveNote({ classId: school.classId, kind: 'demo', onDate: '', exerciseId: school.exerciseId, body: 'Whip and pause.', replaces: '' }),
  },
  'teach/classes/[classId]/notes.takeDownNote': { allowed: ['instructor'], call: async ({ school }) => notes.takeDownNote({ noteId: await standingNote(school) }) },
  'teach/classes/[classId]/tablet.openTabletHere': { allowed: ['instructor'], call: ({ school }) => tablet.openTabletHere({ classId: school.classId, name: 'Bench tablet' }) },
  'teach/classes/[classId]/tablet.closeSharedTablet': { allowed: ['instructor'], call: async ({ school }) => tablet.closeSharedTablet({ tabletId: await sharedTablet(school) }) },
  'teach/classes/[classId]/tablet.newPin': { allowed: ['instructor'], call: ({ school }) => tablet.newPin({ studentId: school.people.student }) },
  'teach/students/[studentId].saveStaffNote': {
    allowed: ['instructor', 'coordinator'], call: ({ school }) => studentPage.saveStaffNote({ studentId: school.people.student, body: 'Works best mornings.' }),
  },
  'teach/students/[studentId].removeStaffNote': { allowed: ['instructor', 'coordinator'], call: async ({ school }) => studentPage.removeStaffNote({ noteId: await staffNote(school) }) },
  'teach/coupons.takeRow': { allowed: ['instructor'], call: ({ couponId }) => grading.takeRow({ couponId }) },
  'teach/coupons.releaseRow': { allowed: ['instructor', 'otherInstructor', 'foreign instructor'], call: ({ couponId }) => grading.releaseRow({ couponId }) },
  'teach/coupons.decideVerdict': {
    allowed: ['instructor'], fresh: true,
    call: async (fixture) => grading.decideVerdict({ couponId: fixture.couponId, inspectionId: await gradedLook(fixture), verdict: 'reject', reason: 'Seen in the light: a cold start.' }),
  },
  'teach/coupons.keepSnippet': { allowed: ['instructor', 'otherInstructor', 'foreign instructor'], call: () => grading.keepSnippet({ body: 'Even toes.' }) },
  'teach/coupons.dropSnippet': {
    allowed: ['instructor'],
    call: async ({ viewers }) => grading.dropSnippet({ snippetId: (await addSnippet(viewers.instructor, { body: 'Hold the angle.' })).id }),
  },
  'teach.newClassCode': { allowed: ['instructor'], call: ({ school }) => teach.newClassCode({ classId: school.classId }) },
  'teach.resetPassword': { allowed: ['instructor'], fresh: true, call: ({ school }) => teach.resetPassword({ studentId: school.people.student }) },
  'teach.recordTest': {
    allowed: ['instructor'],
    call: ({ school: { classId, exerciseId, people } }) => teach.recordTest({
      id: randomUUID(), classId, exerciseId, studentId: people.student, testedOn: '2026-11-20', plateIdentity: '', wireIdentity: '', note: '',
      parts: { visual: 'reject', bends: null, filletBreak: null, macroetch: null },
    }),
  },
}
