import { describe, expect, it } from 'vitest'
import { readinessRuleSchema } from '@/lib/schemas/readiness-rule'

const good = { readinessThreshold: '0.65', minimumCoupons: '5', staleAfterDays: '45' }
const read = (over: Partial<typeof good>, locale: 'en' | 'es' = 'en') => readinessRuleSchema({ locale }).safeParse({ ...good, ...over })
const problemAt = (field: string, result: ReturnType<typeof read>): string | undefined => result.error?.issues.find(({ path }) => path.join('.') === field)?.message

describe('the readiness rule as typed', () => {
  it.each([['0.65', 0.65], ['.7', 0.7], ['0,55', 0.55], [' 0.30 ', 0.3], ['0.95', 0.95]])('reads a threshold of %j', (typed, value) => {
    expect(read({ readinessThreshold: typed }).data).toEqual({ readinessThreshold: value, minimumCoupons: 5, staleAfterDays: 45 })
  })

  it.each(['0.29', '0.96', '65', '65 %', '', 'high', '1e-1', '-0.5', '0.6.5'])('refuses a threshold of %j at its field', (typed) => {
    expect(problemAt('readinessThreshold', read({ readinessThreshold: typed }))).toBe(`“${typed.trim()}” is no such chance. Write one from 0.30 to 0.95, like 0.65.`)
  })

  it.each([['minimumCoupons', '3', '30', '2', '31'], ['staleAfterDays', '7', '365', '6', '366']] as const)('takes %s from %s to %s', (field, least, most, under, over) => {
    for (const typed of [least, most]) expect(read({ [field]: typed }).success).toBe(true)
    for (const typed of [under, over, '4.5', '', 'five']) expect(problemAt(field, read({ [field]: typed }))).toContain(`from ${least} to ${most}`)
  })

  it('answers in the reader’s language, and takes no field it does not know', () => {
    expect(problemAt('minimumCoupons', read({ minimumCoupons: '0' }, 'es'))).toBe('“0” no sirve. Escribe un número entero de 3 a 30.')
    expect(readinessRuleSchema({ locale: 'en' }).safeParse({ ...good, name: 'x' }).success).toBe(false)
    expect(readinessRuleSchema({ locale: 'en' }).safeParse({ ...good, minimumCoupons: 5 }).success).toBe(false)
  })
})
