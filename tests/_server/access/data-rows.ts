import { randomUUID } from 'node:crypto'
import * as classPractice from '@/app/_server/data/class-practice'
import * as classInstructors from '@/app/_server/data/class-instructors'
import * as classes from '@/app/_server/data/classes'
import * as classNotes from '@/app/_server/data/class-notes'
import * as comments from '@/app/_server/data/comments'
import * as couponRecord from '@/app/_server/data/coupon-record'
import * as coupons from '@/app/_server/data/coupons'
import * as enrolments from '@/app/_server/data/enrolments'
import * as exercises from '@/app/_server/data/exercises'
import * as inspections from '@/app/_server/data/inspections'
import * as looks from '@/app/_server/data/look-requests'
import * as overrides from '@/app/_server/data/overrides'
import * as passCounts from '@/app/_server/data/pass-counts'
import * as people from '@/app/_server/data/people'
import * as photoMeasurements from '@/app/_server/data/photo-measurements'
import * as photos from '@/app/_server/data/photos'
import * as pins from '@/app/_server/data/pins'
import * as program from '@/app/_server/data/program'
import * as queue from '@/app/_server/data/queue'
import * as readinessModels from '@/app/_server/data/readiness-models'
import * as roster from '@/app/_server/data/roster'
import * as safety from '@/app/_server/data/safety'
import * as tablets from '@/app/_server/data/shared-tablets'
import * as skills from '@/app/_server/data/skills'
import * as snippets from '@/app/_server/data/snippets'
import * as staffNotes from '@/app/_server/data/staff-notes'
import * as attempts from '@/app/_server/data/test-attempts'
import { startSession } from '@/app/_server/auth/sessions'
import { db } from '@/app/_server/db'
import { measurePhoto } from '@/lib/measure/photo-measurement'
import { MODEL_VERSION } from '@/lib/readiness/parameters'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import { inspectionSchema } from '@/lib/schemas/inspection'
import { testFormSchema } from '@/lib/schemas/test-form'
import { marksOf } from '../../support/photo-marks'
import { modelRow } from '../../support/readiness-model'
import { cleanReadings, LENGTH_MM, logAs } from '../../support/school'
import { ACCOUNT_DATA_ROWS } from './account-rows'
import { AGREEMENT_DATA_ROWS } from './agreement-rows'
import { COURSE_DATA_ROWS, COURSE_INTERNAL } from './course-rows'
import { CRITERIA_DATA_ROWS } from './criteria-rows'
import { PEOPLE_DATA_ROWS, PEOPLE_INTERNAL } from './people-rows'
import { SECOND_DATA_ROWS, SECOND_INTERNAL } from './second-rows'
import { STUDENT_DATA_ROWS } from './student-rows'
import { STUDY_DATA_ROWS, STUDY_INTERNAL } from './study-rows'
import { EVERYONE, EVERYONE_HERE, SEES_COUPON, sharedTablet, STAFF_OF_CLASS, standingNote, staffNote, waitingLook, type DataRow, type Fixture } from './fixture'

const frame = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: 0.79 } as const
const inspectionOf = (couponId: string, revision = 1) =>
  inspectionSchema(frame).parse({ couponId, revision, comment: '', readings: cleanReadings() })

async function photoOf({ school, couponId }: Fixture): Promise<string> {
  const row = await db().photo.create({
    data: { programId: school.programId, couponId, uploaderId: school.people.student, sha256: 'a'.repeat(64), widthPx: 1, heightPx: 1, byteSize: 1 },
  })
  return row.id
}

/** The coupon graded by its instructor; the id of that look. */
export async function gradedLook({ viewers, couponId }: Fixture): Promise<string> {
  await inspections.submitInspection(viewers.instructor, inspectionOf(couponId))
  const { id } = await db().inspection.findFirstOrThrow({ where: { couponId, kind: 'instructor', supersededAt: null }, select: { id: true } })
  return id
}

