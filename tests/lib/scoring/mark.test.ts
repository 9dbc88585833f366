import { describe, expect, it } from 'vitest'
import type { CriteriaSet, Rule } from '@/lib/criteria/types'
import { MARK_FORMULA } from '@/lib/scoring/mark'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { anInspection, aWeld, stations } from './sound-weld'

const source = { title: 'Our rule', clause: null, status: 'common-practice' } as const

// Two rules: cracks weigh 1; width weighs 3, allowed from 6 to 12 mm, with a scale of 2.
const crack: Rule = { id: 'crack', kind: 'absent', of: ['crack'], source, weight: 1, readiness: { as: 'attribute' } }
const width: Rule = {
  id: 'width', kind: 'reading-range', reading: 'width', min: { form: 'fixed', mm: 6 }, max: { form: 'fixed', mm: 12 }, source, weight: 3,
  readiness: { as: 'margin', scale: 2 },
}
const set = (rules: readonly Rule[] = [crack, width], passMark = 60): CriteriaSet =>
  ({ id: 'own', version: 1, title: 'Own', edition: '2026', system: 'us', passMark, rules })

const mark = (widthMm: number, change: Parameters<typeof anInspection>[0] = {}, criteria = set()) =>
  scoreInspection(aWeld(), anInspection({ stations: stations({ widthMm }), ...change }), criteria).mark

describe('the mark', () => {
  it('gives an accepted reading on its limit the pass mark’s share, and all of it from half a scale inside', () => {
    // (1 + 3 × 0.6) / 4, (1 + 3 × 0.8) / 4, 4 / 4
    expect([mark(6), mark(6.5), mark(7), mark(9), mark(11), mark(12)]).toEqual([70, 85, 100, 100, 100, 70])
  })

  it('asks no more of a narrow band than half-way from its edge to its middle', () => {
    const narrow: Rule = { ...width, kind: 'reading-range', reading: 'width', min: { form: 'fixed', mm: 8 }, max: { form: 'fixed', mm: 10 } }
    expect([mark(8, {}, set([narrow])), mark(8.25, {}, set([narrow])), mark(8.5, {}, set([narrow])), mark(9, {}, set([narrow]))]).toEqual([60, 80, 100, 100])
  })

  it('gives nothing for a rule that is not met, and holds a rejected weld below the pass mark', () => {
    expect(mark(5)).toBe(25)
    expect(mark(9, { indications: [{ kind: 'crack', atMm: 5 }] })).toBe(59) // 75 by weight, but rejected
  })

  it('gives nothing for a rule that was not measured when the weld is rejected anyway', () => {
    expect(mark(5, { lookedFor: [] })).toBe(0)
  })

  it('is null when the inspection is incomplete', () => {
    expect(mark(9, { lookedFor: [] })).toBeNull()
  })

  it('leaves out rules that do not apply', () => {
    const groove: Rule = { ...crack, id: 'groove', when: { weld: 'groove' }, weight: 100 }
    expect(mark(6, {}, set([crack, width, groove]))).toBe(70)
  })

  it('gives full weight where nothing was seen, though the largest margin be less than half a scale', () => {
    const undercut: Rule = {
      id: 'undercut', kind: 'largest-size', of: ['undercut'], size: 'depth', max: { form: 'fixed', mm: 0.1 }, source, weight: 1, readiness: { as: 'margin', scale: 2 },
    }
    expect(mark(9, {}, set([undercut]))).toBe(100)
    expect(mark(9, { indications: [{ kind: 'undercut', atMm: 5, lengthMm: 1, depthMm: 0.1 }] }, set([undercut]))).toBe(60)
  })

  it('has its formula in words, for the page that prints it', () => {
    expect(MARK_FORMULA).toMatch(/pass mark.*half a scale.*below the pass mark/s)
  })
})
