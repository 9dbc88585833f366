/** The name, with the two toe lines of a bead drawn beside it. */
export function ProductMark() {
  return (
    <span className="inline-flex items-center gap-2 font-head text-2xl leading-none font-semibold">
      <svg viewBox="0 0 32 20" aria-hidden="true" className="h-5 w-8" fill="none" stroke="currentColor" strokeWidth={2.5} strokeLinecap="round">
        <path className="fill-bead" stroke="none" d="M1 4h30v12H1z" />
        <path d="M1 4c5-1 7 .8 12 .3s10-.6 18-.3M1 16c6 .8 9-.7 14-.3s10 .7 16 .3" />
      </svg>
      Toeline
    </span>
  )
}
