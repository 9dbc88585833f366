// What is typed in the boxes of a set being written: what can be read, and the sentence at the box where it cannot.
import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { copiedSourceProblems } from '@/lib/criteria/draft/copied-source'
import { blankDraft, blankLimit, blankRule, freeId, nextKey, type DraftCriteria, type DraftRule } from '@/lib/criteria/draft/draft'
import { readDraft } from '@/lib/criteria/draft/from-draft'
import { isOwn, ownId } from '@/lib/criteria/draft/own-id'
import { SAMPLE_COUPONS, sampleCoupon } from '@/lib/criteria/draft/sample-coupons'
import { draftOf } from '@/lib/criteria/draft/to-draft'
import { lengthText, readLength, readNumber, readShare } from '@/lib/criteria/draft/typed-values'
import { RULE_KINDS } from '@/lib/criteria/types'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'

const KEY = { id: 'own.test', version: 1 }
const shop = criteriaById('shop-bead')
const at = (draft: DraftCriteria, id: string): number => draft.rules.findIndex((rule) => rule.id === id)
function changed(draft: DraftCriteria, id: string, change: Partial<DraftRule>): DraftCriteria {
  return { ...draft, rules: draft.rules.map((rule) => (rule.id === id ? { ...rule, ...change } : rule)) }
}
const problemsOf = (draft: DraftCriteria) => {
  const read = readDraft(draft, KEY)
  return read.ok ? {} : read.problems
}
const withRule = (rule: DraftRule): DraftCriteria => ({ ...blankDraft('us', 'Test'), edition: 'Ours', rules: [rule] })

describe('typed values', () => {
  it.each([['1/32', 0.79375], ['1/32 in', 0.79375], ['.045', 1.143], ['1 1/8', 28.575], ['2 mm', 2], ['-1/16', -1.5875]])('reads %s as a length in inches', (text, mm) => {
    expect(readLength(text, 'in')).toBe(mm)
  })
  it.each([['abc'], ['1/0'], [''], ['two']])('cannot read %s', (text) => expect(readLength(text, 'in')).toBeNull())
  it.each([[0.79375, '1/32 in'], [1.143, '0.045 in'], [25.4, '1 in'], [0.5953125, '3/128 in'], [0.7, '0.7 mm'], [-1.5875, '-1/16 in']])('writes %s mm in inches as %s', (mm, text) => {
    expect(lengthText(mm, 'in')).toBe(text)
    expect(readLength(text, 'in')).toBe(mm)
  })
  it('reads numbers and shares, and says no to words', () => {
    expect([readNumber('0,25'), readNumber('1/4'), readNumber('x'), readShare('10 %'), readShare('7'), readShare('ten')]).toEqual([0.25, 0.25, null, 0.1, 0.07, null])
  })
})

describe('a draft', () => {
  it('with one limit tightened is a set that differs by that limit', () => {
    const draft = changed(draftOf(shop), 'undercut', { max: { ...blankLimit(), value: '1/64' } })
    const read = readDraft(draft, KEY)
    expect(read).toMatchObject({ ok: true, value: { id: 'own.test', version: 1 } })
    expect(read.ok && read.value.rules).toEqual(shop.rules.map((rule) => (rule.id === 'undercut' ? { ...rule, max: { form: 'fixed', mm: 25.4 / 64 } } : rule)))
  })

  it('says at the box what cannot be read, and names what was typed', () => {
    const draft = changed(changed(draftOf(shop), 'undercut', { max: { ...blankLimit(), value: 'thin' } }), 'porosity', { weight: '' })
    expect(problemsOf(draft)).toEqual({
      [`rules.${at(draft, 'undercut')}.max.value`]: '“thin” cannot be read. Type a length, like 1/32.',
      [`rules.${at(draft, 'porosity')}.weight`]: 'Type a number.',
    })
  })

  it('with nothing in it says what it needs', () => {
    expect(Object.keys(problemsOf(blankDraft('si'))).sort()).toEqual(['edition', 'rules', 'title'])
  })

  it('tells of limits that contradict each other at the later one', () => {
    const draft = withRule({ ...blankRule('reading-range', '1', 'width'), min: { ...blankLimit(), value: '1/2' }, max: { ...blankLimit(), value: '1/4' } })
    expect(problemsOf(draft)).toEqual({ 'rules.0.max': 'This must not be less than min.' })
  })

  it('points at the row of a table', () => {
    const steps = [{ end: 'upTo', at: '1/2', value: '1/32' }, { end: 'upTo', at: '1/4', value: '1/16' }, { end: '', at: '', value: '' }] as const
    const draft = withRule({ ...blankRule('largest-size', '1', 'undercut'), of: ['undercut'], max: { ...blankLimit('table'), steps } })
    expect(problemsOf(draft)).toEqual({ 'rules.0.max.steps.2.value': 'Type a length, like 1/32.' })
    const filled = withRule({ ...draft.rules[0]!, max: { ...blankLimit('table'), steps: [steps[0], steps[1], { end: '', at: '', value: '1/8' }] } })
    expect(problemsOf(filled)).toEqual({ 'rules.0.max.steps.1.at': 'This must end further than the row before it.' })
  })

  it('tells which of two rules with one id is one too many', () => {
    const rule = { ...blankRule('absent', '1', 'clean'), of: ['slag'] as const }
    const draft = { ...withRule(rule), rules: [rule, { ...rule, key: '2', of: ['spatter'] as const }] }
    expect(Object.keys(problemsOf(draft))).toEqual(['rules.1.id'])
  })

  it('is never sure of a source without its clause', () => {
    const rule = { ...blankRule('absent', '1', 'clean'), of: ['slag'] as const, source: { title: 'House manual', clause: ' ', status: 'confirmed', note: '' } as const }
    expect(Object.keys(problemsOf(withRule(rule)))).toEqual(['rules.0.source.clause'])
    expect(problemsOf(withRule({ ...rule, source: { ...rule.source, title: '', clause: '4.2' } }))).toEqual({ 'rules.0.source.title': 'This must not be empty.' })
    expect(problemsOf(withRule({ ...rule, source: { ...rule.source, clause: '4.2' } }))).toEqual({})
  })

  it.each(RULE_KINDS)('of a blank %s rule asks at boxes of that rule, and never throws', (kind) => {
    const problems = problemsOf(withRule(blankRule(kind, '1', kind)))
    for (const box of Object.keys(problems)) expect(box).toMatch(/^rules\.0\.(of|max|min|allowed|nominal|beyond|over|window|count|share|countFrom)/)
    // An answer and what is not judged are whole as they are; the rest want a limit or a kind.
    expect(Object.keys(problems).length === 0).toBe(kind === 'attribute' || kind === 'not-judged')
  })

  it('gives every new rule a key and an id of its own', () => {
    const { rules } = draftOf(shop)
    expect(rules.map(({ key }) => key)).not.toContain(nextKey(rules))
    expect(freeId([blankRule('absent', '1', 'absent')], 'absent')).toBe('absent-2')
  })
})

