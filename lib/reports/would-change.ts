import { VERDICTS, type Verdict } from '../scoring/types'

/** A coupon judged once as it stands and once by other limits. */
export type JudgedTwice = { readonly couponId: string; readonly before: Verdict; readonly after: Verdict }

export type Way = { readonly before: Verdict; readonly after: Verdict; readonly count: number }

export type WouldChange<T extends JudgedTwice> = {
  readonly total: number
  readonly changed: readonly T[]
  /** How many change which way, most first. Only ways that there are. */
  readonly ways: readonly Way[]
}

/** Which coupons other limits would judge otherwise, in the order given. */
export function wouldChange<T extends JudgedTwice>(coupons: readonly T[]): WouldChange<T> {
  const changed = coupons.filter(({ before, after }) => before !== after)
  const ways = VERDICTS.flatMap((before) => VERDICTS.flatMap((after) => {
    const count = changed.filter((each) => each.before === before && each.after === after).length
    return count === 0 ? [] : [{ before, after, count }]
  }))
  return { total: coupons.length, changed, ways: ways.sort((a, b) => b.count - a.count) }
}

/** 'With these limits, 12 of the last 80 coupons would change verdict.' */
export function wouldChangeSentence({ total, changed }: WouldChange<JudgedTwice>): string {
  if (total === 0) return 'No coupon has been judged here yet, so nothing can be said about these limits.'
  if (total === 1) return changed.length === 0 ? 'With these limits, the one coupon there is would keep its verdict.' : 'With these limits, the one coupon there is would change verdict.'
  if (changed.length === 0) return `With these limits, none of the last ${total} coupons would change verdict.`
  return `With these limits, ${changed.length} of the last ${total} coupons would change verdict.`
}

const TO: Readonly<Record<Verdict, string>> = { accept: 'accepted', reject: 'rejected', incomplete: 'incomplete' }

/** '9 from accepted to rejected' */
export const wayText = ({ before, after, count }: Way): string => `${count} from ${TO[before]} to ${TO[after]}`
