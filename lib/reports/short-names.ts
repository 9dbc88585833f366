type Named = { readonly id: string; readonly givenName: string; readonly familyName: string }

/**
 * Names for a screen that strangers may see: the given name and as many letters of the family name as tell these people apart, at least
 * one: 'Jimena A.', or 'Ana Ru.' beside 'Ana Ri.'. People of the very same name are numbered in the order given.
 */
export function shortNames(people: readonly Named[]): { id: string; name: string }[] {
  return people.map((person) => {
    const alike = people.filter((other) => other.id !== person.id && same(other.givenName, person.givenName))
    const twins = alike.filter((other) => same(other.familyName, person.familyName))
    const letters = [...person.familyName]
    const others = alike.filter((other) => !twins.includes(other))
    const least = letters.findIndex((_, index) => others.every((other) => !same(start(other.familyName, index + 1), start(person.familyName, index + 1)))) + 1
    const short = `${person.givenName} ${least === 0 || least === letters.length ? person.familyName : `${start(person.familyName, least)}.`}`
    const place = people.filter((each) => each.id === person.id || twins.includes(each)).findIndex(({ id }) => id === person.id)
    return { id: person.id, name: twins.length === 0 ? short : `${short} (${place + 1})` }
  })
}

const start = (name: string, letters: number): string => [...name].slice(0, letters).join('')
const same = (a: string, b: string): boolean => a.toLocaleLowerCase('en') === b.toLocaleLowerCase('en')
