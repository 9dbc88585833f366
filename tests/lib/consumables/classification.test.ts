import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readClassification } from '@/lib/consumables/classification'

it.each([
  ['E71T-8', 'E71T-8'], ['e71t8', 'E71T-8'], [' E 71 T - 8 ', 'E71T-8'], ['E71T–8', 'E71T-8'], ['71T-8', 'E71T-8'],
  ['E71T-8JD H8', 'E71T-8-JD H8'], ['E71T-8-JD-H8', 'E71T-8-JD H8'], ['e71t8jdh8', 'E71T-8-JD H8'],
  ['E71T-1C/M', 'E71T-1C/M'], ['E71T-1C/1M', 'E71T-1C/M'], ['E71T-1C/-1M', 'E71T-1C/M'], ['E71T-12M-J H4', 'E71T-12M-J H4'], ['E71T-1CQ', 'E71T-1C-Q'],
  ['e71tgs', 'E71T-GS'], ['E71T-11', 'E71T-11'],
  ['E7018', 'E7018'], ['7018', 'E7018'], ['e 7018', 'E7018'], ['E7018-1 H4R', 'E7018-1 H4R'], ['E7018-1-H4R', 'E7018-1 H4R'], ['E7018H16', 'E7018 H16'], ['E7016-1', 'E7016-1'],
  ['ER70S-6', 'ER70S-6'], ['er70s6', 'ER70S-6'], ['ER70S-6 H4', 'ER70S-6 H4'], ['E70C-6M', 'E70C-6M'], ['e70c6m', 'E70C-6M'], ['E70C-GS', 'E70C-GS'],
])('reads %j as %s, and reads what it writes', (typed, written) => {
  const read = readClassification(typed)
  expect(read.classification).toBe(written)
  expect(readClassification(read.classification)).toEqual(read)
})

it('reads the marks after the group', () => {
  expect(readClassification('E71T-8JD H8')).toMatchObject({ impact: { ftLb: 20, fahrenheit: -40 }, heatInputTests: 'D', hydrogenMlPer100g: 8 })
  expect(readClassification('E71T-1C/M')).toMatchObject({ gases: ['C1', 'M21'], shielding: 'gas' })
  expect(readClassification('E71T-1C')).toMatchObject({ gases: ['C1'] })
  expect(readClassification('E71T-1')).not.toHaveProperty('gases')
  expect(readClassification('E7018-1 H4R')).toMatchObject({ hydrogenMlPer100g: 4, moistureResistant: true, lowHydrogen: true, impact: { ftLb: 20, fahrenheit: -50 } })
  expect(readClassification('E6010')).toMatchObject({ lowHydrogen: false })
  expect(readClassification('E71T-GM')).toMatchObject({ process: 'FCAW-G', shielding: 'gas', polarity: [] })
  expect(readClassification('E70C-GS')).toMatchObject({ passes: 'single' })
  expect(readClassification('ER70S-6')).toMatchObject({ passes: 'multiple', positions: null })
  expect(readClassification('E6022')).toMatchObject({ passes: 'single' })
  expect(readClassification('E7018')).toMatchObject({ passes: null })
})

it.each(['E71T-1C', 'E7018', 'ER70S-6', 'E70C-6M'])('%s takes each hydrogen mark', (base) => {
  for (const most of [4, 8, 16]) expect(readClassification(`${base} H${most}`).hydrogenMlPer100g).toBe(most)
  expect(readClassification(base)).not.toHaveProperty('hydrogenMlPer100g')
})

it.each([
  ['E71T-15', 'T-15'], ['E71T-0', 'T-0'], ['E81T-1', 'E8'], ['E61T-8', 'E6'], ['E72T-1', 'E72'], ['E71T-4', 'E71'], ['E70T-14', 'E70'], ['E71T-8C', 'C'],
  ['E71T8-Ni1', 'NI1'], ['E71T-8 H5', 'H5'], ['E71T-1X', 'X'], ['E71T-1C/9M', '/9M'], ['E71T-8DJ', 'J'],
  ['E6099', '99'], ['E7010', 'E70'], ['E6018', 'E60'], ['E11018', 'E110'], ['E7018-H5', 'H5'], ['E6010 H4', 'H4'], ['E7014-1', '-1'], ['E6010M', 'M'], ['E7018X', 'X'],
  ['ER80S-D2', 'ER80'], ['ER70S-5', 'S-5'], ['ER70S', 'S-'], ['ER70S-6X', 'X'], ['E70C-6', 'C-6'], ['E70C-6X', 'X'], ['E70S-6', 'E7'], ['ER70C-6M', 'ER'], ['E80C-6M', 'E80'],
  ['E308L-16', 'E308L-16'], ['stick', 'stick'], ['', ''], ['E71T-', 'E71T-'], ['E71T-constructor', 'E71T-constructor'],
])('refuses %j and names %j', (typed, part) => {
  expect(() => readClassification(typed)).toThrow(RangeError)
  expect(() => readClassification(typed)).toThrow(`"${part}" is not known here; `)
})

it('either reads or throws a RangeError, whatever is typed', () => {
  const typed = fc.oneof(fc.string({ unit: fc.constantFrom(...'ERTSCMGJDQH0123456789- /'), maxLength: 12 }), fc.string({ unit: 'grapheme', maxLength: 20 }))
  fc.assert(fc.property(typed, (text) => {
    try {
      expect(readClassification(text).source.title).toMatch(/^AWS A5/)
    } catch (error) {
      expect(error).toBeInstanceOf(RangeError)
    }
  }), { numRuns: 1000 })
})
