import { drawings } from '../language/drawings'
import { say } from '../language/say'
import { INDICATION_KINDS, type Indication, type IndicationKind, type Station } from '../scoring/types'
import { formatForReader } from '../units/display'
import type { BeadStripInput } from './bead-strip-input'
import { placeText } from './ruler'
import { toeName } from './toe-name'

/** Everything the strip says, in the reader's language and units. */
export type StripWords = {
  readonly title: string
  /** The whole drawing in sentences, for someone who cannot see it. */
  readonly description: string
  /** Which end and which toe is which. */
  readonly ends: string
  /** That width is drawn larger than length, or that it is not. */
  readonly scale: string
  /** Says that no width was measured; null when one was. */
  readonly noWidths: string | null
  /** What the band allows, for the key; null where there is none. */
  readonly band: string | null
  /** For the key, each null where no such thing is drawn. */
  readonly outOfBand: string | null
  readonly notMeasured: string | null
  readonly openEnds: string | null
  readonly restart: string | null
  /** One entry for each kind of indication present. */
  readonly key: readonly { readonly kind: IndicationKind; readonly text: string }[]
  /** One entry for each rejected stretch, in the order given. */
  readonly rejected: readonly string[]
  /** One for each measured station, from the start of the weld. */
  readonly widthLabels: readonly string[]
}

type Drawn = {
  readonly exaggeration: number
  readonly measured: readonly (Station & { readonly widthMm: number })[]
  readonly readings: readonly { readonly inBand: boolean | null }[]
  readonly unmeasured: readonly Station[]
}

export function stripWords(input: BeadStripInput, { exaggeration, measured, readings, unmeasured }: Drawn): StripWords {
  const { weld, inspection, widthBand, restartsMm = [], rejected = [], reader } = input
  const { locale, units } = reader
  const length = (mm: number): string => formatForReader(mm, units)
  const place = (mm: number): string => placeText(mm, units)
  const list = (items: readonly string[]): string => new Intl.ListFormat(locale, { type: 'conjunction' }).format(items)
  const places = (atMm: readonly number[]): string => list([...atMm].sort((a, b) => a - b).map(place))
  const toeOnTop = toeName('A', weld.position, locale)
  const scale = exaggeration === 1 ? say(drawings, locale, 'sameScale') : say(drawings, locale, 'exaggerated', { times: exaggeration })
  const indications = [...inspection.indications].sort((a, b) => a.atMm - b.atMm)
  const outside = readings.filter((reading) => reading.inBand === false).length

  const description = [
    say(drawings, locale, 'stripWeld', { length: length(weld.lengthMm), toe: toeOnTop }),
    bandPhrase('bandBoth', 'bandMin', 'bandMax'),
    measured.length === 0
      ? say(drawings, locale, 'noWidths')
      : say(drawings, locale, 'widths', { readings: list(measured.map((s) => say(drawings, locale, 'widthAt', { width: length(s.widthMm), at: place(s.atMm) }))) }),
    measured.length > 0 && widthBand
      ? outside === 0 ? say(drawings, locale, 'allInside') : say(drawings, locale, 'someOutside', { n: outside, of: measured.length })
      : null,
    unmeasured.length > 0 ? say(drawings, locale, 'notMeasuredAt', { places: places(unmeasured.map((s) => s.atMm)) }) : null,
    indications.length === 0 ? say(drawings, locale, 'noIndications') : `${capital(list(indications.map(indicationPhrase)))}.`,
    restartsMm.length > 0 ? say(drawings, locale, 'restartsAt', { places: places(restartsMm) }) : null,
    ...rejected.map((each) => say(drawings, locale, 'rejectedAt', { from: place(each.fromMm), to: place(each.toMm), rule: each.rule })),
    scale,
  ].filter((sentence) => sentence !== null)

  return {
    title: say(drawings, locale, 'stripTitle'),
    description: description.join(' '),
    ends: say(drawings, locale, 'stripEnds', { toe: toeOnTop }),
    scale,
    noWidths: measured.length === 0 ? say(drawings, locale, 'noWidths') : null,
    band: bandPhrase('bandKey', 'bandKeyMin', 'bandKeyMax'),
    outOfBand: outside > 0 ? say(drawings, locale, 'outOfBandKey') : null,
    notMeasured: unmeasured.length > 0 ? say(drawings, locale, 'notMeasuredKey') : null,
    openEnds: measuredToTheEnds() ? null : say(drawings, locale, 'endsKey'),
    restart: restartsMm.length > 0 ? say(drawings, locale, 'restartKey') : null,
    key: INDICATION_KINDS.flatMap((kind) => keyEntry(kind, indications.filter((each) => each.kind === kind))),
    rejected: rejected.map((each) => say(drawings, locale, 'rejectedKey', { rule: each.rule, from: place(each.fromMm), to: place(each.toMm) })),
    widthLabels: measured.map((station) => length(station.widthMm)),
  }

  /** Also true where nothing was measured: that is said on its own. */
  function measuredToTheEnds(): boolean {
    const [first, last] = [measured[0], measured.at(-1)]
    return !first || !last || (first.atMm <= 0 && last.atMm >= weld.lengthMm)
  }

  function bandPhrase(both: 'bandBoth' | 'bandKey', least: 'bandMin' | 'bandKeyMin', most: 'bandMax' | 'bandKeyMax'): string | null {
    const { minMm = null, maxMm = null } = widthBand ?? {}
    if (minMm === null && maxMm === null) return null
    const values = { min: length(minMm ?? 0), max: length(maxMm ?? 0) }
    return say(drawings, locale, minMm === null ? most : maxMm === null ? least : both, values)
  }

  function indicationPhrase({ kind, atMm, lengthMm, toe }: Indication): string {
    const what = say(drawings, locale, kind)
    const where = toe
      ? say(drawings, locale, 'indicationOnToe', { kind: what, toe: toeName(toe, weld.position, locale), at: place(atMm) })
      : say(drawings, locale, 'indicationAt', { kind: what, at: place(atMm) })
    return lengthMm ? `${where}, ${say(drawings, locale, 'long', { length: length(lengthMm) })}` : where
  }

  function keyEntry(kind: IndicationKind, found: readonly Indication[]): { kind: IndicationKind; text: string }[] {
    if (found.length === 0) return []
    const name = capital(say(drawings, locale, kind))
    const where = found.map(({ atMm, lengthMm, toe }) =>
      [toe && toeName(toe, weld.position, locale), place(atMm), lengthMm && say(drawings, locale, 'long', { length: length(lengthMm) })].filter(Boolean).join(', '),
    )
    return [{ kind, text: found.length === 1 ? `${name}: ${where.join('')}` : `${name} (${found.length}): ${where.join('; ')}` }]
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
