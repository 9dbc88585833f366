import type { Locale } from '@/lib/language/say'
import type { SizeFrame } from '@/lib/reports/size-frame'
import type { ReadingsForm, StationBox } from '@/lib/schemas/readings'

/** What the parts of the readings form share: whose form it is, what it asks for, what stands in it, and what is wrong with it. */
export type EditorProps = {
  readonly locale: Locale
  /** The boxes each station has, in order. */
  readonly boxes: readonly StationBox[]
  /** Toes and legs lie left and right of the weld here, not one above the other. */
  readonly vertical: boolean
  readonly frame: SizeFrame
  readonly value: ReadingsForm
  readonly onChange: (value: ReadingsForm) => void
  /** Sentences by path within the readings: 'stations.0.width'. */
  readonly errors: Readonly<Record<string, string>>
}
