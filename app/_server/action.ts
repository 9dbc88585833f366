import 'server-only'
import type * as z from 'zod'
import { refusals } from '@/lib/language/refusals'
import { say, type Locale } from '@/lib/language/say'
import { currentViewer, type Role, type Viewer } from './auth/viewer'
import { readerLocale } from './reader'
import { newPasswordFirst, notFound, Refusal, type RefusalCode } from './refusal'

export type ActionResult<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: RefusalCode; readonly message: string; readonly fields: Readonly<Record<string, string>> }

const refuse = (refusal: Refusal): ActionResult<never> => ({
  ok: false, code: refusal.code, message: refusal.message, fields: refusal.fields,
})

/** The first message of each field, by its path: 'readings.stations.2.width'. */
export function fieldMessages(error: z.ZodError): Record<string, string> {
  const fields: Record<string, string> = {}
  for (const issue of error.issues) fields[issue.path.join('.')] ??= issue.message
  return fields
}

/** What was sent cannot be used: each field says why. */
const invalid = (error: z.ZodError, locale: Locale): ActionResult<never> =>
  refuse(new Refusal('INVALID', say(refusals, locale, 'lookAgain'), fieldMessages(error)))

type Door<S extends z.ZodType> = {
  readonly roles: readonly Role[]
  readonly input: S | ((viewer: Viewer, raw: unknown) => S | Promise<S>)
  /** Open also to someone who must replace their password first: the account page's own actions. */
  readonly beforeNewPassword?: boolean
  /** Shut on a tablet that a class shares: what changes an account is done on a device of one's own. */
  readonly ownDevice?: boolean
}

/**
 * The one door for writes: who, then what, then do.
 *
 * `input` may depend on the viewer (language, units). `run` throws a Refusal for an expected "no"; anything else thrown is a bug
 * and reaches the error page. Someone without the role gets what a missing thing gets.
 */
export function action<S extends z.ZodType, T>(
  door: Door<S>,
  run: (viewer: Viewer, input: z.output<S>) => Promise<T>,
): (raw: unknown) => Promise<ActionResult<T>> {
  return async (raw) => {
    const viewer = await currentViewer()
    if (!viewer) return refuse(new Refusal('SIGNED_OUT', say(refusals, await readerLocale(), 'signedOut')))
    try {
      if (!door.roles.some((role) => viewer.roles.includes(role)) || (door.ownDevice && viewer.tabletId !== null)) throw notFound()
      if (viewer.mustChangePassword && !door.beforeNewPassword) throw newPasswordFirst(viewer.locale)
      const schema = typeof door.input === 'function' ? await door.input(viewer, raw) : door.input
      const parsed = await schema.safeParseAsync(raw)
      if (!parsed.success) return invalid(parsed.error, viewer.locale)
      return { ok: true, value: await run(viewer, parsed.data) }
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown
      return refuse(thrown.code === 'NOT_FOUND' ? notFound(viewer.locale) : thrown)
    }
  }
}

/** The same door for people who are not signed in yet (joining, setting up): what, then do. `run` guards against guessing itself. */
export function openAction<S extends z.ZodType, T>(
  input: (raw: unknown) => S | Promise<S>,
  run: (input: z.output<S>) => Promise<T>,
): (raw: unknown) => Promise<ActionResult<T>> {
  return async (raw) => {
    try {
      const parsed = await (await input(raw)).safeParseAsync(raw)
      if (!parsed.success) return invalid(parsed.error, await readerLocale())
      return { ok: true, value: await run(parsed.data) }
    } catch (thrown) {
      if (thrown instanceof Refusal) return refuse(thrown)
      throw thrown
    }
  }
}
