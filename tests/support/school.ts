// Two small schools for tests that need people, classes and a coupon: everything in the second must stay out of sight of the first.
import { randomUUID } from 'node:crypto'
import { db } from '@/app/_server/db'
import { copyCriteria } from '@/app/_server/data/program'
import { logCoupon } from '@/app/_server/data/coupons'
import { viewerForPerson, type Role, type Viewer } from '@/app/_server/auth/viewer'
import { blankPass } from '@/lib/schemas/passes'
import { couponSchema } from '@/lib/schemas/coupon'
import { blankReadings, type ReadingsForm } from '@/lib/schemas/readings'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import { stationPlaces } from '@/lib/procedure/exercise'
import { INDICATION_KINDS } from '@/lib/scoring/types'
import { fromInches } from '@/lib/units/length'
import { formatForReader } from '@/lib/units/display'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'

export const LENGTH_MM = fromInches(8)

/** A lap joint in 3/8 in plate with 0.045 in self-shielded wire: the exercise of every test school. */
const exerciseVersion = {
  title: '2F lap, E71T-11 0.045', process: 'FCAW-S', joint: 'lap', weldType: 'fillet', position: '2F', progression: null,
  plateThicknessMm: fromInches(3 / 8), material: 'A36', electrodeClass: 'E71T-11', electrodeDiameterMm: fromInches(0.045),
  nominalLegMm: fromInches(1 / 4), lengthMm: LENGTH_MM, passCount: 1, stationCount: 5, gauge: 'in32',
  boothCard: {
    polarity: 'DCEN', amps: { min: 120, max: 160 }, volts: { min: 15, max: 18 }, wireFeedMmPerS: { min: 30, max: 55 },
    contactTipToWorkMm: { min: 10, max: 19 }, travelSpeedMmPerS: null, gas: null, gasFlowLPerMin: null,
    workAngleDeg: { min: 40, max: 45 }, travelAngleDeg: { min: 10, max: 20 }, travelDirection: 'drag', sidePauseSeconds: null, note: null,
  },
  criteriaId: 'shop-bead', criteriaVersion: 1,
} as const

async function person(programId: string, signInName: string, roles: readonly Role[]): Promise<string> {
  const row = await db().person.create({
    data: {
      programId, signInName, givenName: signInName, familyName: 'Test', passwordHash: null,
      memberships: { create: roles.map((role) => ({ role })) },
    },
  })
  return row.id
}

export type School = Awaited<ReturnType<typeof buildSchool>>

/** One school, in which no coupon is read twice: a coordinator, two instructors with a class each, three students, one exercise in both classes, cautions confirmed. */
export async function buildSchool(slug: string) {
  const program = await db().program.create({ data: { slug, name: slug, timeZone: 'America/Chicago', secondReadShare: 0 } })
  const programId = program.id
  await db().$transaction((tx) => copyCriteria(tx, programId))
  const term = await db().term.create({ data: { programId, name: 'Fall', startsOn: new Date('2026-08-24'), endsOn: new Date('2026-12-18') } })
  const coordinator = await person(programId, 'coordinator', ['coordinator'])
  const instructor = await person(programId, 'instructor', ['instructor'])
  const otherInstructor = await person(programId, 'other.instructor', ['instructor'])
  const student = await person(programId, 'student', ['student'])
  const classmate = await person(programId, 'classmate', ['student'])
  const otherStudent = await person(programId, 'other.student', ['student'])
  const exercise = await db().exercise.create({ data: { programId, versions: { create: { version: 1, ...exerciseVersion } } } })
  const makeClass = async (name: string, teacher: string, students: readonly string[]): Promise<string> => {
    const row = await db().class.create({ data: { programId, termId: term.id, name } })
    const classId = row.id
    await db().classInstructor.create({ data: { programId, classId, personId: teacher } })
    await db().classExercise.create({ data: { programId, classId, exerciseId: exercise.id, sequence: 1 } })
    await db().enrolment.createMany({ data: students.map((personId, index) => ({ programId, classId, personId, booth: index + 1 })) })
    return classId
  }
  const classId = await makeClass('Class one', instructor, [student, classmate])
  const otherClassId = await makeClass('Class two', otherInstructor, [otherStudent])
  await db().safetyAcknowledgement.createMany({
    data: [student, classmate, otherStudent].map((studentId) => ({ programId, studentId, exerciseId: exercise.id, termId: term.id, cautionsVersion: CAUTIONS_VERSION })),
  })
  return {
    programId, termId: term.id, classId, otherClassId, exerciseId: exercise.id,
    people: { coordinator, instructor, otherInstructor, student, classmate, otherStudent },
  }
}

/** A viewer of a test school. */
export async function viewerOf(school: School, who: keyof School['people']): Promise<Viewer> {
  const viewer = await viewerForPerson(school.programId, school.people[who])
  if (!viewer) throw new Error(`The test school has no ${who}.`)
  return viewer
}

/** Readings of a clean bead: five stations inside the band, everything looked for and not found. */
export function cleanReadings(): ReadingsForm {
  const places = stationPlaces(LENGTH_MM, 5).map((at) => formatForReader(at, 'in'))
  const form = blankReadings(places)
  return {
    ...form,
    stations: form.stations.map((row) => ({ ...row, width: '1/4', legA: '1/4', legB: '1/4', convexity: '0' })),
    lookedFor: [...INDICATION_KINDS],
    cratersFilled: true,
    fusionComplete: true,
  }
}

/** What a student's form sends for a coupon. */
export function couponForm(school: School, id: string, readings: ReadingsForm = cleanReadings()) {
  return {
    id, classId: school.classId, exerciseId: school.exerciseId, weldedAt: new Date().toISOString(), booth: null, note: '',
    passes: [{ ...blankPass(), amps: '140', volts: '16.5', polarity: 'DCEN' as const }], readings,
  }
}

/** Logs a coupon as a student of the school would. */
export async function logAs(school: School, viewer: Viewer, id: string, readings?: ReadingsForm) {
  const frame = { locale: viewer.locale, units: viewer.units, lengthMm: LENGTH_MM, gaugeResolutionMm: gaugeResolutionMm('in32') }
  const form = couponForm(school, id, readings)
  return logCoupon(viewer, couponSchema(frame, new Date()).parse(form))
}

/** A school of its own with one coupon that its student has just logged. */
export async function schoolWithCoupon(): Promise<{ readonly school: School; readonly couponId: string }> {
  const school = await buildSchool(randomUUID())
  const couponId = randomUUID()
  await logAs(school, await viewerOf(school, 'student'), couponId)
  return { school, couponId }
}

/** Clean readings, but for a width that is the same at every station. */
export const readingsOfWidth = (width: string): ReadingsForm => ({ ...cleanReadings(), stations: cleanReadings().stations.map((row) => ({ ...row, width })) })
