import './global.css'
import type { Metadata, Viewport } from 'next'
import { cookies } from 'next/headers'
import type { ReactNode } from 'react'
import { readTheme, THEME_COOKIE } from '@/lib/language/reader-settings'
import { readerLocale } from './_server/reader'

export const metadata: Metadata = {
  title: { default: 'Toeline', template: '%s · Toeline' },
  description: 'Practice log, gauge and readiness record for welding classes.',
  robots: { index: false, follow: false },
  formatDetection: { telephone: false, date: false, address: false, email: false },
}

export const viewport: Viewport = {
  colorScheme: 'light dark',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f4f3ef' },
    { media: '(prefers-color-scheme: dark)', color: '#0e1012' },
  ],
}

/** The sheet every page is written on. It knows the reader's language and theme. */
export default async function RootLayout({ children }: { children: ReactNode }) {
  const [jar, locale] = await Promise.all([cookies(), readerLocale()])
  const theme = readTheme(jar.get(THEME_COOKIE)?.value)
  return (
    <html
      lang={locale}
      data-theme={theme === 'system' ? undefined : theme}
    >
      <body className="min-h-dvh bg-paper text-ink">{children}</body>
    </html>
  )
}
