import { describe, expect, it } from 'vitest'
import { needsYou, reasonsFor, URGENCY, type ExercisePractice, type StudentToday } from '@/lib/coaching/needs-you/needs-you'
import type { RecentCoupon } from '@/lib/coaching/needs-you/recent-coupon'

const repeated: RecentCoupon = { number: 1, verdict: 'reject', mark: 50, selfVerdict: 'accept', defects: [{ rule: 'undercut', side: 'seen' }] }
const eight = Array.from({ length: 8 }, (_, index) => ({ ...repeated, number: index + 1 }))
const lap: ExercisePractice = { exerciseId: 'lap', coupons: [], advice: null, tested: false }
const nobody: StudentToday = {
  studentId: 'a', booth: 1, attendance: { today: 100, termStarts: 0, termEnds: 200, joined: 0, lastCoupon: 99 }, look: null, unsigned: null, exercises: [lap],
}
const codes = (student: StudentToday) => reasonsFor(student).map(({ code }) => code)
const everything: StudentToday = {
  ...nobody, look: { askedAt: new Date(0), exerciseId: null }, unsigned: { exerciseId: 'tee', begun: true }, attendance: { ...nobody.attendance, lastCoupon: 50 },
  exercises: [{ ...lap, coupons: eight }, { ...lap, exerciseId: 'tee', advice: 'test' }],
}

describe('the reasons of one student', () => {
  it('are none for who practises and gets on', () => {
    expect(reasonsFor(nobody)).toEqual([])
  })
  it('come most urgent first, every kind among them', () => {
    expect(codes(everything)).toEqual(URGENCY.filter((code) => code !== 'safety-next'))
  })
  it('say where', () => {
    expect(reasonsFor(everything).filter((reason) => 'exerciseId' in reason).map((reason) => [reason.code, reason.exerciseId]))
      .toEqual([['safety-unsigned', 'tee'], ['same-defect', 'lap'], ['ready-for-test', 'tee'], ['no-gain', 'lap']])
  })
  it('put the cautions of an exercise just reached last, and those that hold a student up first', () => {
    const absent = { ...nobody.attendance, lastCoupon: 80 }
    const next: StudentToday = { ...nobody, unsigned: { exerciseId: 'tee', begun: false } }
    const same = [{ ...lap, coupons: eight }]
    expect(codes({ ...next, exercises: same })).toEqual(['same-defect', 'no-gain', 'self-far', 'safety-next'])
    expect(codes({ ...next, exercises: same, attendance: absent })).toEqual(['safety-unsigned', 'same-defect', 'no-gain', 'self-far', 'gap'])
    expect(codes({ ...next, look: { askedAt: new Date(0), exerciseId: 'tee' } })).toEqual(['wants-a-look', 'safety-unsigned'])
  })
  it('ask for no gain where a test already makes sense, but still tell a repeated defect', () => {
    expect(codes({ ...nobody, exercises: [{ ...lap, coupons: eight, advice: 'test' }] })).toEqual(['same-defect', 'ready-for-test', 'self-far'])
  })
  it('leave out the practice of an exercise whose test is passed', () => {
    expect(codes({ ...nobody, exercises: [{ ...lap, coupons: eight, advice: 'test', tested: true }] })).toEqual(['self-far'])
  })
  it.each(['practise', 'close', 'stale', null] as const)('do not call a student ready on “%s”', (advice) => {
    expect(codes({ ...nobody, exercises: [{ ...lap, advice }] })).toEqual([])
  })
})

describe('the list of a class', () => {
  const look = (studentId: string, minute: number, booth: number | null = null): StudentToday => ({ ...nobody, studentId, booth, look: { askedAt: new Date(minute * 60_000), exerciseId: null } })
  const order = (...students: StudentToday[]) => needsYou(students).map(({ student }) => student.studentId)

  it('leaves out who needs nothing', () => {
    expect(needsYou([nobody])).toEqual([])
  })
  it('puts who waits longest first', () => {
    expect(order(look('late', 9, 1), look('early', 3, 8))).toEqual(['early', 'late'])
  })
  it('puts the more urgent reason before the more numerous ones', () => {
    expect(order({ ...everything, studentId: 'many', look: null }, look('waits', 5))).toEqual(['waits', 'many'])
  })
  it('puts who only has to read cautions after everybody else', () => {
    const next: StudentToday = { ...nobody, studentId: 'next', booth: 1, unsigned: { exerciseId: 'tee', begun: false } }
    expect(order(next, { ...nobody, studentId: 'absent', booth: 9, attendance: { ...nobody.attendance, lastCoupon: 50 } })).toEqual(['absent', 'next'])
    expect(order(next, { ...next, studentId: 'begun', booth: 9, unsigned: { exerciseId: 'tee', begun: true } })).toEqual(['begun', 'next'])
  })
  it('puts more reasons before fewer, then booths in order, those without one last', () => {
    const absent = (studentId: string, booth: number | null) => ({ ...nobody, studentId, booth, attendance: { ...nobody.attendance, lastCoupon: 50 } })
    const both = { ...absent('both', 9), exercises: [{ ...lap, advice: 'test' as const }] }
    expect(order(absent('none', null), absent('three', 3), absent('two', 2))).toEqual(['two', 'three', 'none'])
    expect(order(absent('two', 2), both)).toEqual(['both', 'two'])
  })
})
