import type { CriteriaSet } from '../types'
import { ISO_ITEMS, isoRules } from './iso5817-items'

/** What a welder's test may show at level C: excess weld metal, excessive convexity, excessive throat, excess penetration. */
export const ISO9606_EXCEPTIONS: readonly string[] = ['502', '503', '5214', '504']

/** Item numbers an exception list may name. '501' stands for 5011. */
const NAMEABLE: readonly string[] = [...ISO_ITEMS, '501']

/**
 * The visual criteria of a welder's test to ISO 9606-1, clause 7: ISO 5817 level B, with some items at level C.
 *
 * Texts differ on whether undercut (501) is among them; the shorter list is the stricter one and the default.
 *
 * @throws RangeError naming an exception that is no item of ISO 5817's table
 */
export function iso9606Set(exceptions: readonly string[] = ISO9606_EXCEPTIONS): CriteriaSet {
  const unknown = exceptions.find((item) => !NAMEABLE.includes(item))
  if (unknown !== undefined) throw new RangeError(`"${unknown}" is not an item number that can be judged at level C: use ${NAMEABLE.join(', ')}.`)
  const atC = new Set(exceptions.map((item) => (item === '501' ? '5011' : item)))
  return {
    id: 'iso9606-1',
    version: 2,
    title: 'ISO 9606-1 welder test, visual: ISO 5817 level B with exceptions',
    edition: 'ISO 9606-1:2012, clause 7, with ISO 5817:2014',
    system: 'si',
    passMark: 70,
    rules: isoRules((item) => (atC.has(item) ? 'c' : 'b')),
    settings: { judgedAtC: [...exceptions] },
  }
}
