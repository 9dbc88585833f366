import type { BoxProblems } from './box-problems'

/** How the boxes of one rule say what is typed and hear what is wrong with it. */
export type Boxes<T> = {
  readonly value: T
  readonly onChange: (change: Partial<T>) => void
  /** The sentence at a box, by its name inside the rule: 'max.value'. */
  readonly error: (box: string) => string | undefined
}

/** The sentence at a box: its own, or that of a part of it which has no box of its own. */
export const errorAt = (problems: BoxProblems, prefix: string) => (box: string): string | undefined => problems[box === '' ? prefix : `${prefix}.${box}`]
