// Rules in words: each limit as it is, in the set's own unit.
import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { fixed, inches, linear, onTopOf, otherwise, table, times, upTo } from '@/lib/criteria/limits'
import { allowsText, criteriaInWords, limitText } from '@/lib/reports/criteria-words'

describe('a limit in words', () => {
  it.each([
    [fixed(inches(1 / 32)), '1/32 in'],
    [times(5, 'electrode-diameter'), '5 times the electrode’s diameter'],
    [times(1, 'nominal-leg'), 'the leg asked for'],
    [linear('width', 0.1, inches(1 / 32), inches(1 / 8)), '0.1 times the weld’s width there plus 1/32 in, at most 1/8 in'],
    [onTopOf('nominal-leg', 'thickness', 0.5, 0, null), 'the leg asked for and on top of it 0.5 times the plate’s thickness'],
    [table('thickness', upTo(inches(1 / 4), inches(1 / 32)), otherwise(inches(1 / 16))), '1/32 in (up to 1/4 in) or 1/16 in (beyond that), depending on the plate’s thickness'],
  ])('%j is said', (limit, text) => expect(limitText(limit, 'in')).toBe(text))
})

describe('a set in words', () => {
  const shop = criteriaInWords(criteriaById('shop-bead'))
  const rule = (id: string) => shop.rules.find((each) => each.id === id)

  it('says what each rule allows, for which welds, by whose word', () => {
    expect(rule('undercut')).toMatchObject({ name: 'Undercut', allows: 'Undercut: depth at most 1/32 in.', welds: null, source: 'Shop rule', statusWord: 'common practice, no source', weight: '10 of 105' })
    expect(rule('leg-size')).toMatchObject({ allows: 'Shortest leg at least the leg asked for at every station.', welds: 'Only for fillet welds.' })
    expect(rule('width-in-band')?.allows).toBe('Bead width from 5 times the electrode’s diameter to 6 times the electrode’s diameter at every station.')
    expect(rule('crack')).toMatchObject({ allows: 'None allowed: cracks, crater cracks.', readiness: 'Readiness reads it as yes or no.' })
    expect(rule('undercut')?.readiness).toBe('Readiness reads its margin in steps of 0.5 mm.')
  })

  it('tells every shipped rule without a gap', () => {
    for (const set of allCriteria()) {
      for (const each of criteriaInWords(set).rules) {
        expect(`${each.allows} ${each.welds ?? ''} ${each.readiness}`).not.toMatch(/undefined|null|NaN|\[object/)
        expect(each.allows).toMatch(/^[A-Z].*\.$/)
      }
    }
  })

  it('says of rules that share an id which welds the later one is for', () => {
    const undercut = criteriaInWords(criteriaById('structural-static.us')).rules.filter(({ id }) => id === 'undercut')
    expect(undercut.map(({ welds }) => welds)).toEqual(['Only for plate under 1 in thick.', 'For all other welds.'])
  })

  it('says which sets rest on memory', () => {
    for (const set of allCriteria()) expect(criteriaInWords(set).fromMemory).toBe(set.rules.some(({ source }) => source.status === 'memory'))
  })

  it('tells of allowances and windows', () => {
    const source = { title: 'Test', clause: null, status: 'common-practice' } as const
    const common = { id: 'x', source, weight: 1, readiness: { as: 'attribute' } } as const
    const over = { per: 'window', lengthMm: inches(2), windowMm: inches(12) } as const
    expect(allowsText({ ...common, kind: 'size-allowance', of: ['undercut'], size: 'depth', max: fixed(inches(1 / 32)), allowed: { max: fixed(inches(1 / 16)), over } }, 'in'))
      .toBe('Undercut: depth at most 1/32 in, but up to 1/16 in over 2 in in any 12 in.')
    expect(allowsText({ ...common, kind: 'window-sum', of: ['pore'], size: 'diameter', countFromMm: 1, windowMm: 25, max: fixed(10) }, 'mm'))
      .toBe('Pores: the diameters of 1 mm and more add up to at most 10 mm in any 25 mm.')
    expect(allowsText({ ...common, kind: 'length-share', of: ['undercut'], max: 0.1 }, 'mm')).toBe('Undercut: over at most 10 % of the weld’s length, both toes added up.')
  })
})
