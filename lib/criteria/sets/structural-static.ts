import { fixed } from '../limits'
import { SCALE } from '../readiness-scale'
import type { CriteriaSet, Rule } from '../types'
import { flatUndercut, poresAcrossTension, poreSums, profiles, SI, soundness, TENSION_BUTT, undersize, US, type Column } from './structural-common'
import { visual } from './structural-sources'

function undercut(column: Column): readonly Rule[] {
  return [
    {
      id: 'undercut', when: { thickness: { below: column.thickPlate } }, kind: 'size-allowance', of: ['undercut'], size: 'depth',
      max: fixed(column.undercut),
      allowed: { max: fixed(column.deepUndercut), over: { per: 'window', lengthMm: column.deepUndercutLength, windowMm: column.foot } },
      source: visual('7(A)', 'confirmed', 'Read in the 2000 edition. On a weld shorter than the window the whole length of the allowance is given.'),
      weight: 15, readiness: SCALE.undercut,
    },
    {
      id: 'undercut', ...flatUndercut(column.deepUndercut),
      source: visual('7(A)', 'confirmed', 'Plates of 1 in (25 mm) and over. Read in the 2000 edition.'), weight: 15, readiness: SCALE.undercut,
    },
  ]
}

function structuralStatic(column: Column): CriteriaSet {
  return {
    id: `structural-static.${column.system}`,
    version: 1,
    title: `Structural steel, statically loaded, visual (${column.system === 'us' ? 'US customary' : 'SI'})`,
    edition: 'AWS D1.1/D1.1M, the rule of 2000 to 2020',
    system: column.system,
    passMark: 70,
    rules: [
      ...soundness(),
      ...profiles(column),
      undersize(column),
      ...undercut(column),
      ...poreSums(column, '8(A)', 'confirmed', { unless: TENSION_BUTT }),
      poresAcrossTension('8(A)', 'confirmed'),
    ],
  }
}

export const structuralStaticUs = structuralStatic(US)
export const structuralStaticSi = structuralStatic(SI)
