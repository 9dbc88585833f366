'use server'

import { secondShareSchema } from '@/lib/schemas/second-share'
import { action } from '@/app/_server/action'
import { setSecondShare } from '@/app/_server/data/second-share'

/** Sets how many of the coupons graded from now on are read twice. */
export const saveSecondShare = action({ roles: ['coordinator'], input: secondShareSchema }, async (viewer, { percent }) => {
  await setSecondShare(viewer, { share: percent })
  return {}
})
