import { VerdictMark, type MarkSize, type VerdictKind } from './verdict-mark'

const TEXT: Readonly<Record<MarkSize, string>> = {
  small: 'gap-2 text-lg',
  medium: 'gap-3 text-2xl',
  large: 'gap-4 text-5xl',
}

/** A verdict: its shape and its word, in the reader's language. */
export function VerdictWord({ verdict, word, size = 'small' }: { readonly verdict: VerdictKind; readonly word: string; readonly size?: MarkSize }) {
  return (
    <span className={`inline-flex items-center font-head leading-none font-semibold ${TEXT[size]}`}>
      <VerdictMark verdict={verdict} size={size} />
      <span>{word}</span>
    </span>
  )
}
