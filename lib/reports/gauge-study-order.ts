import { scattered } from '../statistics/scattered'

/** A coupon to be read, in its round. */
export type Turn = { readonly couponId: string; readonly round: number }

/** A study as far as its order and its end turn on it. `couponIds` in the order they lie on the bench. */
export type StudyPlan = { readonly id: string; readonly rounds: number; readonly couponIds: readonly string[] }

/**
 * The order in which a reader is shown the coupons of a round: another one for every reader and round, so that nobody reads from memory
 * and the last coupon of the bench is not always the one read with tired eyes. The same ids always give the same order.
 */
export function readingOrder({ id, couponIds }: StudyPlan, readerId: string, round: number): string[] {
  return couponIds
    .map((couponId) => ({ couponId, place: scattered(`${id}/${readerId}/${round}/${couponId}`) }))
    .sort((a, b) => a.place - b.place || (a.couponId < b.couponId ? -1 : 1))
    .map(({ couponId }) => couponId)
}

/** What a reader reads next: the rounds one after the other, each in its order; null when everything is read. */
export function nextTurn(plan: StudyPlan, readerId: string, done: readonly Turn[]): Turn | null {
  const read = new Set(done.map(({ couponId, round }) => `${round}/${couponId}`))
  for (let round = 1; round <= plan.rounds; round += 1) {
    const couponId = readingOrder(plan, readerId, round).find((each) => !read.has(`${round}/${each}`))
    if (couponId !== undefined) return { couponId, round }
  }
  return null
}
