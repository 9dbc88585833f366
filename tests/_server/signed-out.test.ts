// Whose session ended meanwhile is told so in the language of the device, which is all that is known of them.
import { beforeAll, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { headersModule, requestFrom } from '../support/request'
import { leaveElsewhere } from '@/app/account/actions'
import { LOCALE_COOKIE } from '@/lib/language/reader-settings'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

beforeAll(() => testDatabase())

it.each([['es', 'Tu sesión terminó. Entra otra vez; no se pierde nada de lo que escribiste.'], ['en', 'You are signed out. Sign in again; nothing you typed is lost.']])('in %s', async (locale, message) => {
  await requestFrom(null)
  ;(await headersModule.cookies()).set(LOCALE_COOKIE, locale)
  expect(await leaveElsewhere({})).toEqual({ ok: false, code: 'SIGNED_OUT', message, fields: {} })
})
