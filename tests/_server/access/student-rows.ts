import * as comments from '@/app/_server/data/comments'
import * as comparedLooks from '@/app/_server/data/compared-looks'
import * as passUse from '@/app/_server/data/pass-use'
import { db } from '@/app/_server/db'
import { SEES_COUPON, type DataRow, type Fixture } from './fixture'

/** The coupon as it stands once its instructor has looked at it, for the length of `read`. */
async function graded<T>({ couponId }: Fixture, read: () => Promise<T>): Promise<T> {
  await db().coupon.updateMany({ where: { id: couponId }, data: { waitingSince: null, verdict: 'accept' } })
  try {
    return await read()
  } finally {
    await db().coupon.updateMany({ where: { id: couponId }, data: { waitingSince: new Date(), verdict: null } })
  }
}

/** What is read of one student beside their coupons. */
export const STUDENT_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'comments.listRemarks': {
    seenBy: SEES_COUPON,
    call: async (viewer, fixture) => {
      const { school: { programId, people }, couponId } = fixture
      await db().comment.create({ data: { programId, couponId, authorId: people.instructor, body: 'Looks even.' } })
      return graded(fixture, () => comments.listRemarks(viewer, people.student, { most: 5, after: null }))
    },
  },
  'compared-looks.listComparedLooks': {
    seenBy: SEES_COUPON, call: (viewer, fixture) => graded(fixture, () => comparedLooks.listComparedLooks(viewer, fixture.school.people.student, 12)),
  },
  'pass-use.listPassUse': { seenBy: SEES_COUPON, call: (viewer, { school }) => passUse.listPassUse(viewer, school.people.student) },
}
