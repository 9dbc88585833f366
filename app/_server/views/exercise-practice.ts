import 'server-only'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { boothCardView, type BoothCardView } from '@/lib/reports/booth-card-view'
import { dateText } from '@/lib/reports/dates'
import { explainCaution, explainCautionTopic } from '@/lib/reports/explain-caution'
import { CAUTION_TOPICS, CAUTIONS_VERSION, cautionsFor } from '@/lib/safety/cautions'
import type { Source } from '@/lib/source'
import type { Viewer } from '../auth/viewer'
import { listOwnClasses, type ClassRecord } from '../data/classes'
import { criteriaSet } from '../data/criteria'
import { listClassExercises, type ExerciseRecord } from '../data/exercises'
import { findProgram } from '../data/program'
import { findAcknowledgement } from '../data/safety'

export type CautionGroup = { readonly topic: string; readonly items: readonly { readonly text: string; readonly source: Source }[] }
export type ExercisePractice = {
  readonly classRecord: ClassRecord
  readonly exercise: ExerciseRecord
  readonly card: BoothCardView
  readonly criteriaTitle: string
  readonly cautions: readonly CautionGroup[]
  /** 'You confirmed these cautions on …'; null when they are still to be confirmed this term. */
  readonly confirmed: string | null
}

/** The cautions of an exercise, by topic, at the middle of its booth card's current. */
export function cautionGroups(exercise: ExerciseRecord, viewer: Pick<Viewer, 'locale' | 'units'>): CautionGroup[] {
  const amps = exercise.boothCard.amps
  const typical = amps && amps.min !== null && amps.max !== null ? (amps.min + amps.max) / 2 : null
  const all = cautionsFor(exercise.process, typical)
  return CAUTION_TOPICS.map((topic) => ({
    topic: explainCautionTopic(topic, viewer.locale),
    items: all.filter((caution) => caution.topic === topic).map((caution) => ({ text: explainCaution(caution, viewer.locale, viewer.units), source: caution.source })),
  })).filter((group) => group.items.length > 0)
}

/** An exercise as one of the viewer's own classes practises it; null when they are no active student there. */
export async function exercisePractice(viewer: Viewer, classId: string, exerciseId: string): Promise<ExercisePractice | null> {
  const classRecord = (await listOwnClasses(viewer)).find((each) => each.id === classId)
  if (!classRecord) return null
  const exercise = (await listClassExercises(viewer, classId)).find((each) => each.exercise.id === exerciseId)?.exercise
  if (!exercise) return null
  const [criteria, acknowledged, program] = await Promise.all([
    criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version),
    findAcknowledgement(viewer, exercise.id, classRecord.term.id, CAUTIONS_VERSION),
    findProgram(viewer),
  ])
  return {
    classRecord, exercise, card: boothCardView(exercise, viewer), criteriaTitle: criteria.title, cautions: cautionGroups(exercise, viewer),
    confirmed: acknowledged && say(learn, viewer.locale, 'confirmed', { date: dateText(acknowledged, viewer.locale, program.timeZone) }),
  }
}
