import type { Consumable } from './consumable'
import { readCovered } from './covered'
import { compactDesignation, unknownPart } from './designation'
import { readFluxCored } from './flux-cored'
import { readSolidOrMetalCored } from './solid'

export type { Consumable } from './consumable'

/**
 * Reads the classification printed on a box of wire or rod: 'E71T-8', 'E71T-8JD H8', 'E71T-1C/M', 'E7018-1 H4R', 'ER70S-6',
 * 'E70C-6M'. Case, spaces and hyphens do not matter. Carbon steel only: AWS A5.1, A5.18, A5.20.
 *
 * @throws RangeError naming the part that no table knows, or when it is not text
 */
export function readClassification(text: string): Consumable {
  if (typeof text !== 'string') throw new RangeError(`A classification is text such as E71T-8, not ${String(text)}.`)
  const compact = compactDesignation(text)
  const consumable = readFluxCored(compact, text) ?? readSolidOrMetalCored(compact, text) ?? readCovered(compact, text)
  if (consumable === null) throw unknownPart(text, text.trim(), 'write it like E71T-8, E7018, ER70S-6 or E70C-6M')
  return consumable
}
