import 'server-only'
import { gradingWords } from '@/lib/language/grading'
import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import type { BeadStripInput } from '@/lib/reports/bead-strip'
import { defectsThenAndNow, everyKth, type SummaryRoom } from '@/lib/reports/progress-summary'
import { ruleName } from '@/lib/reports/rule-names'
import type { Verdict } from '@/lib/scoring/types'
import type { Viewer } from '../auth/viewer'
import type { StoryCoupon } from '../data/coupon-record'
import { criteriaSet } from '../data/criteria'
import type { ExerciseRecord } from '../data/exercises'
import type { Story } from './story'

export type SummaryStrip = { readonly key: string; readonly label: string; readonly strip: BeadStripInput; readonly verdict: Verdict; readonly word: string; readonly mark: string; readonly note: string | null }

/** Rules that rejected, in the reader's words, early against late; null with too few coupons. */
export type SummaryDefects = { readonly each: number; readonly rows: readonly { readonly name: string; readonly first: number; readonly last: number }[] } | null

const MOST_DEFECTS = 5

export type Seen = { readonly coupon: StoryCoupon; readonly row: Story['rows'][number]; readonly counts: NonNullable<StoryCoupon['counts']> }

/** The coupons that somebody looked at, and what was rejected in those an instructor did. */
export async function drawnOf(viewer: Viewer, exercise: ExerciseRecord, story: Story): Promise<{ readonly seen: readonly Seen[]; readonly defects: SummaryDefects }> {
  const strips = new Map(story.rows.map((row) => [row.id, row]))
  const seen = story.coupons.flatMap((coupon): Seen[] => {
    const [row, counts] = [strips.get(coupon.id), coupon.counts]
    return row && counts ? [{ coupon, row, counts }] : []
  })
  const criteria = await criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version)
  const found = defectsThenAndNow(seen.filter(({ counts }) => counts.kind !== 'self').map(({ coupon, counts }) => ({
    number: coupon.number, rules: counts.scorecard.findings.filter(({ verdict }) => verdict === 'reject').map(({ rule }) => rule),
  })), MOST_DEFECTS)
  const defects = found && { each: found.each, rows: found.rows.map(({ rule, first, last }) => ({ name: ruleName(rule, viewer.locale, criteria), first, last })) }
  return { seen, defects }
}

export type SummaryStrips = { readonly stripsTitle: string; readonly strips: readonly SummaryStrip[]; readonly ownLooks: string | null; readonly decided: string | null }

/** As many of the strips as there is room for, every k-th, with what they are in words. */
export function stripsOf(seen: readonly Seen[], room: SummaryRoom, locale: Locale): SummaryStrips {
  const { k, shown } = everyKth(seen, room.strips)
  const decided = shown.filter(({ counts }) => counts.override !== null).length
  const own = shown.filter(({ counts }) => counts.kind === 'self').length
  return {
    stripsTitle: shown.length === 0 ? say(print, locale, 'stripsNone') : k === 1 ? say(print, locale, 'stripsEvery') : say(print, locale, 'stripsSome', { k }),
    strips: shown.map(({ row, counts: { kind, scorecard, override } }) => ({
      key: row.key, label: row.label, strip: row.strip, verdict: row.verdict.kind, word: row.verdict.word,
      mark: scorecard.mark === null ? '–' : String(scorecard.mark), note: kind === 'self' ? say(print, locale, 'ownLook') : override ? say(gradingWords, locale, 'short') : null,
    })),
    ownLooks: own === 0 ? null : own === 1 ? say(print, locale, 'ownLookOne') : say(print, locale, 'ownLooks', { n: own }),
    decided: decided === 0 ? null : say(gradingWords, locale, decided === 1 ? 'decidedOne' : 'decidedSome', { n: decided }),
  }
}
