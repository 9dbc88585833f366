'use server'

import { readinessRuleSchema } from '@/lib/schemas/readiness-rule'
import { action } from '@/app/_server/action'
import { refreshStandings, setReadinessRule } from '@/app/_server/data/program'

/** Sets when a test is suggested, then works every standing out again, so that no board goes on with the old rule. */
export const saveReadinessRule = action({ roles: ['coordinator'], input: readinessRuleSchema }, async (viewer, input) => {
  await setReadinessRule(viewer, input)
  return { standings: await refreshStandings(viewer) }
})
