import * as z from 'zod'
import { readClassification } from '../consumables/classification'
import { CARD_RANGES, EXERCISE_BOXES, JOINT_FACTS, rangeKind, type CardRange, type ExerciseBox } from '../course/typed-exercise'
import { JOINTS, type ExerciseFacts } from '../procedure/exercise'
import { POLARITIES, PROCESSES } from '../procedure/process'
import type { AdvisedRange } from '../procedure/booth-card'
import { formatForReader } from '../units/display'
import { GAUGE_UNITS } from '../units/gauge-steps'
import { parseLength } from '../units/length'
import { tidyText, uuid, type Reader } from './field'

const MOST = { title: 120, material: 60, note: 500, gas: 20, plateMm: 200, wireMm: 10, legMm: 60, lengthMm: 3000, passes: 40, stations: 40 }
const PLATE_POSITION = /^[1-4][FG]$/

const BOXES: readonly ExerciseBox[] = [...EXERCISE_BOXES, ...JOINT_FACTS, ...CARD_RANGES.flatMap((range) => [`${range}Min`, `${range}Max`] as const)]
const boxes = Object.fromEntries(BOXES.map((box) => [box, z.string().max(1000)])) as Record<ExerciseBox, z.ZodString>

/**
 * An exercise as typed, in the reader's units. Output: its class, the version it was made from, and its facts; every box that cannot be
 * read has a sentence of its own.
 */
export function exerciseFormSchema(reader: Reader) {
  return z.strictObject({ classId: uuid, exerciseId: uuid, fromVersion: z.coerce.number().int().min(1), ...boxes }).transform((typed, context) => {
    const reading = new Reading(typed, reader, (box, message) => context.addIssue({ code: 'custom', path: [box], message }))
    const facts = reading.facts()
    return reading.failed ? z.NEVER : { classId: typed.classId, exerciseId: typed.exerciseId, fromVersion: typed.fromVersion, facts }
  })
}
export type ExerciseForm = z.output<ReturnType<typeof exerciseFormSchema>>

/** Reads the boxes one by one; what it gives back counts only when nothing failed. */
class Reading {
  failed = false
  constructor(
    private readonly typed: Readonly<Record<ExerciseBox, string>>,
    private readonly reader: Reader,
    private readonly tell: (box: ExerciseBox, message: string) => void,
  ) {}

  facts(): ExerciseFacts {
    const position = tidyText(this.typed.position).toUpperCase()
    if (!PLATE_POSITION.test(position)) this.fail('position', 'Choose a position from 1F to 4F or 1G to 4G.')
    const fillet = position.endsWith('F')
    const vertical = position.startsWith('3')
    const progression = this.typed.progression === 'up' || this.typed.progression === 'down' ? this.typed.progression : null
    if (vertical && progression === null) this.fail('progression', 'Say whether it is welded up or down: a vertical weld is one or the other.')
    const electrodeClass = this.electrode()
    const [criteria = '', version = ''] = this.typed.criteria.split('@')
    if (!/^[1-9]\d{0,6}$/.test(version)) this.fail('criteria', 'Choose the criteria it is judged by.')
    return {
      title: this.text('title', MOST.title), process: this.choice('process', PROCESSES), joint: this.choice('joint', JOINTS),
      weldType: fillet ? 'fillet' : 'groove', position, progression: vertical ? progression : null,
      plateThicknessMm: this.length('plateThickness', MOST.plateMm) ?? this.missing('plateThickness', 'the thickness of the plate'),
      material: this.text('material', MOST.material), electrodeClass, electrodeDiameterMm: this.length('electrodeDiameter', MOST.wireMm),
      nominalLegMm: fillet ? (this.length('nominalLeg', MOST.legMm) ?? this.missing('nominalLeg', 'the leg of the fillet')) : null,
      lengthMm: this.length('length', MOST.lengthMm) ?? this.missing('length', 'the length of the weld'),
      passCount: this.count('passCount', MOST.passes), stationCount: this.count('stationCount', MOST.stations), gauge: this.choice('gauge', GAUGE_UNITS),
      completePenetration: this.answer('completePenetration'), transverseToTension: this.answer('transverseToTension'), stiffenerToWeb: this.answer('stiffenerToWeb'),
      boothCard: {
        polarity: this.choice('polarity', POLARITIES), amps: this.range('amps'), volts: this.range('volts'), wireFeedMmPerS: this.range('wireFeedMmPerS'),
        contactTipToWorkMm: this.range('contactTipToWorkMm'), travelSpeedMmPerS: this.range('travelSpeedMmPerS'), gas: this.optional('gas', MOST.gas),
        gasFlowLPerMin: this.range('gasFlowLPerMin'), workAngleDeg: this.range('workAngleDeg'), travelAngleDeg: this.range('travelAngleDeg'),
        travelDirection: this.typed.travelDirection === 'drag' || this.typed.travelDirection === 'push' ? this.typed.travelDirection : null,
        sidePauseSeconds: this.range('sidePauseSeconds'), note: this.optional('note', MOST.note),
      },
      criteria: { id: criteria, version: Number(version) },
    }
  }

