/** Sentences by the box they belong to: 'title', 'rules.2.max.value'. */
export type BoxProblems = Readonly<Record<string, string>>

/** The problems worth telling while somebody is still typing: what is there and cannot be read, not what is still empty. */
export const unreadable = (problems: BoxProblems): BoxProblems => Object.fromEntries(Object.entries(problems).filter(([, sentence]) => sentence.startsWith('“')))
