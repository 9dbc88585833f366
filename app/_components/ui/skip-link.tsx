/** The first thing Tab reaches: past the navigation, to the page. */
export function SkipLink({ label }: { readonly label: string }) {
  return (
    <a
      href="#main"
      className="sr-only rounded-plate bg-ink px-4 py-3 text-paper focus:not-sr-only focus:absolute focus:top-2 focus:left-2 focus:z-10 print:hidden"
    >
      {label}
    </a>
  )
}
