import { quantityNames } from '@/lib/reports/quantity-names'
import type { Choice } from '@/app/_components/ui/select'
import { QUANTITIES, READINGS, SIZES, type RuleKind } from '@/lib/criteria/types'
import { kindNames } from '@/lib/language/kind-names'
import { readingNames } from '@/lib/language/rules'
import { INDICATION_KINDS } from '@/lib/scoring/types'

/** What each kind of rule does, for someone choosing one. */
export const KIND_WORDS: Readonly<Record<RuleKind, string>> = {
  absent: 'None of these may be seen',
  attribute: 'A question that must be answered yes',
  'largest-size': 'The largest of these, at most so big',
  'size-allowance': 'At most so big, and more over a limited length',
  'reading-range': 'Every station measures between two limits',
  'reading-spread': 'Largest and smallest reading differ by so much at most',
  'reading-allowance': 'Every station to a limit, and past it over a limited length',
  'window-sum': 'Sizes add up to so much in any stretch of weld',
  'window-count': 'At most so many in any stretch of weld',
  'length-share': 'Over at most a share of the weld',
  'not-judged': 'Named, but not judged',
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

export const quantityChoices: readonly Choice[] = QUANTITIES.map((value) => ({ value, label: capital(quantityNames[value]) }))
export const readingChoices: readonly Choice[] = READINGS.map((value) => ({ value, label: readingNames.en[value] }))
export const sizeChoices: readonly Choice[] = SIZES.map((value) => ({ value, label: value === 'largest' ? 'Largest size recorded' : capital(value) }))
export const indicationChoices = INDICATION_KINDS.map((value) => ({ value, label: kindNames.en[value] }))
export const STATUS_CHOICES: readonly Choice[] = [
  { value: 'common-practice', label: 'Common practice, no source' },
  { value: 'confirmed', label: 'Read in the standard' },
  { value: 'secondary', label: 'From a handbook or agency text' },
  { value: 'memory', label: 'From memory, not read again' },
]
