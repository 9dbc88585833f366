'use server'

import * as z from 'zod'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import { commentSchema } from '@/lib/schemas/comment'
import { couponKey, couponSchema } from '@/lib/schemas/coupon'
import { uuid } from '@/lib/schemas/field'
import { action } from '@/app/_server/action'
import { addComment } from '@/app/_server/data/comments'
import { couponFrame, logCoupon } from '@/app/_server/data/coupons'
import { acknowledgeCautions } from '@/app/_server/data/safety'
import { notFound } from '@/app/_server/refusal'

/** Logs one of the student's own coupons; the intake route calls this same door for queued ones. */
export const sendCoupon = action(
  {
    roles: ['student'],
    input: async (viewer, raw): Promise<ReturnType<typeof couponSchema>> => {
      const key = couponKey.safeParse(raw)
      if (!key.success) throw notFound()
      return couponSchema(await couponFrame(viewer, key.data), new Date())
    },
  },
  (viewer, input) => logCoupon(viewer, input),
)

/** The student read and confirms the cautions of an exercise, for this term. */
export const confirmCautions = action(
  { roles: ['student'], input: z.strictObject({ classId: uuid, exerciseId: uuid }) },
  async (viewer, input) => {
    await acknowledgeCautions(viewer, { ...input, cautionsVersion: CAUTIONS_VERSION })
    return {}
  },
)

/** A remark on a coupon, by anyone who may see it. */
export const sendComment = action(
  { roles: ['student', 'instructor'], input: (viewer) => commentSchema(viewer) },
  async (viewer, input) => {
    await addComment(viewer, input)
    return {}
  },
)
