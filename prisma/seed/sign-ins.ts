import { COORDINATOR, INSTRUCTORS, KNOWN, PASSWORDS, PIN, students, type Invented } from './people'

const WHY: Readonly<Record<string, string>> = {
  [KNOWN.withEstimate]: 'enough coupons for an estimate',
  [KNOWN.withFew]: 'three coupons of the 2F lap joint: not enough yet',
  [KNOWN.beforeCautions]: 'next up is the 2F lap joint, its cautions unconfirmed',
}

/** Who can sign in, with what; the last lines the seed prints. */
export function signInText(small: boolean): string {
  const row = (role: string, { given, family, signInName }: Invented, password: string, note = '') =>
    `${role.padEnd(12)} ${`${given} ${family}`.padEnd(22)} ${signInName.padEnd(18)} ${password}${note && `   (${note})`}`
  const all = students(small)
  const known = Object.values(KNOWN).flatMap((name) => all.filter(({ signInName }) => signInName === name))
  const oneOfEach = ['y.quispe', 'h.grainger', 'p.montenegro', 's.olatunji'].flatMap((name) => all.filter(({ signInName }) => signInName === name))
  return [
    'Sign-ins of the invented school (one password per role; every other student signs in the same way):',
    row('role', { given: 'name', family: '', signInName: 'sign-in name', locale: 'en', units: 'us' }, 'password'),
    row('coordinator', COORDINATOR, PASSWORDS.coordinator),
    ...Object.entries(INSTRUCTORS).map(([process, person]) => row('instructor', person, PASSWORDS.instructor, process)),
    ...known.map((person) => row('student', person, PASSWORDS.student, WHY[person.signInName])),
    ...oneOfEach.map((person) => row('student', person, PASSWORDS.student, [person.now ?? '', person.locale === 'es' ? 'in Spanish' : ''].filter(Boolean).join(', '))),
    `On a tablet that an instructor opened for a class (its page, “Shared tablet”) every student's PIN is ${PIN}.`,
  ].join('\n')
}
