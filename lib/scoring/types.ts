import type { Process } from '../procedure/process'
import type { Source } from '../source'

/** What was welded: the facts of the exercise that criteria depend on. Lengths in millimetres. */
export type Weld = {
  readonly type: 'fillet' | 'groove'
  readonly process: Process
  /** Test position as the trade writes it: '1F' … '4F', '1G' … '4G'. */
  readonly position: string
  readonly progression: 'up' | 'down' | null
  readonly thicknessMm: number
  /** Wire or core-wire diameter; null when unknown. */
  readonly electrodeDiameterMm: number | null
  /** Specified fillet leg; null for grooves or when the exercise names none. */
  readonly nominalLegMm: number | null
  readonly lengthMm: number
  /** A primary member with the weld transverse to tension (cyclic undercut rule). */
  readonly transverseToTension?: boolean
  readonly completePenetration?: boolean
  /** A fillet joining a stiffener to a web (cyclic porosity rule). */
  readonly stiffenerToWeb?: boolean
}

/** Kinds of things an inspector can see on a weld. A kind becomes a defect only when a criterion rejects it. */
export const INDICATION_KINDS = [
  'crack', 'crater-crack', 'lack-of-fusion', 'undercut', 'pore', 'overlap', 'crater-pipe', 'poor-restart',
  'arc-strike', 'spatter', 'slag', 'burn-through',
] as const
export type IndicationKind = (typeof INDICATION_KINDS)[number]

/** A place along the weld where sizes were read. A field that is absent was not measured; it is never 0. */
export type Station = {
  readonly atMm: number
  readonly widthMm?: number
  readonly legAMm?: number
  readonly legBMm?: number
  readonly throatMm?: number
  readonly convexityMm?: number
  readonly reinforcementMm?: number
  /** Metal beyond the plate on the root side of a weld made from one side. */
  readonly penetrationMm?: number
  readonly rootConcavityMm?: number
  /** Step between the two plate surfaces of a butt joint. */
  readonly misalignmentMm?: number
  /** How far the face of a groove weld lies below the plate surface. */
  readonly underfillMm?: number
  /** Width of the metal that came through on the root side. */
  readonly rootWidthMm?: number
  /** Depth of a groove along the edge of the root run. */
  readonly shrinkageGrooveMm?: number
  /** How far the root of a weld made from one side stops short of the far surface. */
  readonly rootShortfallMm?: number
  /** The largest pore in the root. */
  readonly rootPoreMm?: number
  /** The opening between the parts that a fillet joins. */
  readonly rootGapMm?: number
  /** Between the plate and the weld's face, measured through the air: the smaller of the two toes, 0 to 180 degrees. */
  readonly toeAngleDeg?: number
}

/** Something seen on the weld, starting at `atMm` and running `lengthMm` onward (absent: a point). */
export type Indication = {
  readonly kind: IndicationKind
  readonly atMm: number
  readonly lengthMm?: number
  readonly depthMm?: number
  readonly diameterMm?: number
  readonly heightMm?: number
  /** Toe A is the upper (or left) toe, toe B the lower (or right). */
  readonly toe?: 'A' | 'B'
}

/** One person's look at one coupon. `lookedFor` without an indication of the kind means "looked, none found"; a kind not listed was not measured. */
export type Inspection = {
  readonly stations: readonly Station[]
  readonly indications: readonly Indication[]
  readonly lookedFor: readonly IndicationKind[]
  readonly cratersFilled: boolean | null
  readonly fusionComplete: boolean | null
  /** Smallest step the gauge can show; readings within it of a limit are close calls. */
  readonly gaugeResolutionMm?: number
}

export const VERDICTS = ['accept', 'reject', 'incomplete'] as const
/** Incomplete means something a rule needs was not measured. It is never an accept. */
export type Verdict = (typeof VERDICTS)[number]

export type FindingVerdict = 'accept' | 'reject' | 'not-measured' | 'not-applicable'

/** One rule's answer. `margin` >= 0 is inside the limit, in the finding's unit. */
export type Finding = {
  readonly rule: string
  readonly verdict: FindingVerdict
  readonly measured: number | null
  readonly limit: { readonly min: number | null; readonly max: number | null }
  readonly unit: 'mm' | 'count' | 'ratio' | 'degree'
  readonly margin: number | null
  /** The reading lies within the gauge's resolution of a limit. */
  readonly closeCall: boolean
  readonly where: { readonly fromMm: number; readonly toMm: number } | null
  readonly source: Source
  /** Why the rule was not measured or does not apply: a short code, put into words by lib/reports. */
  readonly reason?: string
  /** Where more is allowed over a limited length: how much of that length was used, in the worst window, and how much there is. */
  readonly extent?: { readonly measuredMm: number; readonly maxMm: number; readonly windowMm: number }
  /** The margin over the rule's scale, which makes margins of different rules comparable; absent for yes/no rules. */
  readonly standardMargin?: number
  /** The toe of the indication that decided, where it was recorded. */
  readonly toe?: 'A' | 'B'
}

export type Scorecard = {
  readonly criteriaId: string
  readonly scoringVersion: string
  readonly verdict: Verdict
  /** 0 to 100 for the grade book; null when the verdict is incomplete. */
  readonly mark: number | null
  readonly findings: readonly Finding[]
}
