import { randomUUID } from 'node:crypto'
import * as admin from '@/app/_server/data/class-admin'
import * as classes from '@/app/_server/data/classes'
import * as course from '@/app/_server/data/course'
import * as versions from '@/app/_server/data/exercise-versions'
import * as terms from '@/app/_server/data/terms'
import * as classActions from '@/app/program/classes/actions'
import * as courseActions from '@/app/teach/course/actions'
import { db } from '@/app/_server/db'
import { typedExercise } from '@/lib/course/typed-exercise'
import type { School } from '../../support/school'
import type { ActionRow } from './action-rows'
import { STAFF_OF_CLASS, type DataRow, type Fixture, type Person } from './fixture'

const STAFF_ANYWHERE = ['instructor', 'otherInstructor', 'coordinator', 'foreign instructor', 'foreign coordinator'] as const satisfies readonly Person[]
const COORDINATORS = ['coordinator', 'foreign coordinator'] as const satisfies readonly Person[]
const KEY = 'smaw-2f-tee'

/** An exercise that is on no list yet. */
const spare = async ({ programId }: School): Promise<string> => (await db().exercise.create({ data: { programId } })).id

/** One that is on the class's list, last. */
async function listed(school: School): Promise<string> {
  const { programId, classId } = school
  const exerciseId = await spare(school)
  await db().classExercise.create({ data: { programId, classId, exerciseId, sequence: 1000 + (await db().classExercise.count({ where: { classId } })) } })
  return exerciseId
}

/** The exercise of the fixture as its editor sends it, with a title nobody gave it before. */
async function edited({ school: { classId, exerciseId }, viewers }: Fixture) {
  const found = await versions.findEditable(viewers.instructor, { classId, exerciseId })
  if (!found) throw new Error('The exercise of the fixture is not to be edited.')
  const { id: _id, version, ...standing } = found.exercise
  const facts = { ...standing, title: randomUUID() }
  return { key: { classId, exerciseId, fromVersion: version }, facts, typed: typedExercise(facts, 'in') }
}
const newClass = ({ termId, classId }: School) => ({ termId, instructorId: null, copyFrom: classId, name: randomUUID(), room: null, meets: null })
const newTerm = () => ({ name: randomUUID(), startsOn: '2027-01-11', endsOn: '2027-05-14' })

export const COURSE_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'class-admin.listAllClasses': { seenBy: COORDINATORS, call: (viewer) => admin.listAllClasses(viewer) },
  'class-admin.listInstructors': { seenBy: COORDINATORS, call: (viewer) => admin.listInstructors(viewer) },
  'class-admin.makeClass': { seenBy: ['coordinator'], call: (viewer, { school }) => admin.makeClass(viewer, newClass(school)) },
  'class-admin.changeClass': {
    seenBy: ['coordinator'], call: (viewer, { school: { classId } }) => admin.changeClass(viewer, { classId, name: 'Class one', room: 'Bay 2', meets: null }).then(() => true),
  },
  'class-admin.setArchived': { seenBy: ['coordinator'], call: (viewer, { school: { classId } }) => admin.setArchived(viewer, { classId, archived: false }).then(() => true) },
  'classes.listArchivedWaiting': {
    seenBy: ['instructor'],
    call: async (viewer, { school: { classId } }) => {
      await db().class.updateMany({ where: { id: classId }, data: { archivedAt: new Date() } })
      const found = await classes.listArchivedWaiting(viewer)
      await db().class.updateMany({ where: { id: classId }, data: { archivedAt: null } })
      return found
    },
  },
  'classes.findStaffClass': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => classes.findStaffClass(viewer, school.classId) },
  'course.listProgramExercises': { seenBy: STAFF_ANYWHERE, call: (viewer) => course.listProgramExercises(viewer) },
  'course.listClassesToCopy': { seenBy: STAFF_ANYWHERE, call: (viewer) => course.listClassesToCopy(viewer) },
  'course.addExercise': {
    seenBy: STAFF_OF_CLASS, call: async (viewer, { school }) => course.addExercise(viewer, { classId: school.classId, exerciseId: await spare(school) }).then(() => true),
  },
  'course.addFromLibrary': { seenBy: STAFF_OF_CLASS, call: (viewer, { school: { classId } }) => course.addFromLibrary(viewer, { classId, key: KEY }) },
  'course.copyList': { seenBy: STAFF_OF_CLASS, call: (viewer, { school: { classId, otherClassId } }) => course.copyList(viewer, { classId, from: otherClassId }) },
  'course.moveExercise': {
    seenBy: STAFF_OF_CLASS, call: (viewer, { school: { classId, exerciseId } }) => course.moveExercise(viewer, { classId, exerciseId, to: 'up' }).then(() => true),
  },
  'course.setOpensAfter': {
    seenBy: STAFF_OF_CLASS, call: (viewer, { school: { classId, exerciseId } }) => course.setOpensAfter(viewer, { classId, exerciseId, opensAfterId: null }).then(() => true),
  },
  'course.removeExercise': {
    seenBy: STAFF_OF_CLASS, call: async (viewer, { school }) => course.removeExercise(viewer, { classId: school.classId, exerciseId: await listed(school) }).then(() => true),
  },
  'exercise-versions.findEditable': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => versions.findEditable(viewer, school) },
  'exercise-versions.listVersions': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => versions.listVersions(viewer, school) },
  'exercise-versions.listCriteriaChoices': { seenBy: STAFF_ANYWHERE, call: (viewer) => versions.listCriteriaChoices(viewer, null) },
  'exercise-versions.saveVersion': {
    seenBy: STAFF_OF_CLASS,
    call: async (viewer, fixture) => {
      const { key, facts } = await edited(fixture)
      return versions.saveVersion(viewer, { ...key, facts })
    },
  },
  'terms.listTerms': { seenBy: COORDINATORS, call: (viewer) => terms.listTerms(viewer) },
  'terms.makeTerm': { seenBy: COORDINATORS, call: (viewer) => terms.makeTerm(viewer, newTerm()) },
}

