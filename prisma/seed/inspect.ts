import type { CriteriaSet } from '@/lib/criteria/types'
import { criteriaById } from '@/lib/criteria/catalogue'
import { readingsSchema, type ReadingsForm, type StoredReadings } from '@/lib/schemas/readings'
import { gaugeResolutionMm } from '@/lib/units/gauge-steps'
import { judge, type Judged } from '@/app/_server/data/scorecards'
import type { ExercisePlan } from './exercise-plan'
import type { Typist } from './typing'

export type Inspected = { readonly readings: StoredReadings; readonly judged: Judged }

const schemas = new Map<string, ReturnType<typeof readingsSchema>>()

function schemaFor({ lengthMm, gauge }: ExercisePlan, { units, locale }: Typist): ReturnType<typeof readingsSchema> {
  const key = `${lengthMm} ${gauge} ${units} ${locale}`
  const made = schemas.get(key) ?? readingsSchema({ locale, units, lengthMm, gaugeResolutionMm: gaugeResolutionMm(gauge) })
  schemas.set(key, made)
  return made
}

export const criteriaOf = (exercise: ExercisePlan): CriteriaSet => criteriaById(exercise.criteria.id)

/** Sends a filled form the way the application's own forms go: read by the schema, judged by the server's one judge. */
export function inspect(exercise: ExercisePlan, form: ReadingsForm, typist: Typist): Inspected {
  const readings = schemaFor(exercise, typist).parse(form)
  return { readings, judged: judge({ ...exercise, id: exercise.key, version: 1 }, readings.inspection, criteriaOf(exercise)) }
}
