import 'server-only'
import type { Prisma } from '@/prisma/generated/client'

/** The signs that LIKE takes for "anything" are letters like any other in a name somebody looks for. */
const literally = (word: string): string => word.replace(/[\\%_]/g, '\\$&')

/** Every word of a search stands in the given name, the family name or the sign-in name. */
export function namedLike(search: string): Prisma.PersonWhereInput[] {
  const words = search.split(/\s+/).filter(Boolean).map((word) => ({ contains: literally(word), mode: 'insensitive' as const }))
  return words.map((word) => ({ OR: [{ givenName: word }, { familyName: word }, { signInName: word }] }))
}

/** Where a person stands in a list by name. */
export type NameKey = { readonly familyName: string; readonly givenName: string; readonly id: string }

/** Those who come after a person in a list by name, or before them. The first line alone lets the index find the place. */
export function beyondName({ familyName, givenName, id }: NameKey, way: 'gt' | 'lt'): Prisma.PersonWhereInput {
  return {
    familyName: way === 'gt' ? { gte: familyName } : { lte: familyName },
    OR: [{ familyName: { [way]: familyName } }, { familyName, givenName: { [way]: givenName } }, { familyName, givenName, id: { [way]: id } }],
  }
}
