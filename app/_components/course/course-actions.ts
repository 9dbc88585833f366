import type { Answer } from '../use-sent-form'

type Send<T extends object = object> = (raw: unknown) => Promise<Answer<T>>
export type SetupWarning = { readonly text: string; readonly source: string }

/** What the screens of a class's course can ask for. They are the same in both rooms; the page says which actions answer. */
export type CourseActions = {
  readonly add: Send
  readonly addFromLibrary: Send
  readonly copy: Send
  readonly move: Send
  readonly chooseOpensAfter: Send
  readonly remove: Send
}

export type ExerciseActions = {
  readonly check: Send<{ readonly warnings: readonly SetupWarning[] }>
  readonly save: Send<{ readonly version: number; readonly warnings: readonly SetupWarning[] }>
}
