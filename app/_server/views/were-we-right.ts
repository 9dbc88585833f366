import 'server-only'
import { wereWeRight, type WereWeRight } from '@/lib/reports/were-we-right'
import type { Viewer } from '../auth/viewer'
import { listForecasts } from '../data/test-attempts'

/** How good the forecasts of the tests in the viewer's classes were. */
export async function wereWeRightView(viewer: Viewer): Promise<WereWeRight> {
  return wereWeRight(await listForecasts(viewer))
}
