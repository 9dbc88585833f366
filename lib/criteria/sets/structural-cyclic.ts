import { fixed } from '../limits'
import { SCALE, YES_OR_NO } from '../readiness-scale'
import type { Condition, CriteriaSet, Rule } from '../types'
import { flatUndercut, poresAcrossTension, poreSums, profiles, SI, soundness, TENSION_BUTT, undersize, US, type Column } from './structural-common'
import { visual } from './structural-sources'

const STIFFENER = { weld: 'fillet', stiffenerToWeb: true } as const

function undercut(column: Column): readonly Rule[] {
  const source = (note: string) => visual('7(B)', 'secondary', note)
  return [
    {
      id: 'undercut', when: { transverseToTension: true }, ...flatUndercut(column.undercutInTension),
      source: source('Primary member, weld across tensile stress under any design load.'), weight: 15, readiness: SCALE.undercut,
    },
    {
      id: 'undercut', ...flatUndercut(column.undercut),
      source: source('All cases but primary members across tension, which have a smaller limit.'), weight: 15, readiness: SCALE.undercut,
    },
  ]
}

/** Few and small pores, where neither the sums nor the ban across tension apply. */
function fewPores(column: Column): readonly Rule[] {
  const others: readonly Pick<Rule, 'when' | 'unless'>[] = [
    { when: { weld: 'fillet' }, unless: STIFFENER },
    { when: { weld: 'groove' }, unless: TENSION_BUTT satisfies Condition },
  ]
  return others.flatMap((where, index): Rule[] => {
    const item = index === 0 ? '8(B)' : '8(C)'
    return [
      {
        id: 'porosity-frequency', ...where, kind: 'window-count', of: ['pore'], windowMm: column.poreSpacing, max: 1,
        source: visual(item, 'secondary'), weight: 5, readiness: YES_OR_NO,
      },
      {
        id: 'porosity-diameter', ...where, kind: 'largest-size', of: ['pore'], size: 'diameter', max: fixed(column.poreDiameter),
        source: column.system === 'us'
          ? visual(item, 'secondary')
          : visual(item, 'memory', 'The inch limit, 3/32 in, was read in an inspection procedure, which prints 2 mm beside it; 2.5 mm is from memory.'),
        weight: 5, readiness: SCALE.pore,
      },
    ]
  })
}

function structuralCyclic(column: Column): CriteriaSet {
  return {
    id: `structural-cyclic.${column.system}`,
    version: 1,
    title: `Structural steel, cyclically loaded, visual (${column.system === 'us' ? 'US customary' : 'SI'})`,
    edition: 'AWS D1.1/D1.1M, the rule of 2000 to 2020',
    system: column.system,
    passMark: 70,
    rules: [
      ...soundness(),
      ...profiles(column),
      undersize(column),
      ...undercut(column),
      ...poreSums(column, '8(B), stiffeners to webs', 'secondary', { when: STIFFENER }),
      ...fewPores(column),
      poresAcrossTension('8(C)', 'secondary'),
    ],
  }
}

export const structuralCyclicUs = structuralCyclic(US)
export const structuralCyclicSi = structuralCyclic(SI)
