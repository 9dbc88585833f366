import type { IndicationKind } from '../../scoring/types'
import type { SourceStatus } from '../../source'
import type { Quantity, Reading, RuleKind, Size } from '../types'

/*
 * Criteria while they are being written: every box as it was typed, so that a half-written set can be put away and taken up again.
 * A box that a kind of rule does not use stays as it was, in case the kind is changed back.
 */

export const LIMIT_FORMS = ['none', 'fixed', 'angle', 'linear', 'table'] as const
export type LimitForm = (typeof LIMIT_FORMS)[number]

/** One row of a table of limits; the last row has no end. */
export type DraftStep = { readonly end: '' | 'upTo' | 'below'; readonly at: string; readonly value: string }

/** A limit as typed. `none` is "open on this side", where a rule may be. */
export type DraftLimit = {
  readonly form: LimitForm
  /** A length, or degrees for an angle. */
  readonly value: string
  readonly of: Quantity
  readonly k: string
  readonly c: string
  readonly cap: string
  readonly plus: Quantity | ''
  readonly by: Quantity
  readonly steps: readonly DraftStep[]
}

export type DraftAllowance = {
  readonly per: 'weld' | 'window'
  /** Per cent of the weld. */
  readonly share: string
  readonly length: string
  readonly window: string
  /** Per cent of a weld shorter than the window; '' where the same length holds. */
  readonly shareIfShorter: string
}

export type YesNo = '' | 'yes' | 'no'

/** The welds a rule is for, or not for. Blank boxes ask for nothing. */
export type DraftCondition = {
  readonly weld: '' | 'fillet' | 'groove'
  readonly low: string
  readonly lowKind: 'from' | 'above'
  readonly high: string
  readonly highKind: 'upTo' | 'below'
  readonly completePenetration: YesNo
  readonly transverseToTension: YesNo
  readonly stiffenerToWeb: YesNo
}

export type DraftSource = { readonly title: string; readonly clause: string; readonly status: SourceStatus; readonly note: string }

export type DraftRule = {
  /** Tells the rules of a draft apart while they are moved and renamed. */
  readonly key: string
  readonly id: string
  readonly kind: RuleKind
  readonly of: readonly IndicationKind[]
  readonly ifSeen: readonly IndicationKind[]
  readonly size: Size
  readonly reading: Reading
  readonly optional: boolean
  readonly side: 'below' | 'above'
  readonly answer: 'cratersFilled' | 'fusionComplete'
  readonly reason: 'permitted' | 'depends-on-application'
  readonly min: DraftLimit
  readonly max: DraftLimit
  readonly allowed: DraftLimit
  readonly nominal: DraftLimit
  readonly beyond: DraftLimit
  readonly over: DraftAllowance
  readonly countFrom: string
  readonly window: string
  /** How many, in a window. */
  readonly count: string
  /** Per cent of the weld's length. */
  readonly share: string
  readonly when: DraftCondition
  readonly unless: DraftCondition
  readonly source: DraftSource
  readonly weight: string
  readonly readiness: 'margin' | 'attribute'
  readonly scale: string
}

export type CriteriaKey = { readonly id: string; readonly version: number }

export type DraftCriteria = {
  /** The set it was copied from; null when it began with nothing. */
  readonly base: CriteriaKey | null
  readonly title: string
  readonly edition: string
  readonly system: 'us' | 'si'
  readonly passMark: string
  readonly rules: readonly DraftRule[]
}

export const blankLimit = (form: LimitForm = 'fixed'): DraftLimit =>
  ({ form, value: '', of: 'thickness', k: '', c: '', cap: '', plus: '', by: 'thickness', steps: [{ end: '', at: '', value: '' }] })

export const blankAllowance: DraftAllowance = { per: 'window', share: '', length: '', window: '', shareIfShorter: '' }

export const blankCondition: DraftCondition =
  { weld: '', low: '', lowKind: 'from', high: '', highKind: 'upTo', completePenetration: '', transverseToTension: '', stiffenerToWeb: '' }

/** A rule of a kind with nothing filled in; shop practice until someone names a better source. */
export const blankRule = (kind: RuleKind, key: string, id: string): DraftRule => ({
  key, id, kind, of: [], ifSeen: [], size: 'depth', reading: 'width', optional: false, side: 'below', answer: 'fusionComplete', reason: 'permitted',
  min: blankLimit('none'), max: blankLimit(), allowed: blankLimit(), nominal: blankLimit(), beyond: blankLimit(),
  over: blankAllowance, countFrom: '0', window: '', count: '', share: '',
  when: blankCondition, unless: blankCondition,
  source: { title: 'Shop rule', clause: '', status: 'common-practice', note: '' },
  weight: '10', readiness: 'attribute', scale: '',
})

/** A set with no rules yet. */
export const blankDraft = (system: 'us' | 'si', title = ''): DraftCriteria => ({ base: null, title, edition: '', system, passMark: '70', rules: [] })

/** A key no rule of the draft has. */
export const nextKey = (rules: readonly DraftRule[]): string => String(1 + Math.max(0, ...rules.map(({ key }) => Number(key) || 0)))

/** An id no rule of the draft has, named after the kind of rule: 'largest-size', 'largest-size-2'. */
export function freeId(rules: readonly DraftRule[], kind: RuleKind): string {
  const taken = new Set(rules.map(({ id }) => id))
  for (let number = 1; ; number += 1) {
    const id = number === 1 ? kind : `${kind}-${number}`
    if (!taken.has(id)) return id
  }
}
