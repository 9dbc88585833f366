import { measurePhoto, type PhotoMeasurement } from './photo-measurement'
import { referenceOf, type Mark, type MarkedPair, type MarkedScale, type PhotoMarks } from './photo-marks'
import { photoPlane, settleReference } from './photo-plane'
import { PhotoProblem } from './photo-problem'
import { requireWellPicked } from './picking-error'

/** What is to be marked, in order: the scale, the ends of the weld, then both toes of every station (from 0). */
export type Slot =
  | { readonly kind: 'corner' | 'point'; readonly n: number }
  | { readonly kind: 'start' | 'end' }
  | { readonly kind: 'toe-a' | 'toe-b'; readonly station: number }

/** The known size that the marks of the scale stand for. */
export type KnownScale =
  | { readonly kind: 'two-points'; readonly distanceMm: number; readonly sizeSdMm: number }
  | { readonly kind: 'rectangle'; readonly sidesMm: readonly [number, number]; readonly sizeSdMm: number }

/** Marks as they are being set. Every change makes a new one. */
export type Marking = {
  readonly scale: KnownScale
  readonly picture: PhotoMarks['picture']
  readonly slots: readonly Slot[]
  readonly marks: readonly (Mark | 'skipped' | null)[]
  /** The slots in the order they were filled. */
  readonly order: readonly number[]
  /** The slot whose mark is being adjusted; null before the first. */
  readonly at: number | null
  /** The next place tapped moves the mark at `at` instead of setting a new one. */
  readonly moving: boolean
}

export function startMarking(scale: KnownScale, picture: PhotoMarks['picture'], stations: number): Marking {
  const kind = scale.kind === 'rectangle' ? 'corner' as const : 'point' as const
  const slots: Slot[] = [
    ...Array.from({ length: scaleMarks(scale) }, (_, index) => ({ kind, n: index + 1 })),
    { kind: 'start' }, { kind: 'end' },
    ...Array.from({ length: stations }, (_, station) => [{ kind: 'toe-a', station }, { kind: 'toe-b', station }] as const).flat(),
  ]
  return { scale, picture, slots, marks: slots.map(() => null), order: [], at: null, moving: false }
}

/**
 * The same marks under another scale. Marks of the weld stay; those of the scale stay too while they mean the same, corners of a
 * rectangle or two points, and have to be set anew otherwise.
 */
export function rescaled(marking: Marking, scale: KnownScale): Marking {
  if (scale.kind === marking.scale.kind) return { ...marking, scale }
  const { slots, marks } = startMarking(scale, marking.picture, marking.slots.filter(({ kind }) => kind === 'toe-a').length)
  const [before, now] = [scaleMarks(marking.scale), scaleMarks(scale)]
  const moved = (slot: number): number => slot - before + now
  return {
    ...marking, scale, slots,
    marks: marks.map((_, index) => (index < now ? null : (marking.marks[index - now + before] ?? null))),
    order: marking.order.filter((slot) => slot >= before).map(moved),
    at: marking.at !== null && marking.at >= before ? moved(marking.at) : null,
    moving: false,
  }
}

const scaleMarks = ({ kind }: KnownScale): number => (kind === 'rectangle' ? 4 : 2)

/** The first slot without a mark; null when all are marked or left out. */
export function nextSlot({ marks }: Marking): number | null {
  const next = marks.indexOf(null)
  return next === -1 ? null : next
}

/** The slot that the next tapped place goes to. */
export const targetSlot = (marking: Marking): number | null => (marking.moving ? marking.at : nextSlot(marking))

/** Sets a mark where the next one belongs; nothing changes when everything is marked. */
export function place(marking: Marking, mark: Mark): Marking {
  const slot = targetSlot(marking)
  if (slot === null) return marking
  return { ...withMark(marking, slot, mark), order: [...marking.order.filter((each) => each !== slot), slot], at: slot, moving: false }
}

/** Puts the mark that is being adjusted elsewhere. */
export const adjust = (marking: Marking, mark: Mark): Marking => (marking.at === null ? marking : withMark(marking, marking.at, mark))

