/** A program's own sets begin with this; no set that ships with the application does. */
export const OWN_PREFIX = 'own.'

export const isOwn = (criteriaId: string): boolean => criteriaId.startsWith(OWN_PREFIX)

const MOST = 50

/** The id of a program's own set, after its title: 'own.tight-undercut'. A number is added where it is taken. */
export function ownId(title: string, taken: ReadonlySet<string>): string {
  const words = title.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, MOST).replace(/-$/, '') || 'set'
  for (let number = 1; ; number += 1) {
    const id = `${OWN_PREFIX}${words}${number === 1 ? '' : `-${number}`}`
    if (!taken.has(id)) return id
  }
}
