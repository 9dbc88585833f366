import type { Reason } from '../coaching/needs-you/needs-you'
import { NO_GAIN_COUPONS } from '../coaching/needs-you/no-gain'
import type { Defect } from '../coaching/needs-you/recent-coupon'
import { SAME_DEFECT_COUPONS } from '../coaching/needs-you/same-defect'
import { chanceText } from './readiness-track'

/** What the sentences need to know beside the reason itself. */
export type ReasonContext = {
  /** The few words for an exercise: '3F up lap'. */
  readonly titleOf: (exerciseId: string) => string
  /** The trade's name of a rule: 'Undercut'. */
  readonly ruleOf: (rule: string, exerciseId: string) => string
  /** The chance of passing with its limits; null while there is none. */
  readonly chanceOf: (exerciseId: string) => { readonly probability: number; readonly low: number; readonly high: number; readonly coupons: number } | null
  /** The time of day at the program's place. */
  readonly timeText: (at: Date) => string
  /** What the student asked to have looked at, and their words. */
  readonly look: { readonly exercise: string | null; readonly note: string | null } | null
}

const COUNT: Readonly<Record<number, string>> = { 3: 'three', 8: 'eight' }
const words = (count: number): string => COUNT[count] ?? String(count)

/** Why a student needs their instructor, in a sentence or two. In English: it is read by staff. */
export function reasonText(reason: Reason, context: ReasonContext): string {
  switch (reason.code) {
    case 'wants-a-look': {
      const { exercise = null, note = null } = context.look ?? {}
      return `Asked for a look${exercise === null ? '' : ` at ${exercise}`}, waiting since ${context.timeText(reason.askedAt)}${note === null ? '.' : `: “${note}”`}`
    }
    case 'safety-unsigned':
      return `Has not confirmed the cautions of ${context.titleOf(reason.exerciseId)} this term, so cannot log a coupon of it.`
    case 'safety-next':
      return `Comes to ${context.titleOf(reason.exerciseId)} next; its cautions are to be confirmed first.`
    case 'same-defect': {
      const names = reason.defects.map((defect) => defectText(defect, reason.exerciseId, context))
      return `${sentenceList(names)} ${words(SAME_DEFECT_COUPONS)} coupons running, ${context.titleOf(reason.exerciseId)} (no. ${list(reason.coupons.map(String))}).`
    }
    case 'ready-for-test': {
      const chance = context.chanceOf(reason.exerciseId)
      const title = context.titleOf(reason.exerciseId)
      if (chance === null) return `A test makes sense, ${title}.`
      return `A test makes sense, ${title}: chance ${chanceText(chance.probability)}, between ${chanceText(chance.low)} and ${chanceText(chance.high)}, from ${chance.coupons} coupons.`
    }
    case 'no-gain':
      return `No gain over the last ${words(NO_GAIN_COUPONS)} coupons, ${context.titleOf(reason.exerciseId)}: mark ${Math.round(reason.lately)} on average in the last four, ${Math.round(reason.before)} in the four before.`
    case 'self-far':
      return `Own looks agree with the instructor’s on ${reason.trust.agreed} of the last ${reason.trust.compared} coupons${apart(reason.trust)}.`
    case 'gap':
      return reason.never ? `No coupon yet, ${reason.days} days into the class.` : `No coupon for ${reason.days} days.`
  }
}

function defectText({ rule, side }: Defect, exerciseId: string, { ruleOf }: ReasonContext): string {
  const name = ruleOf(rule, exerciseId)
  return side === 'seen' ? name : `${name} ${side === 'under' ? 'under the least' : 'over the most'} allowed`
}

function apart({ tooKind, tooStrict }: { readonly tooKind: number; readonly tooStrict: number }): string {
  const ways = [...(tooKind > 0 ? [`${tooKind} accepted that the instructor rejected`] : []), ...(tooStrict > 0 ? [`${tooStrict} rejected that the instructor accepted`] : [])]
  return ways.length === 0 ? '' : `: ${ways.join(', ')}`
}

/** 'Undercut, bead width and porosity': the first keeps its capital. */
function sentenceList(names: readonly string[]): string {
  return list(names.map((name, index) => (index === 0 ? name : name.charAt(0).toLowerCase() + name.slice(1))))
}

function list(items: readonly string[]): string {
  const last = items.at(-1) ?? ''
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`
}
