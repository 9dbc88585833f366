import 'server-only'
import { gaugeFigures, type NamedReader, type WidthBand, type WidthReading } from '@/lib/reports/gauge-study-figures'
import type { StudyPlan } from '@/lib/reports/gauge-study-order'
import { biasText, gaugeWords, spreadRows, spreadText, type SpreadRow } from '@/lib/reports/gauge-study-words'
import { formatForReader } from '@/lib/units/display'
import type { Viewer } from '../auth/viewer'
import type { StudyRecord } from '../data/gauge-studies'
import { widthBandOf } from './width-pad'

/** What the drawing and its table are made of. `label` of a coupon: its place on the bench and its tag. */
export type StudyDrawing = {
  readonly plan: StudyPlan
  readonly readers: readonly NamedReader[]
  readonly readings: readonly WidthReading[]
  readonly band: WidthBand | null
  readonly units: 'in' | 'mm'
  readonly rows: readonly { readonly key: string; readonly cells: readonly string[] }[]
}

export type StudyResult = {
  /** The most telling sentence first; where there are no figures, why. */
  readonly words: readonly string[]
  /** null where there are no figures. */
  readonly figures: null | {
    readonly spread: readonly SpreadRow[]
    readonly readers: readonly { readonly key: string; readonly name: string; readonly mean: string; readonly apart: string }[]
    /** What the criteria allow for the width; null where there are no two ends the same for every coupon. */
    readonly band: string | null
  }
  /** null where nothing was read. */
  readonly drawing: StudyDrawing | null
}

/** What a closed study says. */
export async function studyResult(viewer: Viewer, study: StudyRecord): Promise<StudyResult> {
  const { units } = viewer
  const plan = { id: study.id, rounds: study.rounds, couponIds: study.coupons.map(({ id }) => id) }
  const band = await bandOf(viewer, study)
  const figures = gaugeFigures(plan, study.readers, study.readings, band)
  return {
    words: figures.kind === 'none' ? [figures.why] : gaugeWords(figures, units),
    figures: figures.kind === 'none' ? null : {
      spread: spreadRows(figures, units),
      readers: figures.readers.map(({ id, name, meanMm, bias }) => ({ key: id, name, mean: spreadText(meanMm, units), apart: biasText(bias, units) })),
      band: band && `${formatForReader(band.minMm, units)} to ${formatForReader(band.maxMm, units)}`,
    },
    drawing: drawingOf(study, plan, band, units),
  }
}

function drawingOf({ coupons, readers, readings }: StudyRecord, plan: StudyPlan, band: WidthBand | null, units: 'in' | 'mm'): StudyDrawing | null {
  if (readings.length === 0) return null
  const present = readers.filter(({ done }) => done.length > 0).map(({ id, name }) => ({ id, name }))
  const widths = (couponId: string, readerId: string): string => readings
    .filter((each) => each.couponId === couponId && each.readerId === readerId).sort((a, b) => a.round - b.round)
    .map(({ round, widthMm }) => `${round}: ${spreadText(widthMm, units).replace(/ (in|mm)$/, '')}`).join(', ')
  return {
    plan, readings, band, units, readers: present,
    rows: coupons.map(({ id, sequence, student, number }) => ({ key: id, cells: [`${sequence}. ${student}, no.\u00a0${number}`, ...present.map((reader) => widths(id, reader.id))] })),
  }
}

/** The band every coupon of a study shares: of exercises that allow different widths there is none. */
async function bandOf(viewer: Viewer, { coupons }: StudyRecord): Promise<WidthBand | null> {
  const bands = await Promise.all(coupons.map(async ({ exercise }) => (await widthBandOf(viewer, exercise))?.allowed ?? null))
  const [first] = bands
  const alike = bands.every((each) => each?.minMm === first?.minMm && each?.maxMm === first?.maxMm)
  return first && alike && first.minMm !== null && first.maxMm !== null ? { minMm: first.minMm, maxMm: first.maxMm } : null
}
