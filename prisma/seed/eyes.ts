import { PROCESSES } from '@/lib/procedure/process'
import { diceOf, type Dice } from './dice'
import { INSTRUCTORS } from './people'
import type { Eye } from './look'
import type { Rows } from './rows'
import { typistOf, type Typist } from './typing'

/** How an instructor inspects; each has a way of their own that stays the same. */
export type Inspector = { readonly id: string; readonly signInName: string; readonly eye: Eye; readonly commentsOn: number }

/** The instructors' eyes: one reads undercut deep, one shallow, one seldom leaves something out. */
export function inspectorsOf(rows: Rows): ReadonlyMap<string, Inspector> {
  return new Map(PROCESSES.map((process) => {
    const person = rows.Person.find(({ signInName }) => signInName === INSTRUCTORS[process].signInName)
    if (!person) throw new RangeError(`The instructor of ${process} is not on the rolls.`)
    const dice = diceOf(`toeline/instructor/${person.signInName}`)
    const eye: Eye = {
      ...typistOf(dice, 'in', 'en'), decimals: dice.pick([0, 0.1, 0.2]), namesUnit: 0,
      sharpness: dice.between(0.93, 0.99), slackMm: dice.between(0.07, 0.13), kindnessMm: dice.between(-0.08, 0.08), depthFactor: dice.between(0.9, 1.12), forgets: dice.between(0.01, 0.03),
    }
    return [person.id, { id: person.id, signInName: person.signInName, eye, commentsOn: dice.between(0.14, 0.24) }]
  }))
}

/** A student's eye sees about half of what is there at first, and learns to look. */
export function eyesOfStudent(typist: Typist, couponsSoFar: number, dice: Dice): Eye {
  return {
    ...typist,
    sharpness: 0.5 + 0.38 * (1 - Math.exp(-couponsSoFar / 30)),
    slackMm: 0.15, kindnessMm: dice.between(0, 0.4), depthFactor: dice.between(0.7, 1), forgets: 0.06,
  }
}
