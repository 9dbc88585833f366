import type { LengthUnit } from '../../units/length'
import { parseAngle } from '../../units/angle'
import { COUNTED_KINDS } from '../types'
import type { DraftAllowance, DraftCondition, DraftLimit, DraftRule, YesNo } from './draft'
import { scaleUnit } from './scale-unit'
import { readLength, readNumber, readShare } from './typed-values'

/** Says a sentence at a box of the rule. */
type Say = (box: string, sentence: string) => void

/** A box that could not be read: told already, and refused by the shape. */
const UNREAD = null

/**
 * The rule a form describes, as data for the criteria's own shape to judge. Boxes that cannot be read are told here, in words about
 * what was typed.
 */
export function readRule(rule: DraftRule, units: LengthUnit, say: Say): unknown {
  const boxes = boxReader(units, say)
  const title = rule.source.title.trim()
  const clause = rule.source.clause.trim()
  if (rule.source.status === 'confirmed' && clause === '') {
    say('source.clause', 'Name the clause it was read in, or choose another word for how sure you are.')
  }
  const [when, unless] = [condition(rule.when, 'when', boxes), condition(rule.unless, 'unless', boxes)]
  return {
    id: rule.id.trim(),
    ...(when && { when }), ...(unless && { unless }),
    source: { title, clause: clause || null, status: rule.source.status, ...(rule.source.note.trim() && { note: rule.source.note.trim() }) },
    weight: boxes.number(rule.weight, 'weight'),
    readiness: readiness(rule, boxes),
    kind: rule.kind,
    ...check(rule, boxes),
  }
}

type Boxes = ReturnType<typeof boxReader>

function boxReader(units: LengthUnit, say: Say) {
  const read = (text: string, box: string, parse: (text: string) => number | null, what: string): number | null => {
    const value = text.trim() === '' ? null : parse(text)
    if (value === null) say(box, text.trim() === '' ? `Type ${what}.` : `“${text.trim()}” cannot be read. Type ${what}.`)
    return value ?? UNREAD
  }
  return {
    say,
    length: (text: string, box: string) => read(text, box, (typed) => readLength(typed, units), units === 'in' ? 'a length, like 1/32' : 'a length, like 0.5'),
    number: (text: string, box: string) => read(text, box, readNumber, 'a number'),
    share: (text: string, box: string) => read(text, box, readShare, 'per cent, like 10 %'),
    angle: (text: string, box: string) => read(text, box, angleOf, 'an angle, like 135°'),
  }
}

function angleOf(text: string): number | null {
  try {
    return parseAngle(text)
  } catch {
    return null // not an angle: the form says so at the box
  }
}

function readiness(rule: DraftRule, boxes: Boxes): unknown {
  if (rule.readiness === 'attribute' || COUNTED_KINDS.has(rule.kind)) return { as: 'attribute' }
  const unit = scaleUnit(rule)
  return { as: 'margin', scale: unit === 'angle' ? boxes.angle(rule.scale, 'scale') : unit === 'share' ? boxes.share(rule.scale, 'scale') : boxes.length(rule.scale, 'scale') }
}

function check(rule: DraftRule, boxes: Boxes): object {
  const ifSeen = rule.ifSeen.length > 0 ? { ifSeen: rule.ifSeen } : {}
  const optional = rule.optional ? { optional: true } : {}
  const must = (box: 'max' | 'allowed' | 'nominal' | 'beyond'): unknown => {
    if (rule[box].form === 'none') boxes.say(`${box}.form`, 'Choose how the limit is written.')
    return limit(rule[box], box, boxes)
  }
  switch (rule.kind) {
    case 'absent': return { of: rule.of, ...ifSeen }
    case 'attribute': return { answer: rule.answer, of: rule.of, ...ifSeen }
    case 'largest-size': return { of: rule.of, size: rule.size, max: must('max') }
    case 'size-allowance':
      return { of: rule.of, size: rule.size, max: limit(rule.max, 'max', boxes), allowed: { max: must('allowed'), over: allowance(rule.over, boxes) } }
    case 'reading-range': return { reading: rule.reading, min: limit(rule.min, 'min', boxes), max: limit(rule.max, 'max', boxes), ...optional }
    case 'reading-spread': return { reading: rule.reading, max: must('max') }
    case 'reading-allowance':
      return { reading: rule.reading, side: rule.side, nominal: must('nominal'), beyond: must('beyond'), over: allowance(rule.over, boxes), ...optional }
    case 'window-sum':
      return { of: rule.of, size: rule.size, countFromMm: boxes.length(rule.countFrom, 'countFrom'), windowMm: boxes.length(rule.window, 'window'), max: must('max') }
    case 'window-count': return { of: rule.of, windowMm: boxes.length(rule.window, 'window'), max: boxes.number(rule.count, 'count') }
    case 'length-share': return { of: rule.of, max: boxes.share(rule.share, 'share') }
    case 'not-judged': return { reason: rule.reason }
  }
}

function limit(typed: DraftLimit, box: string, boxes: Boxes): unknown {
  switch (typed.form) {
    case 'none': return null
    case 'fixed': return { form: 'fixed', mm: boxes.length(typed.value, `${box}.value`) }
    case 'angle': return { form: 'angle', degrees: boxes.angle(typed.value, `${box}.value`) }
    case 'linear':
      return {
        form: 'linear', of: typed.of, k: boxes.number(typed.k, `${box}.k`), c: typed.c.trim() === '' ? 0 : boxes.length(typed.c, `${box}.c`),
        cap: typed.cap.trim() === '' ? null : boxes.length(typed.cap, `${box}.cap`), ...(typed.plus && { plus: typed.plus }),
      }
    case 'table':
      return {
        form: 'table', by: typed.by,
        steps: typed.steps.map(({ end, at, value }, index) => ({
          mm: boxes.length(value, `${box}.steps.${index}.value`), ...(end !== '' && { [end]: boxes.length(at, `${box}.steps.${index}.at`) }),
        })),
      }
  }
}

function allowance(over: DraftAllowance, boxes: Boxes): unknown {
  if (over.per === 'weld') return { per: 'weld', share: boxes.share(over.share, 'over.share') }
  return {
    per: 'window', lengthMm: boxes.length(over.length, 'over.length'), windowMm: boxes.length(over.window, 'over.window'),
    ...(over.shareIfShorter.trim() !== '' && { shareIfShorter: boxes.share(over.shareIfShorter, 'over.shareIfShorter') }),
  }
}

function condition(typed: DraftCondition, box: 'when' | 'unless', boxes: Boxes): object | null {
  const thickness = {
    ...(typed.low.trim() !== '' && { [typed.lowKind]: boxes.length(typed.low, `${box}.low`) }),
    ...(typed.high.trim() !== '' && { [typed.highKind]: boxes.length(typed.high, `${box}.high`) }),
  }
  const found = {
    ...(typed.weld !== '' && { weld: typed.weld }),
    ...(Object.keys(thickness).length > 0 && { thickness }),
    ...flag('completePenetration', typed.completePenetration), ...flag('transverseToTension', typed.transverseToTension), ...flag('stiffenerToWeb', typed.stiffenerToWeb),
  }
  return Object.keys(found).length > 0 ? found : null
}

const flag = (name: string, answer: YesNo): object => (answer === '' ? {} : { [name]: answer === 'yes' })
