'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'
import type { DraftCriteria } from '@/lib/criteria/draft/draft'
import { SAMPLE_AS_IT_IS, type SampleReadings } from '@/lib/criteria/draft/sample-readings'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import type { Choice } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { VerdictWord } from '@/app/_components/ui/verdict-word'
import { useDraft } from '@/app/_components/use-draft'
import { useHydrated } from '@/app/_components/use-hydrated'
import type { Answer } from '@/app/_components/use-sent-form'
import { dropCriteria, publishCriteria, saveCriteria } from '../../actions'
import { setAddress } from '../../set-address'
import { unreadable, type BoxProblems } from './box-problems'
import { PreviewPanel } from './preview-panel'
import { RuleListEditor } from './rule-list-editor'
import { TryLimitsPanel } from './try-limits-panel'
import { underRules, usePreview, type Preview } from './use-preview'

type CriteriaEditorProps = {
  readonly draftId: string
  readonly personId: string
  readonly seen: string
  readonly document: DraftCriteria
  readonly preview: Preview
  readonly samples: readonly Choice[]
  readonly coupons: readonly Choice[]
}

type Said = { readonly kind: 'ok' | 'problem'; readonly word: string; readonly text: string; readonly theirs?: string }

const FAILED = 'It did not get through. Check the connection and try again; what you typed is kept on this device.'

