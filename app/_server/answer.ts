import 'server-only'
import type { ActionResult } from './action'
import { Refusal, type RefusalCode } from './refusal'

const STATUS: Readonly<Record<RefusalCode, number>> = {
  SIGNED_OUT: 401, OTHER_PERSON: 409, NEW_PASSWORD: 403, NOT_FOUND: 404, CONFLICT: 409, INVALID: 422, SAFETY: 428, TOO_MANY: 429, TOO_LARGE: 413, UNAVAILABLE: 503,
}

/** An action's result as a JSON response, for the routes that a device's queue talks to. */
export function answer<T>(result: ActionResult<T>): Response {
  return Response.json(result, { status: result.ok ? 200 : STATUS[result.code], headers: { 'Cache-Control': 'no-store' } })
}

/** The same for a refusal before there is a result. */
export const answerRefusal = (refusal: Refusal): Response =>
  answer({ ok: false, code: refusal.code, message: refusal.message, fields: refusal.fields })
