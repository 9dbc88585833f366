import type { IndicationKind } from '../scoring/types'
import type { Source } from '../source'

/**
 * Acceptance criteria as data: everything here survives JSON. A set is immutable once used: a changed limit is a new version,
 * so a stored scorecard can be explained years later. All lengths are millimetres.
 */
export type CriteriaSet = {
  readonly id: string
  /** Counts up from 1 with every change of the set's rules. */
  readonly version: number
  readonly title: string
  /** The edition the limits were written from. */
  readonly edition: string
  /** Which column of a dual-unit code this is. 1/32 in and 1 mm are different limits. */
  readonly system: 'us' | 'si'
  /** The least mark of an accepted weld, 1 to 100; a rejected weld stays below it. */
  readonly passMark: number
  readonly rules: readonly Rule[]
  /** Choices the set was built with, for the record. */
  readonly settings?: Readonly<Record<string, string | number | boolean | readonly string[]>>
}

/** Facts of the weld, and the bead's width at the place, that a limit can depend on. */
export const QUANTITIES = [
  'thickness', 'electrode-diameter', 'nominal-leg',
  /** 0.7071 times the nominal leg. */
  'nominal-throat',
  /** What ISO 5817 writes "s or a": the plate thickness of a groove weld, the nominal throat of a fillet. */
  'nominal-size',
  /** Toe to toe, at the station judged. For a limit on an indication: the narrowest width read. */
  'width',
  /** The root's width on the far side of a groove weld, at the same place. */
  'root-width',
] as const
export type Quantity = (typeof QUANTITIES)[number]

/** How much is allowed. */
export type Limit =
  | { readonly form: 'fixed'; readonly mm: number }
  /** For the toe angle, and for nothing else. */
  | { readonly form: 'angle'; readonly degrees: number }
  /** `min(k · of + c, cap)`; with `plus`, that is an allowance on top of a quantity. */
  | { readonly form: 'linear'; readonly of: Quantity; readonly k: number; readonly c: number; readonly cap: number | null; readonly plus?: Quantity }
  /** The first step whose end is not passed. The last step has no end. */
  | { readonly form: 'table'; readonly by: Quantity; readonly steps: readonly LimitStep[] }

/** A row of a limit table: up to and with `upTo` ("up to 5/16 in"), or under `below` ("under 1 in"). The last row has neither. */
export type LimitStep = { readonly mm: number; readonly upTo?: number; readonly below?: number }

/** How much of the weld may go beyond the everyday limit. */
export type Allowance =
  /** A share of the whole weld. */
  | { readonly per: 'weld'; readonly share: number }
  /** A length in any window along the weld; on a weld shorter than the window, the same length, or `shareIfShorter` of the weld. */
  | { readonly per: 'window'; readonly lengthMm: number; readonly windowMm: number; readonly shareIfShorter?: number }

/** What is read, or worked out from what is read, at a station. */
export const READINGS = [
  'width', 'shortest-leg', 'leg-difference', 'throat', 'convexity', 'reinforcement',
  'penetration', 'root-concavity', 'misalignment', 'underfill',
  'shrinkage-groove', 'root-shortfall', 'root-pore', 'root-gap', 'toe-angle',
] as const
export type Reading = (typeof READINGS)[number]

/** Which size of an indication; `largest` is the greatest of depth, height and diameter recorded. */
export const SIZES = ['depth', 'diameter', 'height', 'largest'] as const
export type Size = (typeof SIZES)[number]

/** The welds a rule is for. Everything named must hold. */
export type Condition = {
  readonly weld?: 'fillet' | 'groove'
  readonly thickness?: { readonly from?: number; readonly above?: number; readonly upTo?: number; readonly below?: number }
  readonly completePenetration?: boolean
  readonly transverseToTension?: boolean
  readonly stiffenerToWeb?: boolean
}

/**
 * How a finding becomes evidence of readiness. `scale` divides the margin, in the finding's unit, so that a learner's worst margin
 * varies by about 0.4 from bead to bead. The scales are this project's choice: no standard has them.
 */
