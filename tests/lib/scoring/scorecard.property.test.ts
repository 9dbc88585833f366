import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import type { Finding } from '@/lib/scoring/types'
import { looks } from './arbitraries'

const shuffled = <T>(list: readonly T[], keys: readonly number[]): T[] =>
  list.map((one, index) => ({ one, key: keys[index % keys.length] ?? 0 })).sort((a, b) => a.key - b.key).map(({ one }) => one)

function contradictions(finding: Finding, weldMm: number): readonly string[] {
  const { rule, verdict, measured, margin, limit, reason, closeCall, where } = finding
  const wrong: string[] = []
  const must = (holds: boolean, what: string) => void (holds || wrong.push(`${rule} ${verdict}: ${what}`))
  if (verdict === 'not-measured' || verdict === 'not-applicable') {
    must(measured === null && margin === null && !closeCall, 'was not judged and has a reading')
    must(typeof reason === 'string', 'says no reason')
    return wrong
  }
  must(reason === undefined, 'was judged and gives a reason not to')
  if (measured === 0 && margin === null && verdict === 'accept') {
    must(limit.min === null && where === null && !closeCall && finding.standardMargin === undefined, 'saw nothing, and tells how far from its limit it is')
    return wrong
  }
  if (measured === null || margin === null) return [...wrong, `${rule} was judged without a reading`]
  must((margin >= 0) === (verdict === 'accept'), `margin ${margin}`)
  const distance = Math.min(measured - (limit.min ?? -Infinity), (limit.max ?? Infinity) - measured)
  must(Math.abs(margin - distance) < 2e-6, `margin ${margin} is not the distance ${distance}`)
  must(where === null || (where.fromMm >= 0 && where.toMm >= where.fromMm && where.toMm <= weldMm + 1e-9), `lies at ${JSON.stringify(where)}`)
  return wrong
}

describe.each(allCriteria().map((set) => set.id))('%s', (id) => {
  const criteria = criteriaById(id)

  it('comes out the same in whatever order the readings were taken', () => {
    fc.assert(fc.property(looks, fc.array(fc.double({ noNaN: true }), { minLength: 1, maxLength: 8 }), ({ weld, inspection }, keys) => {
      const other = {
        ...inspection,
        stations: shuffled(inspection.stations, keys), indications: shuffled(inspection.indications, keys), lookedFor: shuffled(inspection.lookedFor, keys),
      }
      expect(scoreInspection(weld, other, criteria)).toEqual(scoreInspection(weld, inspection, criteria))
    }))
  })

  it('has findings that agree with their numbers, and a verdict and mark that agree with the findings', () => {
    fc.assert(fc.property(looks, ({ weld, inspection }) => {
      const card = scoreInspection(weld, inspection, criteria)
      expect(card.findings.flatMap((finding) => contradictions(finding, weld.lengthMm))).toEqual([])
      const verdicts = card.findings.map((finding) => finding.verdict)
      expect(card.verdict).toBe(verdicts.includes('reject') ? 'reject' : verdicts.includes('not-measured') ? 'incomplete' : 'accept')
      if (card.verdict === 'incomplete') expect(card.mark).toBeNull()
      if (card.verdict === 'accept') expect(card.mark).toBeGreaterThanOrEqual(criteria.passMark)
      if (card.verdict === 'reject') expect(card.mark).toBeLessThan(criteria.passMark)
      expect(JSON.stringify(card)).not.toMatch(/NaN|Infinity/)
      // null in JSON where a number was would be a NaN or an Infinity that hid
      expect(JSON.parse(JSON.stringify(card))).toEqual(card)
    }))
  })

  it('leaves its inputs as they were', () => {
    fc.assert(fc.property(looks, ({ weld, inspection }) => {
      const before = structuredClone(inspection)
      scoreInspection(weld, inspection, criteria)
      expect(inspection).toEqual(before)
    }), { numRuns: 25 })
  })
})
