import 'server-only'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'

/** The words of the frame around every signed-in screen. */
export const shellWords = (locale: Locale) => ({
  skip: say(door, locale, 'skip'), nav: say(door, locale, 'nav'), home: say(door, locale, 'home'), signOut: say(door, locale, 'signOut'),
})
