'use client'

import { useState } from 'react'
import type { SnippetRecord } from '@/app/_server/data/snippets'
import { Button } from '@/app/_components/ui/button'
import { TextArea } from '@/app/_components/ui/text-area'
import { dropSnippet, keepSnippet } from '@/app/teach/coupons/actions'

type Props = { readonly label: string; readonly value: string; readonly error: string | undefined; readonly snippets: readonly SnippetRecord[]; readonly onChange: (value: string) => void }

/**
 * What the instructor remarks on the coupon: a plain box that takes dictation as well as typing, and the instructor's own sentences under it. A tap adds a
 * sentence to what stands there, and never replaces it.
 */
export function RemarkBox({ label, value, error, snippets, onChange }: Props) {
  const [kept, setKept] = useState(snippets)
  const [tidying, setTidying] = useState(false)
  const [said, setSaid] = useState('')
  const text = value.trim()

  async function keep(): Promise<void> {
    const answer = await keepSnippet({ body: text }).catch(() => null)
    setSaid(answer === null ? 'It did not get through. Try again.' : answer.ok ? 'Kept for next time.' : Object.values(answer.fields)[0] ?? answer.message)
    if (answer?.ok) setKept([...kept.filter(({ id }) => id !== answer.value.id), answer.value])
  }

  async function drop(snippetId: string): Promise<void> {
    const answer = await dropSnippet({ snippetId }).catch(() => null)
    setSaid(answer?.ok ? 'Removed.' : answer?.message ?? 'It did not get through. Try again.')
    if (answer?.ok) setKept(kept.filter(({ id }) => id !== snippetId))
  }

  return (
    <div className="grid gap-3">
      <TextArea label={label} value={value} error={error} autoCapitalize="sentences" spellCheck onChange={(event) => onChange(event.target.value)} />
      {kept.length > 0 && (
        <div role="group" aria-label="Your own sentences" className="flex flex-wrap gap-2">
          {kept.map(({ id, body }) => (
            <Button key={id} onClick={() => (tidying ? void drop(id) : onChange(text === '' ? body : `${text} ${body}`))}>{tidying ? `Remove: ${body}` : body}</Button>
          ))}
        </div>
      )}
      <div className="flex flex-wrap items-center gap-2">
        {text !== '' && !kept.some(({ body }) => body === text) && <Button onClick={() => void keep()}>Keep this sentence for next time</Button>}
        {kept.length > 0 && <Button aria-pressed={tidying} onClick={() => setTidying(!tidying)}>{tidying ? 'Done' : 'Remove sentences'}</Button>}
        <p role="status">{said}</p>
      </div>
    </div>
  )
}
