'use client'

import { useState } from 'react'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import { later } from '@/app/_components/later'
import { Button } from '../ui/button'
import type { EditorProps } from './editor-props'

/** Comes when something was seen: a clean coupon never needs it. */
const IndicationList = later(() => import('./indication-list').then((module) => module.IndicationList))

/** What was seen. Nothing, to begin with. */
export function IndicationBoxes(props: EditorProps) {
  const { locale, value } = props
  const [started, setStarted] = useState(false)
  if (started || value.indications.length > 0) return <IndicationList {...props} startPlacing={started} />
  return (
    <div className="grid gap-4">
      <p className="text-ink-2">{say(readingsWords, locale, 'noneYet')}</p>
      <div><Button onClick={() => setStarted(true)}>{say(readingsWords, locale, 'addIndication')}</Button></div>
    </div>
  )
}