export type Readiness = { readonly as: 'margin'; readonly scale: number } | { readonly as: 'attribute' }

type Common = {
  /** Unique in the set, except where a rule reads differently for other welds: of rules that share an id, the first that applies is the one. */
  readonly id: string
  readonly when?: Condition
  readonly unless?: Condition
  readonly source: Source
  /** The rule's share of the mark, relative to the others. */
  readonly weight: number
  readonly readiness: Readiness
}

/** The closed set of rule kinds. A set of criteria, built in or a program's own, is written from these and nothing else. */
export type Rule = Common & Check

export type Check =
  /** None of these may be seen. `ifSeen` kinds reject too but need not be looked for. */
  | { readonly kind: 'absent'; readonly of: readonly IndicationKind[]; readonly ifSeen?: readonly IndicationKind[] }
  /** A yes/no answer that must be yes, and none of the indications that would contradict it. */
  | { readonly kind: 'attribute'; readonly answer: 'cratersFilled' | 'fusionComplete'
      readonly of: readonly IndicationKind[]; readonly ifSeen?: readonly IndicationKind[] }
  /** The largest indication of these kinds. */
  | { readonly kind: 'largest-size'; readonly of: readonly IndicationKind[]; readonly size: Size; readonly max: Limit }
  /**
   * Up to `max` in any length, and up to `allowed.max` over a limited length. `max: null` means nothing is allowed beyond the
   * limited length: the short imperfection.
   */
  | { readonly kind: 'size-allowance'; readonly of: readonly IndicationKind[]; readonly size: Size; readonly max: Limit | null
      readonly allowed: { readonly max: Limit; readonly over: Allowance } }
  /** A band: every station's reading from `min` to `max`; either may be open. `optional`: not applied when no station has the reading. */
  | { readonly kind: 'reading-range'; readonly reading: Reading; readonly min: Limit | null; readonly max: Limit | null; readonly optional?: boolean }
  /** Largest less smallest reading of the weld. Needs two stations. */
  | { readonly kind: 'reading-spread'; readonly reading: Reading; readonly max: Limit }
  /**
   * Every station at least (`side: 'below'`) or at most (`'above'`) `nominal`; past it by as much as `beyond` over a limited length.
   * Each station stands for the stretch half-way to its neighbours, the end stations to the ends.
   */
  | { readonly kind: 'reading-allowance'; readonly reading: Reading; readonly side: 'below' | 'above'; readonly nominal: Limit
      readonly beyond: Limit; readonly over: Allowance; readonly optional?: boolean }
  /** Sizes added up in any window; those under `countFromMm` are left out. */
  | { readonly kind: 'window-sum'; readonly of: readonly IndicationKind[]; readonly size: Size; readonly countFromMm: number
      readonly windowMm: number; readonly max: Limit }
  /** How many in any window. */
  | { readonly kind: 'window-count'; readonly of: readonly IndicationKind[]; readonly windowMm: number; readonly max: number }
  /** Length of these indications over the weld's length. The two toes add up, so it can pass 1. */
  | { readonly kind: 'length-share'; readonly of: readonly IndicationKind[]; readonly max: number }
  /** Named by the standard but not judged by this set: allowed, or left to the application. */
  | { readonly kind: 'not-judged'; readonly reason: 'permitted' | 'depends-on-application' }

export const RULE_KINDS = [
  'absent', 'attribute', 'largest-size', 'size-allowance', 'reading-range', 'reading-spread', 'reading-allowance',
  'window-sum', 'window-count', 'length-share', 'not-judged',
] as const satisfies readonly Check['kind'][]
export type RuleKind = Check['kind']

/** Kinds whose findings are counts: they are yes/no rules for readiness. */
export const COUNTED_KINDS: ReadonlySet<RuleKind> = new Set<RuleKind>(['absent', 'attribute', 'window-count', 'not-judged'])

/** One kind of rule, for code that handles only that kind. */
export type RuleOf<K extends RuleKind> = Common & Extract<Check, { readonly kind: K }>
