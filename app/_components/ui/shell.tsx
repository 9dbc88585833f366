import Link from 'next/link'
import type { ReactNode } from 'react'
import { NavLinks, type NavItem } from './nav-links'
import { ProductMark } from './product-mark'
import { SkipLink } from './skip-link'

export type ShellWords = { readonly skip: string; readonly nav: string; readonly home: string; readonly signOut: string }

type ShellProps = {
  /** learn and teach keep lines short and targets large; program is for a desk and takes the width. */
  readonly room: 'learn' | 'teach' | 'program'
  readonly home: string
  readonly nav: readonly NavItem[]
  readonly person: { readonly name: string; readonly note?: string }
  readonly words: ShellWords
  /** Where the sign-out form is sent: a server action, or an address that takes a POST. */
  readonly signOut: string | ((form: FormData) => void | Promise<void>)
  /** Settings and the like, beside the name. */
  readonly personLinks?: readonly { readonly href: string; readonly label: string }[]
  readonly children: ReactNode
}

const WIDTH = { learn: 'max-w-3xl', teach: 'max-w-7xl', program: 'max-w-7xl' } as const

/** The frame of every signed-in screen: skip link, name, places, who is signed in, and the way out in plain sight. */
export function Shell({ room, home, nav, person, words, signOut, personLinks = [], children }: ShellProps) {
  const width = `mx-auto w-full ${WIDTH[room]} px-4 sm:px-6`
  return (
    <>
      <SkipLink label={words.skip} />
      <header className="border-b border-line bg-plate print:hidden">
        <div className={`${width} flex flex-wrap items-center gap-x-6`}>
          <Link href={home} aria-label={words.home} className="ring-inside inline-flex min-h-12 items-center no-underline">
            <ProductMark />
          </Link>
          {/* On a phone places and name share the second row; on wider screens all stands in one. */}
          <div className="order-last flex w-full min-w-0 flex-wrap items-center justify-between gap-x-3 md:contents">
            <nav aria-label={words.nav} className="-mx-2 min-w-0 sm:-mx-3 md:order-1">
              <NavLinks items={nav} />
            </nav>
            <p className="ml-auto min-w-0 py-1 text-right leading-tight md:order-2">
              <span className="font-bold">{person.name}</span>
              {person.note && <span className="block text-sm text-ink-2">{person.note}</span>}
            </p>
          </div>
          <div className="ml-auto flex items-center justify-end gap-x-4 md:order-3 md:ml-0">
            {personLinks.map((link) => (
              <Link key={link.href} href={link.href} className="ring-inside inline-flex min-h-12 items-center">
                {link.label}
              </Link>
            ))}
            <form action={signOut} method={typeof signOut === 'string' ? 'post' : undefined}>
              <button type="submit" className="ring-inside min-h-12 min-w-12 underline underline-offset-4">
                {words.signOut}
              </button>
            </form>
          </div>
        </div>
      </header>
      <main id="main" tabIndex={-1} className={`${width} py-6 outline-none print:max-w-none print:p-0`}>
        {children}
      </main>
    </>
  )
}
