// What a new version of a set changed, rule by rule.
import { expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import type { CriteriaSet, Rule } from '@/lib/criteria/types'
import { criteriaChanges } from '@/lib/reports/criteria-changes'

const shop = criteriaById('shop-bead')
const next = (change: (rules: readonly Rule[]) => readonly Rule[], passMark = shop.passMark): CriteriaSet => ({ ...shop, version: 2, passMark, rules: change(shop.rules) })

it('finds nothing where nothing differs', () => {
  for (const set of allCriteria()) expect(criteriaChanges(set, { ...set, version: set.version + 1 })).toEqual([])
})

it('tells a changed limit before and after', () => {
  const tight = next((rules) => rules.map((rule) => (rule.id === 'undercut' && rule.kind === 'largest-size' ? { ...rule, max: { form: 'fixed', mm: 25.4 / 64 } } : rule)))
  expect(criteriaChanges(shop, tight)).toEqual([{ name: 'Undercut', change: 'changed', before: 'Undercut: depth at most 1/32 in.', after: 'Undercut: depth at most 1/64 in.' }])
})

it('tells what is added, removed and asked of the mark, and no weight that only moved with the whole', () => {
  const other = next((rules) => [...rules.filter(({ id }) => id !== 'restart'), { ...rules.find(({ id }) => id === 'porosity')!, id: 'overlap', kind: 'absent', of: ['overlap'] }], 75)
  expect(criteriaChanges(shop, other).map(({ name, change }) => `${name} ${change}`)).toEqual(['Overlap added', 'Restarts removed', 'Least mark changed'])
})

it('tells a changed weight or source where the limit stays', () => {
  const heavier = next((rules) => rules.map((rule) => (rule.id === 'crater' ? { ...rule, weight: 7 } : rule)))
  expect(criteriaChanges(shop, heavier)).toMatchObject([{ name: 'Craters', before: expect.stringMatching(/^Weight 5\. /), after: expect.stringMatching(/^Weight 7\. /) }])
})
