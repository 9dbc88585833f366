import { describe, expect, it } from 'vitest'
import { overrideProblem, standingVerdict } from '@/lib/scoring/override'

describe('a verdict decided over the computed one', () => {
  it.each([['reject', 'accept'], ['accept', 'reject'], ['incomplete', 'reject']] as const)('%s may become %s', (computed, decided) => {
    expect(overrideProblem(computed, decided)).toBeNull()
  })
  it.each([['accept', 'accept', /already/], ['reject', 'reject', /already/], ['incomplete', 'accept', /not measured/]] as const)('%s may not become %s', (computed, decided, why) => {
    expect(overrideProblem(computed, decided)).toMatch(why)
  })
  it('stands where there is one', () => {
    expect(standingVerdict('reject', { verdict: 'accept' })).toBe('accept')
    expect(standingVerdict('incomplete', null)).toBe('incomplete')
  })
})
