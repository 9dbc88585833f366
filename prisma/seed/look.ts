import type { CriteriaSet, Rule } from '@/lib/criteria/types'
import { blankReadings, type ReadingsForm, type TypedIndication, type TypedStation } from '@/lib/schemas/readings'
import type { Indication, IndicationKind } from '@/lib/scoring/types'
import { formatForReader } from '@/lib/units/display'
import type { Bead, TrueStation } from './bead'
import type { Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import { alongMm, typeAlong, typeCaliper, typeDepth, typeSize, type Typist } from './typing'

/** How well a person sees and measures. */
export type Eye = Typist & {
  /** Share of what a trained inspector would see. */
  readonly sharpness: number
  /** Spread of a size read twice, in mm. */
  readonly slackMm: number
  /** Added to every leg read, in mm: people are kind to themselves. */
  readonly kindnessMm: number
  /** How deep an undercut reads against how deep it is. */
  readonly depthFactor: number
  /** How often something is left unmeasured. */
  readonly forgets: number
}

/** How surely a trained inspector sees each kind. */
const PLAIN: Readonly<Record<IndicationKind, number>> = {
  crack: 0.99, 'crater-crack': 0.97, 'lack-of-fusion': 0.93, undercut: 1, pore: 0.97, overlap: 0.95, 'crater-pipe': 0.96, 'poor-restart': 0.95,
  'arc-strike': 0.97, spatter: 0.98, slag: 0.97, 'burn-through': 0.99,
}

const kindsIn = (rule: Rule): readonly IndicationKind[] => ('of' in rule ? rule.of : [])
/** What a set of criteria asks an inspector to look for. */
const kindsOf = (criteria: CriteriaSet): IndicationKind[] => [...new Set(criteria.rules.flatMap(kindsIn))]

function sees({ kind, depthMm }: Indication, eye: Eye, dice: Dice): boolean {
  const plain = kind === 'undercut' ? 1 - Math.exp(-(depthMm ?? 0) / 0.22) : PLAIN[kind]
  return dice.chance(plain * eye.sharpness)
}

/** A "no" that is there to be seen: an unfilled crater, a cold lap. What is right is seldom called wrong. */
const answer = (right: boolean, plain: number, eye: Eye, dice: Dice): boolean => right || !dice.chance(plain * eye.sharpness ** 1.5)

function fill(blank: TypedStation, station: TrueStation, exercise: ExercisePlan, eye: Eye, dice: Dice): TypedStation {
  const size = (value: number | null): string => (value === null ? '' : typeSize(value + dice.normal(0, eye.slackMm), exercise.gauge, eye, dice))
  const leg = (value: number | null): string => size(value === null ? null : value + eye.kindnessMm)
  const fine = (value: number | null): string => (value === null ? '' : typeSize(value + dice.normal(0, eye.slackMm), 'in64', eye, dice))
  // The shop rule's band is narrower than a fillet gauge can tell: widths are taken with a caliper.
  const width = exercise.criteria.id === 'shop-bead' ? typeCaliper(station.widthMm + dice.normal(0, eye.slackMm), eye, dice) : size(station.widthMm)
  return {
    ...blank,
    width, legA: leg(station.legAMm), legB: leg(station.legBMm),
    convexity: fine(station.convexityMm), reinforcement: fine(station.reinforcementMm),
  }
}

function indicationBoxes(seen: Indication, exercise: ExercisePlan, eye: Eye, dice: Dice): TypedIndication {
  const at = alongMm(seen.atMm, exercise.lengthMm, eye)
  const room = exercise.lengthMm - at
  const length = seen.lengthMm === undefined || alongMm(seen.lengthMm, room, eye) === 0 ? '' : typeAlong(seen.lengthMm, room, eye)
  const depth = (value: number | undefined, factor: number): string =>
    value === undefined ? '' : typeDepth(value * factor * dice.logNormal(1, eye.slackMm), eye, dice)
  return {
    kind: seen.kind, toe: seen.toe ?? null, at: typeAlong(seen.atMm, exercise.lengthMm, eye), length,
    depth: depth(seen.depthMm, eye.depthFactor), diameter: depth(seen.diameterMm, 1), height: '',
  }
}

/** Leaves one thing out, as people do: a column of readings, a kind not looked for, a question not answered. */
function forgetSomething(form: ReadingsForm, exercise: ExercisePlan, dice: Dice): ReadingsForm {
  switch (dice.whole(0, 3)) {
    case 0: return { ...form, cratersFilled: null }
    case 1: return { ...form, lookedFor: form.lookedFor.filter((kind) => kind !== 'undercut' || form.indications.some((each) => each.kind === 'undercut')) }
    case 2: return { ...form, fusionComplete: null }
    default: {
      const box = exercise.weldType === 'groove' ? 'reinforcement' : exercise.criteria.id === 'shop-bead' ? 'legB' : 'convexity'
      return { ...form, stations: form.stations.map((station) => ({ ...station, [box]: '' })) }
    }
  }
}

/** What a person writes in the form after looking at a weld. */
export function look(bead: Bead, exercise: ExercisePlan, criteria: CriteriaSet, eye: Eye, dice: Dice): ReadingsForm {
  const kinds = kindsOf(criteria)
  const seen = bead.indications.filter((each) => sees(each, eye, dice))
  const blank = blankReadings(bead.stations.map(({ atMm }) => formatForReader(atMm, eye.units)))
  const form: ReadingsForm = {
    stations: bead.stations.flatMap((station, index) => blank.stations[index] ? [fill(blank.stations[index], station, exercise, eye, dice)] : []),
    indications: seen.map((each) => indicationBoxes(each, exercise, eye, dice)),
    lookedFor: kinds,
    cratersFilled: answer(bead.cratersFilled, 0.97, eye, dice),
    fusionComplete: answer(bead.fusionComplete, 0.94, eye, dice),
  }
  return dice.chance(eye.forgets) ? forgetSomething(form, exercise, dice) : form
}
