import { randomUUID } from 'node:crypto'
import * as agreement from '@/app/_server/data/agreement'
import { db } from '@/app/_server/db'
import { logAs } from '../../support/school'
import { STAFF_OF_CLASS, type DataRow, type Fixture } from './fixture'

/** A coupon of the student's that the class's instructor looked at and, when asked, the other instructor read again. */
async function looked({ school: { programId, classId, exerciseId, people }, school, viewers }: Fixture, kinds: readonly ('instructor' | 'second')[]): Promise<{ readonly classId: string }> {
  const couponId = randomUUID()
  await logAs(school, viewers.student, couponId)
  const { readings, scorecard } = await db().inspection.findFirstOrThrow({ where: { programId, couponId, kind: 'self' }, select: { readings: true, scorecard: true } })
  for (const kind of kinds) {
    const { id } = await db().inspection.create({ data: { programId, couponId, kind, inspectorId: kind === 'second' ? people.otherInstructor : people.instructor, readings: readings ?? {} } })
    await db().scorecard.create({ data: { programId, inspectionId: id, criteriaId: scorecard?.criteriaId ?? '', criteriaVersion: scorecard?.criteriaVersion ?? 0, scoringVersion: 'x', verdict: 'accept' } })
  }
  await db().coupon.updateMany({ where: { programId, id: couponId, exerciseId }, data: { waitingSince: null, verdict: 'accept' } })
  return { classId }
}

export const AGREEMENT_DATA_ROWS: Readonly<Record<string, DataRow>> = {
  'agreement.listReadTwice': {
    seenBy: ['coordinator'],
    call: async (viewer, fixture) => {
      await looked(fixture, ['instructor', 'second'])
      return agreement.listReadTwice(viewer, { termId: null }, 50)
    },
  },
  'agreement.listOwnReadTwice': {
    // The two who read it, the second of them though the class is not theirs.
    seenBy: ['instructor', 'otherInstructor'],
    call: async (viewer, fixture) => {
      await looked(fixture, ['instructor', 'second'])
      return agreement.listOwnReadTwice(viewer, 50)
    },
  },
  'agreement.listSelfCompared': { seenBy: STAFF_OF_CLASS, call: async (viewer, fixture) => agreement.listSelfCompared(viewer, await looked(fixture, ['instructor']), 50) },
}