describe('a changed limit', () => {
  const d11 = criteriaById('structural-static.us')
  const problems = (draft: DraftCriteria, base = d11) => {
    const read = readDraft(draft, KEY)
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    return copiedSourceProblems(draft, read.value, base)
  }

  it('may not go on citing the standard it was copied from', () => {
    const index = d11.rules.findIndex((rule) => rule.kind === 'reading-range' || rule.kind === 'size-allowance' || rule.kind === 'reading-allowance')
    const draft = draftOf(d11)
    const rules = draft.rules.map((rule, place) => (place === index ? { ...rule, when: { ...rule.when, high: '3/4' } } : rule))
    expect(Object.keys(problems({ ...draft, rules }))).toContain(`rules.${index}.source.title`)
    const ours = rules.map((rule, place) => (place === index ? { ...rule, source: { title: 'House rule', clause: '', status: 'common-practice', note: '' } as const } : rule))
    expect(problems({ ...draft, rules: ours })).toEqual({})
  })

  it('may not keep a note on the limit before', () => {
    const draft = changed(draftOf(shop), 'undercut', { max: { ...blankLimit(), value: '1/64' } })
    expect(problems(draft, shop)).toEqual({ [`rules.${at(draft, 'undercut')}.source.note`]: expect.stringContaining('limit before') })
    const told = changed(draft, 'undercut', { source: { title: 'Shop rule', clause: '', status: 'common-practice', note: 'Half the welder test limit.' } })
    expect(problems(told, shop)).toEqual({})
  })

  it('leaves weight and readiness free to change', () => {
    expect(problems(changed(draftOf(d11), d11.rules[0]!.id, { weight: '33' }))).toEqual({})
  })
})

describe('the id of a program’s own set', () => {
  it('never is one that ships with the application', () => {
    for (const { id } of allCriteria()) expect(isOwn(id)).toBe(false)
    expect(isOwn(ownId('Shop bead', new Set()))).toBe(true)
  })
  it('comes from the title and is free', () => {
    expect(ownId('Tight undercut, Spring', new Set())).toBe('own.tight-undercut-spring')
    expect(ownId('Tight undercut', new Set(['own.tight-undercut']))).toBe('own.tight-undercut-2')
    expect(ownId('…', new Set())).toBe('own.set')
    expect(ownId('x'.repeat(300), new Set()).length).toBeLessThanOrEqual(61)
  })
})

describe('the sample coupons', () => {
  it('answer every rule of every shipped set', () => {
    for (const { exercise, inspection } of SAMPLE_COUPONS) {
      for (const set of allCriteria()) {
        expect(scoreInspection(weldOfExercise(exercise), inspection, set).findings.filter(({ verdict }) => verdict === 'not-measured').map(({ rule }) => `${set.id} ${rule}`)).toEqual([])
      }
    }
  })
  it('hold a clean one that the shop rule accepts and one a tighter undercut rejects', () => {
    const verdict = (id: string, set = shop) => scoreInspection(weldOfExercise(sampleCoupon(id).exercise), sampleCoupon(id).inspection, set).verdict
    expect([verdict('clean'), verdict('faults'), verdict('pores')]).toEqual(['accept', 'accept', 'reject'])
    const tight = readDraft(changed(draftOf(shop), 'undercut', { max: { ...blankLimit(), value: '1/64' } }), KEY)
    expect(tight.ok && verdict('faults', tight.value)).toBe('reject')
    expect(sampleCoupon('no such').id).toBe('faults')
  })
})
