import 'server-only'
import { agreementReport, type AgreementReport } from '@/lib/reports/agreement'
import type { Leaning } from '@/lib/reports/agreement-leanings'
import { rulesByName, type ReadLook, type TwoLooks } from '@/lib/reports/agreement-looks'
import { leaningCaution, leaningText, type Teller } from '@/lib/reports/agreement-words'
import { ruleName } from '@/lib/reports/rule-names'
import type { Viewer } from '../auth/viewer'
import { listOwnReadTwice, listReadTwice, type ComparedCoupon, type LookOfReader } from '../data/agreement'
import { criteriaSet } from '../data/criteria'
import { listCountedClasses } from '../data/pass-counts'
import { ALL_TERMS } from './pass-rates'

/** Coupons looked at no further back than this: enough to tell, and a page stays quick in a program's tenth year. */
export const MOST_COMPARED = 1_000
/** Coupons named beside a leaning. */
const MOST_NAMED = 6

export type NamedCoupon = { readonly id: string; readonly label: string; readonly href: string | null }
export type LeaningLine = { readonly key: string; readonly text: string; readonly coupons: readonly NamedCoupon[]; readonly more: number }
export type LeaningView = { readonly lines: readonly LeaningLine[]; readonly caution: string | null }

export type AgreementView = {
  readonly report: AgreementReport
  readonly teller: Teller
  readonly leanings: LeaningView
  /** Older coupons were left out. */
  readonly capped: boolean
}

/** A term that can be chosen. */
export type TermChoice = { readonly id: string; readonly name: string }
export type ProgramAgreement = AgreementView & { readonly terms: readonly TermChoice[]; readonly term: TermChoice | null }

/**
 * How alike the program's instructors judge, for the screen and for its CSV.
 *
 * @param asked a term's id; anything else is all terms
 */
export async function programAgreement(viewer: Viewer, asked: string | undefined): Promise<ProgramAgreement> {
  const { terms, term } = await chosenTerm(viewer, asked)
  const coupons = await listReadTwice(viewer, { termId: term?.id ?? null }, MOST_COMPARED + 1)
  return { ...(await agreementView(viewer, coupons, null, ({ couponId }) => `/program/criteria/coupons/${couponId}`)), terms, term }
}

/** How alike the viewer and others judge the coupons that the viewer and somebody else read. */
export async function ownAgreement(viewer: Viewer): Promise<AgreementView> {
  const coupons = await listOwnReadTwice(viewer, MOST_COMPARED + 1)
  return agreementView(viewer, coupons, viewer.personId, (coupon) => (coupon.taught || coupon.second.reader.id === viewer.personId ? `/teach/coupons/${coupon.couponId}` : null))
}

/** The terms to choose from, latest first, and the one asked for; null is all of them. */
export async function chosenTerm(viewer: Viewer, asked: string | undefined): Promise<{ terms: TermChoice[]; term: TermChoice | null }> {
  const all = (await listCountedClasses(viewer)).map(({ term: { id, name } }) => ({ id, name }))
  const terms = all.filter(({ id }, i) => all.findIndex((other) => other.id === id) === i)
  return { terms, term: asked === ALL_TERMS ? null : (terms.find(({ id }) => id === asked) ?? null) }
}

type HrefOf = (coupon: ComparedCoupon) => string | null

async function agreementView(viewer: Viewer, listed: readonly ComparedCoupon[], you: string | null, hrefOf: HrefOf): Promise<AgreementView> {
  const coupons = listed.slice(0, MOST_COMPARED)
  const names = new Map(coupons.flatMap(({ first, second }) => [first.reader, second.reader]).map(({ id, name }) => [id, name]))
  const teller: Teller = { nameOf: (id) => names.get(id) ?? '', you, units: viewer.units }
  const report = agreementReport(await looksOf(viewer, coupons), you)
  return { report, teller, capped: listed.length > MOST_COMPARED, leanings: leaningView(report.leanings, coupons, teller, hrefOf) }
}

/** Leanings as sentences, with the newest coupons they come from. */
export function leaningView(leanings: AgreementReport['leanings'], coupons: readonly ComparedCoupon[], teller: Teller, hrefOf: HrefOf): LeaningView {
  const line = (leaning: Leaning): LeaningLine => {
    const here = coupons.filter(({ couponId }) => leaning.thisWay.includes(couponId))
    return {
      key: `${leaning.readerId} ${leaning.subject ?? ''}`, text: leaningText(leaning, teller), more: Math.max(0, here.length - MOST_NAMED),
      coupons: here.slice(0, MOST_NAMED).map((coupon) => ({ id: coupon.couponId, label: `${coupon.student === null ? '' : `${coupon.student}, `}${coupon.exercise} no. ${coupon.number}`, href: hrefOf(coupon) })),
    }
  }
  return { lines: leanings.found.map(line), caution: leanings.looked === 0 ? null : leaningCaution(leanings) }
}

/** Stored looks as the reports compare them, their rules by name. */
export async function looksOf({ programId }: Viewer, coupons: readonly ComparedCoupon[]): Promise<TwoLooks[]> {
  const used = new Map(coupons.flatMap(({ first, second }) => [first.criteria, second.criteria]).map((each) => [`${each.id} ${each.version}`, each]))
  const sets = new Map(await Promise.all([...used].map(async ([key, { id, version }]) => [key, await criteriaSet(programId, id, version)] as const)))
  const toLook = ({ reader, criteria, verdict, findings, widths }: LookOfReader): ReadLook => {
    const set = sets.get(`${criteria.id} ${criteria.version}`)
    return { readerId: reader.id, verdict, rules: rulesByName(findings, (rule) => ruleName(rule, 'en', set)), widths }
  }
  return coupons.map(({ couponId, first, second }) => ({ couponId, first: toLook(first), second: toLook(second) }))
}
