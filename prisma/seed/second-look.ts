import { isReadTwice } from '@/lib/scoring/second-read'
import type { Bead } from './bead'
import { minutesLater } from './calendar'
import { diceOf, type Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import type { Inspector } from './eyes'
import { criteriaOf, inspect, type Inspected } from './inspect'
import { look } from './look'
import { INSTRUCTORS } from './people'

/** How many of the coupons a school has read twice, and whether some of them still wait for it. */
export type ReadTwice = { readonly share: number; readonly waits: boolean }

/** Each instructor reads most for one other; every class has one alone, so the readers come from other classes. */
const PARTNERS: readonly (readonly [string, string])[] = [
  [INSTRUCTORS['FCAW-S'].signInName, INSTRUCTORS.SMAW.signInName], [INSTRUCTORS['FCAW-G'].signInName, INSTRUCTORS.GMAW.signInName],
]
const TO_PARTNER = 0.6

/** What a second reader brings along: undercut read shallow or deep, beads read wide. So there is something to talk over. */
const BIAS: Readonly<Record<string, { readonly depth: number; readonly widthMm: number }>> = {
  [INSTRUCTORS.GMAW.signInName]: { depth: 0.4, widthMm: 0 },
  [INSTRUCTORS['FCAW-G'].signInName]: { depth: 1.3, widthMm: 0.25 },
  [INSTRUCTORS.SMAW.signInName]: { depth: 1.5, widthMm: 0 },
}

/** The reader who takes it, when, and what they found; `found` is null while it waits. */
export type SecondLook = { readonly reader: Inspector; readonly at: Date; readonly found: Inspected | null; readonly dice: Dice }

type Graded = { readonly couponId: string; readonly bead: Bead; readonly exercise: ExercisePlan; readonly first: Inspector; readonly gradedAt: Date }

/** A second look at a graded coupon, some hours or days after the first; null where nobody gives one. Chance of its own, so the rest of the school stays as it is. */
export function secondLook({ couponId, bead, exercise, first, gradedAt }: Graded, { share, waits }: ReadTwice, inspectors: Iterable<Inspector>, asOf: Date): SecondLook | null {
  if (!isReadTwice(couponId, share)) return null
  const dice = diceOf(`toeline/second/${couponId}`)
  const reader = readerFor(first, [...inspectors], dice)
  const at = minutesLater(gradedAt, dice.between(30, 4 * 24 * 60))
  if (at >= asOf) return waits ? { reader, at, found: null, dice } : null
  const { depth, widthMm } = BIAS[reader.signInName] ?? { depth: 1, widthMm: 0 }
  const eye = { ...reader.eye, depthFactor: reader.eye.depthFactor * depth }
  const seen = { ...bead, stations: bead.stations.map((station) => ({ ...station, widthMm: station.widthMm + widthMm })) }
  return { reader, at, found: inspect(exercise, look(seen, exercise, criteriaOf(exercise), eye, dice), eye), dice }
}

function readerFor(first: Inspector, inspectors: readonly Inspector[], dice: Dice): Inspector {
  const others = inspectors.filter(({ id }) => id !== first.id)
  const pair = PARTNERS.find((each) => each.includes(first.signInName))
  const partner = others.find(({ signInName }) => pair?.includes(signInName))
  return partner && dice.chance(TO_PARTNER) ? partner : dice.pick(others.filter((each) => each !== partner))
}
