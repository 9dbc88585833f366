import 'server-only'
import { MODEL_VERSION, SHIPPED_PARAMETERS, type FilterParameters } from '@/lib/readiness/parameters'
import { filterParametersSchema } from '@/lib/schemas/filter-parameters'
import { db, type Transaction } from '../db'

/** `since` null: the model the application is shipped with. */
export type ModelInUse = { readonly version: string; readonly parameters: FilterParameters; readonly since: Date | null }

// Parameters never change under their version, so they are read once; the model keeps what follows from them by the frozen object.
const held = new Map<string, FilterParameters>()

/**
 * The readiness model of a program: the refit adopted last, or the shipped one. A refit of an earlier filter is not used: under
 * this one its parameters mean nothing. Not scoped by viewer: how chances are reckoned is no secret in the program.
 *
 * @param from the transaction the caller is in
 */
export async function modelInUse(programId: string, from: Transaction = db()): Promise<ModelInUse> {
  const row = await from.readinessModel.findFirst({
    where: { programId, filterVersion: MODEL_VERSION, adoptedAt: { not: null } },
    orderBy: { adoptedAt: 'desc' },
    select: { version: true, parameters: true, adoptedAt: true },
  })
  if (!row) return { version: MODEL_VERSION, parameters: SHIPPED_PARAMETERS, since: null }
  const key = `${programId} ${row.version}`
  const parameters = held.get(key) ?? Object.freeze(filterParametersSchema.parse(row.parameters))
  held.set(key, parameters)
  return { version: row.version, parameters, since: row.adoptedAt }
}
