'use server'

import * as z from 'zod'
import { uuid } from '@/lib/schemas/field'
import { overrideSchema } from '@/lib/schemas/override'
import { snippetKey, snippetSchema } from '@/lib/schemas/snippet'
import { action } from '@/app/_server/action'
import { releaseCoupon, takeCoupon } from '@/app/_server/data/waiting-coupons'
import { overrideVerdict } from '@/app/_server/data/overrides'
import { addSnippet, removeSnippet } from '@/app/_server/data/snippets'
import { notFound } from '@/app/_server/refusal'

/** The instructor began to fill in a coupon's row; answers who else has it open, if anyone. */
export const takeRow = action({ roles: ['instructor'], input: z.strictObject({ couponId: uuid }) }, async (viewer, { couponId }) => {
  const holder = await takeCoupon(viewer, couponId)
  if (!holder) throw notFound()
  return { other: holder.self ? null : holder.name }
})

/** The instructor left a coupon without having typed anything, or took back what they had typed. */
export const releaseRow = action({ roles: ['instructor'], input: z.strictObject({ couponId: uuid }) }, async (viewer, { couponId }) => {
  await releaseCoupon(viewer, couponId)
  return {}
})

/** The instructor's own verdict over the computed one, with the reason. */
export const decideVerdict = action({ roles: ['instructor'], input: (viewer) => overrideSchema(viewer) }, (viewer, input) => overrideVerdict(viewer, input))

/** Keeps a remark of one's own for use again. */
export const keepSnippet = action({ roles: ['instructor'], input: (viewer) => snippetSchema(viewer) }, (viewer, input) => addSnippet(viewer, input))

/** Removes one of them. */
export const dropSnippet = action({ roles: ['instructor'], input: snippetKey }, async (viewer, input) => {
  await removeSnippet(viewer, input)
  return {}
})
