'use server'

import * as z from 'zod'
import { uuid } from '@/lib/schemas/field'
import { inspectionKey, inspectionSchema } from '@/lib/schemas/inspection'
import { writeCode } from '@/lib/schemas/person'
import { testFormSchema } from '@/lib/schemas/test-form'
import { action } from '@/app/_server/action'
import { frameOf } from '@/app/_server/data/coupons'
import { exerciseOfGradable, submitInspection } from '@/app/_server/data/inspections'
import { answerLook } from '@/app/_server/data/look-requests'
import { makeClassCode, resetStudentPassword } from '@/app/_server/data/people'
import { recordAttempt } from '@/app/_server/data/test-attempts'
import { notFound } from '@/app/_server/refusal'

/** An instructor's inspection of a coupon, or its correction. */
export const sendInspection = action(
  {
    roles: ['instructor'],
    input: async (viewer, raw): Promise<ReturnType<typeof inspectionSchema>> => {
      const key = inspectionKey.safeParse(raw)
      if (!key.success) throw notFound()
      return inspectionSchema(frameOf(viewer, await exerciseOfGradable(viewer, key.data.couponId)))
    },
  },
  (viewer, input) => submitInspection(viewer, input),
)

/** A new code with which students join a class; the one before it stops working. */
export const newClassCode = action({ roles: ['instructor'], input: z.strictObject({ classId: uuid }) }, async (viewer, input) => {
  const { code, expiresAt } = await makeClassCode(viewer, input)
  return { code: writeCode(code), expiresAt }
})

/** A new first password for a student of one's class, shown once. */
export const resetPassword = action({ roles: ['instructor'], input: z.strictObject({ studentId: uuid }) }, (viewer, input) => resetStudentPassword(viewer, input))

/** An instructor of the class has been to the booth of a student who asked. */
export const beenThere = action({ roles: ['instructor'], input: z.strictObject({ lookId: uuid }) }, async (viewer, input) => {
  await answerLook(viewer, input)
  return {}
})

/** A qualification test the viewer witnessed, as typed; judged by the structural code. */
export const recordTest = action({ roles: ['instructor'], input: (viewer) => testFormSchema(viewer) }, (viewer, input) => recordAttempt(viewer, input))
