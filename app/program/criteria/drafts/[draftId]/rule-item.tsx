'use client'

import type { DraftRule } from '@/lib/criteria/draft/draft'
import { Button } from '@/app/_components/ui/button'
import type { BoxProblems } from './box-problems'
import { errorAt } from './boxes'
import { KIND_WORDS } from './choices'
import { RuleBoxes } from './rule-boxes'

export type Said = { readonly name: string; readonly allows: string; readonly welds: string | null }

type RuleItemProps = {
  readonly rule: DraftRule
  readonly index: number
  readonly count: number
  readonly open: boolean
  /** Null while it cannot be read. */
  readonly said: Said | null
  readonly problems: BoxProblems
  readonly onToggle: () => void
  readonly onChange: (change: Partial<DraftRule>) => void
  readonly onMove: (by: -1 | 1) => void
  readonly onRemove: () => void
}

/** The id of a rule's button, for the focus to come back to after the list was changed. */
export const ruleButton = (key: string, name: 'edit' | 'up' | 'down'): string => `rule-${key}-${name}`

/** One rule of the list: in words, and its boxes while it is open. */
export function RuleItem({ rule, index, count, open, said, problems, onToggle, onChange, onMove, onRemove }: RuleItemProps) {
  const name = said?.name ?? (rule.id || `Rule ${index + 1}`)
  const wrong = Object.keys(problems).some((box) => box === `rules.${index}` || box.startsWith(`rules.${index}.`))
  return (
    <li className="grid gap-3 py-4">
      <div className="flex flex-wrap items-start justify-between gap-3 sm:flex-nowrap">
        <div className="min-w-0 max-w-prose">
          <h3 className="font-text text-base leading-normal font-bold">{name}</h3>
          <p>{said ? `${said.allows}${said.welds ? ` ${said.welds}` : ''}` : `${KIND_WORDS[rule.kind]}: not filled in yet.`}</p>
          {wrong && !open && <p className="font-bold">A box needs another look.</p>}
        </div>
        <div className="flex shrink-0 flex-wrap gap-2">
          <Button size="desk" id={ruleButton(rule.key, 'edit')} onClick={onToggle} aria-expanded={open} aria-label={`${open ? 'Close' : 'Edit'} ${name}`}>{open ? 'Close' : 'Edit'}</Button>
          <Button size="desk" id={ruleButton(rule.key, 'up')} onClick={() => onMove(-1)} aria-disabled={index === 0 || undefined} aria-label={`Move ${name} up`}>Up</Button>
          <Button size="desk" id={ruleButton(rule.key, 'down')} onClick={() => onMove(1)} aria-disabled={index === count - 1 || undefined} aria-label={`Move ${name} down`}>Down</Button>
          <Button size="desk" kind="danger" onClick={onRemove} aria-label={`Remove ${name}`}>Remove</Button>
        </div>
      </div>
      {open && <div className="border border-line bg-plate p-4"><RuleBoxes value={rule} onChange={onChange} error={errorAt(problems, `rules.${index}`)} /></div>}
    </li>
  )
}
