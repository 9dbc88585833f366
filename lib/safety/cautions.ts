import type { Process } from '../procedure/process'
import type { Source } from '../source'
import { EXPOSURE_LIMITS, FUME_ORDER_SOURCE, fumeRank, type ExposureLimit } from './fume'
import { FIRE_CLEARANCE, FIRE_CLEARANCE_SOURCE, strictestFireWatch } from './fire-watch'
import { shadeFor } from './shade'
import { LOCAL_EXHAUST_SOURCE, VENTILATION, VENTILATION_SOURCE } from './ventilation'

/** Kept with every student's confirmation: a change here asks everyone to read and confirm again. */
export const CAUTIONS_VERSION = '2026-11'

export const CAUTION_TOPICS = ['eyes', 'fume', 'fire', 'electricity', 'clothing', 'gas'] as const
export type CautionTopic = (typeof CAUTION_TOPICS)[number]

export const CAUTION_CODES = [
  'shade-minimum', 'shade-suggested', 'shade-beyond-table', 'glasses-under-helmet', 'watchers-need-filters',
  'ventilation', 'local-exhaust', 'fume-rank', 'manganese', 'chromium', 'barium-fluoride',
  'fire-clearance', 'fire-watch', 'open-circuit-ac', 'open-circuit-dc', 'dry-and-insulated', 'live-wire', 'gloves-and-sleeves', 'hot-slag', 'cylinders', 'gas-displaces-air',
] as const
export type CautionCode = (typeof CAUTION_CODES)[number]

/** One thing to know before the first arc. No prose here: lib/reports/explain-caution puts it into the reader's words. */
export type Caution = {
  readonly code: CautionCode
  readonly topic: CautionTopic
  /** Numbers the sentence needs, named with their units. */
  readonly figures: Readonly<Record<string, number>>
  readonly source: Source
}

const OPEN_CIRCUIT: Source = { title: 'OSHA 29 CFR 1910.254', clause: '(b)(3)', status: 'secondary', note: 'Read in the same words in Washington Administrative Code 296-24-68503.' }
const CLOTHING: Source = { title: 'OSHA 29 CFR 1910.252', clause: '(b)(3)', status: 'secondary', note: 'Details read in Washington Administrative Code 296-24-70005.' }
const GLASSES: Source = { title: 'OSHA FactSheet: Eye Protection against Radiant Energy during Welding and Cutting in Shipyard Employment', clause: null, status: 'secondary' }
const CYLINDERS: Source = { title: 'Compressed Gas Association P-1', clause: null, status: 'secondary', note: 'Read in a machine manual that cites it.' }
const SHOP: Source = { title: 'Common shop practice', clause: null, status: 'common-practice' }
const DATA_SHEET: Source = { title: 'Safety data sheet of the wire', clause: null, status: 'memory', note: 'Some self-shielded wires hold barium and fluoride compounds: read the sheet of yours.' }

/**
 * What a welder confirms before welding with a process: codes, figures and sources, eyes first.
 *
 * @param amps the exercise's current; null when it is not set, and the shades then run over the whole table
 * @throws RangeError when the current is given but not above zero
 */
export function cautionsFor(process: Process, amps: number | null): Caution[] {
  return [...eyes(process, amps), ...fume(process), ...fire(), ...electricity(process), ...clothing(process), ...gas(process)]
}

function eyes(process: Process, amps: number | null): Caution[] {
  const { minimum, minimumSource, suggested, suggestedSource, beyondTable } = shadeFor(process, amps)
  return [
    caution('shade-minimum', 'eyes', { ...minimum }, minimumSource),
    ...(suggested ? [caution('shade-suggested', 'eyes', { ...suggested }, suggestedSource)] : []),
    ...(beyondTable ? [caution('shade-beyond-table', 'eyes', {}, minimumSource)] : []),
    caution('glasses-under-helmet', 'eyes', {}, GLASSES),
    caution('watchers-need-filters', 'eyes', {}, GLASSES),
  ]
}

function fume(process: Process): Caution[] {
  const manganese = limit('manganese', 'OSHA', 'total')
  const chromium = limit('chromium-6', 'OSHA', 'total')
  return [
    caution('ventilation', 'fume', {
      spaceFt3: VENTILATION.spacePerWelder.ft3, spaceM3: VENTILATION.spacePerWelder.m3, ceilingFt: VENTILATION.ceiling.ft, ceilingM: VENTILATION.ceiling.m,
      airFt3PerMin: VENTILATION.airPerWelder.ft3PerMin, airM3PerMin: VENTILATION.airPerWelder.m3PerMin,
    }, VENTILATION_SOURCE),
    caution('local-exhaust', 'fume', { captureFtPerMin: VENTILATION.hoodCapture.ftPerMin, captureMPerMin: VENTILATION.hoodCapture.mPerMin }, LOCAL_EXHAUST_SOURCE),
    caution('fume-rank', 'fume', { rank: fumeRank(process) }, FUME_ORDER_SOURCE),
    caution('manganese', 'fume', { oshaMgPerM3: manganese.mgPerM3, acgihMgPerM3: limit('manganese', 'ACGIH', 'respirable').mgPerM3 },
      { ...manganese.source, note: 'The advised figure is the threshold limit value of ACGIH, 2013, respirable fraction.' }),
    caution('chromium', 'fume', { oshaMicrogramsPerM3: chromium.mgPerM3 * 1000 }, chromium.source),
    ...(process === 'FCAW-S' ? [caution('barium-fluoride', 'fume', {}, DATA_SHEET)] : []),
  ]
}

function fire(): Caution[] {
  const watch = strictestFireWatch()
  return [
    caution('fire-clearance', 'fire', { clearanceFt: FIRE_CLEARANCE.ft, clearanceM: FIRE_CLEARANCE.m }, FIRE_CLEARANCE_SOURCE),
    caution('fire-watch', 'fire', { minutes: watch.minutes }, watch.source),
  ]
}

function electricity(process: Process): Caution[] {
  const isStick = process === 'SMAW'
  return [
    ...(isStick ? [caution('open-circuit-ac', 'electricity', { volts: 80 }, OPEN_CIRCUIT)] : []),
    caution('open-circuit-dc', 'electricity', { volts: 100 }, OPEN_CIRCUIT),
    caution('dry-and-insulated', 'electricity', {}, SHOP),
    ...(isStick ? [] : [caution('live-wire', 'electricity', {}, SHOP)]),
  ]
}

function clothing(process: Process): Caution[] {
  return [
    caution('gloves-and-sleeves', 'clothing', {}, CLOTHING),
    ...(process === 'GMAW' ? [] : [caution('hot-slag', 'clothing', {}, SHOP)]),
  ]
}

function gas(process: Process): Caution[] {
  if (process === 'SMAW' || process === 'FCAW-S') return []
  return [caution('cylinders', 'gas', {}, CYLINDERS), caution('gas-displaces-air', 'gas', {}, CYLINDERS)]
}

function caution(code: CautionCode, topic: CautionTopic, figures: Caution['figures'], source: Source): Caution {
  return { code, topic, figures, source }
}

function limit(agent: ExposureLimit['agent'], body: ExposureLimit['body'], fraction: ExposureLimit['fraction']): ExposureLimit {
  const found = EXPOSURE_LIMITS.find((each) => each.agent === agent && each.body === body && each.fraction === fraction)
  if (!found) throw new RangeError(`There is no ${body} limit for ${agent} (${fraction}).`)
  return found
}
