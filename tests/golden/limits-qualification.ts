// The visual examination of a welder's test weld, AWS D1.1 4.8.1 (2000), 6.10.1 (2020).
import type { Station } from '@/lib/scoring/types'
import { casesOf, GROOVE, oneBadStretch, type Change, type LimitCase } from './limits-case'
import { convexityCases, INCH_BOOK, METRIC_BOOK, overlapCases, pore, run, seen, soundnessCases, type Book, type Rules } from './limits-structural'

const TEST = 'City of Los Angeles certified-welder performance test summary; AWS D1.1:2000 4.8.1 in the AWS forum'
const MEMORY = 'From memory'

function qualificationCases(book: Book): readonly LimitCase[] {
  const of: Rules = (rule, source) => casesOf(`qualification-visual.${book.system}`, rule, source)
  const { unit, half, undercut, reinforcement: [, max], deeper } = book
  const leg = of('leg-size', MEMORY)
  const all = (legMm: number): Change => ({ weld: { nominalLegMm: 8 }, at: { legAMm: legMm, legBMm: legMm } })
  const groove = (at: Omit<Station, 'atMm'>): Change => ({ weld: GROOVE, at })
  return [
    ...soundnessCases(of, TEST), ...convexityCases(of, book), ...overlapCases(of),
    leg.accepts('nominal', all(8)),
    leg.rejects('a hair under', all(7.99)),
    leg.rejects('one short station: no tenth is given', { weld: { nominalLegMm: 8 }, stations: oneBadStretch(['legAMm', 'legBMm'], 8, 7.9, 4, 400) }),
    ...of('undercut', TEST).edge('deep, however short', (depth) => seen([run(book, depth, 1, 0.1)]), undercut, undercut + half),
    ...of('reinforcement', TEST).edge('face', (height) => groove({ reinforcementMm: height * unit }), max, max + half),
    of('porosity', 'An inspector’s notes on the fillet break test').rejects('any pore on a fillet', seen([pore(book, 1, 0.01)])),
    of('porosity', 'An inspector’s notes on the fillet break test').accepts('none', {}),
    ...of('root-concavity', MEMORY).edge('root', (depth) => groove({ rootConcavityMm: depth * unit }), deeper, deeper + half),
    ...of('melt-through', MEMORY).edge('root', (height) => groove({ penetrationMm: height * unit }), max, max + half),
    ...['root-concavity', 'melt-through'].flatMap((rule) => [
      of(rule, MEMORY).ignores('not recorded', { weld: GROOVE }),
      of(rule, MEMORY).ignores('a fillet', { at: { rootConcavityMm: 9, penetrationMm: 9 } }),
    ]),
    ...['leg-size', 'porosity'].map((rule) => of(rule, MEMORY).ignores('a groove', { weld: GROOVE })),
    of('reinforcement', MEMORY).ignores('a fillet', {}),
  ]
}

export const qualificationVisualCases: readonly LimitCase[] = [INCH_BOOK, METRIC_BOOK].flatMap(qualificationCases)
