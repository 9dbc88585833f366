// The class page: who needs the instructor, what a projector may show, and how much is read for it.
import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { testDatabase } from '../support/database'
import { moreStudents, practised, type Bead } from '../support/practice'
import { buildSchool, logAs, viewerOf, type School } from '../support/school'
import type { Viewer } from '@/app/_server/auth/viewer'
import { listRecentPractice } from '@/app/_server/data/class-practice'
import { releaseCoupon, takeCoupon } from '@/app/_server/data/waiting-coupons'
import { askForLook } from '@/app/_server/data/look-requests'
import { db } from '@/app/_server/db'
import { classBoard } from '@/app/_server/views/class-board'
import { RECENT_COUPONS } from '@/lib/coaching/needs-you/recent-coupon'
import { BOARD_DEFAULTS, type BoardOptions } from '@/lib/reports/board-options'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'

const ASOF = new Date('2026-11-25T18:00:00Z')
const days = (count: number, widthMm: number, from = 1): Bead[] => Array.from({ length: count }, (_, index) => ({ on: `2026-11-${String(from + index).padStart(2, '0')}`, widthMm }))
/** Wider than the 6.86 mm the shop rule allows. */
const WIDE = 8

let school: School
let instructor: Viewer
const board = async (options: Partial<BoardOptions> = {}, viewer = instructor) => classBoard(viewer, school.classId, { ...BOARD_DEFAULTS, ...options }, ASOF)
const needs = async () => new Map((await board())?.needs.map(({ studentId, reasons }) => [studentId, reasons.join(' ')]))

beforeAll(async () => {
  await testDatabase()
  school = await buildSchool('north')
  instructor = await viewerOf(school, 'instructor')
  await db().enrolment.updateMany({ data: { joinedAt: new Date('2026-11-20T12:00:00Z') } })
})

/** A new student of the class with these coupons, who has confirmed the cautions. */
async function pupil(beads: readonly Bead[], joined = '2026-11-20T12:00:00Z'): Promise<string> {
  const [id = ''] = await moreStudents(school, 1)
  await db().enrolment.updateMany({ where: { personId: id }, data: { joinedAt: new Date(joined) } })
  await db().safetyAcknowledgement.create({ data: { programId: school.programId, studentId: id, exerciseId: school.exerciseId, termId: school.termId, cautionsVersion: CAUTIONS_VERSION } })
  if (beads.length > 0) await practised(school, id, beads)
  return id
}

describe('needs you today', () => {
  it('names a defect of the last three coupons, and not of the last two', async () => {
    const [thrice, twice] = [await pupil([...days(2, 6.2, 14), ...days(3, WIDE, 20)]), await pupil([...days(3, 6.2, 14), ...days(2, WIDE, 20)])]
    const found = await needs()
    expect(found.get(thrice)).toContain('over the most allowed three coupons running, 2F lap (no. 3, 4 and 5).')
    expect(found.get(twice)).toBeUndefined()
  })

  it('says nothing of practice further back than three weeks but that there is a gap', async () => {
    const id = await pupil(days(3, WIDE, 1))
    expect((await needs()).get(id)).toBe('No coupon for 22 days.')
  })

  it('tells who has no coupon yet, and who could log none', async () => {
    const [late, fresh, reached, idle, begun] = [await pupil([], '2026-11-10T12:00:00Z'), await pupil([]), await pupil([], '2026-11-19T12:00:00Z'), await pupil([], '2026-11-18T12:00:00Z'), await pupil(days(1, 6.2, 25))]
    await db().safetyAcknowledgement.deleteMany({ where: { studentId: { in: [reached, idle, begun] } } })
    const found = await needs()
    expect(found.get(late)).toBe('No coupon yet, 15 days into the class.')
    expect(found.get(fresh)).toBeUndefined()
    expect(found.get(reached)).toBe('Comes to 2F lap next; its cautions are to be confirmed first.')
    for (const stuck of [idle, begun]) expect(found.get(stuck)).toBe('Has not confirmed the cautions of 2F lap this term, so cannot log a coupon of it.')
  })

  it('puts whoever asked for a look first, with their words', async () => {
    await askForLook(await viewerOf(school, 'classmate'), { classId: school.classId, exerciseId: null, note: 'cold lap?' })
    const found = (await board())?.needs
    expect(found?.[0]).toMatchObject({ studentId: school.people.classmate, booth: 2 })
    expect(found?.[0]?.reasons[0]).toMatch(/^Asked for a look, waiting since .*: “cold lap\?”$/)
  })

  it('gives nothing away of a coupon that waits, nor of one that waits for another reader than the first', async () => {
    const id = await pupil(days(3, WIDE, 20))
    expect((await needs()).get(id)).toContain('three coupons running')
    const third = { studentId: id, number: 3 }
    await db().coupon.updateMany({ where: third, data: { waitingSince: ASOF } })
    expect((await needs()).get(id)).toBeUndefined()
    await db().coupon.updateMany({ where: third, data: { waitingSince: null, secondWaitingSince: ASOF } })
    expect((await needs()).get(id), 'the viewer was the first reader').toContain('three coupons running')
    await db().classInstructor.create({ data: { programId: school.programId, classId: school.classId, personId: school.people.otherInstructor } })
    const second = await board({}, await viewerOf(school, 'otherInstructor'))
    expect(second?.needs.find(({ studentId }) => studentId === id)).toBeUndefined()
    await db().classInstructor.deleteMany({ where: { classId: school.classId, personId: school.people.otherInstructor } })
  })

  it('reads the last few coupons, however many there are', async () => {
    const id = await pupil(days(20, WIDE, 2))
    const [practice] = await listRecentPractice(instructor, [{ studentId: id, exerciseId: school.exerciseId, couponCount: 20 }])
    expect(practice?.coupons.map(({ number }) => number)).toEqual(Array.from({ length: RECENT_COUPONS }, (_, index) => 20 - RECENT_COUPONS + index + 1))
    expect(practice?.coupons.filter(({ defects }) => defects !== null).map(({ number }) => number)).toEqual([18, 19, 20])
  })
})

