import 'server-only'
import type * as z from 'zod'
import { currentViewer, type Role, type Viewer } from './auth/viewer'
import { Refusal, type RefusalCode } from './refusal'

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

/**
 * The one door for writes: who, then what, then do.
 *
 * `input` may depend on the viewer (language, units). `run` throws a Refusal for an expected "no"; anything else thrown is a bug
 * and reaches the error page. Someone without the role gets what a missing thing gets.
 */
export function action<S extends z.ZodType, T>(
  door: { readonly roles: readonly Role[]; readonly input: S | ((viewer: Viewer, raw: unknown) => S | Promise<S>) },
  run: (viewer: Viewer, input: z.output<S>) => Promise<T>,
): (raw: unknown) => Promise<ActionResult<T>> {
  return async (raw) => {
    const viewer = await currentViewer()
    if (!viewer) return refuse(new Refusal('SIGNED_OUT', 'You are signed out. Sign in again; nothing you typed is lost.'))
    try {
      if (!door.roles.some((role) => viewer.roles.includes(role))) return refuse(new Refusal('NOT_FOUND', 'This is not here, or not yours to see.'))
      const schema = typeof door.input === 'function' ? await door.input(viewer, raw) : door.input
      const parsed = await schema.safeParseAsync(raw)
      if (!parsed.success) return refuse(new Refusal('INVALID', 'Some of this needs another look.', fieldMessages(parsed.error)))
      return { ok: true, value: await run(viewer, parsed.data) }
    } catch (thrown) {
      if (thrown instanceof Refusal) return refuse(thrown)
      throw thrown
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
      if (!parsed.success) return refuse(new Refusal('INVALID', 'Some of this needs another look.', fieldMessages(parsed.error)))
      return { ok: true, value: await run(parsed.data) }
    } catch (thrown) {
      if (thrown instanceof Refusal) return refuse(thrown)
      throw thrown
    }
  }
}
