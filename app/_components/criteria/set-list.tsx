import Link from 'next/link'
import type { ReactNode } from 'react'

type SetLine = {
  readonly id: string
  readonly title: string
  readonly own: boolean
  /** Newest first. */
  readonly versions: readonly { readonly version: number; readonly from: string; readonly retired: boolean }[]
  readonly exercises: number
}

type Props = {
  readonly sets: readonly SetLine[]
  /** Where one version is read in words. */
  readonly address: (id: string, version: number) => string
  /** What can be done with a set, at the end of its line. */
  readonly aside?: (set: SetLine) => ReactNode
}

const exercisesText = (count: number): string => (count === 0 ? 'no exercise uses it' : count === 1 ? '1 exercise uses it' : `${count} exercises use it`)

/** Sets of criteria by title: the newest version, the ones before it, which of them are retired, and how many exercises use the set. */
export function SetList({ sets, address, aside }: Props) {
  return (
    <ul className="divide-y divide-line border-y border-line">
      {sets.map((set) => {
        const { id, title, own, versions, exercises } = set
        const [newest, ...older] = versions
        if (!newest) return null
        return (
          <li key={id} className="flex flex-wrap items-center justify-between gap-3 py-3">
            <div className="min-w-0">
              <h3 className="font-head text-xl leading-tight font-semibold">
                <Link href={address(id, newest.version)} className="inline-flex min-h-12 items-center underline underline-offset-4">{title}</Link>
              </h3>
              <p className="text-base text-ink-2">Version {newest.version}{own && ` of ${newest.from}`}{newest.retired && ', retired'} · {exercisesText(exercises)}</p>
              {older.length > 0 && (
                <p className="text-base text-ink-2">
                  Before it:{' '}
                  {older.map(({ version, from, retired }, index) => (
                    <span key={version}>{index > 0 && ', '}<Link href={address(id, version)} className="underline">version {version} of {from}</Link>{retired && ' (retired)'}</span>
                  ))}
                </p>
              )}
            </div>
            {aside?.(set)}
          </li>
        )
      })}
    </ul>
  )
}
