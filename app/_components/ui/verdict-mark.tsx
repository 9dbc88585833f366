/** The verdict of a scorecard or of one finding. */
export type VerdictKind = 'accept' | 'reject' | 'incomplete' | 'not-measured' | 'not-applicable'

const SIZE = { small: 'size-5', medium: 'size-8', large: 'size-14' } as const
export type MarkSize = keyof typeof SIZE

/**
 * The shape of a verdict: a filled disc accepts, an open square with a bar rejects, a dashed ring is open (incomplete, not measured),
 * a short line does not apply. It always stands beside the word, so it is hidden from screen readers; see VerdictWord.
 */
export function VerdictMark({ verdict, size = 'medium' }: { readonly verdict: VerdictKind; readonly size?: MarkSize }) {
  return (
    <svg viewBox="0 0 24 24" aria-hidden="true" className={`${SIZE[size]} ${COLOUR[verdict]} shrink-0`} fill="none" stroke="currentColor">
      {shape(verdict)}
    </svg>
  )
}

const COLOUR: Readonly<Record<VerdictKind, string>> = {
  accept: 'text-accept',
  reject: 'text-reject',
  incomplete: 'text-open',
  'not-measured': 'text-open',
  'not-applicable': 'text-open',
}

function shape(verdict: VerdictKind) {
  switch (verdict) {
    case 'accept':
      return <circle cx={12} cy={12} r={11} fill="currentColor" stroke="none" />
    case 'reject':
      return (
        <>
          <rect x={2} y={2} width={20} height={20} strokeWidth={3.5} />
          <path d="M4 20 20 4" strokeWidth={3.5} />
        </>
      )
    case 'incomplete':
    case 'not-measured':
      return <circle cx={12} cy={12} r={9.5} strokeWidth={3} strokeDasharray="4.97 4.97" />
    case 'not-applicable':
      return <path d="M6 12h12" strokeWidth={3} />
  }
}
