import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { parseCriteriaSet } from '@/lib/criteria/schema'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { anInspection, aWeld } from '../scoring/sound-weld'

type Json = { [key: string]: Json } & Json[] & (string | number | boolean | null)

/** A copy of a set as loose JSON, changed in one place. */
function loose(id: string, change: (set: Json) => void): unknown {
  const copy = JSON.parse(JSON.stringify(criteriaById(id))) as Json
  change(copy)
  return copy
}

const ruleOf = (set: Json, id: string): Json => (set.rules as unknown as Json[]).find((rule) => (rule.id as unknown) === id) as Json
const put = (holder: Json | undefined, key: string, value: unknown): void => void Object.assign(holder as object, { [key]: value })

it.each(allCriteria().map((set) => [set.id, set] as const))('reads %s back from JSON, equal and frozen', (_, set) => {
  const parsed = parseCriteriaSet(JSON.parse(JSON.stringify(set)))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  expect(parsed.value).toEqual(set)
  expect(Object.isFrozen(parsed.value.rules[0])).toBe(true)
})

it('gives a set that judges as the built-in one does', () => {
  const parsed = parseCriteriaSet(loose('structural-static.us', () => undefined))
  if (!parsed.ok) throw new Error('not read')
  expect(scoreInspection(aWeld(), anInspection(), parsed.value)).toEqual(scoreInspection(aWeld(), anInspection(), criteriaById('structural-static.us')))
})

