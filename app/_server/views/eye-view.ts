import 'server-only'
import { explainEye } from '@/lib/reports/explain-eye'
import { drawEye, eyeOverTime, type EyeDrawing, type EyeOverTime } from '@/lib/reports/eye-over-time'
import { formatForReader } from '@/lib/units/display'
import type { Viewer } from '../auth/viewer'
import { listComparedLooks } from '../data/compared-looks'

/** How well the student sees their own welds: in sentences, and as a small drawing where there is something to draw. */
export type EyeView = { readonly sentences: readonly string[]; readonly drawing: (EyeDrawing & { readonly scale: string }) | null }

export const EYE_FRAME = { width: 340, height: 96, left: 12, right: 328, top: 12, bottom: 84 } as const
/** Fewer points than this are no picture. */
const LEAST_DRAWN = 3

/** Looks further back than this say little about how someone sees today. */
const MOST_COMPARED = 40

/** How well the viewer sees their own welds, over the latest coupons of every exercise. */
export async function ownEye(viewer: Viewer): Promise<EyeView> {
  return eyeOf(viewer, viewer.personId)
}

/** How well a student sees their own welds, for the student or their staff: over coupons no look of the viewer's own is still to come for. */
export async function eyeOf(viewer: Viewer, studentId: string): Promise<EyeView> {
  return eyeView(eyeOverTime(await listComparedLooks(viewer, studentId, MOST_COMPARED)), viewer, studentId === viewer.personId ? 'student' : 'other')
}

function eyeView(eye: EyeOverTime, { locale, units }: Viewer, who: 'student' | 'other'): EyeView {
  const enough = eye.points.filter(({ widthOffMm }) => widthOffMm !== null).length >= LEAST_DRAWN
  const drawing = enough ? drawEye(eye, EYE_FRAME) : null
  return { sentences: explainEye(eye, { locale, units, who }), drawing: drawing && { ...drawing, scale: formatForReader(drawing.scaleMm, units) } }
}
