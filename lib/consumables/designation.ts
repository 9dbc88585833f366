/** The error for a designation with a part no table knows: names what was typed, the part, and what would do. */
export function unknownPart(typed: string, part: string, known: string): RangeError {
  return new RangeError(`"${typed.trim()}": "${part}" is not known here; ${known}.`)
}

/** Letters, digits and slashes of what was typed, in capitals: the spaces, hyphens and dots people add say nothing, and the E of '7018' goes without saying. */
export function compactDesignation(typed: string): string {
  return typed.toUpperCase().replace(/[\s.\-‐-―−_]/g, '').replace(/^(?=\d)/, 'E')
}

/**
 * Takes optional suffixes off the front of `rest`, in the order the specification gives them, each at most once.
 *
 * @returns the text of each suffix found, and what no suffix explains
 */
export function takeSuffixes<K extends string>(rest: string, suffixes: Readonly<Record<K, RegExp>>): { readonly found: Partial<Record<K, string>>; readonly left: string } {
  const found: Partial<Record<K, string>> = {}
  let left = rest
  for (const key of Object.keys(suffixes) as K[]) {
    const match = new RegExp(`^(?:${suffixes[key].source})`).exec(left)
    if (!match || match[0] === '') continue
    found[key] = match[0]
    left = left.slice(match[0].length)
  }
  return { found, left }
}
