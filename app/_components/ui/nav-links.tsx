'use client'

import Link from 'next/link'
import { usePathname } from 'next/navigation'

export type NavItem = {
  readonly href: string
  readonly label: string
  /** Other places that are reached from there and belong to it. */
  readonly covers?: readonly string[]
  /** A count that waits for the reader, with its words: { figure: '12', words: '12 coupons waiting' }. */
  readonly waiting?: { readonly figure: string; readonly words: string }
}

/** The places of a role. The one we are in is underlined heavily and said to be current. */
export function NavLinks({ items }: { readonly items: readonly NavItem[] }) {
  const path = usePathname()
  const here = currentHref(items, path ?? '')
  return (
    <ul className="flex flex-wrap gap-x-1">
      {items.map((item) => (
        <li key={item.href}>
          <Link
            href={item.href}
            aria-current={item.href === here ? 'page' : undefined}
            className="ring-inside inline-flex min-h-12 items-center gap-2 border-b-4 border-transparent px-2 pt-1 font-head sm:px-3 text-xl leading-none font-semibold no-underline hover:border-line aria-[current=page]:border-ink"
          >
            {item.label}
            {item.waiting && (
              <span className="figures rounded-plate bg-ink px-1.5 py-0.5 text-base text-paper">
                <span aria-hidden="true">{item.waiting.figure}</span>
                <span className="sr-only">{item.waiting.words}</span>
              </span>
            )}
          </Link>
        </li>
      ))}
    </ul>
  )
}

/** The longest item the path lies under: /teach/classes/4 is in /teach/classes, not in /teach. */
function currentHref(items: readonly NavItem[], path: string): string | undefined {
  const places = items.flatMap(({ href, covers = [] }) => [href, ...covers].map((place) => ({ href, place })))
  const under = places.filter(({ place }) => path === place || path.startsWith(`${place}/`))
  return under.sort((a, b) => b.place.length - a.place.length)[0]?.href
}
