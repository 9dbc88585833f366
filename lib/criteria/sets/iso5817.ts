import type { CriteriaSet } from '../types'
import { isoRules, type Level } from './iso5817-items'

const EDITION = 'ISO 5817:2014; no change of these limits is reported for 2023'

const NAMES = { b: 'B (stringent)', c: 'C (intermediate)', d: 'D (moderate)' } as const

function iso5817(level: Level): CriteriaSet {
  return {
    id: `iso5817-${level}`,
    version: 2,
    title: `ISO 5817 quality level ${NAMES[level]}, surface and shape`,
    edition: EDITION,
    system: 'si',
    passMark: 70,
    rules: isoRules(() => level),
  }
}

export const iso5817B = iso5817('b')
export const iso5817C = iso5817('c')
export const iso5817D = iso5817('d')