/** Takes the latest mark away, or brings back the latest station left out. */
export function undo(marking: Marking): Marking {
  const last = marking.order.at(-1)
  if (last === undefined) return marking
  const order = marking.order.slice(0, -1)
  const slot = marking.slots[last]
  const cleared = marking.marks[last] === 'skipped' && slot && 'station' in slot ? slotsOfStation(marking, slot.station) : [last]
  return { ...marking, marks: marking.marks.map((mark, index) => (cleared.includes(index) ? null : mark)), order, at: order.findLast((each) => isMark(marking.marks[each])) ?? null, moving: false }
}

/** Goes to an earlier or later mark to move it. */
export function step(marking: Marking, by: -1 | 1): Marking {
  const marked = marking.marks.flatMap((mark, index) => (isMark(mark) ? [index] : []))
  const to = marked[(marking.at === null ? marked.length : marked.indexOf(marking.at)) + by]
  return to === undefined ? { ...marking, moving: false } : { ...marking, at: to, moving: true }
}

/** Leaves out the station whose toes come next: what cannot be seen is not measured. */
export function skipStation(marking: Marking): Marking {
  const next = nextSlot(marking)
  const slot = next === null ? undefined : marking.slots[next]
  if (slot === undefined || !('station' in slot)) return marking
  const both = slotsOfStation(marking, slot.station)
  const order = [...marking.order.filter((each) => !both.includes(each)), ...both.slice(0, 1)]
  return { ...marking, marks: marking.marks.map((mark, index) => (both.includes(index) ? 'skipped' : mark)), order, at: order.findLast((each) => !both.includes(each)) ?? null, moving: false }
}

/** The mark being adjusted. */
export function currentMark({ at, marks }: Marking): Mark | null {
  const mark = at === null ? null : marks[at]
  return isMark(mark) ? mark : null
}

export const isMark = (mark: Mark | 'skipped' | null | undefined): mark is Mark => mark !== null && mark !== undefined && mark !== 'skipped'

/** How many marks are set. */
export const marksSet = ({ marks }: Marking): number => marks.filter(isMark).length

/** The scale with its marks; null while one is missing. */
export function markedScale({ scale, slots, marks }: Marking): MarkedScale | null {
  const [a, b, c, d] = marks.filter((_, index) => slots[index]?.kind === 'corner' || slots[index]?.kind === 'point')
  if (!isMark(a) || !isMark(b)) return null
  if (scale.kind === 'two-points') return { ...scale, marks: [a, b] }
  return isMark(c) && isMark(d) ? { ...scale, marks: [a, b, c, d] } : null
}

/** Start and end of the weld; null while one is missing. */
export function markedEnds({ slots, marks }: Marking): readonly [Mark, Mark] | null {
  const [start, end] = [marks[slots.findIndex(({ kind }) => kind === 'start')], marks[slots.findIndex(({ kind }) => kind === 'end')]]
  return isMark(start) && isMark(end) ? [start, end] : null
}

/** Stations with both toes marked. */
export function markedPairs({ slots, marks }: Marking): (MarkedPair & { readonly station: number })[] {
  return slots.flatMap((slot, index) => {
    const [a, b] = [marks[index], marks[index + 1]]
    return slot.kind === 'toe-a' && isMark(a) && isMark(b) ? [{ a, b, station: slot.station }] : []
  })
}

/** What the marks measure so far, or why they cannot; null while the scale or the ends are not all marked. */
export function measured(marking: Marking): PhotoMeasurement | PhotoProblem | null {
  try {
    const scale = markedScale(marking)
    if (scale === null) return null
    requireWellPicked(settleReference(referenceOf(scale)), Math.max(...scale.marks.map(({ sdPx }) => sdPx)))
    photoPlane(referenceOf(scale))
    const ends = markedEnds(marking)
    if (ends === null) return null
    return measurePhoto({ picture: marking.picture, scale, ends, pairs: markedPairs(marking).map(({ a, b }) => ({ a, b })) })
  } catch (problem) {
    if (problem instanceof PhotoProblem) return problem
    throw problem
  }
}

const slotsOfStation = ({ slots }: Marking, station: number): number[] => slots.flatMap((slot, index) => ('station' in slot && slot.station === station ? [index] : []))
const withMark = (marking: Marking, slot: number, mark: Mark): Marking => ({ ...marking, marks: marking.marks.map((each, index) => (index === slot ? mark : each)) })
