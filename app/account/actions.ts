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
    const who = `${viewer.programId} ${viewer.personId}`
    if (!(await takeTry('name', who))) throw new Refusal('TOO_MANY', say(door, viewer.locale, 'throttled'))
    try {
      await changeOwnPassword(viewer, input)
    } catch (refused) {
      if (!(refused instanceof Refusal)) throw refused
      throw new Refusal('INVALID', say(door, viewer.locale, 'fix'), { current: say(door, viewer.locale, 'notCurrent') })
    }
    await forgetTries('name', who)
    return {}
  },
)

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

/** The viewer's own PIN for shared tablets. */
export const savePin = action({ roles: ['student'], ownDevice: true, input: (viewer) => newPinSchema(viewer) }, async (viewer, input) => {
  await setOwnPin(viewer, input)
  return {}
})
