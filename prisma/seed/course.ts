import type { Process } from '@/lib/procedure/process'
import type { ExercisePlan } from './exercise-plan'
import { fcawG } from './exercises-fcaw-g'
import { fcawS } from './exercises-fcaw-s'
import { gmaw } from './exercises-gmaw'
import { smaw } from './exercises-smaw'

/** The exercises of each class, in their order. */
export const COURSE: Readonly<Record<Process, readonly ExercisePlan[]>> = { SMAW: smaw, 'FCAW-S': fcawS, 'FCAW-G': fcawG, GMAW: gmaw }

export const CLASS_NAMES: Readonly<Record<Process, string>> = {
  SMAW: 'Stick (SMAW)',
  'FCAW-S': 'Self-shielded flux-cored (FCAW-S)',
  'FCAW-G': 'Gas-shielded flux-cored (FCAW-G)',
  GMAW: 'Solid wire (GMAW)',
}

export const ROOMS: Readonly<Record<Process, string>> = { SMAW: 'Bay 1', 'FCAW-S': 'Bay 2', 'FCAW-G': 'Bay 3', GMAW: 'Bay 4' }
