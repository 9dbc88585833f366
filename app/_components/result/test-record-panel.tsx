import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { testDay } from '@/lib/language/test-day'
import type { TestView } from '@/lib/reports/test-view'
import { DefinitionList, DefinitionRow } from '../ui/definition-list'
import { VerdictWord } from '../ui/verdict-word'

type Props = {
  readonly view: TestView
  readonly locale: Locale
  readonly facts: { readonly exercise: string; readonly className: string; readonly witness: string; readonly plate: string | null; readonly wire: string | null; readonly note: string | null; readonly process: string }
}

/** A recorded test: the answer in large type, what decided it, then what it covers or what to practise, then the record's facts. */
export function TestRecordPanel({ view, locale, facts }: Props) {
  const word = (key: Parameters<typeof say<keyof typeof testDay.en>>[2], values?: Readonly<Record<string, string>>): string => say(testDay, locale, key, values)
  return (
    <div className="grid gap-8">
      <section className="grid gap-3">
        <VerdictWord verdict={view.passed ? 'accept' : 'reject'} word={view.word} size="large" />
        {view.reasons.length > 0 && <ul className="list-disc pl-5 text-lg">{view.reasons.map((text) => <li key={text}>{text}</li>)}</ul>}
        {view.until && <p className="text-lg font-bold">{view.until.text}</p>}
      </section>
      {!view.passed && (
        <section className="grid gap-2">
          <h2 className="text-2xl">{word('practise')}</h2>
          <ul className="grid list-disc gap-2 pl-5">{view.practise.map((text) => <li key={text}>{text}</li>)}</ul>
          <p className="text-base text-ink-2">{word('practiseNote')}</p>
        </section>
      )}
      {view.covers.length > 0 && (
        <section className="grid gap-3">
          <h2 className="text-2xl">{word('covers')}</h2>
          <p className="max-w-prose text-ink-2">{word('coversLead')}</p>
          {view.covers.map(({ system, lines, source }) => (
            <div key={system} className="border-l-[6px] border-ink bg-plate p-4">
              <h3 className="text-xl">{system}</h3>
              <ul className="mt-1 list-disc pl-5">{lines.map((line) => <li key={line}>{line}</li>)}</ul>
              <p className="mt-2 text-base text-ink-2">{source}</p>
            </div>
          ))}
          {view.until && <p className="text-base text-ink-2">{word('uses', { process: facts.process })} {view.until.source}</p>}
        </section>
      )}
      <section>
        <h2 className="mb-2 text-2xl">{word('examined')}</h2>
        <DefinitionList>
          {view.examined.map((part) => (
            <DefinitionRow key={part.name} term={part.name} value={part.word} verdict={{ kind: part.verdict, word: part.word }} note={part.details.join(' ') || undefined} />
          ))}
        </DefinitionList>
      </section>
      <DefinitionList>
        <DefinitionRow term={word('exercise')} value={facts.exercise} />
        <DefinitionRow term={word('class')} value={facts.className} />
        <DefinitionRow term={word('witness')} value={facts.witness} />
        <DefinitionRow term={word('plate')} value={facts.plate ?? word('notWritten')} />
        <DefinitionRow term={word('wire')} value={facts.wire ?? word('notWritten')} />
        <DefinitionRow term={word('judgedBy')} value={view.judgedBy} />
        <DefinitionRow term={word('forecast')} value={view.forecast ?? word('noForecast')} />
      </DefinitionList>
      {facts.note && <p className="max-w-prose whitespace-pre-wrap">{facts.note}</p>}
      <p className="text-base text-ink-2">{say(door, locale, 'practiceRecord')}</p>
    </div>
  )
}
