import { LinkButton } from '../ui/link-button'
import { PageHead } from '../ui/page-head'

type Props = {
  readonly title: string
  /** Newest first; `changes` is null for the first version there was. */
  readonly versions: readonly { readonly version: number; readonly facts: string; readonly changes: readonly string[] | null }[]
  /** The address of the exercise. */
  readonly exercise: string
}

/** Every version of an exercise, newest first, with what changed in words. */
export function VersionsScreen({ title, versions, exercise }: Props) {
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow="Versions" title={title} lead="An edit never changes the past: every coupon is judged by the version it was welded to."
        aside={<LinkButton href={exercise}>Back to the exercise</LinkButton>}
      />
      <ol className="divide-y divide-line border-y border-line">
        {versions.map(({ version, facts, changes }) => (
          <li key={version} className="grid gap-2 py-4">
            <h2 className="text-xl">Version {version}</h2>
            <p className="text-base text-ink-2">{facts}</p>
            {changes ? <ul className="list-disc pl-5">{changes.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul> : <p>The first version.</p>}
          </li>
        ))}
      </ol>
    </div>
  )
}
