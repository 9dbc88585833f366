import { dateColumn, dateOf, daysLater, minutesLater } from './calendar'
import { diceOf } from './dice'
import type { Rows } from './rows'
import type { School } from './school'

/** What was shown in the class that is going on, and what was said before it. */
const DEMO = 'Restarts: stop at a hand’s width, chip, strike an inch ahead, come back into the crater and go on. Watch the crater fill before you move.'
const EARLIER_DEMO = 'Where to look: at the back of the puddle and the two toes, not at the arc.'
const MESSAGE = 'The shear is back. Cut your own plates before class, two for each of you, and mark the rolling direction.'
const ASKED = 'The wire keeps stubbing.'

/** Notes in every class of the current term, and in the one that is meeting one student who waits for a look. */
export function tellClasses(school: School, rows: Rows): void {
  const dice = diceOf('toeline/class-life')
  for (const each of school.classes.filter(({ term }) => term === 'current')) {
    const evening = each.evenings.at(-1)
    if (!evening) continue
    const day = dateOf(evening.startsAt)
    const write = (kind: 'demo' | 'message', onDate: string, createdAt: Date, body: string): void => void rows.ClassNote.push({
      programId: school.programId, id: dice.id(createdAt), classId: each.id, authorId: each.instructorId, kind, onDate: dateColumn(onDate), exerciseId: null, body, createdAt, withdrawnAt: null,
    })
    write('demo', daysLater(day, -7), minutesLater(evening.startsAt, -7 * 24 * 60 + 20), EARLIER_DEMO)
    write('message', daysLater(day, -1), minutesLater(evening.startsAt, -22 * 60), MESSAGE)
    write('demo', day, minutesLater(evening.startsAt, 12), DEMO)
  }
  const here = school.classes.find(({ process, term }) => process === 'FCAW-S' && term === 'current')
  const waiting = school.pupils.filter(({ now }) => now === 'FCAW-S').at(-1)
  if (!here || !waiting) return
  const askedAt = minutesLater(school.asOf, -6)
  rows.LookRequest.push({
    programId: school.programId, id: dice.id(askedAt), classId: here.id, studentId: waiting.id, exerciseId: null, booth: waiting.booth, note: ASKED,
    askedAt, answeredAt: null, answeredById: null,
  })
}
