import { compareLooks, type AgreementFigures, type Sides } from './agreement-figures'
import { leaningsOf, type Leanings } from './agreement-leanings'
import { asSeenBy, ruleNamesOf, WHOLE_COUPON, type TwoLooks } from './agreement-looks'
import { widthBias, type WidthBias } from './agreement-widths'

export type RuleFigures = { readonly rule: string; readonly figures: AgreementFigures }

/** How alike two sides judge and measure. */
export type Compared = {
  /** Coupons both looked at. */
  readonly coupons: number
  readonly verdicts: AgreementFigures
  /** Least alike first; those with too few coupons to say last. */
  readonly rules: readonly RuleFigures[]
  /** By how much the first reads over the second. */
  readonly widths: WidthBias
}

/** Two readers by their ids, and how alike they are; `first` and `second` of the figures are these two. */
export type PairCompared = Compared & { readonly readerIds: readonly [string, string] }

/** How alike readers judge: the one definition behind the screens and the file. */
export type AgreementReport = {
  readonly all: Pick<Compared, 'coupons' | 'verdicts' | 'rules'>
  /** Most coupons first. */
  readonly pairs: readonly PairCompared[]
  /** Each reader's widths against those of everybody else. */
  readonly readers: readonly { readonly readerId: string; readonly widths: WidthBias }[]
  readonly leanings: Leanings
}

/** Compares two sides that are kept apart, such as students and their instructors, or two persons. */
export function compareSides(looks: readonly TwoLooks[], sides: Sides = 'kept'): Compared {
  const rules = ruleNamesOf(looks)
    .map((rule): RuleFigures => ({ rule, figures: compareLooks(looks, rule, sides) }))
    .filter(({ figures }) => figures.compared + figures.leftOut > 0)
  return { coupons: looks.length, verdicts: compareLooks(looks, WHOLE_COUPON, sides), rules: rules.sort(leastAlikeFirst), widths: widthBias(looks) }
}

const leastAlikeFirst = (a: RuleFigures, b: RuleFigures): number =>
  (a.figures.share?.rate ?? 2) - (b.figures.share?.rate ?? 2) || b.figures.compared - a.figures.compared || a.rule.localeCompare(b.rule, 'en')

/**
 * How alike the readers of twice-read coupons judge, together, pair by pair, and who leans which way.
 *
 * @param readerId the one reader whose pairs and leanings these are; null for all
 */
export function agreementReport(looks: readonly TwoLooks[], readerId: string | null): AgreementReport {
  const used = readerId === null ? looks : asSeenBy(readerId, looks)
  const readerIds = [...new Set(used.flatMap(({ first, second }) => [first.readerId, second.readerId]))].sort()
  const told = readerId === null ? readerIds : readerIds.filter((id) => id === readerId)
  const { coupons, verdicts, rules } = compareSides(used, readerId === null ? 'changing' : 'kept')
  return {
    all: { coupons, verdicts, rules },
    pairs: pairsOf(used, told).sort((a, b) => b.coupons - a.coupons || a.readerIds.join().localeCompare(b.readerIds.join())),
    readers: told.map((id) => ({ readerId: id, widths: widthBias(asSeenBy(id, used)) })),
    leanings: leaningsOf(told, used),
  }
}

/** Each two readers once, one of those told about first. */
function pairsOf(looks: readonly TwoLooks[], told: readonly string[]): PairCompared[] {
  const done = new Set<string>()
  return told.flatMap((id) => {
    const byOther = new Map<string, TwoLooks[]>()
    for (const each of asSeenBy(id, looks)) byOther.set(each.second.readerId, [...(byOther.get(each.second.readerId) ?? []), each])
    done.add(id)
    return [...byOther].filter(([other]) => !done.has(other)).map(([other, own]): PairCompared => ({ readerIds: [id, other], ...compareSides(own) }))
  })
}
