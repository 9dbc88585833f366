import type { Frame } from '@/lib/reports/chart-frame'
import { PAPER_CHART_WIDTH } from '@/lib/reports/progress-summary'

/** A chart of a column's width on paper, as high as there is room for; its text stays at its size. */
export function columnFrame(height: number): Frame {
  return { width: PAPER_CHART_WIDTH, height, left: 36, right: PAPER_CHART_WIDTH - 12, top: 20, bottom: height - 40 }
}
