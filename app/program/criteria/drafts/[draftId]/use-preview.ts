'use client'

import { useEffect, useRef, useState } from 'react'
import type { DraftCriteria } from '@/lib/criteria/draft/draft'
import type { SampleReadingProblems, SampleReadings } from '@/lib/criteria/draft/sample-readings'
import type { LookView } from '@/lib/reports/look-view'
import { previewCriteria } from '../../actions'
import type { BoxProblems } from './box-problems'
import type { Said } from './rule-item'

/** Long enough that a word is typed whole, short enough to look at once. */
const PAUSE_MS = 400

export type Preview = { readonly problems: BoxProblems; readonly readings: SampleReadingProblems; readonly rules: readonly (Said | null)[]; readonly look: LookView | null }

type State = {
  readonly problems: BoxProblems
  /** Of the readings typed over the sample's. */
  readonly readings: SampleReadingProblems
  /** Rules in words, by key: the last words there were. */
  readonly said: Readonly<Record<string, Said>>
  /** The last coupon that could be judged. */
  readonly look: LookView | null
  /** `stale`: the boxes cannot be judged as they stand, and the coupon shown is of before. `failed`: the server could not be asked. */
  readonly state: 'fresh' | 'stale' | 'failed'
}

const wordsByKey = (document: DraftCriteria, rules: Preview['rules']): Readonly<Record<string, Said>> =>
  Object.fromEntries(document.rules.flatMap(({ key }, index) => (rules[index] ? [[key, rules[index]]] : [])))

/** Asks the server, as the boxes change, what they make of a sample coupon. Answers that come late are dropped. */
export function usePreview(document: DraftCriteria, sample: string, typed: SampleReadings, first: Preview): State {
  const [state, setState] = useState<State>(() => ({ problems: first.problems, readings: first.readings, said: wordsByKey(document, first.rules), look: first.look, state: first.look ? 'fresh' : 'stale' }))
  const asked = useRef(0)
  const begun = useRef(false)

  useEffect(() => {
    if (!begun.current) {
      begun.current = true // the page came with the first answer
      return
    }
    const number = ++asked.current
    const timer = setTimeout(() => {
      previewCriteria({ document, sample, readings: typed }).then((answer) => {
        if (number !== asked.current) return
        if (!answer.ok) return setState((before) => ({ ...before, problems: underRules(answer.fields), state: answer.code === 'INVALID' ? 'stale' : 'failed' }))
        const { problems, readings, rules, look } = answer.value
        setState((before) => ({ problems, readings, said: wordsByKey(document, rules), look: look ?? before.look, state: look ? 'fresh' : 'stale' }))
      }).catch(() => {
        if (number === asked.current) setState((before) => ({ ...before, state: 'failed' }))
      })
    }, PAUSE_MS)
    return () => clearTimeout(timer)
  }, [document, sample, typed])

  return state
}

/** A refused form names boxes from its own top: 'document.rules.2.max.value'. */
export const underRules = (fields: BoxProblems): BoxProblems => Object.fromEntries(Object.entries(fields).map(([box, sentence]) => [box.replace(/^document\./, ''), sentence]))