  private fail(box: ExerciseBox, message: string): void {
    this.failed = true
    this.tell(box, message)
  }

  private missing(box: ExerciseBox, what: string): number {
    if (this.typed[box].trim() === '') this.fail(box, `Type ${what}.`)
    return 1
  }

  private optional(box: ExerciseBox, most: number): string | null {
    const text = tidyText(this.typed[box])
    if (text.length > most) this.fail(box, `Keep it to ${most} characters; this has ${text.length}.`)
    return text || null
  }

  private text(box: ExerciseBox, most: number): string {
    const text = this.optional(box, most)
    if (text === null) this.fail(box, 'This cannot stay empty.')
    return text ?? ''
  }

  private choice<T extends string>(box: ExerciseBox, known: readonly [T, ...T[]] | readonly T[]): T {
    const found = known.find((each) => each === this.typed[box])
    if (found === undefined) this.fail(box, 'Choose one.')
    return found ?? (known[0] as T)
  }

  private answer(box: ExerciseBox): boolean | null {
    return this.typed[box] === 'yes' ? true : this.typed[box] === 'no' ? false : null
  }

  private count(box: ExerciseBox, most: number): number {
    const text = this.typed[box].trim()
    const value = /^\d{1,4}$/.test(text) ? Number(text) : 0
    if (value < 1 || value > most) this.fail(box, `Type a whole number from 1 to ${most}.`)
    return value
  }

  private read(box: ExerciseBox, read: (text: string) => number): number | null {
    const text = this.typed[box].trim()
    if (text === '') return null
    try {
      return read(text)
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      this.fail(box, error.message)
      return null
    }
  }

  /** A length above zero; null when the box is empty or cannot be read. */
  private length(box: ExerciseBox, mostMm: number): number | null {
    const value = this.read(box, (text) => parseLength(text, this.reader.units))
    if (value === 0) this.fail(box, 'A size is more than zero.')
    if (value !== null && value > mostMm) this.fail(box, `At most ${formatForReader(mostMm, this.reader.units)} is taken here. Was the point meant elsewhere?`)
    return value
  }

  private range(range: CardRange): AdvisedRange | null {
    const kind = rangeKind(range, this.reader.units)
    const [min, max] = [this.read(`${range}Min`, kind.read), this.read(`${range}Max`, kind.read)]
    for (const [end, value] of [['Min', min], ['Max', max]] as const) {
      if (value !== null && value > kind.most) this.fail(`${range}${end}`, `At most ${kind.write(kind.most)} is taken here. Was the point meant elsewhere?`)
    }
    if (min !== null && max !== null && min > max) this.fail(`${range}Max`, 'The larger end is smaller than the other one: a range starts at its smaller end.')
    return min === null && max === null ? null : { min, max }
  }

  private electrode(): string {
    const text = this.text('electrodeClass', MOST.material)
    if (text === '') return text
    try {
      return readClassification(text).classification
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      this.fail('electrodeClass', error.message)
      return text
    }
  }
}
