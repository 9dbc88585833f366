import * as z from 'zod'
import { INDICATION_KINDS } from '../../scoring/types'
import { QUANTITIES, READINGS, RULE_KINDS, SIZES } from '../types'
import { LIMIT_FORMS, type DraftCriteria } from './draft'

/** Longer than any limit is written. What a box may mean is judged later; what it may hold is judged here. */
const box = z.string().max(80, 'Keep it to 80 characters.')
const line = z.string().max(400, 'Keep it to 400 characters.')
const kinds = z.array(z.enum(INDICATION_KINDS)).max(INDICATION_KINDS.length)
const yesNo = z.enum(['', 'yes', 'no'])

const limit = z.strictObject({
  form: z.enum(LIMIT_FORMS), value: box, of: z.enum(QUANTITIES), k: box, c: box, cap: box, plus: z.enum(['', ...QUANTITIES]), by: z.enum(QUANTITIES),
  steps: z.array(z.strictObject({ end: z.enum(['', 'upTo', 'below']), at: box, value: box })).max(20, 'A table has at most 20 rows.'),
})
const condition = z.strictObject({
  weld: z.enum(['', 'fillet', 'groove']), low: box, lowKind: z.enum(['from', 'above']), high: box, highKind: z.enum(['upTo', 'below']),
  completePenetration: yesNo, transverseToTension: yesNo, stiffenerToWeb: yesNo,
})
const rule = z.strictObject({
  key: box, id: box, kind: z.enum(RULE_KINDS), of: kinds, ifSeen: kinds, size: z.enum(SIZES), reading: z.enum(READINGS), optional: z.boolean(),
  side: z.enum(['below', 'above']), answer: z.enum(['cratersFilled', 'fusionComplete']), reason: z.enum(['permitted', 'depends-on-application']),
  min: limit, max: limit, allowed: limit, nominal: limit, beyond: limit,
  over: z.strictObject({ per: z.enum(['weld', 'window']), share: box, length: box, window: box, shareIfShorter: box }),
  countFrom: box, window: box, count: box, share: box, when: condition, unless: condition,
  source: z.strictObject({ title: line, clause: line, status: z.enum(['confirmed', 'secondary', 'memory', 'common-practice']), note: line }),
  weight: box, readiness: z.enum(['margin', 'attribute']), scale: box,
})

/** A draft as typed: finished or not, right or wrong. */
export const draftSchema = z.strictObject({
  base: z.strictObject({ id: box, version: z.int().min(1) }).nullable(),
  title: line, edition: line, system: z.enum(['us', 'si']), passMark: box,
  rules: z.array(rule).max(100, 'A set has at most 100 rules.'),
}) satisfies z.ZodType<DraftCriteria>
