import { fixed, inches, times } from '../limits'
import { SCALE, YES_OR_NO } from '../readiness-scale'
import type { CriteriaSet } from '../types'
import { flatUndercut, SI, US, type Column } from './structural-common'
import { profile, testWeld } from './structural-sources'

/** Limits that only a welder's test weld has. */
type TestLimits = { readonly reinforcement: number; readonly rootConcavity: number; readonly meltThrough: number }
const US_TEST: TestLimits = { reinforcement: inches(1 / 8), rootConcavity: inches(1 / 16), meltThrough: inches(1 / 8) }
const SI_TEST: TestLimits = { reinforcement: 3, rootConcavity: 2, meltThrough: 3 }

function qualificationVisual(column: Column, test: TestLimits): CriteriaSet {
  return {
    id: `qualification-visual.${column.system}`,
    version: 1,
    title: `Welder test weld, visual, structural steel (${column.system === 'us' ? 'US customary' : 'SI'})`,
    edition: 'AWS D1.1/D1.1M, the rule of 2000 to 2020',
    system: column.system,
    passMark: 70,
    rules: [
      {
        id: 'crack', kind: 'absent', of: ['crack', 'crater-crack'],
        source: testWeld('secondary'), weight: 15, readiness: YES_OR_NO,
      },
      {
        id: 'fusion', kind: 'attribute', answer: 'fusionComplete', of: [], ifSeen: ['lack-of-fusion', 'burn-through'],
        source: testWeld('memory', 'A hole burned through, where seen, is taken as no fusion there.'), weight: 15, readiness: YES_OR_NO,
      },
      {
        id: 'crater', kind: 'attribute', answer: 'cratersFilled', of: [], ifSeen: ['crater-pipe'],
        source: testWeld('secondary', 'Filled to the full cross-section of the weld. A pipe left in a crater is taken as not filled.'), weight: 10, readiness: YES_OR_NO,
      },
      {
        id: 'convexity', when: { weld: 'fillet' }, kind: 'reading-range', reading: 'convexity', min: null, max: column.convexity,
        source: profile(', fillet convexity by width of face', 'memory', 'The first row was read in study notes; the others are from memory.'), weight: 10, readiness: SCALE.convexity,
      },
      {
        id: 'overlap', kind: 'absent', of: ['overlap'],
        source: profile('', 'memory', 'No overlap of any size. That a fillet test weld be free of it was read in an inspector’s notes.'), weight: 5, readiness: YES_OR_NO,
      },
      {
        id: 'leg-size', when: { weld: 'fillet' }, kind: 'reading-range', reading: 'shortest-leg', min: times(1, 'nominal-leg'), max: null,
        source: testWeld('memory', 'Not less than the specified size: the tenth of the length that a production weld may be undersize is not given here.'), weight: 15, readiness: SCALE.leg,
      },
      {
        id: 'undercut', ...flatUndercut(column.undercut),
        source: testWeld('secondary', 'Flat: without the production rule’s allowance for short lengths.'), weight: 15, readiness: SCALE.undercut,
      },
      {
        id: 'porosity', when: { weld: 'fillet' }, kind: 'absent', of: ['pore'],
        source: testWeld('secondary', 'No porosity on the surface of a fillet test weld before the break test. Read in an inspector’s notes.'), weight: 5, readiness: YES_OR_NO,
      },
      {
        id: 'reinforcement', when: { weld: 'groove' }, kind: 'reading-range', reading: 'reinforcement', min: null, max: fixed(test.reinforcement),
        source: testWeld('secondary'), weight: 10, readiness: SCALE.reinforcement,
      },
      {
        id: 'root-concavity', when: { weld: 'groove' }, kind: 'reading-range', reading: 'root-concavity', min: null, max: fixed(test.rootConcavity), optional: true,
        source: testWeld('memory', 'Open-root plates welded from one side. Judged where it was recorded.'), weight: 5, readiness: SCALE.root,
      },
      {
        id: 'melt-through', when: { weld: 'groove' }, kind: 'reading-range', reading: 'penetration', min: null, max: fixed(test.meltThrough), optional: true,
        source: testWeld('memory', 'Open-root plates welded from one side. Judged where it was recorded.'), weight: 5, readiness: SCALE.root,
      },
    ],
  }
}

export const qualificationVisualUs = qualificationVisual(US, US_TEST)
export const qualificationVisualSi = qualificationVisual(SI, SI_TEST)
