import { INDICATION_KINDS, type FindingVerdict, type Indication, type Inspection, type Station, type Weld } from '@/lib/scoring/types'

/** One weld at or just past one limit, and what a rule must say of it. */
export type LimitCase = {
  readonly set: string
  readonly rule: string
  readonly what: string
  /** The document outside this project the limit was taken from, or that it is from memory or common practice. */
  readonly source: string
  readonly weld: Weld
  readonly inspection: Inspection
  readonly verdict: FindingVerdict
  /** The finding's reason, where it matters which. */
  readonly reason: string | null
}

/** What differs from a sound weld with everything looked for. */
export type Change = {
  readonly weld?: Partial<Weld>
  /** Readings at every station. */
  readonly at?: Omit<Station, 'atMm'>
  readonly stations?: readonly Station[]
  readonly indications?: readonly Indication[]
  readonly cratersFilled?: boolean
  readonly fusionComplete?: boolean
  readonly reason?: string
}

const fillet: Weld = {
  type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 10, electrodeDiameterMm: 1.6, nominalLegMm: 8, lengthMm: 400,
}
export const GROOVE = { type: 'groove', position: '3G', nominalLegMm: null } as const

/** Five stations, each standing for a fifth of the weld. */
const PLACES = [0.1, 0.3, 0.5, 0.7, 0.9]

/** Cases of one rule of one set. */
export function casesOf(set: string, rule: string, source: string) {
  const one = (verdict: FindingVerdict) => (what: string, change: Change): LimitCase => {
    const weld = { ...fillet, ...change.weld }
    return {
      set, rule, what, source, verdict, weld, reason: change.reason ?? null,
      inspection: {
        stations: change.stations ?? PLACES.map((share): Station => ({ atMm: share * weld.lengthMm, ...change.at })),
        indications: change.indications ?? [],
        lookedFor: INDICATION_KINDS,
        cratersFilled: change.cratersFilled ?? true,
        fusionComplete: change.fusionComplete ?? true,
      },
    }
  }
  const accepts = one('accept')
  const rejects = one('reject')
  return {
    accepts, rejects, ignores: one('not-applicable'),
    /** Both sides of a limit: on it, and just past it. */
    edge: (what: string, change: (reading: number) => Change, on: number, past: number): readonly LimitCase[] => [
      accepts(`${what}: ${on} is on the limit`, change(on)),
      rejects(`${what}: ${past} is past it`, change(past)),
    ],
  }
}

/** Stations whose one bad reading stands for `[center - half, center + half]`, the rest good. */
export function oneBadStretch<K extends keyof Omit<Station, 'atMm'>>(fields: readonly K[], good: number, bad: number, halfMm: number, lengthMm: number): readonly Station[] {
  const center = lengthMm / 2
  const read = (value: number) => Object.fromEntries(fields.map((field) => [field, value]))
  return [
    { atMm: 0, ...read(good) }, { atMm: center - 2 * halfMm, ...read(good) }, { atMm: center, ...read(bad) },
    { atMm: center + 2 * halfMm, ...read(good) }, { atMm: lengthMm, ...read(good) },
  ]
}

/** Two bad stretches of 20 mm, the second beginning `apart` mm after the first ends at 20. */
export function twoBadStretches<K extends keyof Omit<Station, 'atMm'>>(field: K, good: number, bad: number, apart: number, lengthMm: number): readonly Station[] {
  const second = 20 + apart + 10
  return [
    { atMm: 0, [field]: bad }, { atMm: 40, [field]: good }, { atMm: second - 20, [field]: good }, { atMm: second, [field]: bad },
    { atMm: second + 20, [field]: good }, { atMm: lengthMm, [field]: good },
  ]
}
