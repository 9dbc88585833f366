import 'server-only'
import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import { scorecardWords } from '@/lib/language/scorecard'
import { boothCardView, type BoothCardView } from '@/lib/reports/booth-card-view'
import { dateText } from '@/lib/reports/dates'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import type { Source, SourceStatus } from '@/lib/source'
import type { Viewer } from '../auth/viewer'
import { criteriaSet } from '../data/criteria'
import { findExercise } from '../data/exercises'
import { findProgram } from '../data/program'
import { cautionGroups, type CautionGroup } from './exercise-practice'
import { footOf } from './print-foot'

export type BoothCardSheet = {
  readonly title: string
  readonly programName: string
  readonly card: BoothCardView
  /** Each caution with the number of its source. */
  readonly cautions: readonly { readonly topic: string; readonly items: readonly { readonly text: string; readonly source: number }[] }[]
  /** The numbered sources, a line for each way of being sure of them. */
  readonly sources: readonly string[]
  readonly foot: readonly string[]
}

/** An exercise's booth card with its cautions, for the booth wall; null when it is not the viewer's to see. */
export async function boothCardSheet(viewer: Viewer, exerciseId: string, asOf: Date): Promise<BoothCardSheet | null> {
  const exercise = await findExercise(viewer, exerciseId)
  if (!exercise) return null
  const [criteria, program] = await Promise.all([criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version), findProgram(viewer)])
  const { locale } = viewer
  const { cautions, sources } = numbered(cautionGroups(exercise, viewer), locale)
  return {
    title: exercise.title,
    programName: program.name,
    card: boothCardView(exercise, viewer),
    cautions, sources,
    foot: [
      ...footOf({ criteria: [criteria], printedOn: dateText(asOf, locale, program.timeZone) }, locale),
      say(print, locale, 'cardVersion', { version: exercise.version, cautions: CAUTIONS_VERSION }),
    ],
  }
}

/** Gives every source a number, so that each is written out once. */
function numbered(groups: readonly CautionGroup[], locale: Locale): Pick<BoothCardSheet, 'cautions' | 'sources'> {
  const cited = new Map<string, { readonly number: number; readonly status: SourceStatus }>()
  const numberOf = ({ title, clause, status }: Source): number => {
    const text = clause === null ? title : say(scorecardWords, locale, 'clause', { title, clause })
    const known = cited.get(text) ?? { number: cited.size + 1, status }
    cited.set(text, known)
    return known.number
  }
  const cautions = groups.map(({ topic, items }) => ({ topic, items: items.map(({ text, source }) => ({ text, source: numberOf(source) })) }))
  const statuses = new Set([...cited.values()].map(({ status }) => status))
  const sources = [...statuses].map((status) => {
    const here = [...cited].filter(([, each]) => each.status === status).map(([text, { number }]) => `[${number}] ${text}`)
    return `${say(scorecardWords, locale, status)}: ${here.join('; ')}.`
  })
  return { cautions, sources }
}
