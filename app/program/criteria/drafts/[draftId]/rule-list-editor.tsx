'use client'

import { useEffect, useRef, useState } from 'react'
import { blankRule, freeId, nextKey, type DraftRule } from '@/lib/criteria/draft/draft'
import { RULE_KINDS, type RuleKind } from '@/lib/criteria/types'
import { Button } from '@/app/_components/ui/button'
import { FieldError } from '@/app/_components/ui/field'
import { Select } from '@/app/_components/ui/select'
import { StatusLine } from '@/app/_components/ui/status-line'
import type { BoxProblems } from './box-problems'
import { KIND_WORDS } from './choices'
import { RuleItem, ruleButton, type Said } from './rule-item'

type RuleListEditorProps = {
  readonly rules: readonly DraftRule[]
  readonly said: Readonly<Record<string, Said>>
  readonly problems: BoxProblems
  readonly open: string | null
  readonly onOpen: (key: string | null) => void
  readonly onChange: (rules: readonly DraftRule[]) => void
}

/** The rules of a set: edited one at a time, moved, removed and put back, and new ones by their kind. */
export function RuleListEditor({ rules, said, problems, open, onOpen, onChange }: RuleListEditorProps) {
  const [kind, setKind] = useState<RuleKind>('largest-size')
  const [removed, setRemoved] = useState<{ readonly rule: DraftRule; readonly index: number } | null>(null)
  // A moved row takes the focus away from its button, and a removed one has none left.
  const next = useRef<string | null>(null)
  useEffect(() => {
    if (next.current !== null) document.getElementById(next.current)?.focus()
    next.current = null
  }, [rules])
  const put = (index: number, change: Partial<DraftRule>): void => onChange(rules.map((rule, place) => (place === index ? { ...rule, ...change } : rule)))

  function move(index: number, by: -1 | 1): void {
    const moved = rules[index]
    if (!moved || rules[index + by] === undefined) return
    next.current = ruleButton(moved.key, by === 1 ? 'down' : 'up')
    onChange(rules.with(index, rules[index + by] ?? moved).with(index + by, moved))
  }

  function add(): void {
    const rule = blankRule(kind, nextKey(removed ? [...rules, removed.rule] : rules), freeId(rules, kind))
    onChange([...rules, rule])
    onOpen(rule.key)
  }

  return (
    <section aria-labelledby="rules" className="grid gap-3">
      <h2 id="rules" className="text-2xl">Rules</h2>
      {problems['rules'] && <FieldError id="rules-problem">{problems['rules']}</FieldError>}
      <ol className="divide-y divide-line border-y border-line">
        {rules.map((rule, index) => (
          <RuleItem
            key={rule.key} rule={rule} index={index} count={rules.length} open={open === rule.key} said={said[rule.key] ?? null} problems={problems}
            onToggle={() => onOpen(open === rule.key ? null : rule.key)} onChange={(change) => put(index, change)} onMove={(by) => move(index, by)}
            onRemove={() => {
              setRemoved({ rule, index })
              next.current = 'put-back'
              onChange(rules.filter((_, place) => place !== index))
            }}
          />
        ))}
      </ol>
      <StatusLine>{removed && `${said[removed.rule.key]?.name ?? removed.rule.id} was removed.`}</StatusLine>
      {removed && (
        <div>
          <Button id="put-back" onClick={() => {
            next.current = ruleButton(removed.rule.key, 'edit')
            onChange([...rules.slice(0, removed.index), removed.rule, ...rules.slice(removed.index)])
            setRemoved(null)
          }}>Put it back</Button>
        </div>
      )}
      <div className="flex flex-wrap items-end gap-2">
        <div className="min-w-0 max-w-full grow sm:max-w-lg"><Select label="A new rule" value={kind} choices={RULE_KINDS.map((each) => ({ value: each, label: KIND_WORDS[each] }))} onChange={(event) => setKind(event.target.value as RuleKind)} /></div>
        <Button onClick={add}>Add the rule</Button>
      </div>
    </section>
  )
}
