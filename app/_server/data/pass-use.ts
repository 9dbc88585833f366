import 'server-only'
import type { WireCoupon } from '@/lib/reports/wire-used'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { toExercise } from './exercises'
import { couponScope } from './scope'

/** The passes of a student's coupons, as far as the viewer sees them and they say what wire was used, each with its exercise as it was then. */
export async function listPassUse(viewer: Viewer, studentId: string): Promise<(WireCoupon & { readonly exerciseId: string })[]> {
  const coupons = await db().coupon.findMany({
    where: { AND: [{ studentId }, couponScope(viewer)] },
    select: { exerciseId: true, exerciseVersion: true, passes: { select: { wireFeedMmPerS: true, arcSeconds: true } } },
  })
  if (coupons.length === 0) return []
  const keyOf = (exerciseId: string, version: number): string => `${exerciseId} ${version}`
  const wanted = new Map(coupons.map(({ exerciseId, exerciseVersion: version }) => [keyOf(exerciseId, version), { exerciseId, version }]))
  const versions = await db().exerciseVersion.findMany({ where: { programId: viewer.programId, OR: [...wanted.values()] } })
  const byKey = new Map(versions.map((row) => [keyOf(row.exerciseId, row.version), toExercise(row)]))
  return coupons.flatMap(({ exerciseId, exerciseVersion, passes }) => {
    const exercise = byKey.get(keyOf(exerciseId, exerciseVersion))
    return exercise ? [{ exerciseId, exercise, passes }] : []
  })
}
