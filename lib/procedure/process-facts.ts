import type { Source } from '../source'
import type { Process } from './process'

/** What is fixed about a process: its name, its number in ISO 4063, and the share of the arc's energy counted as heat input. */
export type ProcessFacts = {
  readonly name: string
  /** Process number of ISO 4063. */
  readonly iso4063: string
  /** Thermal efficiency factor k of ISO/TR 17671-1 (EN 1011-1): a convention, not a measurement of this arc. */
  readonly efficiency: number
  readonly efficiencySource: Source
}

const READ: Source = {
  title: 'ISO/TR 17671-1 and EN 1011-1, thermal efficiency factor k',
  clause: 'Table 1',
  status: 'secondary',
  note: 'Read in a steel maker’s heat-input guide; clause number from memory. Measured arcs vary about the factor.',
}
const REMEMBERED: Source = { ...READ, status: 'memory', note: 'Grouped with cored-wire metal-arc welding from memory. Measured arcs vary about the factor.' }

const FACTS: Readonly<Record<Process, ProcessFacts>> = {
  SMAW: { name: 'Shielded metal arc welding', iso4063: '111', efficiency: 0.8, efficiencySource: READ },
  'FCAW-S': { name: 'Self-shielded flux-cored arc welding', iso4063: '114', efficiency: 0.8, efficiencySource: REMEMBERED },
  'FCAW-G': { name: 'Gas-shielded flux-cored arc welding', iso4063: '136', efficiency: 0.8, efficiencySource: READ },
  GMAW: { name: 'Gas metal arc welding', iso4063: '135', efficiency: 0.8, efficiencySource: READ },
}
/** ISO 4063 tells wires and gases apart where the AWS name does not. */
const OTHER_NUMBERS: Readonly<Record<string, Process>> = { '131': 'GMAW', '138': 'GMAW' }

/** @throws RangeError for a process that is not taught here */
export function processFacts(process: Process): ProcessFacts {
  if (!Object.hasOwn(FACTS, process)) throw new RangeError(`"${String(process)}" is not a process taught here: use ${Object.keys(FACTS).join(', ')}.`)
  return FACTS[process]
}

/**
 * The AWS process of an ISO 4063 number: 111, 114, 131 (solid wire, inert gas), 135 (solid wire, active gas), 136, 138 (metal-cored wire).
 *
 * @throws RangeError for a number of another process
 */
export function processOfIso4063(number: string): Process {
  const own = Object.keys(FACTS).find((key): key is Process => FACTS[key as Process].iso4063 === number.trim())
  const process = own ?? (Object.hasOwn(OTHER_NUMBERS, number.trim()) ? OTHER_NUMBERS[number.trim()] : undefined)
  if (process === undefined) throw new RangeError(`ISO 4063 number "${number}" is not a process taught here: use 111, 114, 131, 135, 136 or 138.`)
  return process
}
