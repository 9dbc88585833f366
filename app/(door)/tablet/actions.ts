'use server'

import { classLife } from '@/lib/language/class-life'
import { say } from '@/lib/language/say'
import { tabletSignInSchema } from '@/lib/schemas/class-life'
import { openAction } from '@/app/_server/action'
import { enter, leave } from '@/app/_server/auth/enter'
import { checkPin, currentTablet } from '@/app/_server/auth/tablet'
import { Refusal } from '@/app/_server/refusal'

/** A student of the class signs in on its shared tablet, by name and PIN. Whoever was signed in here before is signed out. */
export const tabletSignIn = openAction(
  () => tabletSignInSchema,
  async ({ personId, pin, locale }) => {
    const tablet = await currentTablet()
    if (!tablet) throw new Refusal('NOT_FOUND', say(classLife, locale, 'tabletClosed'))
    const result = await checkPin(tablet, { personId, pin })
    if (result === 'throttled') throw new Refusal('TOO_MANY', say(classLife, locale, 'pinThrottled'))
    if (result === 'wrong') throw new Refusal('INVALID', say(classLife, locale, 'pinWrong'), { pin: say(classLife, locale, 'pinWrong') })
    await leave()
    await enter(tablet.programId, personId, tablet.id)
    return {}
  },
)
