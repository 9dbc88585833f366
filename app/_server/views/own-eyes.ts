import 'server-only'
import { compareSides, type Compared } from '@/lib/reports/agreement'
import { leaningsOf } from '@/lib/reports/agreement-leanings'
import type { Teller } from '@/lib/reports/agreement-words'
import { eyeOverTime, type EyeOverTime } from '@/lib/reports/eye-over-time'
import type { Viewer } from '../auth/viewer'
import { listSelfCompared, type ComparedCoupon, type SelfLooksOf } from '../data/agreement'
import { chosenTerm, leaningView, looksOf, MOST_COMPARED, type LeaningView, type TermChoice } from './agreement'

/** One student's own looks against those of their instructors. */
export type StudentEye = { readonly id: string; readonly name: string; readonly eye: EyeOverTime }

/** How students see their own welds: all of them as one side, their instructors as the other. */
export type OwnEyes = {
  readonly compared: Compared
  readonly leanings: LeaningView
  /** By name, since nobody is ranked by it. */
  readonly students: readonly StudentEye[]
  readonly capped: boolean
}

/** A student's looks further back than this say little about how they see today. As on the student's own page. */
const MOST_OF_ONE = 40
const [STUDENT, INSTRUCTOR] = ['the student', 'the instructor']

/** How the students of a class see their own welds. Nothing is in it when the class is not the viewer's. */
export const classEyes = (viewer: Viewer, classId: string): Promise<OwnEyes> => ownEyes(viewer, { classId }, ({ couponId, taught }) => (taught ? `/teach/coupons/${couponId}` : null))

/** The same over the program, for the coordinator. @param asked a term's id; anything else is all terms */
export async function programEyes(viewer: Viewer, asked: string | undefined): Promise<OwnEyes & { readonly terms: readonly TermChoice[]; readonly term: TermChoice | null }> {
  const choice = await chosenTerm(viewer, asked)
  return { ...(await ownEyes(viewer, { termId: choice.term?.id ?? null }, ({ couponId }) => `/program/criteria/coupons/${couponId}`)), ...choice }
}

async function ownEyes(viewer: Viewer, of: SelfLooksOf, hrefOf: (coupon: ComparedCoupon) => string | null): Promise<OwnEyes> {
  const listed = await listSelfCompared(viewer, of, MOST_COMPARED + 1)
  const coupons = listed.slice(0, MOST_COMPARED)
  const looks = (await looksOf(viewer, coupons)).map(({ couponId, first, second }) => ({ couponId, first: { ...first, readerId: STUDENT }, second: { ...second, readerId: INSTRUCTOR } }))
  const teller: Teller = { nameOf: (id) => id, you: null, units: viewer.units }
  return {
    compared: compareSides(looks),
    leanings: leaningView(leaningsOf([STUDENT, INSTRUCTOR], looks), coupons, teller, hrefOf),
    students: studentEyes(coupons),
    capped: listed.length > MOST_COMPARED,
  }
}

function studentEyes(coupons: readonly ComparedCoupon[]): StudentEye[] {
  const names = new Map(coupons.map(({ first: { reader } }) => [reader.id, reader.name]))
  return [...names].sort(([, a], [, b]) => a.localeCompare(b, 'en')).map(([id, name]) => ({
    id, name,
    eye: eyeOverTime(coupons.filter(({ first }) => first.reader.id === id).slice(0, MOST_OF_ONE).reverse().flatMap(({ couponId, standing, first, second }) =>
      standing ? [{ key: couponId, own: { verdict: first.verdict, widths: first.widths }, theirs: { verdict: standing, widths: second.widths } }] : [])),
  }))
}