describe('the queue', () => {
  it('says who has a coupon open and since when, and offers another one first', async () => {
    const student = await viewerOf(school, 'student')
    const [older, newer] = [randomUUID(), randomUUID()]
    await logAs(school, student, older)
    await logAs(school, student, newer)
    const row = { programId: school.programId, classId: school.classId, personId: school.people.otherInstructor }
    await db().classInstructor.create({ data: row })
    await takeCoupon(await viewerOf(school, 'otherInstructor'), older)
    const found = await board()
    expect(found?.queue.find(({ key }) => key === `coupon ${older}`)).toMatchObject({ kind: 'coupon', booth: 1, taken: expect.stringMatching(/^other\.instructor Test has it open, since .+\.$/) as string })
    expect(found?.first).toEqual({ href: `/teach/coupons/${newer}`, booth: 1 })
    expect(found?.grids).toEqual([{ exerciseId: school.exerciseId, title: '2F lap', count: 2, href: `/teach/classes/${school.classId}/grid/${school.exerciseId}` }])
    await releaseCoupon(instructor, older)
    expect((await board())?.first?.href, 'only who has it open lets go of it').toBe(`/teach/coupons/${newer}`)
    await releaseCoupon(await viewerOf(school, 'otherInstructor'), older)
    expect((await board())?.first?.href, 'let go of, it is free at once').toBe(`/teach/coupons/${older}`)
    await takeCoupon(await viewerOf(school, 'otherInstructor'), older)
    await db().coupon.updateMany({ where: { id: older }, data: { takenAt: new Date(Date.now() - 16 * 60_000) } })
    expect((await board())?.first?.href, 'left open too long, it is free').toBe(`/teach/coupons/${older}`)
    await db().classInstructor.deleteMany({ where: row })
  })
})

describe('on a projector', () => {
  it('nobody’s name is sent, nor their words, nor the way to them', async () => {
    const people = await db().person.findMany({ where: { enrolments: { some: { classId: school.classId } } } })
    const named = JSON.stringify(await board())
    const shown = await board({ projector: true })
    const sent = JSON.stringify({ ...shown, classRecord: null, code: null })
    expect(people.length).toBeGreaterThan(2)
    for (const { givenName, familyName } of people) {
      expect(named).toContain(`${givenName} ${familyName}`)
      expect(sent).not.toContain(`${givenName} ${familyName}`)
    }
    expect(sent).not.toContain('Test"') // the family name of them all
    expect(named).toContain('cold lap?')
    expect(sent).not.toContain('cold lap?')
    expect(shown?.needs).toEqual([])
    expect(sent).not.toContain('/teach/students/')
    expect(sent).not.toContain('/teach/coupons/')
    expect(shown?.rows.map(({ name }) => name)).toContain('Booth 1')
  })
})

describe('sorted and filtered', () => {
  it('by booth, and by an exercise or process of the class', async () => {
    expect((await board({ fromBooth: 2, toBooth: 2 }))?.rows.map(({ key }) => key)).toEqual([school.people.classmate])
    expect((await board({ exercise: school.exerciseId }))?.columns.map(({ id }) => id)).toEqual([school.exerciseId])
    expect((await board({ process: 'GMAW' }))?.columns).toEqual([])
    expect((await board({ process: 'FCAW-S' }))?.columns).toHaveLength(1)
  })
  it('is nobody’s but the instructor’s of the class', async () => {
    expect(await board({}, await viewerOf(school, 'otherInstructor'))).toBeNull()
    expect(await board({}, await viewerOf(school, 'coordinator'))).toBeNull()
  })
})
