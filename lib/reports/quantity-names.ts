import type { Quantity } from '../criteria/types'

/** What a limit can depend on, as it is said inside a sentence. */
export const quantityNames: Readonly<Record<Quantity, string>> = {
  thickness: 'the plate’s thickness', 'electrode-diameter': 'the electrode’s diameter', 'nominal-leg': 'the leg asked for', 'nominal-throat': 'the throat of the leg asked for',
  'nominal-size': 'the nominal size (throat of a fillet, plate of a groove weld)', width: 'the weld’s width there', 'root-width': 'the root’s width there',
}
