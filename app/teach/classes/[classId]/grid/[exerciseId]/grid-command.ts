import type { KeyboardEvent } from 'react'

/** What a key asks of the grid. */
export type GridCommand =
  | { readonly do: 'step'; readonly by: 1 | -1; readonly key: string }
  | { readonly do: 'row'; readonly by: 1 | -1 }
  | { readonly do: 'grade' | 'looked' | 'repeat' | 'leave' }
  | { readonly do: 'snippet'; readonly index: number }

type Situation = { readonly text: string; readonly snippets: number }
const TEXT = ['seen', 'remark']

/** Whether an arrow would leave the text: the caret stands at that end, or everything is selected. */
function atEdge(target: EventTarget, end: 'start' | 'end'): boolean {
  if (!(target instanceof HTMLInputElement)) return true
  const { selectionStart, selectionEnd, value } = target
  const all = selectionStart === 0 && selectionEnd === value.length
  return all || (end === 'start' ? selectionEnd === 0 : selectionStart === value.length)
}

/** The command of a key pressed in a cell; null leaves it to the browser. Letters mean something only where no words are typed. */
export function commandOf(event: KeyboardEvent, cell: string, { text, snippets }: Situation): GridCommand | null {
  const { key, target } = event
  if (event.ctrlKey || event.metaKey || event.altKey || event.nativeEvent.isComposing) return null
  switch (key) {
    case 'Tab': return { do: 'step', by: event.shiftKey ? -1 : 1, key }
    case 'Enter': return cell === 'grade' ? { do: 'grade' } : { do: 'step', by: 1, key }
    case 'ArrowUp': return { do: 'row', by: -1 }
    case 'ArrowDown': return { do: 'row', by: 1 }
    case 'ArrowLeft': return atEdge(target, 'start') ? { do: 'step', by: -1, key } : null
    case 'ArrowRight': return atEdge(target, 'end') ? { do: 'step', by: 1, key } : null
    case 'Escape': return { do: 'leave' }
  }
  if (cell === 'remark' && text === '' && /^[1-9]$/.test(key) && Number(key) <= snippets) return { do: 'snippet', index: Number(key) - 1 }
  if (TEXT.includes(cell)) return null
  if (key === '=') return { do: 'repeat' }
  return key === 'l' || key === 'L' ? { do: 'looked' } : null
}
