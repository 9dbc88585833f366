import { safety } from '../language/safety'
import { say, type Locale } from '../language/say'
import type { Caution, CautionTopic } from '../safety/cautions'
import type { LengthUnit } from '../units/length'

/**
 * A caution as one or two sentences in the reader's language and units.
 *
 * @throws RangeError when the caution lacks a figure its sentence needs
 */
export function explainCaution(caution: Caution, locale: Locale, units: LengthUnit): string {
  const figure = (name: string): number => {
    const value = caution.figures[name]
    if (value === undefined) throw new RangeError(`The caution "${caution.code}" lacks the figure ${name}.`)
    return value
  }
  const either = (inch: string, metric: string): string => (units === 'in' ? inch : metric)
  const inGroups = (value: number): string => value.toLocaleString(locale === 'es' ? 'es-MX' : 'en-US')
  switch (caution.code) {
    case 'shade-minimum': return shade('shadeMinimum')
    case 'shade-suggested': return shade('shadeSuggested')
    case 'shade-beyond-table': return say(safety, locale, 'shadeBeyondTable')
    case 'glasses-under-helmet': return say(safety, locale, 'glassesUnderHelmet')
    case 'watchers-need-filters': return say(safety, locale, 'watchersNeedFilters')
    case 'ventilation': return say(safety, locale, 'ventilation', {
      space: either(`${inGroups(figure('spaceFt3'))} ft³`, `${figure('spaceM3')} m³`),
      ceiling: either(`${figure('ceilingFt')} ft`, `${figure('ceilingM')} m`),
      air: either(`${inGroups(figure('airFt3PerMin'))} ft³/min`, `${figure('airM3PerMin')} m³/min`),
    })
    case 'local-exhaust': return say(safety, locale, 'localExhaust', { capture: either(`${figure('captureFtPerMin')} ft/min`, `${figure('captureMPerMin')} m/min`) })
    case 'fume-rank': return say(safety, locale, figure('rank') === 1 ? 'fumeRank1' : figure('rank') === 2 ? 'fumeRank2' : 'fumeRank3')
    case 'manganese': return say(safety, locale, 'manganese', { osha: figure('oshaMgPerM3'), acgih: figure('acgihMgPerM3') })
    case 'chromium': return say(safety, locale, 'chromium', { osha: figure('oshaMicrogramsPerM3') })
    case 'barium-fluoride': return say(safety, locale, 'bariumFluoride')
    case 'fire-clearance': return say(safety, locale, 'fireClearance', { clearance: either(`${figure('clearanceFt')} ft`, `${figure('clearanceM')} m`) })
    case 'fire-watch': return say(safety, locale, 'fireWatch', { minutes: figure('minutes') })
    case 'open-circuit-ac': return say(safety, locale, 'openCircuitAc', { volts: figure('volts') })
    case 'open-circuit-dc': return say(safety, locale, 'openCircuitDc', { volts: figure('volts') })
    case 'dry-and-insulated': return say(safety, locale, 'dryAndInsulated')
    case 'live-wire': return say(safety, locale, 'liveWire')
    case 'gloves-and-sleeves': return say(safety, locale, 'glovesAndSleeves')
    case 'hot-slag': return say(safety, locale, 'hotSlag')
    case 'cylinders': return say(safety, locale, 'cylinders')
    case 'gas-displaces-air': return say(safety, locale, 'gasDisplacesAir')
  }

  function shade(key: 'shadeMinimum' | 'shadeSuggested'): string {
    const [lightest, darkest] = [figure('lightest'), figure('darkest')]
    return lightest === darkest ? say(safety, locale, key, { shade: darkest }) : say(safety, locale, `${key}Range`, { lightest, darkest })
  }
}

/** The heading over the cautions of one topic. */
export function explainCautionTopic(topic: CautionTopic, locale: Locale): string {
  switch (topic) {
    case 'eyes': return say(safety, locale, 'topicEyes')
    case 'fume': return say(safety, locale, 'topicFume')
    case 'fire': return say(safety, locale, 'topicFire')
    case 'electricity': return say(safety, locale, 'topicElectricity')
    case 'clothing': return say(safety, locale, 'topicClothing')
    case 'gas': return say(safety, locale, 'topicGas')
  }
}
