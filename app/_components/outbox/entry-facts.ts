import { savedHere } from '@/lib/language/saved-here'
import { say, type Locale } from '@/lib/language/say'
import type { OutboxEntry } from '@/lib/outbox/outbox-entry'

/** What was logged, in a line: '6 stations measured, no indications, 1 photo'. */
export function entryFacts({ about, photos }: OutboxEntry, locale: Locale): string {
  const { stations, indications } = about
  return [
    say(savedHere, locale, stations === 0 ? 'noStations' : stations === 1 ? 'oneStation' : 'stations', { n: stations }),
    say(savedHere, locale, indications === 0 ? 'noIndications' : indications === 1 ? 'oneIndication' : 'indications', { n: indications }),
    ...(photos.length === 0 ? [] : [say(savedHere, locale, photos.length === 1 ? 'onePhoto' : 'manyPhotos', { n: photos.length })]),
  ].join(', ')
}
