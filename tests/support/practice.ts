// Practice written straight to the database, judged as the application judges it: for tests that need much of it.
import { randomUUID } from 'node:crypto'
import { cleanReadings, LENGTH_MM, type School } from './school'
import { db } from '@/app/_server/db'
import { criteriaSet } from '@/app/_server/data/criteria'
import { toExercise } from '@/app/_server/data/exercises'
import { findingRow, judge } from '@/app/_server/data/scorecards'
import { holdSkill, refreshSkill } from '@/app/_server/data/skills'
import type { Prisma } from '@/prisma/generated/client'
import { readingsSchema } from '@/lib/schemas/readings'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'

const FRAME = { locale: 'en', units: 'in', lengthMm: LENGTH_MM, gaugeResolutionMm: gaugeResolutionMm('in32') } as const

/** A coupon, welded at noon UTC of a day and inspected by the instructor, as wide as said at every station. Between 5.72 and 6.86 mm passes. */
export type Bead = { readonly on: string; readonly widthMm: number }

/** Adds students to the school's class. */
export async function moreStudents({ programId, classId }: School, count: number): Promise<string[]> {
  const ids = Array.from({ length: count }, () => randomUUID())
  await db().person.createMany({ data: ids.map((id, index) => ({ programId, id, signInName: `more.${index}.${id.slice(0, 8)}`, givenName: 'More', familyName: 'Test' })) })
  await db().membership.createMany({ data: ids.map((personId) => ({ programId, personId, role: 'student' as const })) })
  await db().enrolment.createMany({ data: ids.map((personId) => ({ programId, classId, personId })) })
  return ids
}

/** A student's first coupons of the school's exercise, and the standing they lead to. */
export async function practised({ programId, classId, exerciseId, people }: School, studentId: string, beads: readonly Bead[]): Promise<void> {
  const exercise = toExercise(await db().exerciseVersion.findFirstOrThrow({ where: { exerciseId } }))
  const criteria = await criteriaSet(programId, exercise.criteria.id, exercise.criteria.version)
  const findings: Prisma.FindingCreateManyInput[] = []
  const rows = beads.map(({ on, widthMm }, index) => {
    const readings = readingsSchema(FRAME).parse({ ...cleanReadings(), stations: cleanReadings().stations.map((row) => ({ ...row, width: `${widthMm} mm`, legA: '3/8', legB: '3/8' })) })
    const judged = judge(exercise, readings.inspection, criteria)
    const [couponId, inspectionId, at] = [randomUUID(), randomUUID(), new Date(`${on}T12:00:00Z`)]
    findings.push(...judged.scorecard.findings.map((finding) => findingRow(programId, inspectionId, finding)))
    const { verdict, mark, scoringVersion } = judged.scorecard
    return {
      coupon: { programId, id: couponId, classId, studentId, exerciseId, exerciseVersion: 1, number: index + 1, weldedAt: at, receivedAt: at, verdict, mark },
      inspection: { programId, id: inspectionId, couponId, inspectorId: people.instructor, kind: 'instructor' as const, readings: readings as unknown as Prisma.InputJsonObject, submittedAt: at },
      scorecard: {
        programId, inspectionId, criteriaId: exercise.criteria.id, criteriaVersion: exercise.criteria.version, scoringVersion, verdict, mark,
        worstMargin: judged.worstMargin, attributesGood: judged.attributesGood,
      },
    }
  })
  await db().$transaction(async (tx) => {
    await tx.coupon.createMany({ data: rows.map(({ coupon }) => coupon) })
    await tx.inspection.createMany({ data: rows.map(({ inspection }) => inspection) })
    await tx.scorecard.createMany({ data: rows.map(({ scorecard }) => scorecard) })
    await tx.finding.createMany({ data: findings })
    const key = { programId, studentId, exerciseId }
    await holdSkill(tx, key)
    await refreshSkill(tx, key)
  })
}
