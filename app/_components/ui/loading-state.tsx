/** Holds the place of a page on its way: its word, and the two toe lines of a bead not yet measured. Not for print pages. */
export function LoadingState({ word }: { readonly word: string }) {
  return (
    <div role="status" className="grid min-h-48 content-center justify-items-center gap-4 text-ink-2">
      <svg viewBox="0 0 240 40" aria-hidden="true" className="w-60 animate-pulse" fill="none" stroke="currentColor" strokeWidth={2} strokeDasharray="6 6">
        <path d="M4 8h232M4 32h232" />
      </svg>
      <p className="font-head text-xl font-semibold">{word}</p>
    </div>
  )
}
