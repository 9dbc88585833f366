import type { Verdict } from '../scoring/types'
import type { BendJudgement, BendReason } from './bend'
import type { FilletBreakJudgement, FilletBreakReason } from './fillet-break'
import type { MacroetchJudgement, MacroetchReason } from './macroetch'
import type { SpecimensNeeded } from './thickness'

export type BendKind = 'face' | 'root' | 'side'

/** Everything known about one qualification test. `visual` null: nobody has looked yet. */
export type TestEvidence = {
  readonly visual: Verdict | null
  readonly needed: SpecimensNeeded
  readonly bends: readonly { readonly kind: BendKind; readonly judgement: BendJudgement }[]
  readonly breaks: readonly FilletBreakJudgement[]
  readonly macroetches: readonly MacroetchJudgement[]
}

export type TestReason =
  | 'visual-rejected' | 'visual-incomplete' | 'visual-missing'
  | 'bend-rejected' | 'break-rejected' | 'macroetch-rejected' | 'macroetch-incomplete'
  | 'replacement-needed' | 'bends-missing' | 'breaks-missing' | 'macroetches-missing'
  | BendReason | FilletBreakReason | MacroetchReason

export type TestOutcome = {
  /** 'replace': a specimen was set aside for its corner crack and its replacement has not been tested yet. */
  readonly result: 'pass' | 'fail' | 'incomplete' | 'replace'
  readonly reasons: readonly TestReason[]
}

/**
 * Combines the visual verdict and the specimens into one result.
 *
 * Any rejection fails the test, whatever is still missing. Otherwise a specimen set aside without its replacement asks for one;
 * otherwise anything missing leaves the test incomplete. A specimen set aside counts for nothing: the accepted ones must
 * still make up the number needed.
 *
 * @throws RangeError for a needed number that is not a whole number from 0, or when nothing but a look would decide the test
 */
export function combineTestResult(evidence: TestEvidence): TestOutcome {
  const { needed } = evidence
  const counts = Object.entries(needed)
  for (const [name, count] of counts) {
    if (!Number.isInteger(count) || count < 0) throw new RangeError(`${name} needed must be a whole number from 0, not ${count}.`)
  }
  if (counts.every(([, count]) => count === 0)) throw new RangeError('A qualification test needs at least one specimen; none is asked for.')

  const failed = rejections(evidence)
  if (failed.length > 0) return { result: 'fail', reasons: distinct(failed) }
  const bends = openBends(evidence)
  const open = distinct([...bends, ...openQuestions(evidence)])
  if (bends.includes('replacement-needed')) return { result: 'replace', reasons: open }
  return open.length > 0 ? { result: 'incomplete', reasons: open } : { result: 'pass', reasons: [] }
}

function rejections({ visual, bends, breaks, macroetches }: TestEvidence): TestReason[] {
  return [
    ...(visual === 'reject' ? ['visual-rejected' as const] : []),
    ...rejected('bend-rejected', bends.map(bend => bend.judgement)),
    ...rejected('break-rejected', breaks),
    ...rejected('macroetch-rejected', macroetches),
  ]
}

function rejected(reason: TestReason, judgements: readonly { readonly verdict: string; readonly reasons: readonly TestReason[] }[]): TestReason[] {
  const bad = judgements.filter(judgement => judgement.verdict === 'reject')
  return bad.length === 0 ? [] : [reason, ...bad.flatMap(judgement => judgement.reasons)]
}

function openBends({ needed, bends }: TestEvidence): TestReason[] {
  const wanted: Readonly<Record<BendKind, number>> = { face: needed.faceBends, root: needed.rootBends, side: needed.sideBends }
  const kinds: readonly BendKind[] = ['face', 'root', 'side']
  return kinds.flatMap(kind => {
    const ofKind = bends.filter(bend => bend.kind === kind)
    const missing = wanted[kind] - ofKind.filter(bend => bend.judgement.verdict === 'accept').length
    if (missing <= 0) return []
    const setAside = ofKind.filter(bend => bend.judgement.verdict === 'replace')
    const untested = missing > setAside.length ? ['bends-missing' as const] : []
    return setAside.length > 0 ? ['replacement-needed' as const, 'corner-crack-too-large' as const, ...untested] : untested
  })
}

function openQuestions({ visual, needed, breaks, macroetches }: TestEvidence): TestReason[] {
  return [
    ...(visual === null ? ['visual-missing' as const] : visual === 'incomplete' ? ['visual-incomplete' as const] : []),
    ...(breaks.length < needed.breaks ? ['breaks-missing' as const] : []),
    ...(macroetches.length < needed.macroetches ? ['macroetches-missing' as const] : []),
    ...(macroetches.some(macroetch => macroetch.verdict === 'incomplete') ? ['macroetch-incomplete' as const] : []),
  ]
}

const distinct = (reasons: readonly TestReason[]): TestReason[] => [...new Set(reasons)]
