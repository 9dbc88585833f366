import type { ReactNode } from 'react'

export type NoticeKind = 'ok' | 'problem' | 'info'

type NoticeProps = {
  readonly kind: NoticeKind
  /** The word that goes with the shape: 'Saved', 'Not saved', 'Note'. */
  readonly word: string
  readonly children: ReactNode
  /** Appeared because of something the reader just did: announced at once (problem) or politely. */
  readonly live?: boolean
}

const BAR: Readonly<Record<NoticeKind, string>> = { ok: 'border-accept', problem: 'border-reject', info: 'border-ink' }

/** A message with its shape and its word, in the flow of the page. */
export function Notice({ kind, word, children, live = false }: NoticeProps) {
  return (
    <div role={live ? (kind === 'problem' ? 'alert' : 'status') : undefined} className={`flex gap-3 border-l-[6px] bg-plate p-4 ${BAR[kind]}`}>
      <NoticeShape kind={kind} />
      <div className="min-w-0">
        <p className="font-head text-xl leading-tight font-semibold">{word}</p>
        <div className="mt-1">{children}</div>
      </div>
    </div>
  )
}

function NoticeShape({ kind }: { readonly kind: NoticeKind }) {
  const common = { viewBox: '0 0 24 24', 'aria-hidden': true, fill: 'none', stroke: 'currentColor', strokeWidth: 3.5 } as const
  switch (kind) {
    case 'ok':
      return (
        <svg {...common} className="size-6 shrink-0 text-accept">
          <circle cx={12} cy={12} r={11} fill="currentColor" stroke="none" />
        </svg>
      )
    case 'problem':
      return (
        <svg {...common} className="size-6 shrink-0 text-reject">
          <path d="M2 2h20v20H2zM4 20 20 4" />
        </svg>
      )
    case 'info':
      return (
        <svg {...common} className="size-6 shrink-0">
          <path d="M12 10v11M12 3v3.5" />
        </svg>
      )
  }
}
