import * as z from 'zod'
import { INDICATION_KINDS } from '../scoring/types'
import { QUANTITIES, READINGS, RULE_KINDS, SIZES, type CriteriaSet } from './types'

const number = z.number({ error: 'must be a number' })
const size = number.min(0, 'must be 0 or more')
const positive = number.gt(0, 'must be more than 0')
const share = number.min(0, 'must be from 0 to 1').max(1, 'must be from 0 to 1')
const whole = number.int('must be a whole number')
const flag = z.boolean({ error: 'must be true or false' })
const text = z.string({ error: 'must be text' }).trim().min(1, 'must not be empty').max(400, 'must be at most 400 characters')
const oneOf = <const T extends readonly string[]>(values: T) => z.enum(values, { error: `must be one of: ${values.join(', ')}` })

const quantity = oneOf(QUANTITIES)
const limitStep = z.strictObject({ mm: size, upTo: positive.exactOptional(), below: positive.exactOptional() })
const limit = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('fixed'), mm: size }),
  z.strictObject({ form: z.literal('angle'), degrees: size.max(180, 'must be at most 180 degrees') }),
  z.strictObject({ form: z.literal('linear'), of: quantity, k: number, c: number, cap: size.nullable(), plus: quantity.exactOptional() }),
  z.strictObject({ form: z.literal('table'), by: quantity, steps: z.array(limitStep).min(1, 'needs at least one row') }),
], { error: 'must be a limit: fixed, angle, linear or table' })

const allowance = z.discriminatedUnion('per', [
  z.strictObject({ per: z.literal('weld'), share }),
  z.strictObject({ per: z.literal('window'), lengthMm: size, windowMm: positive, shareIfShorter: share.exactOptional() }),
], { error: 'must be an allowance per weld or per window' })

const thickness = z.strictObject({
  from: size.exactOptional(), above: size.exactOptional(), upTo: size.exactOptional(), below: size.exactOptional(),
})
const condition = z.strictObject({
  weld: oneOf(['fillet', 'groove']).exactOptional(),
  thickness: thickness.exactOptional(),
  completePenetration: flag.exactOptional(), transverseToTension: flag.exactOptional(), stiffenerToWeb: flag.exactOptional(),
})

const source = z.strictObject({
  title: text, clause: text.nullable(), status: oneOf(['confirmed', 'secondary', 'memory', 'common-practice']), note: text.exactOptional(),
})

const common = {
  id: z.string({ error: 'must be text' }).regex(/^[a-z0-9][a-z0-9.-]{0,60}$/, 'must be lower-case letters, digits, dots and hyphens'),
  when: condition.exactOptional(),
  unless: condition.exactOptional(),
  source,
  weight: size.max(1000, 'must be at most 1000'),
  readiness: z.discriminatedUnion('as', [
    z.strictObject({ as: z.literal('margin'), scale: positive }),
    z.strictObject({ as: z.literal('attribute') }),
  ], { error: 'must be a margin with a scale, or an attribute' }),
}

const anyKinds = z.array(oneOf(INDICATION_KINDS))
const kinds = anyKinds.min(1, 'must name at least one kind')
const reading = oneOf(READINGS)
const sizeName = oneOf(SIZES)

const rule = z.discriminatedUnion('kind', [
  z.strictObject({ ...common, kind: z.literal('absent'), of: kinds, ifSeen: anyKinds.exactOptional() }),
  z.strictObject({ ...common, kind: z.literal('attribute'), answer: oneOf(['cratersFilled', 'fusionComplete']), of: anyKinds, ifSeen: anyKinds.exactOptional() }),
  z.strictObject({ ...common, kind: z.literal('largest-size'), of: kinds, size: sizeName, max: limit }),
  z.strictObject({
    ...common, kind: z.literal('size-allowance'), of: kinds, size: sizeName, max: limit.nullable(), allowed: z.strictObject({ max: limit, over: allowance }),
  }),
  z.strictObject({ ...common, kind: z.literal('reading-range'), reading, min: limit.nullable(), max: limit.nullable(), optional: flag.exactOptional() }),
  z.strictObject({ ...common, kind: z.literal('reading-spread'), reading, max: limit }),
  z.strictObject({
    ...common, kind: z.literal('reading-allowance'), reading, side: oneOf(['below', 'above']), nominal: limit, beyond: limit, over: allowance, optional: flag.exactOptional(),
  }),
  z.strictObject({ ...common, kind: z.literal('window-sum'), of: kinds, size: sizeName, countFromMm: size, windowMm: positive, max: limit }),
  z.strictObject({ ...common, kind: z.literal('window-count'), of: kinds, windowMm: positive, max: whole.min(0, 'must be 0 or more') }),
  z.strictObject({ ...common, kind: z.literal('length-share'), of: kinds, max: size }),
  z.strictObject({ ...common, kind: z.literal('not-judged'), reason: oneOf(['permitted', 'depends-on-application']) }),
], { error: `must be one of: ${RULE_KINDS.join(', ')}` })

/** The shape of a set of criteria. What its parts mean together is checked after it. */
export const criteriaShape = z.strictObject({
  id: common.id,
  version: whole.min(1, 'must be 1 or more'),
  title: text,
  edition: text,
  system: oneOf(['us', 'si']),
  passMark: whole.min(1, 'must be from 1 to 100').max(100, 'must be from 1 to 100'),
  rules: z.array(rule).min(1, 'needs at least one rule').max(100, 'must be at most 100 rules'),
  settings: z.record(z.string(), z.union([text, number, flag, z.array(text)])).exactOptional(),
}) satisfies z.ZodType<CriteriaSet>