describe('names the rule and the field of', () => {
  it.each<[what: string, id: string, change: (set: Json) => void, rule: string | null, field: string, message: string]>([
    ['a limit in text', 'shop-bead', (set) => put(ruleOf(set, 'undercut').max, 'mm', '1/32'), 'undercut', 'max.mm', 'must be a number'],
    ['a negative limit', 'shop-bead', (set) => put(ruleOf(set, 'undercut').max, 'mm', -1), 'undercut', 'max.mm', 'must be 0 or more'],
    ['an endless limit', 'shop-bead', (set) => put(ruleOf(set, 'undercut').max, 'mm', Infinity), 'undercut', 'max.mm', 'must be a number'],
    ['an unknown kind of rule', 'shop-bead', (set) => put(ruleOf(set, 'restart'), 'kind', 'pretty'), 'restart', 'kind', 'must be one of: absent, attribute,'],
    ['an unknown kind of indication', 'shop-bead', (set) => put(ruleOf(set, 'crack'), 'of', ['crak']), 'crack', 'of[0]', 'must be one of: crack,'],
    ['nothing to look for', 'shop-bead', (set) => put(ruleOf(set, 'crack'), 'of', []), 'crack', 'of', 'must name at least one kind'],
    ['an unknown limit', 'shop-bead', (set) => put(ruleOf(set, 'undercut'), 'max', { form: 'guess' }), 'undercut', 'max.form', 'must be a limit'],
    ['a misspelt field', 'shop-bead', (set) => put(ruleOf(set, 'undercut'), 'maximum', 1), 'undercut', '', 'has "maximum", which does not belong here'],
    ['a missing source', 'shop-bead', (set) => put(ruleOf(set, 'undercut'), 'source', undefined), 'undercut', 'source', 'must be an object'],
    ['an unknown certainty', 'shop-bead', (set) => put(ruleOf(set, 'undercut').source, 'status', 'sure'), 'undercut', 'source.status', 'must be one of: confirmed,'],
    ['a negative weight', 'shop-bead', (set) => put(ruleOf(set, 'undercut'), 'weight', -1), 'undercut', 'weight', 'must be 0 or more'],
    ['a scale of nothing', 'shop-bead', (set) => put(ruleOf(set, 'undercut').readiness, 'scale', 0), 'undercut', 'readiness.scale', 'must be more than 0'],
    ['a count with a margin', 'shop-bead', (set) => put(ruleOf(set, 'crack'), 'readiness', { as: 'margin', scale: 1 }), 'crack', 'readiness', 'must be an attribute'],
    ['a rule without a name', 'shop-bead', (set) => put(ruleOf(set, 'restart'), 'id', ''), 'rule 10', 'id', 'must be lower-case letters'],
    ['a range with no ends', 'shop-bead', (set) => put(ruleOf(set, 'leg-size'), 'min', null), 'leg-size', 'max', 'needs a min, a max or both'],
    ['a range upside down', 'shop-bead', (set) => Object.assign(ruleOf(set, 'leg-size'), { min: { form: 'fixed', mm: 5 }, max: { form: 'fixed', mm: 4 } }), 'leg-size', 'max', 'must not be less than min'],
    ['a toe angle in millimetres', 'iso5817-b', (set) => put(ruleOf(set, '505'), 'min', { form: 'fixed', mm: 150 }), '505', 'min', 'must be an angle'],
    ['a toe that is more than straight', 'iso5817-b', (set) => put(ruleOf(set, '505').min, 'degrees', 181), '505', 'min.degrees', 'must be at most 180'],
    ['a range of angles upside down', 'iso5817-b', (set) => put(ruleOf(set, '505'), 'max', { form: 'angle', degrees: 90 }), '505', 'max', 'must not be less than min'],
    ['a leg in degrees', 'shop-bead', (set) => put(ruleOf(set, 'leg-size'), 'min', { form: 'angle', degrees: 90 }), 'leg-size', 'min', 'is an angle, which only the toe angle'],
    ['an undercut in degrees', 'structural-static.us', (set) => put(ruleOf(set, 'undercut').allowed, 'max', { form: 'angle', degrees: 90 }), 'undercut', 'allowed.max', 'is an angle, which only the toe angle'],
    ['a spread of toe angles', 'shop-bead', (set) => put(ruleOf(set, 'width-consistency'), 'reading', 'toe-angle'), 'width-consistency', 'kind', 'cannot judge the toe angle'],
    ['a throat held against one root width', 'iso5817-c', (set) => put(ruleOf(set, '5213'), 'beyond', { form: 'linear', of: 'root-width', k: 1, c: 0, cap: null }), '5213', 'beyond', 'cannot depend on the width'],
    ['a spread that depends on one width', 'shop-bead', (set) => put(ruleOf(set, 'width-consistency'), 'max', { form: 'linear', of: 'width', k: 1, c: 0, cap: null }), 'width-consistency', 'max', 'cannot depend on the width'],
    ['a table that falls', 'structural-static.us', (set) => put((ruleOf(set, 'convexity').max?.steps as Json)[1] as Json, 'below', 1), 'convexity', 'max.steps[1]', 'must end further than the row before it'],
    ['a table that ends', 'structural-static.us', (set) => put((ruleOf(set, 'convexity').max?.steps as Json)[2] as Json, 'upTo', 99), 'convexity', 'max.steps[2]', 'must have no end'],
    ['a table open in the middle', 'structural-static.us', (set) => put(ruleOf(set, 'convexity').max, 'steps', [{ mm: 1 }, { mm: 2 }]), 'convexity', 'max.steps[0]', 'needs an end'],
    ['a row with two ends', 'structural-static.us', (set) => put((ruleOf(set, 'convexity').max?.steps as Json)[0] as Json, 'below', 9), 'convexity', 'max.steps[0]', 'has two ends'],
    ['an allowance longer than its window', 'structural-static.us', (set) => put(ruleOf(set, 'undercut').allowed?.over, 'lengthMm', 400), 'undercut', 'allowed.over.lengthMm', 'must not be more than its window'],
    ['a larger limit that is smaller', 'structural-static.us', (set) => put(ruleOf(set, 'undercut').allowed?.max, 'mm', 0.1), 'undercut', 'allowed.max', 'must not be less than the limit for any length'],
    ['a share over the whole', 'structural-static.us', (set) => put(ruleOf(set, 'leg-size').over, 'share', 1.5), 'leg-size', 'over.share', 'must be from 0 to 1'],
    ['thickness with two upper ends', 'structural-static.us', (set) => put(ruleOf(set, 'undercut').when?.thickness, 'upTo', 9), 'undercut', 'when.thickness', 'has two upper ends'],
    ['thickness that ends before it begins', 'structural-static.us', (set) => put(ruleOf(set, 'undercut').when?.thickness, 'from', 90), 'undercut', 'when.thickness', 'ends before it begins'],
    ['an id used twice for all welds', 'shop-bead', (set) => put(ruleOf(set, 'restart'), 'id', 'cleaning'), 'cleaning', 'id', 'is used before by a rule for every weld'],
    ['half a pore', 'structural-cyclic.us', (set) => put(ruleOf(set, 'porosity-frequency'), 'max', 0.5), 'porosity-frequency', 'max', 'must be a whole number'],
    ['a pass mark over 100', 'shop-bead', (set) => put(set, 'passMark', 101), null, 'passMark', 'must be from 1 to 100'],
    ['a version of nothing', 'shop-bead', (set) => put(set, 'version', 0), null, 'version', 'must be 1 or more'],
    ['an unknown system', 'shop-bead', (set) => put(set, 'system', 'imperial'), null, 'system', 'must be one of: us, si'],
    ['no rules', 'shop-bead', (set) => put(set, 'rules', []), null, 'rules', 'needs at least one rule'],
    ['rules that are no list', 'shop-bead', (set) => put(set, 'rules', 7), null, 'rules', 'must be a list'],
  ])('%s', (_, id, change, rule, field, message) => {
    const parsed = parseCriteriaSet(loose(id, change))
    if (parsed.ok) throw new Error('was taken')
    expect(parsed.problems).toContainEqual({ rule, field, message: expect.stringContaining(message) as string })
  })

  it.each([null, undefined, 7, 'shop-bead', [], {}])('a set that is %j', (data) => {
    const parsed = parseCriteriaSet(data)
    expect(parsed.ok).toBe(false)
  })

  it('every weight at nothing', () => {
    const parsed = parseCriteriaSet(loose('shop-bead', (set) => { for (const rule of set.rules as unknown as Json[]) put(rule, 'weight', 0) }))
    expect(parsed).toMatchObject({ ok: false, problems: [{ rule: null, field: 'rules', message: 'need at least one weight above 0' }] })
  })

  it('all problems at once', () => {
    const parsed = parseCriteriaSet(loose('shop-bead', (set) => { put(set, 'passMark', 0); put(ruleOf(set, 'crack'), 'of', ['x']); put(ruleOf(set, 'undercut'), 'weight', 'heavy') }))
    expect(parsed.ok ? [] : parsed.problems.map((problem) => problem.rule)).toEqual([null, 'crack', 'undercut'])
  })
})
