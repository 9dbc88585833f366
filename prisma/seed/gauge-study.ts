import { nextTurn, type StudyPlan, type Turn } from '@/lib/reports/gauge-study-order'
import { MM_PER_INCH } from '@/lib/units/length'
import { minutesLater } from './calendar'
import { COURSE } from './course'
import { diceOf, type Dice } from './dice'
import { INSTRUCTORS } from './people'
import type { Rows } from './rows'
import type { School } from './school'

/** How someone sets the caliper down: over what is there, mm, and how far apart they read one bead twice. */
type Hand = { readonly overMm: number; readonly apartMm: number }

/** One of them closes the caliper on the toes' outer edges: what a study is there to find. */
const HANDS = {
  'FCAW-S': { overMm: 0, apartMm: 0.1 }, 'FCAW-G': { overMm: 0.42, apartMm: 0.13 }, SMAW: { overMm: -0.06, apartMm: 0.24 },
} as const satisfies Partial<Record<keyof typeof INSTRUCTORS, Hand>>
type Reader = keyof typeof HANDS

const ROUNDS = 2
const PLACE = '2 in from the start'
const MINUTES_APART = 1.5
const LEAST_PLATES = 4
/** How long coupons lie about before they go to the scrap. */
const KEPT_DAYS = 50
/** A caliper is read to the nearest five thousandths. */
const STEP_MM = 0.005 * MM_PER_INCH

type Plate = { readonly id: string; readonly widthMm: number }
type Opened = { readonly name: string; readonly plates: readonly Plate[]; readonly createdAt: Date; readonly closedAt: Date | null; readonly read: Partial<Record<Reader, number>> }

/**
 * Two studies in the self-shielded class: one closed, read by three, and one that waits for the rest of its instructor's readings. The other
 * readers lent a hand on the evening and do not teach the class.
 */
export function measureTwice(school: School, rows: Rows): void {
  const dice = diceOf('toeline/gauge-study')
  const here = school.classes.find(({ process, term }) => process === 'FCAW-S' && term === 'current')
  if (!here) return
  const [earlier, tonight] = here.evenings.slice(-2)
  if (!earlier || !tonight) return
  const personOf = (reader: Reader): string => rows.Person.find(({ signInName }) => signInName === INSTRUCTORS[reader].signInName)?.id ?? ''
  const open = ({ name, plates: chosen, createdAt, closedAt, read }: Opened): void => {
    const { programId } = school
    const studyId = dice.id(createdAt)
    rows.GaugeStudy.push({ programId, id: studyId, classId: here.id, name: `${name}: ${PLACE}`, rounds: ROUNDS, openedById: here.instructorId, createdAt, closedAt })
    rows.GaugeStudyCoupon.push(...chosen.map(({ id }, index) => ({ programId, studyId, couponId: id, sequence: index + 1 })))
    const plan = { id: studyId, rounds: ROUNDS, couponIds: chosen.map(({ id }) => id) }
    for (const [reader, count] of Object.entries(read) as [Reader, number][]) {
      turnsOf(plan, personOf(reader), count).forEach((turn, index) => rows.StudyReading.push({
        programId, studyId, readerId: personOf(reader), ...turn, widthMm: readOff(chosen.find(({ id }) => id === turn.couponId)?.widthMm ?? 0, HANDS[reader], dice),
        createdAt: minutesLater(createdAt, 10 + index * MINUTES_APART),
      }))
    }
  }
  const first = spread(platesOf(school, here.id, earlier.endsAt, rows), 10)
  const second = spread(platesOf(school, here.id, tonight.startsAt, rows), 6)
  if (Math.min(first.length, second.length) < LEAST_PLATES) return
  const all = (chosen: readonly Plate[]): number => chosen.length * ROUNDS
  open({ name: 'First look at our calipers', plates: first, createdAt: earlier.endsAt, closedAt: minutesLater(earlier.endsAt, 95), read: { 'FCAW-S': all(first), 'FCAW-G': all(first), SMAW: all(first) } })
  open({ name: 'After we agreed on the toe', plates: second, createdAt: minutesLater(school.asOf, -70), closedAt: null, read: { 'FCAW-S': 3, 'FCAW-G': all(second) } })
}

/** Coupons of the class that are judged by their width, inspected and still about on that evening, with the width its instructor read first. */
function platesOf(school: School, classId: string, by: Date, rows: Rows): Plate[] {
  const byWidth = new Set(COURSE['FCAW-S'].filter(({ criteria }) => criteria.id === 'shop-bead').slice(0, 1).map(({ key }) => school.exerciseId(key)))
  const looks = new Map(rows.Inspection.filter(({ kind, supersededAt }) => kind === 'instructor' && supersededAt === null).map((look) => [look.couponId, look]))
  const since = minutesLater(by, -KEPT_DAYS * 24 * 60)
  const about = rows.Coupon.filter((coupon) => coupon.classId === classId && byWidth.has(coupon.exerciseId) && coupon.receivedAt > since && coupon.receivedAt < by)
  return about.flatMap(({ id }) => {
    const widthMm = looks.get(id)?.readings.inspection.stations.find((station) => station.widthMm !== undefined)?.widthMm
    return widthMm === undefined ? [] : [{ id, widthMm }]
  }).sort((a, b) => a.widthMm - b.widthMm || (a.id < b.id ? -1 : 1))
}

/** So many of them, from the narrowest to the widest, or all where there are fewer. */
function spread(plates: readonly Plate[], most: number): Plate[] {
  if (plates.length <= most) return [...plates]
  return Array.from({ length: most }, (_, index) => plates[Math.round((index * (plates.length - 1)) / (most - 1))]).flatMap((plate) => plate ?? [])
}

/** The first turns of a reader, in the order the study gives them. */
function turnsOf(plan: StudyPlan, readerId: string, count: number): Turn[] {
  const done: Turn[] = []
  for (let turn = nextTurn(plan, readerId, done); turn && done.length < count; turn = nextTurn(plan, readerId, done)) done.push(turn)
  return done
}

const readOff = (widthMm: number, { overMm, apartMm }: Hand, dice: Dice): number => Math.max(1, Math.round((widthMm + dice.normal(overMm, apartMm)) / STEP_MM)) * STEP_MM
