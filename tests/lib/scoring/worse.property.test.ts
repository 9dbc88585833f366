import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import type { FindingVerdict, Indication, Inspection, Scorecard, Station, Verdict } from '@/lib/scoring/types'
import { indicationOn, looks, sizes, type Look } from './arbitraries'

const GOODNESS: Readonly<Record<Verdict | FindingVerdict, number>> = { accept: 2, incomplete: 1, 'not-measured': 1, reject: 0, 'not-applicable': 3 }

/** Everything that came out better, in words: one assertion for them all keeps the test quick. */
function betterThings(after: Scorecard, before: Scorecard): readonly string[] {
  const better: string[] = []
  if (GOODNESS[after.verdict] > GOODNESS[before.verdict]) better.push(`verdict ${before.verdict} to ${after.verdict}`)
  if (after.mark !== null && before.mark !== null && after.mark > before.mark) better.push(`mark ${before.mark} to ${after.mark}`)
  before.findings.forEach((was, index) => {
    const now = after.findings[index]
    if (now?.rule !== was.rule) better.push(`${was.rule} has gone`)
    else if (GOODNESS[now.verdict] > GOODNESS[was.verdict]) better.push(`${was.rule} from ${was.verdict} to ${now.verdict}`)
    else if (now.margin !== null && was.margin !== null && now.margin > was.margin + 1e-9) better.push(`${was.rule} from margin ${was.margin} to ${now.margin}`)
  })
  return better
}

function expectNoBetter(after: Scorecard, before: Scorecard): void {
  expect(betterThings(after, before)).toEqual([])
}

type Worsen = (inspection: Inspection, index: number, by: number, look: Look) => Inspection

const changeAt = <T>(list: readonly T[], index: number, change: (one: T) => T): readonly T[] =>
  list.length === 0 ? list : list.map((one, i) => (i === index % list.length ? change(one) : one))

const indicationGrown = (field: 'lengthMm' | 'depthMm' | 'diameterMm' | 'heightMm'): Worsen => (inspection, index, by) => ({
  ...inspection,
  indications: changeAt(inspection.indications, index, (one): Indication => (one[field] === undefined ? one : { ...one, [field]: one[field] + by })),
})

const stationChanged = (change: (station: Station, by: number) => Station): Worsen => (inspection, index, by) => ({
  ...inspection, stations: changeAt(inspection.stations, index, (station) => change(station, by)),
})

type Grown = 'convexityMm' | 'reinforcementMm' | 'misalignmentMm' | 'underfillMm' | 'rootConcavityMm' | 'penetrationMm'
  | 'shrinkageGrooveMm' | 'rootShortfallMm' | 'rootPoreMm' | 'rootGapMm'
const grown = (field: Grown) => stationChanged((station, by) =>
  (station[field] === undefined ? station : { ...station, [field]: station[field] + by }))

const toeSharpened = stationChanged((station, by) =>
  (station.toeAngleDeg === undefined ? station : { ...station, toeAngleDeg: Math.max(0, station.toeAngleDeg - 15 * by) }))

/** Both legs shrink by as much, so that their difference stays. */
const legsShrunk = stationChanged((station, by) => {
  const { legAMm: a, legBMm: b } = station
  const less = Math.min(by, a ?? Infinity, b ?? Infinity)
  return { ...station, ...(a !== undefined && { legAMm: a - less }), ...(b !== undefined && { legBMm: b - less }) }
})

const longerLegGrown = stationChanged((station, by) => {
  const { legAMm: a, legBMm: b } = station
  if (a === undefined || b === undefined) return station
  return a >= b ? { ...station, legAMm: a + by } : { ...station, legBMm: b + by }
})

