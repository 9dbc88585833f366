import type { Source } from '../../source'
import { fixed, inches, times } from '../limits'
import { SCALE, YES_OR_NO } from '../readiness-scale'
import type { CriteriaSet } from '../types'

const practice = (note: string): Source => ({ title: 'Shop rule', clause: null, status: 'common-practice', note })

/** What a shop asks of a practice bead: a straight, even, clean bead of the right size. Trade practice; no code stands behind it. */
export const shopBead: CriteriaSet = {
  id: 'shop-bead',
  version: 1,
  title: 'Shop rule for a practice bead',
  edition: 'Common practice, 2026',
  system: 'us',
  passMark: 70,
  rules: [
    {
      id: 'width-in-band', kind: 'reading-range', reading: 'width', min: times(5, 'electrode-diameter'), max: times(6, 'electrode-diameter'),
      source: practice('A bead five to six electrode diameters wide: 5/16 to 3/8 in for 1/16 in wire.'), weight: 20, readiness: SCALE.width,
    },
    {
      id: 'width-consistency', kind: 'reading-spread', reading: 'width', max: fixed(inches(1 / 16)),
      source: practice('The toes run parallel: widest and narrowest place differ by no more than 1/16 in. The figure is ours.'), weight: 10, readiness: SCALE.spread,
    },
    {
      id: 'leg-size', when: { weld: 'fillet' }, kind: 'reading-range', reading: 'shortest-leg', min: times(1, 'nominal-leg'), max: null,
      source: practice('Both legs at least the size asked for, at every station.'), weight: 15, readiness: SCALE.leg,
    },
    {
      id: 'leg-balance', when: { weld: 'fillet' }, kind: 'reading-range', reading: 'leg-difference', min: null, max: fixed(inches(3 / 32)),
      source: practice('Legs within 3/32 in of each other. The figure is ours, near ISO 5817 level B for a 5/16 in fillet.'), weight: 10, readiness: SCALE.balance,
    },
    {
      id: 'crack', kind: 'absent', of: ['crack', 'crater-crack'],
      source: practice('No crack of any size, as in every code.'), weight: 10, readiness: YES_OR_NO,
    },
    {
      id: 'fusion', kind: 'attribute', answer: 'fusionComplete', of: [], ifSeen: ['lack-of-fusion', 'overlap', 'burn-through'],
      source: practice('Fused to both plates and at every start. Overlap and burn-through, where seen, are faults of fusion.'), weight: 10, readiness: YES_OR_NO,
    },
    {
      id: 'crater', kind: 'attribute', answer: 'cratersFilled', of: [], ifSeen: ['crater-pipe'],
      source: practice('Craters filled to the full cross-section, with no hole left in them.'), weight: 5, readiness: YES_OR_NO,
    },
    {
      id: 'undercut', kind: 'largest-size', of: ['undercut'], size: 'depth', max: fixed(inches(1 / 32)),
      source: practice('No deeper than 1/32 in anywhere: the welder test limit without the code’s allowance for short lengths.'), weight: 10, readiness: SCALE.undercut,
    },
    {
      id: 'porosity', kind: 'absent', of: ['pore'],
      source: practice('No pore to be seen on a practice bead.'), weight: 5, readiness: YES_OR_NO,
    },
    {
      id: 'restart', kind: 'absent', of: ['poor-restart'],
      source: practice('A restart blends into the bead: no lump, no gap, no change of width.'), weight: 5, readiness: YES_OR_NO,
    },
    {
      id: 'cleaning', kind: 'absent', of: ['spatter', 'slag', 'arc-strike'],
      source: practice('Slag and spatter removed, no arc strike beside the weld.'), weight: 5, readiness: YES_OR_NO,
    },
  ],
}
