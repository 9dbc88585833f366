/**
 * A whole number below 2^32 for a text: the same text always gives the same one, and near texts lie far apart. FNV-1a (32 bits, after
 * Fowler, Noll and Vo) with the last mixing step of MurmurHash3 (Appleby). Both from memory.
 */
export function scattered(text: string): number {
  let hash = 0x811c9dc5
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193)
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b)
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35)
  return (hash ^ (hash >>> 16)) >>> 0
}
