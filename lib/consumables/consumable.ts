import type { Polarity, Process } from '../procedure/process'
import type { WeldingPosition } from '../procedure/positions'
import type { Source } from '../source'

/** What a classification says of a wire or rod. */
export type Consumable = {
  /** The specification that defines it: 'AWS A5.20'. */
  readonly standard: string
  /** The designation as the specification writes it, whatever was typed. */
  readonly classification: string
  readonly process: Process
  /** Least tensile strength of the weld metal, ksi. */
  readonly tensileKsi: number | null
  /** Currents it is classified for; empty where the class leaves it to the maker. */
  readonly polarity: readonly Polarity[]
  /** null where the class leaves it to the maker. */
  readonly shielding: 'self' | 'gas' | 'slag' | null
  /** 'multiple' covers single-pass welds too; null where the specification does not sort by passes. */
  readonly passes: 'single' | 'multiple' | null
  /** null where the specification names no positions. */
  readonly positions: readonly WeldingPosition[] | null
  readonly source: Source
  /** Usability group: '8' of E71T-8, '18' of E7018, '6' of ER70S-6. */
  readonly usability: string
  /** Gases it is classified with, as ISO 14175 writes them; absent where any active gas may serve or none is used. */
  readonly gases?: readonly ('C1' | 'M21')[]
  /** Least Charpy V-notch energy and its temperature; absent where none is asked for. */
  readonly impact?: { readonly ftLb: number; readonly fahrenheit: number }
  /** Most diffusible hydrogen, mL in 100 g of weld metal; absent where the designation does not say. */
  readonly hydrogenMlPer100g?: 4 | 8 | 16
  /** The covering is of the low-hydrogen kind (covered electrodes only). */
  readonly lowHydrogen?: boolean
  /** Tested again at low and high heat input: D for building codes' seismic supplement, Q for naval work. */
  readonly heatInputTests?: 'D' | 'Q'
  readonly moistureResistant?: boolean
}
