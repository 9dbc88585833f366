import Link from 'next/link'

type Attempt = { readonly id: string; readonly title: string; readonly on: string; readonly passed: boolean }

/** The tests a student has taken, the latest first. Without `testHref` they lead nowhere. */
export function TestList({ attempts, testHref }: { readonly attempts: readonly Attempt[]; readonly testHref: ((testId: string) => string) | null }) {
  return (
    <section aria-labelledby="tests" className="grid content-start gap-2">
      <h2 id="tests" className="text-2xl">Tests</h2>
      {attempts.length === 0 ? <p>No test taken yet.</p> : (
        <ul className="divide-y divide-line border-y border-line">
          {attempts.toReversed().map(({ id, title, on, passed }) => {
            const line = <span>{title}<span className="block text-base text-ink-2">{on}: {passed ? 'passed' : 'did not pass'}</span></span>
            return <li key={id} className="py-2">{testHref ? <Link href={testHref(id)} className="inline-flex min-h-12 items-center underline">{line}</Link> : line}</li>
          })}
        </ul>
      )}
    </section>
  )
}
