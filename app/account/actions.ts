'use server'

import { cookies } from 'next/headers'
import * as z from 'zod'
import { codeField, newPasswordSchema, preferencesSchema } from '@/lib/schemas/person'
import { newPinSchema } from '@/lib/schemas/pin'
import { LOCALE_COOKIE } from '@/lib/language/reader-settings'
import { action } from '@/app/_server/action'
import { changeOwnPassword, endOtherSessions, joinClass, ownAccount, setPreferences } from '@/app/_server/data/people'
import { setOwnPin } from '@/app/_server/data/pins'
import { Refusal } from '@/app/_server/refusal'
import type { Viewer } from '@/app/_server/auth/viewer'
import { forgetTries, giveBackTry, takeTry } from '@/app/_server/auth/throttle'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'

const YEAR_SECONDS = 365 * 24 * 3600
const everyone = ['student', 'instructor', 'coordinator'] as const

/** Language and units of the viewer's own screens. */
export const savePreferences = action({ roles: everyone, beforeNewPassword: true, ownDevice: true, input: preferencesSchema }, async (viewer, input) => {
  await setPreferences(viewer, input)
  // A copy for the pages before the door, which cannot ask who is reading.
  const jar = await cookies()
  jar.set(LOCALE_COOKIE, input.locale, { path: '/', sameSite: 'lax', httpOnly: true, maxAge: YEAR_SECONDS })
  return {}
})

/** Replaces the viewer's own password. */
export const changePassword = action(
  {
    roles: everyone,
    beforeNewPassword: true,
    ownDevice: true,
    input: async (viewer) => {
      const { givenName, familyName, signInName } = await ownAccount(viewer)
      return newPasswordSchema(viewer, [givenName, familyName, signInName, 'toeline'])
    },
  },
  async (viewer, input) => {
    try {
      await countingTries(viewer, () => changeOwnPassword(viewer, input))
    } catch (refused) {
      if (!(refused instanceof Refusal && refused.code === 'INVALID')) throw refused
      throw new Refusal('INVALID', say(door, viewer.locale, 'fix'), { current: say(door, viewer.locale, 'notCurrent') })
    }
    return {}
  },
)

/** A change that asks for the password: wrong ones count as they do at the door. */
async function countingTries(viewer: Viewer, change: () => Promise<void>): Promise<void> {
  const who = `${viewer.programId} ${viewer.personId}`
  if (!(await takeTry('name', who))) throw new Refusal('TOO_MANY', say(door, viewer.locale, 'throttled'))
  await change()
  await forgetTries('name', who)
}

/** Joins one more class with its code. */
export const joinOneMore = action(
  { roles: ['student'], ownDevice: true, input: (viewer) => z.strictObject({ code: codeField(viewer) }) },
  async (viewer, input) => {
    const who = `${viewer.programId} ${viewer.personId}`
    if (!(await takeTry('code', who))) throw new Refusal('TOO_MANY', say(door, viewer.locale, 'joinedTooOften'))
    try {
      const joined = await joinClass(viewer, input)
      await giveBackTry('code', who)
      return joined
    } catch (refused) {
      if (!(refused instanceof Refusal)) throw refused
      throw new Refusal('INVALID', say(door, viewer.locale, 'fix'), { code: say(door, viewer.locale, 'codeOpensNone') })
    }
  },
)

/** Signs the viewer out everywhere but here. */
export const leaveElsewhere = action({ roles: everyone, beforeNewPassword: true, ownDevice: true, input: z.strictObject({}) }, async (viewer) => {
  await endOtherSessions(viewer)
  return {}
})

/** The viewer's own PIN for shared tablets; their password is asked for. */
export const savePin = action({ roles: ['student'], ownDevice: true, input: (viewer) => newPinSchema(viewer) }, async (viewer, input) => {
  await countingTries(viewer, () => setOwnPin(viewer, input))
  return {}
})
