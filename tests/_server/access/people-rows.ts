import { randomUUID } from 'node:crypto'
import * as accounts from '@/app/_server/data/accounts'
import * as classRoster from '@/app/_server/data/class-roster'
import * as peopleData from '@/app/_server/data/people'
import * as peopleList from '@/app/_server/data/people-list'
import * as rosterExport from '@/app/_server/data/roster-export'
import * as terms from '@/app/_server/data/terms'
import * as people from '@/app/program/people/actions'
import * as classActions from '@/app/program/classes/actions'
import { db } from '@/app/_server/db'
import { startSession } from '@/app/_server/auth/sessions'
import { PEOPLE_DEFAULTS } from '@/lib/reports/people-options'
import type { School } from '../../support/school'
import type { ActionRow } from './action-rows'
import { STAFF_OF_CLASS, type DataRow, type Person } from './fixture'

const COORDINATORS = ['coordinator', 'foreign coordinator'] as const satisfies readonly Person[]

const newInstructor = () => ({ givenName: 'Nell', familyName: 'Quarrie', signInName: `n.${randomUUID().slice(0, 8)}` })

/** Someone of the school whom nothing else needs. */
async function spare({ programId }: School): Promise<string> {
  const { id } = await db().person.create({
    data: { programId, signInName: `spare.${randomUUID().slice(0, 8)}`, givenName: 'Spare', familyName: 'Test', memberships: { create: { role: 'student' } } },
  })
  await startSession(programId, id, null)
  return id
}

/** A term that has no class. */
const emptyTerm = async ({ programId }: School): Promise<string> =>
  (await db().term.create({ data: { programId, name: randomUUID(), startsOn: new Date('2028-01-10'), endsOn: new Date('2028-05-12') } })).id

const fall = ({ termId }: School) => ({ termId, name: 'Fall', startsOn: '2026-08-24', endsOn: '2026-12-18' })

export const PEOPLE_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'accounts.makeInstructor': { seenBy: COORDINATORS, call: (viewer) => accounts.makeInstructor(viewer, { ...newInstructor(), classId: null }) },
  'accounts.setDisabled': { seenBy: ['coordinator'], call: async (viewer, { school }) => accounts.setDisabled(viewer, { personId: await spare(school), disabled: true }).then(() => true) },
  'accounts.resetPassword': { seenBy: ['coordinator'], call: async (viewer, { school }) => accounts.resetPassword(viewer, { personId: await spare(school) }) },
  'accounts.endSessions': { seenBy: ['coordinator'], call: async (viewer, { school }) => accounts.endSessions(viewer, { personId: await spare(school) }) },
  'accounts.changeNames': { seenBy: ['coordinator'], call: async (viewer, { school }) => accounts.changeNames(viewer, { personId: await spare(school), ...newInstructor() }).then(() => true) },
  'accounts.setRole': { seenBy: ['coordinator'], call: async (viewer, { school }) => accounts.setRole(viewer, { personId: await spare(school), role: 'instructor', held: true }).then(() => true) },
  'class-roster.listRoster': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => classRoster.listRoster(viewer, school.classId, PEOPLE_DEFAULTS) },
  'people-list.listPeople': { seenBy: COORDINATORS, call: async (viewer) => (await peopleList.listPeople(viewer, PEOPLE_DEFAULTS))?.people ?? null },
  'people-list.findPerson': { seenBy: ['coordinator'], call: (viewer, { school }) => peopleList.findPerson(viewer, school.people.student) },
  'people-list.listAccountHistory': {
    seenBy: ['coordinator'],
    call: async (viewer, { school, viewers }) => {
      const personId = await spare(school)
      await accounts.setDisabled(viewers.coordinator, { personId, disabled: true })
      return peopleList.listAccountHistory(viewer, personId)
    },
  },
  'people.listClassLanguages': { seenBy: ['instructor', 'coordinator'], call: (viewer, { school }) => peopleData.listClassLanguages(viewer, school.classId) },
  'roster-export.rosterOf': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => rosterExport.rosterOf(viewer, school.classId) },
  'terms.changeTerm': { seenBy: ['coordinator'], call: (viewer, { school }) => terms.changeTerm(viewer, fall(school)) },
  'terms.setTermArchived': { seenBy: ['coordinator'], call: (viewer, { school: { termId } }) => terms.setTermArchived(viewer, { termId, archived: false }).then(() => true) },
  'terms.removeTerm': { seenBy: ['coordinator'], call: async (viewer, { school }) => terms.removeTerm(viewer, { termId: await emptyTerm(school) }).then(() => true) },
}

export const PEOPLE_INTERNAL: Readonly<Record<string, string>> = {
  'first-password.firstPassword': 'invents words; reads nothing',
  'by-name.beyondName': 'pure: part of the where of listPeople and listRoster',
  'by-name.namedLike': 'pure: part of the where of listPeople and listRoster',
  'shared-tablets.closeTablets': 'part of closeTablet and setDisabled, after their check',
  'first-password.giveFirstPassword': 'part of resetStudentPassword and resetPassword, after their check',
}

export const PEOPLE_ACTION_ROWS: Readonly<Record<string, ActionRow>> = {
  'program/people.addStaff': { allowed: COORDINATORS, call: () => people.addStaff({ ...newInstructor(), classId: '' }) },
  'program/people.disableAccount': { allowed: ['coordinator'], call: async ({ school }) => people.disableAccount({ personId: await spare(school), disabled: true }) },
  'program/people.changeRole': { allowed: ['coordinator'], call: async ({ school }) => people.changeRole({ personId: await spare(school), role: 'instructor', held: true }) },
  'program/people.newPassword': { allowed: ['coordinator'], call: async ({ school }) => people.newPassword({ personId: await spare(school) }) },
  'program/people.newPin': { allowed: ['coordinator'], call: async ({ school }) => people.newPin({ personId: await spare(school) }) },
  'program/people.saveNames': { allowed: ['coordinator'], call: async ({ school }) => people.saveNames({ personId: await spare(school), ...newInstructor() }) },
  'program/people.signOutEverywhere': { allowed: ['coordinator'], call: async ({ school }) => people.signOutEverywhere({ personId: await spare(school) }) },
  'program/classes.saveTerm': { allowed: ['coordinator'], call: ({ school }) => classActions.saveTerm(fall(school)) },
  'program/classes.archiveTerm': { allowed: ['coordinator'], call: ({ school: { termId } }) => classActions.archiveTerm({ termId, archived: false }) },
  'program/classes.deleteTerm': { allowed: ['coordinator'], call: async ({ school }) => classActions.deleteTerm({ termId: await emptyTerm(school) }) },
}
