import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { limitCases } from './limits'

describe.each(allCriteria().map((set) => set.id))('%s', (id) => {
  const cases = limitCases.filter((one) => one.set === id)

  it.each(cases)('$rule $verdict: $what [$source]', ({ rule, weld, inspection, verdict, reason }) => {
    const card = scoreInspection(weld, inspection, criteriaById(id))
    const finding = card.findings.find((one) => one.rule === rule)
    expect(finding?.verdict).toBe(verdict)
    if (reason !== null) expect(finding?.reason).toBe(reason)
  })

  it('has a case for every rule', () => {
    expect(new Set(cases.map((one) => one.rule))).toEqual(new Set(criteriaById(id).rules.map((rule) => rule.id)))
  })
})
