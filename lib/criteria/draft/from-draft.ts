import { freezeDeep } from '../freeze'
import { meaningProblems, type CriteriaProblem } from '../schema-meaning'
import { criteriaShape } from '../schema-shapes'
import type { CriteriaSet } from '../types'
import type { CriteriaKey, DraftCriteria } from './draft'
import { boxOf } from './box-of-field'
import { readRule } from './read-rule'
import { unitOf } from './to-draft'
import { readNumber } from './typed-values'

/** Sentences by the box they belong to: 'title', 'rules.2.max.value'. A rule's own sentence stands at 'rules.2'. */
export type BoxProblems = Readonly<Record<string, string>>

export type ReadDraft =
  | { readonly ok: true; readonly value: CriteriaSet }
  | { readonly ok: false; readonly problems: BoxProblems }

/** The set a draft would be, under the id and version it would be published by; or what is wrong with it, at the box. */
export function readDraft(draft: DraftCriteria, key: CriteriaKey): ReadDraft {
  const problems: Record<string, string> = {}
  const say = (box: string, sentence: string): void => {
    problems[box] ??= sentence
  }
  const units = unitOf(draft.system)
  const rules = draft.rules.map((rule, index) => readRule(rule, units, (box, sentence) => say(`rules.${index}${box && `.${box}`}`, sentence)))
  const passMark = readNumber(draft.passMark)
  if (passMark === null) say('passMark', 'Type a whole number from 1 to 100.')
  if (draft.rules.length === 0) say('rules', 'Add a rule: a set needs at least one.')
  const data = {
    id: key.id, version: key.version, title: draft.title, edition: draft.edition, system: draft.system, passMark, rules,
    ...(draft.base && { settings: { 'copied-from': draft.base.id, 'copied-version': draft.base.version } }),
  }

  const parsed = criteriaShape.safeParse(data)
  for (const issue of parsed.error?.issues ?? []) {
    const [head, index, ...rest] = issue.path
    if (head === 'rules' && typeof index === 'number') say(boxUnder(index, boxOf(rest.join('.')), problems), sentenceOf(issue.message))
    else say(String(head ?? 'rules'), sentenceOf(issue.message))
  }
  if (parsed.success) for (const { index, problem } of placed(parsed.data)) say(index === null ? problem.field : boxUnder(index, boxOf(problem.field), problems), sentenceOf(problem.message))
  return parsed.success && Object.keys(problems).length === 0 ? { ok: true, value: freezeDeep(parsed.data) } : { ok: false, problems }
}

/** A box that said already why it cannot be read keeps its own sentence; so does a limit whose parts did. */
function boxUnder(index: number, box: string, said: Readonly<Record<string, string>>): string {
  const whole = `rules.${index}${box && `.${box}`}`
  return Object.keys(said).find((each) => each.startsWith(`${whole}.`)) ?? whole
}

/** What the parts of the set contradict, each with the place of its rule: ids may be shared, so rules are asked one by one. */
function placed(set: CriteriaSet): readonly { readonly index: number | null; readonly problem: CriteriaProblem }[] {
  const own = set.rules.flatMap((rule, index) =>
    meaningProblems({ ...set, rules: [rule] }).filter((problem) => problem.rule !== null).map((problem) => ({ index, problem })))
  const found = meaningProblems(set)
  const whole = found.filter((problem) => problem.rule === null).map((problem) => ({ index: null, problem }))
  // Problems of rules that share an id come in the rules' order.
  const shared = found.filter(({ rule, field }) => rule !== null && field === 'id')
  const places = set.rules.flatMap((rule, index) => (set.rules.slice(0, index).some(({ id, when, unless }) => id === rule.id && when === undefined && unless === undefined) ? [index] : []))
  return [...own, ...whole, ...shared.flatMap((problem, place) => (places[place] === undefined ? [] : [{ index: places[place], problem }]))]
}

/** 'must not be empty' at a box: 'This must not be empty.' */
const sentenceOf = (message: string): string => (message.endsWith('.') ? message : `This ${message}.`)
