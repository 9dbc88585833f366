import 'server-only'
import { explainEye } from '@/lib/reports/explain-eye'
import { drawEye, eyeOverTime, type EyeDrawing, type EyeOverTime } from '@/lib/reports/eye-over-time'
import { formatForReader } from '@/lib/units/display'
import type { Viewer } from '../auth/viewer'
import { listOwnComparedLooks } from '../data/compared-looks'

/** How well the student sees their own welds: in sentences, and as a small drawing where there is something to draw. */
export type EyeView = { readonly sentences: readonly string[]; readonly drawing: (EyeDrawing & { readonly scale: string }) | null }

export const EYE_FRAME = { width: 340, height: 96, left: 12, right: 328, top: 12, bottom: 84 } as const
/** Fewer points than this are no picture. */
const LEAST_DRAWN = 3

/** Looks further back than this say little about how someone sees today. */
const MOST_COMPARED = 40

/** How well the viewer sees their own welds, over the latest coupons of every exercise. */
export async function ownEye(viewer: Viewer): Promise<EyeView> {
  return eyeView(eyeOverTime(await listOwnComparedLooks(viewer, MOST_COMPARED)), viewer)
}

function eyeView(eye: EyeOverTime, { locale, units }: Viewer): EyeView {
  const enough = eye.points.filter(({ widthOffMm }) => widthOffMm !== null).length >= LEAST_DRAWN
  const drawing = enough ? drawEye(eye, EYE_FRAME) : null
  return { sentences: explainEye(eye, { locale, units }), drawing: drawing && { ...drawing, scale: formatForReader(drawing.scaleMm, units) } }
}
