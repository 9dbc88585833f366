// A refitted readiness model as the refit would have proposed it.
import { MODEL_VERSION, SHIPPED_PARAMETERS, type FilterParameters } from '@/lib/readiness/parameters'

/** A row for db().readinessModel.create; the parameters are the shipped ones but for `over`. */
export function modelRow(programId: string, version: string, over: Partial<FilterParameters> = {}) {
  return {
    programId, version, filterVersion: MODEL_VERSION, parameters: { ...SHIPPED_PARAMETERS, ...over }, held: true, series: 40, coupons: 500,
    inUse: MODEL_VERSION, lossBefore: 0.6, lossAfter: 0.58, standings: 100, moved: 12,
  }
}
