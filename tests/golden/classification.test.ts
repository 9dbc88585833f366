// Outside:
// - Flux-cored: a welding textbook's Table 23-2, "Position of welding, shielding, polarity and application requirements for flux
//   cored electrodes", which reproduces AWS A5.20 Table 2 (1995 edition). H and F: flat and horizontal; VU, VD: vertical up, down.
// - Charpy values: AWS D1.1/D1.1M:2020 Annex M, Table M.1.
// - Covered electrodes: Elga catalogue 2013, guide to AWS A5.1 (strength, position digit, current, impact), agreeing with the ESAB
//   filler metal handbook's A5.1 page on current.
// - Solid wire: ASME SFA-5.18 Table 1 lists groups 2, 3, 4, 6, 7, G.
import { expect, it } from 'vitest'
import { readClassification } from '@/lib/consumables/classification'

const POSITIONS = { 'H F': ['F', 'H'], 'H F VU OH': ['F', 'H', 'V-up', 'OH'], 'H F VD OH': ['F', 'H', 'V-down', 'OH'], 'H F VD/VU OH': ['F', 'H', 'V-up', 'V-down', 'OH'] } as const
const PASSES = { S: 'single', M: 'multiple' } as const

it.each([
  ['E70T-1', 'H F', 'gas', 'DCEP', 'M'], ['E70T-1M', 'H F', 'gas', 'DCEP', 'M'], ['E71T-1', 'H F VU OH', 'gas', 'DCEP', 'M'], ['E71T-1M', 'H F VU OH', 'gas', 'DCEP', 'M'],
  ['E70T-2', 'H F', 'gas', 'DCEP', 'S'], ['E70T-2M', 'H F', 'gas', 'DCEP', 'S'], ['E71T-2', 'H F VU OH', 'gas', 'DCEP', 'S'], ['E71T-2M', 'H F VU OH', 'gas', 'DCEP', 'S'],
  ['E70T-3', 'H F', 'self', 'DCEP', 'S'],
  ['E70T-4', 'H F', 'self', 'DCEP', 'M'],
  ['E70T-5', 'H F', 'gas', 'DCEP', 'M'], ['E70T-5M', 'H F', 'gas', 'DCEP', 'M'], ['E71T-5', 'H F VU OH', 'gas', 'DCEP DCEN', 'M'], ['E71T-5M', 'H F VU OH', 'gas', 'DCEP DCEN', 'M'],
  ['E70T-6', 'H F', 'self', 'DCEP', 'M'],
  ['E70T-7', 'H F', 'self', 'DCEN', 'M'], ['E71T-7', 'H F VU OH', 'self', 'DCEN', 'M'],
  ['E70T-8', 'H F', 'self', 'DCEN', 'M'], ['E71T-8', 'H F VU OH', 'self', 'DCEN', 'M'],
  ['E70T-9', 'H F', 'gas', 'DCEP', 'M'], ['E70T-9M', 'H F', 'gas', 'DCEP', 'M'], ['E71T-9', 'H F VU OH', 'gas', 'DCEP', 'M'], ['E71T-9M', 'H F VU OH', 'gas', 'DCEP', 'M'],
  ['E70T-10', 'H F', 'self', 'DCEN', 'S'],
  ['E70T-11', 'H F', 'self', 'DCEN', 'M'], ['E71T-11', 'H F VD OH', 'self', 'DCEN', 'M'],
  ['E70T-12', 'H F', 'gas', 'DCEP', 'M'], ['E70T-12M', 'H F', 'gas', 'DCEP', 'M'], ['E71T-12', 'H F VU OH', 'gas', 'DCEP', 'M'], ['E71T-12M', 'H F VU OH', 'gas', 'DCEP', 'M'],
  ['E61T-13', 'H F VD OH', 'self', 'DCEN', 'S'], ['E71T-13', 'H F VD OH', 'self', 'DCEN', 'S'],
  ['E71T-14', 'H F VD OH', 'self', 'DCEN', 'S'],
  ['E70T-G', 'H F', null, '', 'M'], ['E71T-G', 'H F VD/VU OH', null, '', 'M'],
  ['E70T-GS', 'H F', null, '', 'S'], ['E71T-GS', 'H F VD/VU OH', null, '', 'S'],
] as const)('%s: %s, shielding %s, %s, %s (Table 23-2)', (designation, positions, shielding, polarity, passes) => {
  expect(readClassification(designation)).toMatchObject({
    standard: 'AWS A5.20',
    classification: designation,
    shielding,
    polarity: polarity === '' ? [] : polarity.split(' '),
    passes: PASSES[passes],
    positions: POSITIONS[positions],
    process: shielding === 'gas' ? 'FCAW-G' : 'FCAW-S',
    tensileKsi: designation.startsWith('E6') ? 60 : 70,
  })
})

