import 'server-only'
import { JOINTS, type ExerciseFacts } from '@/lib/procedure/exercise'
import { PROCESSES } from '@/lib/procedure/process'
import { boothCardSchema } from '@/lib/schemas/booth-card'
import { GAUGE_UNITS } from '@/lib/units/gauge-steps'
import type { ExerciseVersion } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { classScope, exerciseScope } from './scope'

export type ExerciseRecord = ExerciseFacts & { readonly id: string; readonly version: number }

/** One exercise of a class in its order; `opensAfter` names the exercise to be ready in first. */
export type ClassExerciseRecord = { readonly sequence: number; readonly opensAfterId: string | null; readonly exercise: ExerciseRecord }

function oneOf<T extends string>(known: readonly T[], text: string, what: string): T {
  const found = known.find((each) => each === text)
  if (found === undefined) throw new Error(`The database holds an unknown ${what}: ${text}.`)
  return found
}

/** A row as a record the library understands. */
export function toExercise(row: ExerciseVersion): ExerciseRecord {
  return {
    id: row.exerciseId,
    version: row.version,
    title: row.title,
    process: oneOf(PROCESSES, row.process, 'process'),
    joint: oneOf(JOINTS, row.joint, 'joint'),
    weldType: oneOf(['fillet', 'groove'] as const, row.weldType, 'weld type'),
    position: row.position,
    progression: row.progression === null ? null : oneOf(['up', 'down'] as const, row.progression, 'progression'),
    plateThicknessMm: row.plateThicknessMm,
    material: row.material,
    electrodeClass: row.electrodeClass,
    electrodeDiameterMm: row.electrodeDiameterMm,
    nominalLegMm: row.nominalLegMm,
    lengthMm: row.lengthMm,
    completePenetration: row.completePenetration,
    transverseToTension: row.transverseToTension,
    stiffenerToWeb: row.stiffenerToWeb,
    passCount: row.passCount,
    stationCount: row.stationCount,
    gauge: oneOf(GAUGE_UNITS, row.gauge, 'gauge'),
    boothCard: boothCardSchema.parse(row.boothCard),
    criteria: { id: row.criteriaId, version: row.criteriaVersion },
  }
}

/** The current version of an exercise, or null when it does not exist or is not the viewer's to see. */
export async function findExercise(viewer: Viewer, exerciseId: string): Promise<ExerciseRecord | null> {
  const exercise = await db().exercise.findFirst({
    where: { AND: [{ id: exerciseId }, exerciseScope(viewer)] },
    select: { currentVersion: true },
  })
  if (!exercise) return null
  const row = await db().exerciseVersion.findUnique({
    where: { programId_exerciseId_version: { programId: viewer.programId, exerciseId, version: exercise.currentVersion } },
  })
  return row && toExercise(row)
}

/** The exercises of a class in their order, each in its current version. Empty when the class is not the viewer's to see. */
export async function listClassExercises(viewer: Viewer, classId: string): Promise<ClassExerciseRecord[]> {
  const rows = await db().classExercise.findMany({
    where: { programId: viewer.programId, classId, class: classScope(viewer), exercise: { archivedAt: null } },
    orderBy: { sequence: 'asc' },
    select: { sequence: true, opensAfterId: true, exerciseId: true, exercise: { select: { currentVersion: true } } },
  })
  if (rows.length === 0) return []
  const versions = await db().exerciseVersion.findMany({
    where: {
      programId: viewer.programId,
      OR: rows.map((row) => ({ exerciseId: row.exerciseId, version: row.exercise.currentVersion })),
    },
  })
  const byId = new Map(versions.map((version) => [version.exerciseId, toExercise(version)]))
  return rows.flatMap((row) => {
    const exercise = byId.get(row.exerciseId)
    return exercise ? [{ sequence: row.sequence, opensAfterId: row.opensAfterId, exercise }] : []
  })
}