export const COURSE_INTERNAL: Readonly<Record<string, string>> = {
  'course.copyInto': 'takes the transaction of copyList and makeClass, which have asked who it is',
  'course.versionData': 'reshapes an exercise; reads nothing',
  'scope.staffClassScope': 'the scopes themselves',
}

export const COURSE_ACTION_ROWS: Readonly<Record<string, ActionRow>> = {
  'program/classes.addTerm': { allowed: COORDINATORS, call: () => classActions.addTerm(newTerm()) },
  'program/classes.addClass': { allowed: ['coordinator'], call: ({ school }) => classActions.addClass({ ...newClass(school), instructorId: '', room: '', meets: '' }) },
  'program/classes.saveClass': { allowed: ['coordinator'], call: ({ school: { classId } }) => classActions.saveClass({ classId, name: 'Class one', room: '', meets: '' }) },
  'program/classes.archiveClass': { allowed: ['coordinator'], call: ({ school: { classId } }) => classActions.archiveClass({ classId, archived: false }) },
  'teach/course.addToList': { allowed: STAFF_OF_CLASS, call: async ({ school }) => courseActions.addToList({ classId: school.classId, exerciseId: await spare(school) }) },
  'teach/course.addLibraryExercise': { allowed: STAFF_OF_CLASS, call: ({ school: { classId } }) => courseActions.addLibraryExercise({ classId, key: KEY }) },
  'teach/course.copyClassList': { allowed: STAFF_OF_CLASS, call: ({ school: { classId, otherClassId } }) => courseActions.copyClassList({ classId, from: otherClassId }) },
  'teach/course.moveInList': { allowed: STAFF_OF_CLASS, call: ({ school: { classId, exerciseId } }) => courseActions.moveInList({ classId, exerciseId, to: 'up' }) },
  'teach/course.chooseOpensAfter': { allowed: STAFF_OF_CLASS, call: ({ school: { classId, exerciseId } }) => courseActions.chooseOpensAfter({ classId, exerciseId, opensAfterId: '' }) },
  'teach/course.removeFromList': { allowed: STAFF_OF_CLASS, call: async ({ school }) => courseActions.removeFromList({ classId: school.classId, exerciseId: await listed(school) }) },
  'teach/course.checkExercise': {
    allowed: STAFF_OF_CLASS,
    call: async (fixture) => {
      const { key, typed } = await edited(fixture)
      return courseActions.checkExercise({ ...key, ...typed })
    },
  },
  'teach/course.saveExercise': {
    allowed: STAFF_OF_CLASS,
    call: async (fixture) => {
      const { key, typed } = await edited(fixture)
      return courseActions.saveExercise({ ...key, ...typed })
    },
  },
}
