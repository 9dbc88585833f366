import type { Process } from '@/lib/procedure/process'

/**
 * The invented people of the invented school. Everyone in this file is in the large and in the small school alike, except that
 * the small one takes the first SMALL_CLASS of each class and nobody who has left. Those in KNOWN have a set course, for tests and
 * for showing the application to someone.
 */
export type Invented = { readonly given: string; readonly family: string; readonly signInName: string; readonly locale: 'en' | 'es'; readonly units: 'us' | 'si' }

export type Student = Invented & {
  /** The class of the current term; null for those who have left. */
  readonly now: Process | null
  /** The class of the term before. */
  readonly before: Process | null
}

/** How many of each class the small school has. */
export const SMALL_CLASS = 6

/** One password per role, for the demonstration only: the database it opens holds nobody's real record. */
export const PASSWORDS = {
  student: 'copper-ladle-under-the-bench',
  instructor: 'seven-quiet-chisels-and-a-kiln',
  coordinator: 'ledger-lamp-beside-the-window',
} as const

/** Every student's PIN on a shared tablet. */
export const PIN = '4826'

const plain = (name: string): string => name.normalize('NFD').replace(/[^a-zA-Z]/g, '').toLowerCase()
const invented = (given: string, family: string, locale: 'en' | 'es' = 'en', units: 'us' | 'si' = 'us'): Invented => ({
  given, family, locale, units, signInName: `${plain(given)[0] ?? ''}.${plain(family)}`,
})

export const COORDINATOR = invented('Ottilie', 'Marrable')

export const INSTRUCTORS: Readonly<Record<Process, Invented>> = {
  SMAW: invented('Wendell', 'Achterberg'),
  'FCAW-S': invented('Rosario', 'Tindale'),
  'FCAW-G': invented('Sione', 'Halafihi'),
  GMAW: invented('Parveen', 'Oakhurst'),
}

/**
 * Students with a set course, all in the self-shielded (FCAW-S) class. The exercise meant is the second of that class: the lap joint
 * in position 2F, 3/8 in plate, 0.045 in E71T-11 wire.
 */
export const KNOWN = {
  /** Enough coupons of that exercise for an estimate. */
  withEstimate: 'j.alvarez',
  /** Three coupons of it: "not enough yet". */
  withFew: 't.osei',
  /** It is the next one: not begun, its cautions not confirmed. */
  beforeCautions: 'k.novak',
} as const

type Row = readonly [name: string, before?: Process | null, locale?: 'en' | 'es', units?: 'us' | 'si']

const CLASSES: Readonly<Record<Process, readonly Row[]>> = {
  'FCAW-S': [
    ['Jimena Alvarez'], ['Tetteh Osei'], ['Klara Novak'], ['Darnell Fontaine', 'SMAW'], ['Yolanda Quispe', 'FCAW-S', 'es'],
    ['Bram Vandersloot', 'FCAW-S'], ['Mai Thao'], ['Ezekiel Stroud', 'GMAW'], ['Farid Nazari'], ['Cordelia Bexley', 'FCAW-S'],
    ['Luca Ferrandi', 'FCAW-G', 'en', 'si'], ['Shanice Merriweather'], ['Oskar Lindqvist', 'FCAW-S'],
  ],
  SMAW: [
    ['Hollis Grainger', 'SMAW'], ['Itzel Barragán', 'SMAW', 'es'], ['Nikolai Petrushin'], ['Abena Darko', 'GMAW'], ['Royce Tillery'],
    ['Linh Dao', 'SMAW'], ['Marisol Echegaray', null, 'es'], ['Gunnar Aasland', 'SMAW'], ['Tamsin Coyle'], ['Vikram Sethuraman', 'FCAW-G'],
    ['Delphine Rousselot', 'SMAW'], ['Chidi Nwankwo'], ['Wyatt Sandoz', 'FCAW-S'],
  ],
  'FCAW-G': [
    ['Pilar Montenegro', 'FCAW-G', 'es'], ['Anders Tveit', 'FCAW-G'], ['Keisha Broadnax'], ['Somchai Wattana', 'FCAW-S'], ['Gideon Farrow'],
    ['Inés Caballero', 'FCAW-G', 'es'], ['Malik Trudeau'], ['Brigid Hanlon', 'FCAW-G'], ['Tomasz Wieczorek', 'SMAW', 'en', 'si'], ['Lupe Vallejo', null, 'es'],
    ['Roan Castellaw', 'FCAW-G'], ['Emiko Tanabe'], ['Jarvis Peltier', 'FCAW-G'],
  ],
  GMAW: [
    ['Sade Olatunji', 'GMAW'], ['Casimir Boudreau', 'GMAW'], ['Renata Zamudio', null, 'es'], ['Birgit Solheim', 'SMAW'], ['Tyrell Whitcombe'],
    ['Noor Halabi', 'GMAW'], ['Desmond Achebe-Ross'], ['Violet Kekoa', 'GMAW'], ['Amos Yoderfield', 'FCAW-S'], ['Hana Kravitz'],
    ['Esteban Urrutia', 'GMAW', 'es'], ['Philippa Drummey'], ['Quincy Laforge', 'GMAW'],
  ],
}

/** Those who learned in the earlier term and left. */
const LEFT: readonly (readonly [name: string, before: Process])[] = [
  ['Alma Santerre', 'SMAW'], ['Dov Brenner', 'SMAW'], ['Thandi Maseko', 'FCAW-S'], ['Rufus Applegarth', 'FCAW-S'],
  ['Miriam Castellanos', 'FCAW-G'], ['Ilya Voronin', 'FCAW-G'], ['Grace Ferncliff', 'GMAW'], ['Anselm Pokorny', 'GMAW'],
]

function student(name: string, now: Process | null, before: Process | null, locale?: 'en' | 'es', units?: 'us' | 'si'): Student {
  const gap = name.indexOf(' ')
  return { ...invented(name.slice(0, gap), name.slice(gap + 1), locale, units), now, before }
}

/** The students of the large or the small school, in an order that never changes. */
export function students(small: boolean): Student[] {
  const present = Object.entries(CLASSES).flatMap(([process, rows]) =>
    rows.slice(0, small ? SMALL_CLASS : rows.length).map(([name, before, locale, units]) => student(name, process as Process, before ?? null, locale, units)))
  return small ? present : [...present, ...LEFT.map(([name, before]) => student(name, null, before))]
}
