'use server'

import * as z from 'zod'
import { readinessRuleSchema } from '@/lib/schemas/readiness-rule'
import { action } from '@/app/_server/action'
import { refreshStandings, setReadinessRule } from '@/app/_server/data/program'
import { adoptModel, renewProgram } from '@/app/_server/data/readiness-models'

/** Sets when a test is suggested, then works every standing out again, so that no board goes on with the old rule. */
export const saveReadinessRule = action({ roles: ['coordinator'], input: readinessRuleSchema }, async (viewer, input) => {
  await setReadinessRule(viewer, input)
  return { standings: await refreshStandings(viewer) }
})

/** Takes a proposed readiness model into use, or the shipped one again, and works out with it the standings practised latest. */
export const adoptReadinessModel = action({ roles: ['coordinator'], input: z.strictObject({ version: z.string().min(1).max(100) }) }, async (viewer, input) => {
  await adoptModel(viewer, input)
  return { standings: await renewProgram(viewer) }
})
