import type { Locale } from '@/lib/language/say'
import type { TestView } from '@/lib/reports/test-view'
import { PageHead } from '../ui/page-head'
import { TestRecordPanel } from './test-record-panel'

type Props = {
  readonly view: TestView
  readonly locale: Locale
  readonly attempt: {
    readonly student: { readonly name: string }
    readonly exercise: { readonly title: string; readonly process: string }
    readonly className: string
    readonly witness: string
    readonly plateIdentity: string | null
    readonly wireIdentity: string | null
    readonly note: string | null
  }
}

/** A recorded test, for its student and for staff alike. */
export function TestRecordScreen({ view, locale, attempt }: Props) {
  const { exercise, className, witness, plateIdentity: plate, wireIdentity: wire, note } = attempt
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={exercise.title} title={attempt.student.name} lead={view.on} />
      <TestRecordPanel view={view} locale={locale} facts={{ exercise: exercise.title, className, witness, plate, wire, note, process: exercise.process }} />
    </div>
  )
}
