import { uuid } from './field'

/** What the address of a student's page asks for: the exercise drawn, and where its remarks begin. What is no id asks for nothing. */
export type StudentAsked = { readonly exerciseId: string | null; readonly remarksAfter: string | null }

const asked = uuid.nullable().catch(null)

/** Reads the query of a student's page. */
export function readStudentAsked(query: Readonly<Record<string, string | string[] | undefined>>): StudentAsked {
  return { exerciseId: asked.parse(query['exercise'] ?? null), remarksAfter: asked.parse(query['remarks'] ?? null) }
}