it('T-3, T-4 and T-6 run electrode positive; T-8 and T-11 negative (common practice, no source)', () => {
  for (const positive of ['E70T-3', 'E70T-4', 'E70T-6']) expect(readClassification(positive).polarity).toEqual(['DCEP'])
  for (const negative of ['E71T-8', 'E70T-8', 'E71T-11', 'E70T-11']) expect(readClassification(negative).polarity).toEqual(['DCEN'])
})

it.each([
  ['E71T-1C', 0], ['E71T-5C', -20], ['E70T-6', -20], ['E71T-8', -20], ['E71T-9C', -20], ['E71T-12C', -20],
])('%s: 20 ft-lb at %d F (D1.1:2020 Table M.1)', (designation, fahrenheit) => {
  expect(readClassification(designation).impact).toEqual({ ftLb: 20, fahrenheit })
})

it.each(['E70T-4', 'E71T-7', 'E71T-11', 'E70T-3'])('%s: no impact value specified (D1.1:2020 Table M.1 for T-4, T-7; others from memory)', (designation) => {
  expect(readClassification(designation).impact).toBeUndefined()
})

it.each([
  // designation, ksi, position digit, AC, DC, impact in °C (27 J)
  ['E6010', 60, 1, '', '+', -30], ['E6011', 60, 1, 'AC', '+', -30], ['E6012', 60, 1, 'AC', '-', null], ['E6013', 60, 1, 'AC', '+-', null],
  ['E6019', 60, 1, 'AC', '+-', -20], ['E6022', 60, 2, 'AC', '-', null], ['E6027', 60, 2, 'AC', '+-', -30],
  ['E7014', 70, 1, 'AC', '+-', null], ['E7015', 70, 1, '', '+', -30], ['E7016', 70, 1, 'AC', '+', -30], ['E7018', 70, 1, 'AC', '+', -30],
  ['E7024', 70, 2, 'AC', '+-', null], ['E7027', 70, 2, 'AC', '+-', -30], ['E7028', 70, 2, 'AC', '+', -20], ['E7048', 70, 4, 'AC', '+', -30],
] as const)('%s: %d ksi, position digit %d, current %s %s (guide to AWS A5.1)', (designation, ksi, digit, ac, dc, celsius) => {
  const read = readClassification(designation)
  expect(read.tensileKsi).toBe(ksi)
  expect(read.polarity.includes('AC')).toBe(ac === 'AC')
  expect(read.polarity.includes('DCEP')).toBe(dc.includes('+'))
  expect(read.polarity.includes('DCEN')).toBe(dc.includes('-'))
  expect(read.positions?.includes('OH')).toBe(digit !== 2)
  expect(read.positions?.includes('V-down') && !read.positions.includes('V-up')).toBe(digit === 4)
  expect(read.impact).toEqual(celsius === null ? undefined : { ftLb: 20, fahrenheit: celsius === -30 ? -20 : 0 })
  expect(read).toMatchObject({ standard: 'AWS A5.1', process: 'SMAW', shielding: 'slag' })
})

it('E6020 runs on AC or electrode negative (ESAB filler metal handbook; the Elga guide limits that to horizontal fillets)', () => {
  expect(readClassification('E6020').polarity).toEqual(['DCEN', 'AC'])
})

it('E7018M: electrode positive only, 67 J at -30 °C, which is 50 ft-lb at -20 °F (guide to AWS A5.1)', () => {
  expect(readClassification('E7018M')).toMatchObject({ polarity: ['DCEP'], impact: { ftLb: 50, fahrenheit: -20 } })
})

it.each(['2', '3', '4', '6', '7', 'G'])('ER70S-%s is a solid wire of SFA-5.18 Table 1: 70 ksi, gas-shielded', (group) => {
  expect(readClassification(`ER70S-${group}`)).toMatchObject({ standard: 'AWS A5.18', process: 'GMAW', tensileKsi: 70, shielding: 'gas', polarity: ['DCEP'] })
})

it.each([['2', -20], ['3', 0], ['4', null], ['6', -20], ['7', -20], ['G', null]] as const)('ER70S-%s: 20 ft-lb at %s F (from memory)', (group, fahrenheit) => {
  expect(readClassification(`ER70S-${group}`).impact).toEqual(fahrenheit === null ? undefined : { ftLb: 20, fahrenheit })
})

it('E70C-6M: 70 ksi, 20 ft-lb at -20 F, argon mix (D1.1:2020 Table M.1)', () => {
  expect(readClassification('E70C-6M')).toMatchObject({ process: 'GMAW', tensileKsi: 70, impact: { ftLb: 20, fahrenheit: -20 }, gases: ['M21'] })
})
