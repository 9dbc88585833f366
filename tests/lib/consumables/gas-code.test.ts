import { expect, it } from 'vitest'
import { gasCode } from '@/lib/consumables/gas-code'

it.each([
  ['C1', 'C1'], ['co2', 'C1'], ['CO₂', 'C1'], ['100% CO2', 'C1'], ['CO2 100 %', 'C1'],
  ['M21', 'M21'], ['75/25', 'M21'], ['80/20', 'M21'], ['85-15', 'M21'], ['Ar 80 / CO2 20', 'M21'], ['75% Ar / 25% CO2', 'M21'], ['25% CO2 75% argon', 'M21'], ['Ar-25CO2', 'M21'], ['Ar 75 CO2', 'M21'],
  ['90/10', '90/10'], ['Ar 86 / CO2 14', 'AR 86 / CO2 14'], ['74/26', '74/26'], ['25/75', '25/75'], ['75/30', '75/30'], ['50/25/25', '50/25/25'],
  ['Ar', 'AR'], ['argon', 'ARGON'], ['75', '75'], ['M13', 'M13'], ['98 Ar 2 O2', '98 AR 2 O2'], ['', ''],
])('%j is %s', (written, code) => {
  expect(gasCode(written)).toBe(code)
})