/** The form of a set being written: boxes and rules, and beside them what they do. */
export function CriteriaEditor({ draftId, personId, seen, document: stored, preview: first, samples, coupons }: CriteriaEditorProps) {
  const router = useRouter()
  const ready = useHydrated()
  const { value: { document, seen: opened }, change, clear, restored, startOver } = useDraft(`criteria ${personId} ${draftId}`, { document: stored, seen })
  const [open, setOpen] = useState<string | null>(null)
  const [sample, setSample] = useState(samples[0]?.value ?? '')
  const [typed, setTyped] = useState<SampleReadings>(SAMPLE_AS_IT_IS)
  const [told, setTold] = useState<BoxProblems>({})
  const [checked, setChecked] = useState(false)
  const [tellings, setTellings] = useState(0)
  const boxes = useRef<HTMLDivElement>(null)
  const [busy, setBusy] = useState<'save' | 'publish' | 'drop' | null>(null)
  const [said, setSaid] = useState<Said | null>(null)
  const preview = usePreview(document, sample, typed, first)
  const live = checked ? preview.problems : unreadable(preview.problems)
  const problems: BoxProblems = { ...told, ...live }

  // Once the rule that is wrong stands open: to its first box that needs another look.
  useEffect(() => {
    if (tellings > 0) boxes.current?.querySelector<HTMLElement>('[aria-invalid="true"], [data-problem]')?.focus()
  }, [tellings])

  function edit(next: Partial<DraftCriteria>): void {
    // Sentences of the last sending hold for what was sent; those about rules would move with the rules.
    setTold({})
    setSaid(null)
    change({ document: { ...document, ...next }, seen: opened })
  }

  function tell(found: BoxProblems): void {
    setChecked(true)
    setTold(found)
    if (Object.keys(found).length > 0) setTellings((count) => count + 1)
    const wrong = Object.keys(found).map((box) => /^rules\.(\d+)/.exec(box)?.[1]).find((index) => index !== undefined)
    const key = wrong === undefined ? undefined : document.rules[Number(wrong)]?.key
    if (key !== undefined) setOpen(key)
  }

  function refuse(word: string, { code, message, fields }: { readonly code: string; readonly message: string; readonly fields: BoxProblems }): void {
    const { seen: theirs, ...wrong } = fields
    tell(underRules(wrong))
    setSaid({ kind: 'problem', word, text: code === 'NOT_FOUND' ? 'This draft is no longer there: it was published or thrown away. What you typed still stands in the boxes.' : message, ...(code === 'CONFLICT' && theirs !== undefined && { theirs }) })
  }

  /** One sending at a time; `instead` is the word for one that did not come about. */
  async function sending<T>(what: NonNullable<typeof busy>, instead: string, send: () => Promise<Answer<T>>, then: (value: T) => void): Promise<void> {
    if (busy) return
    setBusy(what)
    try {
      const answer = await send()
      if (answer.ok) then(answer.value)
      else refuse(instead, answer)
    } catch {
      setSaid({ kind: 'problem', word: instead, text: FAILED })
    } finally {
      setBusy(null)
    }
  }

  const save = (over: string = opened): Promise<void> => sending('save', 'Not saved', () => saveCriteria({ draftId, seen: over, document }), (value) => {
    change({ document, seen: value.seen })
    clear()
    setSaid({ kind: 'ok', word: 'Saved', text: 'The draft is kept as it stands.' })
  })
  const publish = (): Promise<void> => sending('publish', 'Not published', () => publishCriteria({ draftId, seen: opened, document }), ({ id, version }) => {
    clear()
    router.push(setAddress(id, version))
  })
  const drop = (): Promise<void> => sending('drop', 'Not thrown away', () => dropCriteria({ draftId }), () => {
    clear()
    router.push('/program/criteria')
  })

  return (
    <div className="grid gap-10">
      {restored && (
        <Notice kind="info" word="Not saved yet">
          <p>These boxes hold what you typed here before and did not save.</p>
          <div className="mt-2"><Button onClick={() => { startOver(); setTold({}); setSaid(null) }}>Open what is saved instead</Button></div>
        </Notice>
      )}
      <div className="grid gap-10 xl:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
        <div ref={boxes} className="min-w-0 [&_:is(button,input,select,summary)]:scroll-mb-16">
          <div className="grid gap-8">
            <section aria-labelledby="set" className="grid gap-4">
              <h2 id="set" className="text-2xl">The set</h2>
              <TextInput label="Title" value={document.title} error={problems['title']} onChange={(event) => edit({ title: event.target.value })} />
              <TextInput label="Edition" hint="What the limits were written from: “Shop practice, 2026”." value={document.edition} error={problems['edition']} onChange={(event) => edit({ edition: event.target.value })} />
              <RadioPills
                legend="A length without a unit is in" name="system" value={document.system} pills={[{ value: 'us', label: 'Inches' }, { value: 'si', label: 'Millimetres' }]}
                onChange={(event) => edit({ system: event.target.value === 'si' ? 'si' : 'us' })}
              />
              <TextInput figures label="Least mark of an accepted coupon" value={document.passMark} error={problems['passMark']} onChange={(event) => edit({ passMark: event.target.value })} />
            </section>
            <RuleListEditor rules={document.rules} said={preview.said} problems={problems} open={open} onOpen={setOpen} onChange={(rules) => edit({ rules })} />
          </div>
          {preview.look && (
            <p className="sticky bottom-0 z-10 -mx-4 flex items-center justify-between gap-3 border-t border-line bg-paper px-4 py-2 xl:hidden">
              <span>{preview.state === 'fresh' ? 'On the sample' : 'On the sample, before the last change'}</span>
              <VerdictWord verdict={preview.look.scorecard.verdict} word={preview.look.scorecard.verdictWord} />
            </p>
          )}
        </div>
        <div className="min-w-0 xl:sticky xl:top-4 xl:max-h-[calc(100vh-2rem)] xl:self-start xl:overflow-y-auto xl:px-1">
          <PreviewPanel look={preview.look} state={preview.state} sample={sample} samples={samples} onSample={setSample} typed={typed} wrong={preview.readings} onTyped={setTyped} open={Object.keys(preview.problems).length} />
        </div>
      </div>
      <TryLimitsPanel document={document} coupons={coupons} onProblems={tell} />
      <section aria-labelledby="keep" className="grid gap-4 border-t-2 border-ink pt-6">
        <h2 id="keep" className="text-2xl">Save or publish</h2>
        <p className="max-w-prose">A draft is saved as it stands, finished or not. Publishing makes a version that never changes again; exercises keep theirs until somebody chooses the new one in the exercise’s own form.</p>
        {said && (
          <Notice kind={said.kind} word={said.word} live>
            <p>{said.text}</p>
            {said.theirs !== undefined && (
              <div className="mt-2 flex flex-wrap gap-2">
                <Button onClick={() => void save(said.theirs)}>Save mine over it</Button>
                <Button onClick={() => { clear(); window.location.reload() }}>Open theirs, and drop mine</Button>
              </div>
            )}
          </Notice>
        )}
        <div className="flex flex-wrap gap-2">
          <Button onClick={() => void save()} disabled={!ready} aria-disabled={busy !== null || undefined}>{busy === 'save' ? 'Saving' : 'Save the draft'}</Button>
          <Button kind="primary" onClick={() => void publish()} disabled={!ready} aria-disabled={busy !== null || undefined}>{busy === 'publish' ? 'Publishing' : 'Publish'}</Button>
        </div>
        <details>
          <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">Throw this draft away</summary>
          <div className="grid gap-3 py-2">
            <p className="max-w-prose">The draft is gone for everybody. Published versions stay.</p>
            <div><Button kind="danger" onClick={() => void drop()} disabled={!ready} aria-disabled={busy !== null || undefined}>{busy === 'drop' ? 'Throwing it away' : 'Throw it away'}</Button></div>
          </div>
        </details>
      </section>
    </div>
  )
}
