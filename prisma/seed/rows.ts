import type { StoredReadings } from '@/lib/schemas/readings'
import type { TestParts } from '@/lib/schemas/test-attempt'
import type * as db from '@/prisma/generated/client'

/** A row as it is written: JSON columns take whatever survives JSON. */
type WithJson<Row, Column extends keyof Row, Value = unknown> = Omit<Row, Column> & Record<Column, Value>

/** Every table the seed fills, in an order in which no row points to one that is not there yet. */
export type Rows = {
  Program: db.Program[]
  CriteriaSet: WithJson<db.CriteriaSet, 'document'>[]
  Person: db.Person[]
  Membership: db.Membership[]
  Term: db.Term[]
  Class: db.Class[]
  ClassInstructor: db.ClassInstructor[]
  ClassCode: db.ClassCode[]
  Exercise: db.Exercise[]
  ExerciseVersion: WithJson<db.ExerciseVersion, 'boothCard'>[]
  ClassExercise: db.ClassExercise[]
  Enrolment: db.Enrolment[]
  SafetyAcknowledgement: db.SafetyAcknowledgement[]
  Coupon: db.Coupon[]
  Pass: db.Pass[]
  Inspection: WithJson<db.Inspection, 'readings', StoredReadings>[]
  Scorecard: db.Scorecard[]
  Finding: db.Prisma.FindingCreateManyInput[]
  Photo: db.Photo[]
  Comment: db.Comment[]
  ClassNote: db.ClassNote[]
  LookRequest: db.LookRequest[]
  TestAttempt: WithJson<db.TestAttempt, 'parts', TestParts>[]
  GaugeStudy: db.GaugeStudy[]
  GaugeStudyCoupon: db.GaugeStudyCoupon[]
  StudyReading: db.StudyReading[]
  AuditEvent: WithJson<db.AuditEvent, 'before' | 'after'>[]
}

export const noRows = (): Rows => ({
  Program: [], CriteriaSet: [], Person: [], Membership: [], Term: [], Class: [], ClassInstructor: [], ClassCode: [],
  Exercise: [], ExerciseVersion: [], ClassExercise: [], Enrolment: [], SafetyAcknowledgement: [],
  Coupon: [], Pass: [], Inspection: [], Scorecard: [], Finding: [], Photo: [], Comment: [], ClassNote: [], LookRequest: [], TestAttempt: [], GaugeStudy: [], GaugeStudyCoupon: [], StudyReading: [], AuditEvent: [],
})
