import 'server-only'
import { testView, type TestView } from '@/lib/reports/test-view'
import type { Viewer } from '../auth/viewer'
import { findProgram } from '../data/program'
import { findAttempt, listProcessUses, type AttemptDetail } from '../data/test-attempts'

export type TestRecordView = { readonly attempt: AttemptDetail; readonly view: TestView }

/** A recorded test for whoever may see it: its student, their instructors, the coordinator; null for everybody else. */
export async function testRecord(viewer: Viewer, id: string, asOf = new Date()): Promise<TestRecordView | null> {
  const attempt = await findAttempt(viewer, id)
  if (!attempt) return null
  const { exercise, student } = attempt
  const [program, uses] = await Promise.all([findProgram(viewer), listProcessUses(viewer, student.id, exercise.process)])
  const { passed, testedOn, parts, forecast } = attempt
  return { attempt, view: testView({ passed, testedOn, parts, forecast, weld: exercise, system: program.units, uses, asOf }, viewer) }
}
