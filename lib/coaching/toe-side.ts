export type ToeSide = 'upper' | 'lower' | 'left' | 'right'

/** Positions in which one toe lies above the other; in the rest the toes lie left and right of the bead. */
const ONE_ABOVE = ['2F', '2G', '4F']

/** Which toe A and B are in a test position. Toe A is the upper or the left one. */
export function toeSide(position: string, toe: 'A' | 'B'): ToeSide {
  const above = ONE_ABOVE.includes(position.trim().toUpperCase())
  if (toe === 'A') return above ? 'upper' : 'left'
  return above ? 'lower' : 'right'
}