const WAYS: readonly (readonly [name: string, worsen: Worsen])[] = [
  ['an indication gets longer', indicationGrown('lengthMm')],
  ['an indication gets deeper', indicationGrown('depthMm')],
  ['an indication gets wider', indicationGrown('diameterMm')],
  ['an indication gets higher', indicationGrown('heightMm')],
  ['a station gets more convex', grown('convexityMm')],
  ['a station gets more reinforcement', grown('reinforcementMm')],
  ['the plates step further', grown('misalignmentMm')],
  ['the face lies lower', grown('underfillMm')],
  ['the root is more hollow', grown('rootConcavityMm')],
  ['the root hangs further through', grown('penetrationMm')],
  ['the groove along the root gets deeper', grown('shrinkageGrooveMm')],
  ['the root stops further short', grown('rootShortfallMm')],
  ['the largest root pore gets larger', grown('rootPoreMm')],
  ['the gap under the fillet opens', grown('rootGapMm')],
  ['a toe gets sharper', toeSharpened],
  ['both legs of a station get shorter', legsShrunk],
  ['the longer leg of a station gets longer', longerLegGrown],
  ['the craters turn out not to be filled', (inspection) => ({ ...inspection, cratersFilled: false })],
  ['fusion turns out not to be complete', (inspection) => ({ ...inspection, fusionComplete: false })],
  ['a kind was not looked for after all', (inspection, index) => ({
    ...inspection, lookedFor: inspection.lookedFor.filter((_, i) => i !== index % inspection.lookedFor.length),
  })],
]

describe.each(allCriteria().map((set) => set.id))('%s is never kinder when', (id) => {
  const criteria = criteriaById(id)
  const runs = { numRuns: 100 }

  it.each(WAYS)('%s', (_, worsen) => {
    fc.assert(fc.property(looks, fc.nat(20), sizes(3), (look, index, by) => {
      const before = scoreInspection(look.weld, look.inspection, criteria)
      expectNoBetter(scoreInspection(look.weld, worsen(look.inspection, index, by, look), criteria), before)
    }), runs)
  })

  it('one more thing is seen', () => {
    const looksAndOne = looks.chain((look) => indicationOn(look.weld.lengthMm).map((one) => ({ look, one })))
    fc.assert(fc.property(looksAndOne, ({ look: { weld, inspection }, one }) => {
      const before = scoreInspection(weld, inspection, criteria)
      expectNoBetter(scoreInspection(weld, { ...inspection, indications: [...inspection.indications, one] }, criteria), before)
    }), { numRuns: 200 })
  })
})

it('the shop rule is never kinder when the narrowest place gets narrower or the widest wider', () => {
  const criteria = criteriaById('shop-bead')
  fc.assert(fc.property(looks, sizes(3), fc.boolean(), ({ weld, inspection }, by, narrow) => {
    const widths = inspection.stations.flatMap((station) => station.widthMm ?? [])
    const extreme = narrow ? Math.min(...widths) : Math.max(...widths)
    const middle = 5.5 * (weld.electrodeDiameterMm ?? 0)
    // Narrowing a place that is too wide would mend it.
    fc.pre(widths.length > 0 && (narrow ? extreme <= middle : extreme >= middle))
    const stations = inspection.stations.map((station) =>
      (station.widthMm === extreme ? { ...station, widthMm: narrow ? Math.max(0, extreme - by) : extreme + by } : station))
    expectNoBetter(scoreInspection(weld, { ...inspection, stations }, criteria), scoreInspection(weld, inspection, criteria))
  }))
})

it('level D, which permits thick throats, is never kinder to a thinner one', () => {
  const criteria = criteriaById('iso5817-d')
  fc.assert(fc.property(looks, fc.nat(9), sizes(3), ({ weld, inspection }, index, by) => {
    const stations = changeAt(inspection.stations, index, (station) =>
      (station.throatMm === undefined ? station : { ...station, throatMm: Math.max(0, station.throatMm - by) }))
    expectNoBetter(scoreInspection(weld, { ...inspection, stations }, criteria), scoreInspection(weld, inspection, criteria))
  }))
})