/** What a void call leaves: true when it changed something. */
async function changes(work: () => Promise<unknown>, count: () => Promise<number>): Promise<true | null> {
  const before = await count()
  await work()
  return (await count()) > before ? true : null
}

export const ROSTER = 'username,givenName,familyName,booth\n'

/** Everyone of the class stands in it as at first, whatever a row before did. */
export async function asAtFirst({ school: { programId, classId, otherClassId, people } }: Fixture): Promise<void> {
  await db().enrolment.updateMany({ where: { programId, classId }, data: { withdrawnAt: null } })
  await db().enrolment.deleteMany({ where: { programId, classId: otherClassId, personId: people.student } })
  await db().classInstructor.deleteMany({ where: { programId, classId, personId: people.otherInstructor } })
}

/** Two instructors teach the class. */
export async function twoTeachers({ school: { programId, classId, people } }: Fixture): Promise<void> {
  await db().classInstructor.createMany({ data: [{ programId, classId, personId: people.otherInstructor }], skipDuplicates: true })
}

const skillKey = ({ school }: Fixture) => ({ studentId: school.people.student, exerciseId: school.exerciseId })

export const DATA_ROWS: Readonly<Record<string, DataRow>> = {
  ...ACCOUNT_DATA_ROWS,
  ...AGREEMENT_DATA_ROWS,
  ...COURSE_DATA_ROWS,
  ...CRITERIA_DATA_ROWS,
  ...PEOPLE_DATA_ROWS,
  ...SECOND_DATA_ROWS,
  ...STUDY_DATA_ROWS,
  ...STUDENT_DATA_ROWS,
  'class-practice.listRecentPractice': {
    seenBy: ['instructor'],
    call: async (viewer, fixture) => {
      await db().coupon.updateMany({ where: { id: fixture.couponId }, data: { waitingSince: null, verdict: 'accept' } })
      const found = await classPractice.listRecentPractice(viewer, [{ ...skillKey(fixture), couponCount: 1 }])
      await db().coupon.updateMany({ where: { id: fixture.couponId }, data: { waitingSince: new Date(), verdict: null } })
      return found
    },
  },
  'class-practice.listAcknowledged': { seenBy: ['instructor'], call: (viewer, { school }) => classPractice.listAcknowledged(viewer, school.classId, school.termId, CAUTIONS_VERSION) },
  'class-practice.listPassedTests': {
    seenBy: ['instructor'],
    call: async (viewer, { school }) => {
      await attempt(school)
      return classPractice.listPassedTests(viewer, school.classId)
    },
  },
  'classes.listClasses': { seenBy: EVERYONE, call: (viewer) => classes.listClasses(viewer) },
  'classes.findClass': { seenBy: ['student', 'classmate', ...STAFF_OF_CLASS], call: (viewer, { school }) => classes.findClass(viewer, school.classId) },
  'classes.findTaughtClass': { seenBy: ['instructor'], call: (viewer, { school }) => classes.findTaughtClass(viewer, school.classId) },
  'classes.listOwnClasses': { seenBy: ['student', 'classmate', 'otherStudent', 'foreign student'], call: (viewer) => classes.listOwnClasses(viewer) },
  'classes.listStudentClasses': { seenBy: SEES_COUPON, call: (viewer, { school }) => classes.listStudentClasses(viewer, school.people.student) },
  'classes.listClassStudents': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => classes.listClassStudents(viewer, school.classId) },
  'class-instructors.listInstructors': { seenBy: ['coordinator', 'foreign coordinator'], call: (viewer) => classInstructors.listInstructors(viewer) },
  'class-instructors.addInstructor': {
    seenBy: ['coordinator'],
    call: async (viewer, fixture) => {
      const { classId, people } = fixture.school
      await classInstructors.addInstructor(viewer, { classId, instructorId: people.otherInstructor })
      await asAtFirst(fixture)
      return true
    },
  },
  'class-instructors.removeInstructor': {
    seenBy: ['coordinator'],
    call: async (viewer, fixture) => {
      const { classId, people } = fixture.school
      await twoTeachers(fixture)
      try {
        await classInstructors.removeInstructor(viewer, { classId, instructorId: people.otherInstructor })
        return true
      } finally {
        await asAtFirst(fixture)
      }
    },
  },
  'enrolments.withdrawStudent': {
    seenBy: STAFF_OF_CLASS,
    call: async (viewer, fixture) => {
      await enrolments.withdrawStudent(viewer, { classId: fixture.school.classId, studentId: fixture.school.people.student })
      await asAtFirst(fixture)
      return true
    },
  },
  'enrolments.readmitStudent': {
    seenBy: STAFF_OF_CLASS,
    call: (viewer, { school }) => enrolments.readmitStudent(viewer, { classId: school.classId, studentId: school.people.student }).then(() => true),
  },
  'enrolments.moveStudent': {
    seenBy: ['coordinator'],
    call: async (viewer, fixture) => {
      const { classId, otherClassId, people } = fixture.school
      await enrolments.moveStudent(viewer, { classId, studentId: people.student, toClassId: otherClassId })
      await asAtFirst(fixture)
      return true
    },
  },
  'roster.dryRunRoster': { seenBy: ['coordinator'], call: (viewer, { school }) => roster.dryRunRoster(viewer, { classId: school.classId, text: ROSTER }) },
  'roster.importRoster': { seenBy: ['coordinator'], call: (viewer, { school }) => roster.importRoster(viewer, { classId: school.classId, text: ROSTER, shown: '' }) },
  'class-notes.listCurrentNotes': {
    seenBy: ['student', 'classmate', ...STAFF_OF_CLASS],
    call: async (viewer, { school }) => {
      await standingNote(school)
      return classNotes.listCurrentNotes(viewer, school.classId, new Date())
    },
  },
  'class-notes.listNotes': {
    seenBy: ['student', 'classmate', ...STAFF_OF_CLASS],
    call: async (viewer, { school }) => {
      await standingNote(school)
      return classNotes.listNotes(viewer, school.classId, new Date(), { most: 5, after: null })
    },
  },
  'class-notes.writeClassNote': {
    seenBy: ['instructor'],
    call: (viewer, { school: { classId, exerciseId } }) =>
      classNotes.writeClassNote(viewer, { classId, kind: 'demo', onDate: null, exerciseId, body: 'Whip and pause.', replaces: null }, new Date()),
  },
  'class-notes.takeDownClassNote': {
    seenBy: ['instructor'], call: async (viewer, { school }) => classNotes.takeDownClassNote(viewer, { noteId: await standingNote(school) }).then(() => true),
  },
  'comments.addComment': {
    seenBy: SEES_COUPON,
    call: (viewer, { couponId }) => changes(() => comments.addComment(viewer, { couponId, body: 'Looks even.' }), () => db().comment.count()),
  },
  'comments.listComments': {
    seenBy: SEES_COUPON,
    call: async (viewer, { school, couponId }) => {
      await db().comment.create({ data: { programId: school.programId, couponId, authorId: school.people.instructor, body: 'Looks even.' } })
      return comments.listComments(viewer, couponId)
    },
  },
  'coupon-record.findCoupon': { seenBy: SEES_COUPON, call: (viewer, { couponId }) => couponRecord.findCoupon(viewer, couponId) },
  'coupon-record.listStory': { seenBy: SEES_COUPON, call: (viewer, fixture) => couponRecord.listStory(viewer, skillKey(fixture), 10) },
  'coupon-record.lastPasses': { seenBy: ['student', 'foreign student'], call: (viewer, { school, foreign }) =>
    couponRecord.lastPasses(viewer, viewer.programId === school.programId ? school.exerciseId : foreign.exerciseId) },
  'coupons.couponFrame': { seenBy: ['student', 'classmate'], call: (viewer, { school }) => coupons.couponFrame(viewer, school) },
  'coupons.findArrived': { seenBy: ['student'], call: (viewer, { couponId }) => coupons.findArrived(viewer, couponId) },
  'coupons.logCoupon': { seenBy: ['student', 'classmate'], call: (viewer, { school }) => logAs(school, viewer, randomUUID()) },
  'exercises.findExercise': {
    seenBy: EVERYONE_HERE, call: (viewer, { school }) => exercises.findExercise(viewer, school.exerciseId),
  },
  'exercises.listClassExercises': {
    seenBy: ['student', 'classmate', ...STAFF_OF_CLASS], call: (viewer, { school }) => exercises.listClassExercises(viewer, school.classId),
  },
  'inspections.exerciseOfGradable': { seenBy: ['instructor'], call: (viewer, { couponId }) => inspections.exerciseOfGradable(viewer, couponId) },
  'inspections.submitInspection': {
    seenBy: ['instructor'], fresh: true, call: (viewer, { couponId }) => inspections.submitInspection(viewer, inspectionOf(couponId)),
  },
  'look-requests.askForLook': {
    seenBy: ['student', 'classmate'],
    call: (viewer, { school }) => looks.askForLook(viewer, { classId: school.classId, exerciseId: school.exerciseId, note: null }),
  },
  'look-requests.findOwnLook': {
    seenBy: ['student'],
    call: async (viewer, { school }) => {
      await waitingLook(school)
      return looks.findOwnLook(viewer, school.classId)
    },
  },
  'look-requests.takeBackLook': {
    seenBy: ['student', 'classmate'],
    call: async (viewer, { school }) => {
      await waitingLook(school)
      return looks.takeBackLook(viewer, school).then(() => true)
    },
  },
  'look-requests.listWaitingLooks': {
    seenBy: ['instructor'],
    call: async (viewer, { school }) => {
      await waitingLook(school)
      return looks.listWaitingLooks(viewer, school.classId)
    },
  },
  'look-requests.answerLook': { seenBy: ['instructor'], call: async (viewer, { school }) => looks.answerLook(viewer, { lookId: await waitingLook(school) }).then(() => true) },
  'overrides.overrideVerdict': {
    seenBy: ['instructor'], fresh: true,
    call: async (viewer, fixture) => overrides.overrideVerdict(viewer, { couponId: fixture.couponId, inspectionId: await gradedLook(fixture), verdict: 'reject', reason: 'Seen in the light: a cold start.' }),
  },
  'pass-counts.countVerdicts': {
    seenBy: ['student', 'classmate', ...STAFF_OF_CLASS, 'foreign student', 'foreign instructor', 'foreign coordinator'],
    call: (viewer) => passCounts.countVerdicts(viewer),
  },
  'pass-counts.listCountedClasses': { seenBy: EVERYONE, call: (viewer) => passCounts.listCountedClasses(viewer) },
  'pass-counts.listCouponVerdicts': { seenBy: SEES_COUPON, call: (viewer, { school }) => passCounts.listCouponVerdicts(viewer, school.people.student) },
  'pass-counts.exerciseTitles': { seenBy: EVERYONE, call: (viewer) => passCounts.exerciseTitles(viewer) },
  'people.findStudent': { seenBy: SEES_COUPON, call: (viewer, { school }) => people.findStudent(viewer, school.people.student) },
  'people.ownAccount': { seenBy: EVERYONE, call: (viewer) => people.ownAccount(viewer) },
  'people.setPreferences': {
    seenBy: EVERYONE,
    call: (viewer) => changes(() => people.setPreferences(viewer, { locale: 'en', units: 'us' }), () => db().auditEvent.count({ where: { actorId: viewer.personId } })),
  },
  'people.changeOwnPassword': {
    seenBy: [], // nobody here has a password yet, so every "current password" is wrong: a refusal, not a sight of anything
    call: (viewer) => people.changeOwnPassword(viewer, { current: 'not it', password: 'four-words-in-a-row-7' }).catch(() => null),
  },
  'people.listOwnSessions': {
    seenBy: EVERYONE,
    call: async (viewer) => {
      await startSession(viewer.programId, viewer.personId, null)
      const own = await people.listOwnSessions(viewer)
      return own.length > 0 && (await db().signInSession.count({ where: { id: { in: own.map(({ id }) => id) }, NOT: { personId: viewer.personId } } })) === 0 ? own : null
    },
  },
  'people.endOtherSessions': {
    seenBy: EVERYONE,
    call: (viewer) => changes(() => people.endOtherSessions(viewer), () => db().auditEvent.count({ where: { action: 'session.end-others', actorId: viewer.personId } })),
  },
  'people.resetStudentPassword': { seenBy: ['instructor'], call: (viewer, { school }) => people.resetStudentPassword(viewer, { studentId: school.people.student }) },
  'people.findClassCode': {
    seenBy: STAFF_OF_CLASS,
    call: async (viewer, { school, viewers }) => {
      await people.makeClassCode(viewers.instructor, { classId: school.classId })
      return people.findClassCode(viewer, school.classId)
    },
  },
  'people.makeClassCode': { seenBy: ['instructor'], call: (viewer, { school }) => people.makeClassCode(viewer, { classId: school.classId }) },
  'people.joinClass': {
    seenBy: EVERYONE_HERE,
    fresh: true,
    call: async (viewer, { school, viewers }) => {
      const { code } = await people.makeClassCode(viewers.instructor, { classId: school.classId })
      // The code is the right: another school's people hold no code of this program, whatever they type.
      return people.joinClass(viewer, { code }).catch((error: unknown) => {
        if (error instanceof Error && 'code' in error && error.code === 'INVALID') return null
        throw error
      })
    },
  },
  'pins.hasOwnPin': {
    seenBy: ['student'], // nobody but him has one
    call: async (viewer, { school }) => {
      await db().person.updateMany({ data: { pinHash: null } })
      await db().person.updateMany({ where: { id: school.people.student }, data: { pinHash: 'set' } })
      return (await pins.hasOwnPin(viewer)) || null
    },
  },
  'pins.setOwnPin': {
    seenBy: ['student', 'classmate', 'otherStudent', 'foreign student'], call: (viewer) => pins.setOwnPin(viewer, { current: '', pin: '4826' }).then(() => true),
  },
  'pins.setStudentPin': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => pins.setStudentPin(viewer, { studentId: school.people.student }) },
  'pins.listPinHolders': { seenBy: ['instructor'], call: (viewer, { school }) => pins.listPinHolders(viewer, school.classId) },
  'photo-measurements.listMeasurements': {
    seenBy: SEES_COUPON, fresh: true, // a coupon holds few photos, and each call adds one
    call: async (viewer, fixture) => {
      await db().photoMeasurement.create({
        data: { programId: fixture.school.programId, photoId: await photoOf(fixture), personId: fixture.school.people.student, document: measurePhoto(marksOf([{ atMm: 20, widthMm: 7 }])) as unknown as object },
      })
      // Only after the inspection is it more than the student's own.
      await db().coupon.updateMany({ where: { id: fixture.couponId }, data: { waitingSince: null } })
      const seen = await photoMeasurements.listMeasurements(viewer, fixture.couponId)
      await db().coupon.updateMany({ where: { id: fixture.couponId }, data: { waitingSince: new Date() } })
      return seen
    },
  },
  'photo-measurements.saveMeasurement': {
    seenBy: ['student', 'instructor'], fresh: true,
    call: async (viewer, fixture) => {
      const photoId = await photoOf(fixture)
      return changes(
        () => photoMeasurements.saveMeasurement(viewer, { photoId, measurement: measurePhoto({ ...marksOf([{ atMm: 20, widthMm: 7 }]), picture: { widthPx: 1000, heightPx: 1000 } }) }),
        () => db().photoMeasurement.count(),
      )
    },
  },
  'photos.checkPhotoPlace': {
    seenBy: ['student', 'instructor'],
    call: async (viewer, { couponId }) => photos.checkPhotoPlace(viewer, couponId).then(() => true),
  },
  'photos.addPhoto': {
    seenBy: SEES_COUPON,
    call: (viewer, { couponId }) => changes(
      () => photos.addPhoto(viewer, { id: randomUUID(), couponId, photo: { sha256: 'b'.repeat(64), widthPx: 1, heightPx: 1, byteSize: 1 } }),
      () => db().photo.count(),
    ),
  },
  'photos.findPhotoHash': { seenBy: SEES_COUPON, call: async (viewer, fixture) => photos.findPhotoHash(viewer, await photoOf(fixture)) },
  'program.setReadinessRule': {
    seenBy: ['coordinator', 'foreign coordinator'], // of their own program, as the next count shows
    call: (viewer) => changes(
      () => program.setReadinessRule(viewer, { readinessThreshold: 0.7, minimumCoupons: 6, staleAfterDays: 30 }),
      () => db().auditEvent.count({ where: { programId: viewer.programId, actorId: viewer.personId, action: 'program.readiness' } }),
    ),
  },
  'program.refreshStandings': { seenBy: ['coordinator', 'foreign coordinator'], call: (viewer) => program.refreshStandings(viewer) },
  'program.findProgram': { seenBy: EVERYONE, call: (viewer) => program.findProgram(viewer) },
  'queue.listQueue': { seenBy: ['instructor'], call: (viewer, { school }) => queue.listQueue(viewer, school.classId) },
  'queue.queueState': { seenBy: ['instructor'], call: (viewer, { school }) => queue.queueState(viewer, school.classId) },
  'queue.queueStateNow': {
    seenBy: ['instructor'],
    call: async (viewer, { school }) => {
      const { sessionId } = await startSession(viewer.programId, viewer.personId, null)
      return queue.queueStateNow({ ...viewer, sessionId }, school.classId)
    },
  },
  'readiness-models.findModels': { seenBy: ['coordinator', 'foreign coordinator'], call: (viewer) => readinessModels.findModels(viewer) },
  'readiness-models.adoptModel': {
    seenBy: ['coordinator'], // a version of this program means nothing in another one
    call: async (viewer, { school }) => {
      const version = `${MODEL_VERSION}-refit-${randomUUID()}`
      await db().readinessModel.create({ data: modelRow(school.programId, version) })
      return changes(
        () => readinessModels.adoptModel(viewer, { version }),
        () => db().readinessModel.count({ where: { programId: school.programId, adoptedById: school.people.coordinator } }),
      )
    },
  },
  'readiness-models.renewProgram': { seenBy: ['coordinator', 'foreign coordinator'], call: (viewer) => readinessModels.renewProgram(viewer) },
  'safety.findAcknowledgement': {
    seenBy: ['student', 'classmate', 'otherStudent'],
    call: (viewer, { school }) => safety.findAcknowledgement(viewer, school.exerciseId, school.termId, CAUTIONS_VERSION),
  },
  'safety.listUnsignedCautions': {
    seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => safety.listUnsignedCautions(viewer, school.classId, 'a version nobody has confirmed'),
  },
  'safety.acknowledgeCautions': {
    seenBy: ['student', 'classmate'],
    call: async (viewer, { school }) => changes(
      () => safety.acknowledgeCautions(viewer, { ...school, cautionsVersion: randomUUID() }),
      () => db().auditEvent.count({ where: { action: 'safety.acknowledge' } }),
    ),
  },
  'shared-tablets.openTablet': { seenBy: ['instructor'], call: (viewer, { school }) => tablets.openTablet(viewer, { classId: school.classId, name: 'Bench tablet' }) },
  'shared-tablets.listTablets': {
    seenBy: ['instructor'],
    call: async (viewer, { school }) => {
      await sharedTablet(school)
      return tablets.listTablets(viewer, school.classId)
    },
  },
  'shared-tablets.closeTablet': { seenBy: ['instructor'], call: async (viewer, { school }) => tablets.closeTablet(viewer, { tabletId: await sharedTablet(school) }).then(() => true) },
  'skills.listStudentSkills': { seenBy: SEES_COUPON, call: (viewer, { school }) => skills.listStudentSkills(viewer, school.people.student) },
  'skills.listClassSkills': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => skills.listClassSkills(viewer, school.classId) },
  'skills.findReadiness': { seenBy: SEES_COUPON, call: (viewer, fixture) => skills.findReadiness(viewer, skillKey(fixture), new Date()) },
  'staff-notes.listStaffNotes': {
    seenBy: STAFF_OF_CLASS,
    call: async (viewer, { school }) => {
      await staffNote(school)
      return staffNotes.listStaffNotes(viewer, school.people.student)
    },
  },
  'staff-notes.writeStaffNote': { seenBy: STAFF_OF_CLASS, call: (viewer, { school }) => staffNotes.writeStaffNote(viewer, { studentId: school.people.student, body: 'Works best mornings.' }) },
  'staff-notes.takeDownStaffNote': {
    seenBy: STAFF_OF_CLASS, call: async (viewer, { school }) => staffNotes.takeDownStaffNote(viewer, { noteId: await staffNote(school) }).then(() => true),
  },
  'snippets.listSnippets': {
    seenBy: ['instructor'], // one's own alone: another instructor sees none of these
    call: async (viewer, { viewers }) => {
      await snippets.addSnippet(viewers.instructor, { body: 'Even toes.' })
      return snippets.listSnippets(viewer)
    },
  },
  'snippets.addSnippet': { seenBy: ['instructor', 'otherInstructor', 'foreign instructor'], fresh: true, call: (viewer) => snippets.addSnippet(viewer, { body: 'Hold the angle.' }) },
  'snippets.removeSnippet': {
    seenBy: ['instructor'],
    call: async (viewer, { viewers }) => {
      const { id } = await snippets.addSnippet(viewers.instructor, { body: `Slower. ${randomUUID()}` })
      return snippets.removeSnippet(viewer, { snippetId: id }).then(() => true)
    },
  },
  'test-attempts.listAttempts': {
    seenBy: SEES_COUPON,
    call: async (viewer, { school }) => {
      await attempt(school)
      return attempts.listAttempts(viewer, school.people.student)
    },
  },
  'test-attempts.findAttempt': {
    seenBy: SEES_COUPON,
    call: async (viewer, { school }) => attempts.findAttempt(viewer, await attempt(school)),
  },
  'test-attempts.listClassAttempts': {
    seenBy: SEES_COUPON,
    call: async (viewer, { school }) => {
      await attempt(school)
      return attempts.listClassAttempts(viewer, school.classId)
    },
  },
  'test-attempts.listProcessUses': {
    seenBy: SEES_COUPON,
    call: (viewer, { school }) => attempts.listProcessUses(viewer, school.people.student, 'FCAW-S'),
  },
  'test-attempts.recordAttempt': {
    seenBy: ['instructor'],
    call: (viewer, { school: { classId, exerciseId, people: { student: studentId } } }) => attempts.recordAttempt(viewer, testFormSchema({ locale: 'en', units: 'in' }).parse({
      id: randomUUID(), classId, exerciseId, studentId, testedOn: '2026-11-20', parts: { visual: 'reject', bends: null, filletBreak: null, macroetch: null }, plateIdentity: '', wireIdentity: '', note: '',
    })),
  },
  'test-attempts.countFirstAttempts': {
    seenBy: ['student', 'classmate', ...STAFF_OF_CLASS],
    call: async (viewer, { school }) => {
      await attempt(school)
      return attempts.countFirstAttempts(viewer)
    },
  },
  'test-attempts.listForecasts': {
    seenBy: ['student', 'classmate', ...STAFF_OF_CLASS],
    call: async (viewer, { school }) => {
      await attempt(school)
      return attempts.listForecasts(viewer)
    },
  },
  'test-attempts.countAttempts': {
    seenBy: ['student', 'classmate', ...STAFF_OF_CLASS],
    call: async (viewer, { school }) => {
      await attempt(school)
      return attempts.countAttempts(viewer)
    },
  },
}

