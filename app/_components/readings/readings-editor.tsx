'use client'

import { logPad } from '@/lib/language/log-pad'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import type { EditorProps } from './editor-props'
import { IndicationBoxes } from './indication-boxes'
import { LookedFor } from './looked-for'
import { StationBoxes } from './station-boxes'

/** The whole inspection form: sizes, what was looked for, what was seen. The student's and the instructor's are the same. */
export function ReadingsEditor(props: EditorProps) {
  const { locale, frame, boxes } = props
  const isMarked = boxes.some((box) => frame.pads[box]?.allowed)
  return (
    <div className="grid gap-8">
      <section className="grid gap-3">
        <h2 className="text-2xl">{say(readingsWords, locale, 'stations')}</h2>
        <p className="text-ink-2">{say(logPad, locale, 'hint')} {isMarked && say(logPad, locale, 'bandHint')}</p>
        <StationBoxes {...props} />
      </section>
      <section className="grid gap-3">
        <h2 className="text-2xl">{say(readingsWords, locale, 'indications')}</h2>
        <IndicationBoxes {...props} />
      </section>
      <section className="grid gap-3">
        <h2 className="text-2xl">{say(readingsWords, locale, 'looked')}</h2>
        <p className="text-ink-2">{say(readingsWords, locale, 'lookedHint')}</p>
        <LookedFor {...props} />
      </section>
    </div>
  )
}
