import type { AdvisedRange, BoothCard } from '../procedure/booth-card'
import type { ExerciseFacts } from '../procedure/exercise'
import { formatForReader } from '../units/display'
import { formatGasFlow, litresPerMinute, parseGasFlow } from '../units/gas-flow'
import { parseLength, type LengthUnit } from '../units/length'
import { fixed, readQuantity } from '../units/quantity'
import { formatTravelSpeed, parseTravelSpeed, travelSpeedMmPerS } from '../units/travel-speed'
import { formatWireFeedSpeed, parseWireFeedSpeed, wireFeedMmPerS } from '../units/wire-feed-speed'

/** The ranges of a booth card, in the order a card shows them. */
export const CARD_RANGES = [
  'amps', 'volts', 'wireFeedMmPerS', 'contactTipToWorkMm', 'travelSpeedMmPerS', 'gasFlowLPerMin', 'workAngleDeg', 'travelAngleDeg', 'sidePauseSeconds',
] as const satisfies readonly (keyof BoothCard)[]
export type CardRange = (typeof CARD_RANGES)[number]

/** Facts about the joint that nobody need have said. */
export const JOINT_FACTS = ['completePenetration', 'transverseToTension', 'stiffenerToWeb'] as const satisfies readonly (keyof ExerciseFacts)[]
export type JointFact = (typeof JOINT_FACTS)[number]

export const EXERCISE_BOXES = [
  'title', 'process', 'joint', 'position', 'progression', 'plateThickness', 'material', 'electrodeClass', 'electrodeDiameter', 'nominalLeg', 'length',
  'passCount', 'stationCount', 'gauge', 'criteria', 'polarity', 'gas', 'travelDirection', 'note',
] as const
export type ExerciseBox = (typeof EXERCISE_BOXES)[number] | JointFact | `${CardRange}Min` | `${CardRange}Max`

/** An exercise as text in the boxes of a form. */
export type TypedExercise = Record<ExerciseBox, string>

type Kind = { readonly label: string; readonly unit: string; readonly most: number; readonly read: (text: string) => number; readonly write: (value: number) => string }

const plain = (noun: string, unit: string, spellings: readonly string[], digits: number) => ({
  read: (text: string): number => readQuantity(text, noun, Object.fromEntries([unit, ...spellings].map((name) => [name, 1])), unit, `12 ${unit}`),
  write: (value: number): string => `${fixed(value, digits).replace(/\.0+$/, '')} ${unit}`,
})

/** How a range of the card is named, read and written in the reader's units; `most` in the library's. */
export function rangeKind(range: CardRange, units: LengthUnit): Kind {
  const inches = units === 'in'
  switch (range) {
    case 'amps': return { label: 'Amperage', unit: 'A', most: 2000, ...plain('a current', 'A', ['a', 'amp', 'amps'], 0) }
    case 'volts': return { label: 'Voltage', unit: 'V', most: 100, ...plain('a voltage', 'V', ['v', 'volt', 'volts'], 1) }
    case 'wireFeedMmPerS': return {
      label: 'Wire feed', unit: inches ? 'in/min' : 'm/min', most: 1000, read: (text) => parseWireFeedSpeed(text, inches ? 'in/min' : 'm/min'),
      write: (value) => formatWireFeedSpeed(wireFeedMmPerS(value), inches ? { unit: 'in/min', digits: 0 } : { unit: 'm/min', digits: 1 }),
    }
    case 'contactTipToWorkMm': return { label: 'Contact tip to work', unit: units, most: 150, read: (text) => parseLength(text, units), write: (value) => formatForReader(value, units) }
    case 'travelSpeedMmPerS': return {
      label: 'Travel speed', unit: inches ? 'in/min' : 'mm/s', most: 200, read: (text) => parseTravelSpeed(text, inches ? 'in/min' : 'mm/s'),
      write: (value) => formatTravelSpeed(travelSpeedMmPerS(value), { unit: inches ? 'in/min' : 'mm/s', digits: 1 }),
    }
    case 'gasFlowLPerMin': return {
      label: 'Gas flow', unit: inches ? 'cfh' : 'L/min', most: 100, read: (text) => parseGasFlow(text, inches ? 'cfh' : 'L/min'),
      write: (value) => formatGasFlow(litresPerMinute(value), inches ? { unit: 'cfh', digits: 0 } : { unit: 'L/min', digits: 1 }),
    }
    case 'workAngleDeg': return { label: 'Work angle', unit: '°', most: 180, ...plain('an angle', '°', ['deg', 'degrees'], 0) }
    case 'travelAngleDeg': return { label: 'Travel angle', unit: '°', most: 90, ...plain('an angle', '°', ['deg', 'degrees'], 0) }
    case 'sidePauseSeconds': return { label: 'Pause at each side', unit: 's', most: 10, ...plain('a time', 's', ['sec', 'second', 'seconds'], 1) }
  }
}

/** A stored exercise as text for the boxes, in the reader's units. */
export function typedExercise(facts: ExerciseFacts, units: LengthUnit): TypedExercise {
  const length = (value: number | null): string => (value === null ? '' : formatForReader(value, units))
  const yesNo = (value: boolean | null | undefined): string => (value === true ? 'yes' : value === false ? 'no' : '')
  const { boothCard } = facts
  return {
    title: facts.title, process: facts.process, joint: facts.joint, position: facts.position, progression: facts.progression ?? '',
    plateThickness: length(facts.plateThicknessMm), material: facts.material, electrodeClass: facts.electrodeClass,
    electrodeDiameter: length(facts.electrodeDiameterMm), nominalLeg: length(facts.nominalLegMm), length: length(facts.lengthMm),
    passCount: String(facts.passCount), stationCount: String(facts.stationCount), gauge: facts.gauge, criteria: `${facts.criteria.id}@${facts.criteria.version}`,
    polarity: boothCard.polarity, gas: boothCard.gas ?? '', travelDirection: boothCard.travelDirection ?? '', note: boothCard.note ?? '',
    ...(Object.fromEntries(JOINT_FACTS.map((fact) => [fact, yesNo(facts[fact])])) as Record<JointFact, string>),
    ...(Object.fromEntries(CARD_RANGES.flatMap((range) => typedRange(range, boothCard[range], units))) as Record<`${CardRange}Min` | `${CardRange}Max`, string>),
  }
}

function typedRange(range: CardRange, advised: AdvisedRange | null, units: LengthUnit): [string, string][] {
  const { write } = rangeKind(range, units)
  const end = (value: number | null | undefined): string => (value === null || value === undefined ? '' : write(value))
  return [[`${range}Min`, end(advised?.min)], [`${range}Max`, end(advised?.max)]]
}
