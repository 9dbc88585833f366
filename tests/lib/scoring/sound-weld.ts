import { INDICATION_KINDS, type Finding, type Inspection, type Scorecard, type Station, type Weld } from '@/lib/scoring/types'

/** A 1/4 in fillet, 300 mm long, made with 1/16 in wire. */
export const aWeld = (change: Partial<Weld> = {}): Weld => ({
  type: 'fillet', process: 'FCAW-S', position: '3F', progression: 'up', thicknessMm: 9.525, electrodeDiameterMm: 1.5875,
  nominalLegMm: 6.35, lengthMm: 300, ...change,
})

const reading = { widthMm: 8.7, legAMm: 6.8, legBMm: 6.6, throatMm: 5, convexityMm: 0.5, reinforcementMm: 1 }

/** Five stations of one good reading each; `change` alters every station. */
export const stations = (change: Omit<Station, 'atMm'> = {}): readonly Station[] => [30, 90, 150, 210, 270].map((atMm) => ({ atMm, ...reading, ...change }))

/** Everything measured, everything looked for, nothing found. */
export const anInspection = (change: Partial<Inspection> = {}): Inspection => ({
  stations: stations(), indications: [], lookedFor: INDICATION_KINDS, cratersFilled: true, fusionComplete: true, ...change,
})

export function findingOf(card: Scorecard, rule: string): Finding {
  const finding = card.findings.find((one) => one.rule === rule)
  if (finding === undefined) throw new Error(`${card.criteriaId} has no rule ${rule}`)
  return finding
}

/** A station without some of its readings. */
export function without(station: Station, ...fields: readonly (keyof Station)[]): Station {
  return Object.fromEntries(Object.entries(station).filter(([field]) => !fields.some((one) => one === field))) as Station
}
