'use server'

import { joinSchema, setupSchema } from '@/lib/schemas/person'
import { door } from '@/lib/language/door'
import { LOCALES, say, type Locale } from '@/lib/language/say'
import { openAction } from '@/app/_server/action'
import { requestAddress } from '@/app/_server/auth/address'
import { enter } from '@/app/_server/auth/enter'
import { isSetupCode } from '@/app/_server/auth/setup-code'
import { programBySlug } from '@/app/_server/auth/sign-in'
import { giveBackTry, takeTry } from '@/app/_server/auth/throttle'
import { joinAsNewStudent } from '@/app/_server/data/people'
import { setUpProgram } from '@/app/_server/data/program'
import { Refusal } from '@/app/_server/refusal'

const localeOf = (raw: unknown): Locale => {
  const given = typeof raw === 'object' && raw !== null && 'locale' in raw ? raw.locale : null
  return LOCALES.find((locale) => locale === given) ?? 'en'
}

/** A newcomer joins a class with its code and is signed in. */
export const join = openAction(
  (raw) => joinSchema({ locale: localeOf(raw), units: 'in' }),
  async (input) => {
    const program = await programBySlug(input.program)
    if (!program) throw new Refusal('INVALID', say(door, input.locale, 'fix'), { program: say(door, input.locale, 'programHint') })
    const address = await requestAddress()
    if (!(await takeTry('code', address))) throw new Refusal('TOO_MANY', say(door, input.locale, 'joinedTooOften'))
    try {
      const { personId } = await joinAsNewStudent(program, input)
      await giveBackTry('code', address)
      await enter(program.id, personId)
      return {}
    } catch (refused) {
      if (!(refused instanceof Refusal)) throw refused
      if (!refused.fields['signInName']) throw new Refusal('INVALID', say(door, input.locale, 'fix'), { code: say(door, input.locale, 'codeOpensNone') })
      await giveBackTry('code', address)
      throw new Refusal('INVALID', say(door, input.locale, 'fix'), { signInName: say(door, input.locale, 'nameTaken') })
    }
  },
)

/** First visit: the program and its coordinator, with the code from the server's log. */
export const setUp = openAction(
  () => setupSchema({ locale: 'en', units: 'in' }),
  async (input) => {
    const address = await requestAddress()
    if (!(await takeTry('setup', address))) throw new Refusal('TOO_MANY', 'Too many codes tried. Wait ten minutes.')
    if (!isSetupCode(input.setupCode)) throw new Refusal('INVALID', say(door, 'en', 'notSetUp'), { setupCode: say(door, 'en', 'wrongSetupCode') })
    await giveBackTry('setup', address)
    const { programId, personId } = await setUpProgram(input)
    await enter(programId, personId)
    return {}
  },
)
