import type { ComponentProps, ReactNode } from 'react'
import { PageHead } from '../ui/page-head'
import { BenchList } from './bench-list'
import { StudyResult } from './study-result'

type Head = { readonly name: string; readonly className: string; readonly facts: string; readonly bench: ComponentProps<typeof BenchList>['bench'] }
type Screen = Head & (
  | { readonly stage: 'waiting'; readonly missing: readonly string[] }
  | { readonly stage: 'closed'; readonly result: ComponentProps<typeof StudyResult> }
)

/** A study in which the reader of the page has nothing to read: who is still missing, or what came of it. `close` stands under the first. */
export function StudyStanding({ screen, aside, close }: { readonly screen: Screen; readonly aside: ReactNode; readonly close: ReactNode }) {
  if (screen.stage === 'closed') {
    const [headline, ...more] = screen.result.words
    return (
      <div className="grid gap-8">
        <PageHead eyebrow={screen.className} title={screen.name} lead={headline} aside={aside} />
        <StudyResult {...screen.result} words={more} />
        <div className="grid gap-2 border-t border-line pt-2">
          <BenchList bench={screen.bench} />
          <p className="text-base text-ink-2">{screen.facts}</p>
        </div>
      </div>
    )
  }
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={screen.className} title={screen.name} lead={screen.facts} aside={aside} />
      <section className="grid gap-3" aria-labelledby="missing">
        <h2 id="missing" className="text-2xl">What it waits for</h2>
        <ul className="grid max-w-prose gap-2 text-lg">{screen.missing.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul>
      </section>
      {close}
      <BenchList bench={screen.bench} />
    </div>
  )
}