async function attempt(school: Fixture['school']): Promise<string> {
  const { programId, classId, exerciseId, people: { student: studentId, instructor: witnessId } } = school
  const { id } = await db().testAttempt.create({
    data: { programId, classId, studentId, exerciseId, exerciseVersion: 1, witnessId, testedOn: new Date('2026-11-20'), passed: true, parts: { visual: 'accept', bends: null, filletBreak: null } },
  })
  return id
}

/** Exports no request reaches on its own: each is called by a function of the matrix, inside its check. The reason stands beside it. */
export const INTERNAL: Readonly<Record<string, string>> = {
  ...COURSE_INTERNAL,
  ...PEOPLE_INTERNAL,
  ...SECOND_INTERNAL,
  ...STUDY_INTERNAL,
  'program.addShippedCriteria': 'runs when the server starts; no request reaches it',
  'audit.recordAudit': 'writes the audit row of a change, in the change’s transaction',
  'comments.writeComment': 'part of addComment and submitInspection, after their check',
  'coupons.frameOf': 'pure: how a viewer’s form is read',
  'criteria.criteriaSet': 'the rules of the program are no secret within it; takes no viewer',
  'exercises.toExercise': 'pure: a row as a record',
  'health.databaseAnswers': 'says only yes or no',
  'model-in-use.modelInUse': 'how chances are reckoned is no secret in the program; takes no viewer',
  'people.joinAsNewStudent': 'before there is a viewer; the class code is the right',
  'practice.evidenceOf': 'part of the skills and of the refit, after their check',
  'practice.practiceOf': 'part of the skills and of the refit, after their check',
  'practice.printOf': 'pure: tells one practice from another',
  'program.anyProgram': 'says only yes or no',
  'program.copyCriteria': 'part of setting up a program',
  'program.setUpProgram': 'before there is a viewer; the code of the server’s log is the right',
  'queue.printOfQueue': 'pure: tells one queue from another',
  'readiness-rule.forecastResults': 'part of the skills, after their check',
  'readiness-rule.ruleFor': 'part of the skills and of the refit, after their check',
  'refit-program.proposeModel': 'a job of the server’s own, without a viewer; a coordinator decides on what it proposes',
  'scorecards.findingRow': 'pure: a finding as its row',
  'scorecards.judge': 'pure: the library’s judgement',
  'scorecards.toScorecard': 'pure: rows as a scorecard',
  'scorecards.writeInspection': 'part of logCoupon and submitInspection, after their check',
  'scope.classScope': 'the scopes themselves',
  'scope.coordinatedScope': 'the scopes themselves',
  'scope.couponScope': 'the scopes themselves',
  'scope.exerciseScope': 'the scopes themselves',
  'scope.gradableCouponScope': 'the scopes themselves',
  'scope.settledCouponScope': 'the scopes themselves',
  'scope.studentScope': 'the scopes themselves',
  'scope.taughtClassScope': 'the scopes themselves',
  'series.seriesOf': 'part of refreshSkill',
  'skills.forecastFor': 'part of recordAttempt, after its check',
  'skills.holdSkill': 'part of logCoupon, submitInspection and recordAttempt',
  'skills.refreshSkill': 'part of logCoupon, submitInspection and recordAttempt',
  'skills.renewStandings': 'part of listStudentSkills and listClassSkills, inside their scope, and of renewProgram, after its check',
}
