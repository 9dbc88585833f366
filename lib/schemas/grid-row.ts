import { problems } from '../language/problems'
import { say } from '../language/say'
import { INDICATION_KINDS } from '../scoring/types'
import { parseLength, type LengthUnit } from '../units/length'
import { readShortForm } from './indication-short-form'
import { blankReadings, type ReadingsForm, type StationBox } from './readings'

/** One coupon as a row of the grading grid: every cell as typed. Sizes go by '0.width', 'place of the station.box'. */
export type GridRow = {
  readonly sizes: Readonly<Record<string, string>>
  /** Everything was looked for; what stands under `seen` was found, nothing else was. */
  readonly looked: boolean
  /** 'y', 'n' or nothing. */
  readonly craters: string
  readonly fusion: string
  /** Indications in their short form. */
  readonly seen: string
  readonly remark: string
}

export const BLANK_ROW: GridRow = { sizes: {}, looked: false, craters: '', fusion: '', seen: '', remark: '' }

/** What the columns of a grid are: the stations' places as text, the boxes each has, and the units a bare number is in. */
export type GridFrame = { readonly places: readonly string[]; readonly boxes: readonly StationBox[]; readonly units: LengthUnit }

/** Sentences by cell: '0.width', 'craters', 'seen'. */
export type CellProblems = Readonly<Record<string, string>>
export type RowReadings = { readonly kind: 'readings'; readonly readings: ReadingsForm } | { readonly kind: 'problems'; readonly cells: CellProblems }

export const sizeCell = (station: number, box: StationBox): string => `${station}.${box}`

/** The sentence for a size that cannot be read, or null. An empty cell is "not measured", which is no problem. */
export function sizeProblem(text: string, units: LengthUnit): string | null {
  if (text.trim() === '') return null
  try {
    parseLength(text, units)
    return null
  } catch {
    return say(problems, 'en', 'notALength', { typed: text.trim() })
  }
}

const ANSWERS: Readonly<Record<string, boolean | null>> = { '': null, y: true, yes: true, n: false, no: false }
const answerOf = (text: string): boolean | null | undefined => ANSWERS[text.trim().toLowerCase()]

/** The sentence for an answer that is neither yes nor no nor empty, or null. */
export const answerProblem = (text: string): string | null =>
  answerOf(text) === undefined ? `“${text.trim()}” is no answer. Write y or n, or leave it empty: not looked.` : null

/** The sentence for a cell as it stands, or null. */
export function cellProblem(cell: string, text: string, units: LengthUnit): string | null {
  if (cell === 'remark') return null
  if (cell === 'craters' || cell === 'fusion') return answerProblem(text)
  if (cell !== 'seen') return sizeProblem(text, units)
  const read = readShortForm(text)
  return read.kind === 'problem' ? read.message : null
}

/** Whether anything of an inspection stands in the row. A remark alone is none. */
export const isEmptyRow = (row: GridRow): boolean =>
  !row.looked && [...Object.values(row.sizes), row.craters, row.fusion, row.seen].every((text) => text.trim() === '')

/** A row as the readings a form would send, or what is wrong with its cells. */
export function readingsOfRow(row: GridRow, frame: GridFrame): RowReadings {
  const cells: Record<string, string> = {}
  const check = (cell: string, text: string): void => {
    const found = cellProblem(cell, text, frame.units)
    if (found !== null) cells[cell] = found
  }
  frame.places.forEach((_, station) => frame.boxes.forEach((box) => check(sizeCell(station, box), row.sizes[sizeCell(station, box)] ?? '')))
  check('craters', row.craters)
  check('fusion', row.fusion)
  const seen = readShortForm(row.seen)
  if (seen.kind === 'problem') cells['seen'] = seen.message
  if (Object.keys(cells).length > 0 || seen.kind === 'problem') return { kind: 'problems', cells }
  const blank = blankReadings(frame.places)
  return {
    kind: 'readings',
    readings: {
      stations: blank.stations.map((station, index) => ({ ...station, ...Object.fromEntries(frame.boxes.map((box) => [box, row.sizes[sizeCell(index, box)] ?? ''])) })),
      indications: [...seen.indications],
      lookedFor: row.looked ? [...INDICATION_KINDS] : [],
      cratersFilled: answerOf(row.craters) ?? null,
      fusionComplete: answerOf(row.fusion) ?? null,
    },
  }
}

/** The cell that a sentence about a path of the readings belongs to: 'readings.stations.2.width' is '2.width'. null: the whole row. */
export function cellOfPath(path: string): string | null {
  const [, station, box] = /^readings\.stations\.(\d+)\.(\w+)$/.exec(path) ?? []
  if (station !== undefined && box !== undefined) return `${station}.${box}`
  if (path.startsWith('readings.indications')) return 'seen'
  if (path === 'readings.cratersFilled') return 'craters'
  if (path === 'readings.fusionComplete') return 'fusion'
  return path === 'comment' ? 'remark' : null
}

/**
 * The row with a station's sizes repeated, at the grader's own key: from `box` to the station's end as at the station before. At the first
 * station only a leg can repeat, the other leg's size. Returns null where there is nothing to repeat.
 */
export function repeatSize(row: GridRow, frame: GridFrame, station: number, box: StationBox): GridRow | null {
  if (station === 0) {
    const leg = row.sizes[sizeCell(0, 'legA')]?.trim()
    return box === 'legB' && leg ? { ...row, sizes: { ...row.sizes, [sizeCell(0, 'legB')]: leg } } : null
  }
  const boxes = frame.boxes.slice(frame.boxes.indexOf(box))
  const before = boxes.map((each) => [sizeCell(station, each), row.sizes[sizeCell(station - 1, each)]?.trim() ?? ''] as const)
  return before.some(([, text]) => text !== '') ? { ...row, sizes: { ...row.sizes, ...Object.fromEntries(before) } } : null
}
