'use client'

import type { Closing } from '@/lib/reports/gauge-study-progress'
import { AskFirst } from '@/app/_components/ask-first'
import { endStudy } from './actions'

const WORDS: Readonly<Record<Closing, { readonly text: string; readonly label: string; readonly sure: string }>> = {
  complete: { text: 'Closing shows every width to those who read here. Nothing is read after that.', label: 'Close the study', sure: 'Close it and show the widths' },
  early: {
    text: 'At least two have read everything. Whoever has not is left out of the figures as far as their rounds are not whole, and reads no further.',
    label: 'Close it early', sure: 'Close it without the rest',
  },
  'given-up': { text: 'Fewer than two have read everything. Closed now, the study shows what was read, most likely without figures.', label: 'Give the study up', sure: 'Give it up: nobody reads on' },
}

/** Closes a study, whatever it would come to; what that is, is said first. Folded away while readings are still to come. */
export function ClosePanel({ studyId, closing }: { readonly studyId: string; readonly closing: Closing }) {
  const { text, label, sure } = WORDS[closing]
  const panel = (
    <div className="grid max-w-prose gap-3 pb-2">
      <p>{text}</p>
      <AskFirst key={closing} label={label} sure={sure} keep="Leave it open" send={() => endStudy({ studyId, as: closing })} done={() => ({ word: 'Closed', text: 'Its widths are shown now.' })} />
    </div>
  )
  if (closing === 'complete') return panel
  return (
    <details>
      <summary className="ring-inside flex min-h-12 w-fit cursor-pointer items-center underline underline-offset-4">Close this study</summary>
      {panel}
    </details>
  )
}
