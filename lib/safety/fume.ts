import type { Process } from '../procedure/process'
import type { Source } from '../source'

/** A limit on what a welder may breathe. Milligrams in a cubic metre of air. */
export type ExposureLimit = {
  readonly agent: 'manganese' | 'chromium-6'
  readonly body: 'OSHA' | 'NIOSH' | 'ACGIH' | 'Cal/OSHA'
  /** ceiling: never above; shift: average over the shift; short: average over 15 minutes. */
  readonly over: 'ceiling' | 'shift' | 'short'
  readonly fraction: 'total' | 'respirable' | 'inhalable'
  readonly mgPerM3: number
  /** A regulation binds; a recommendation advises. */
  readonly binding: boolean
  readonly source: Source
}

const OSHA_Z1: Source = { title: 'OSHA 29 CFR 1910.1000', clause: 'Table Z-1', status: 'secondary' }
const NIOSH_REL: Source = { title: 'NIOSH recommended exposure limits, manganese fume', clause: null, status: 'secondary' }
const ACGIH_TLV: Source = { title: 'ACGIH threshold limit value for manganese, 2013', clause: null, status: 'secondary' }
const CAL_OSHA: Source = { title: 'California Code of Regulations, Title 8, section 5155', clause: null, status: 'secondary', note: 'Lower values have been proposed since.' }
const OSHA_CR6: Source = { title: 'OSHA 29 CFR 1910.1026', clause: '(c)', status: 'secondary', note: 'Clause letter from memory.' }

export const EXPOSURE_LIMITS: readonly ExposureLimit[] = [
  { agent: 'manganese', body: 'OSHA', over: 'ceiling', fraction: 'total', mgPerM3: 5, binding: true, source: OSHA_Z1 },
  { agent: 'manganese', body: 'NIOSH', over: 'shift', fraction: 'total', mgPerM3: 1, binding: false, source: NIOSH_REL },
  { agent: 'manganese', body: 'NIOSH', over: 'short', fraction: 'total', mgPerM3: 3, binding: false, source: NIOSH_REL },
  { agent: 'manganese', body: 'ACGIH', over: 'shift', fraction: 'respirable', mgPerM3: 0.02, binding: false, source: ACGIH_TLV },
  { agent: 'manganese', body: 'ACGIH', over: 'shift', fraction: 'inhalable', mgPerM3: 0.1, binding: false, source: ACGIH_TLV },
  { agent: 'manganese', body: 'Cal/OSHA', over: 'shift', fraction: 'total', mgPerM3: 0.2, binding: true, source: CAL_OSHA },
  { agent: 'chromium-6', body: 'OSHA', over: 'shift', fraction: 'total', mgPerM3: 0.005, binding: true, source: OSHA_CR6 },
]

export const FUME_ORDER_SOURCE: Source = { title: 'OSHA FactSheet: Controlling Hazardous Fume and Gases during Welding', clause: null, status: 'secondary' }

/**
 * Place among the arc processes by the fume they make, 1 the most: flux-cored, then covered electrodes, then solid wire
 * (tungsten arc welding, not taught here, is fourth).
 */
export function fumeRank(process: Process): 1 | 2 | 3 {
  switch (process) {
    case 'FCAW-S':
    case 'FCAW-G': return 1
    case 'SMAW': return 2
    case 'GMAW': return 3
  }
}
