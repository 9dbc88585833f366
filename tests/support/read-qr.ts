/*
 * Reads a QR symbol by ISO/IEC 18004, written apart from the library that draws it: format information, masks, placement of codewords,
 * blocks of versions 1 to 10 at error correction M, and the Reed-Solomon check of each block. Tables from memory of the standard.
 */

/** Blocks at level M: data codewords of each, and the error correction codewords of every one of them. */
const BLOCKS: Readonly<Record<number, readonly [readonly number[], number]>> = {
  1: [[16], 10], 2: [[28], 16], 3: [[44], 26], 4: [[32, 32], 18], 5: [[43, 43], 24], 6: [[27, 27, 27, 27], 16], 7: [[31, 31, 31, 31], 18],
  8: [[38, 38, 39, 39], 22], 9: [[36, 36, 36, 37, 37], 22], 10: [[43, 43, 43, 43, 44], 26],
}
const CENTRES: Readonly<Record<number, readonly number[]>> = {
  1: [], 2: [6, 18], 3: [6, 22], 4: [6, 26], 5: [6, 30], 6: [6, 34], 7: [6, 22, 38], 8: [6, 24, 42], 9: [6, 26, 46], 10: [6, 28, 50],
}
const MASKS: readonly ((i: number, j: number) => boolean)[] = [
  (i, j) => (i + j) % 2 === 0, (i) => i % 2 === 0, (_, j) => j % 3 === 0, (i, j) => (i + j) % 3 === 0,
  (i, j) => (Math.floor(i / 2) + Math.floor(j / 3)) % 2 === 0, (i, j) => ((i * j) % 2) + ((i * j) % 3) === 0,
  (i, j) => (((i * j) % 2) + ((i * j) % 3)) % 2 === 0, (i, j) => (((i + j) % 2) + ((i * j) % 3)) % 2 === 0,
]
const QUIET_ZONE = 4

/** The text of a symbol drawn as a path of runs of modules. Throws a sentence at the first thing that is not as the standard has it. */
export function readQr({ size, path }: { readonly size: number; readonly path: string }): string {
  const n = size - 2 * QUIET_ZONE
  const dark = new Set<string>()
  for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)/g)) {
    for (let k = 0; k < Number(width); k += 1) dark.add(`${Number(y) - QUIET_ZONE} ${Number(x) - QUIET_ZONE + k}`)
  }
  const at = (i: number, j: number): number => (dark.has(`${i} ${j}`) ? 1 : 0)
  const version = (n - 17) / 4
  const [blocks, check] = BLOCKS[version] ?? fail(`No version has ${n} modules a side, or it is above 10.`)
  const places: [number, number][] = [
    [8, 0], [8, 1], [8, 2], [8, 3], [8, 4], [8, 5], [8, 7], [8, 8], [7, 8], [5, 8], [4, 8], [3, 8], [2, 8], [1, 8], [0, 8],
  ]
  const format = places.reduce((bits, [i, j]) => (bits << 1) | at(i, j), 0) ^ 0b101010000010010
  if (format >> 13 !== 0) fail('The error correction level is not M.')
  const mask = MASKS[(format >> 10) & 7] ?? fail('No such mask.')

  const bits: number[] = []
  for (let right = n - 1, up = true; right > 0; right -= 2, up = !up) {
    if (right === 6) right = 5
    for (let k = 0; k < n; k += 1) {
      const i = up ? n - 1 - k : k
      for (const j of [right, right - 1]) if (!isFunction(i, j, n, version)) bits.push(at(i, j) ^ (mask(i, j) ? 1 : 0))
    }
  }
  const codewords = Array.from({ length: Math.floor(bits.length / 8) }, (_, k) => bits.slice(8 * k, 8 * k + 8).reduce((byte, bit) => (byte << 1) | bit, 0))
  const sorted: number[][] = blocks.map(() => [])
  let next = 0
  for (let k = 0; k < Math.max(...blocks); k += 1) blocks.forEach((length, b) => { if (k < length) sorted[b]?.push(codewords[next++] ?? 0) })
  const data = sorted.flatMap((block) => [...block])
  for (let k = 0; k < check; k += 1) for (const block of sorted) block.push(codewords[next++] ?? 0)
  if (!sorted.every((block) => holds(block, check))) fail('A block does not pass its Reed-Solomon check.')

  const stream = data.flatMap((byte) => [7, 6, 5, 4, 3, 2, 1, 0].map((shift) => (byte >> shift) & 1))
  const take = (from: number, count: number): number => stream.slice(from, from + count).reduce((value, bit) => (value << 1) | bit, 0)
  if (take(0, 4) !== 4) fail('The text is not in byte mode.')
  const header = version < 10 ? 12 : 20
  return new TextDecoder().decode(Uint8Array.from({ length: take(4, header - 4) }, (_, k) => take(header + 8 * k, 8)))
}

function isFunction(i: number, j: number, n: number, version: number): boolean {
  if (i === 6 || j === 6 || (i < 9 && (j < 9 || j >= n - 8)) || (i >= n - 8 && j < 9)) return true
  if (version >= 7 && ((i < 6 && j >= n - 11) || (j < 6 && i >= n - 11))) return true
  const centres = CENTRES[version] ?? []
  const last = centres.at(-1) ?? 0
  return centres.some((y) => centres.some((x) => {
    const onFinder = (y === 6 && (x === 6 || x === last)) || (y === last && x === 6)
    return !onFinder && Math.abs(i - y) <= 2 && Math.abs(j - x) <= 2
  }))
}

/** Whether every syndrome of a block is zero, in the field of x^8 + x^4 + x^3 + x^2 + 1. */
function holds(block: readonly number[], check: number): boolean {
  const times = (a: number, b: number): number => {
    let product = 0
    for (let k = 7; k >= 0; k -= 1) product = (product << 1) ^ ((product >> 7) * 0x11d) ^ (((b >> k) & 1) * a)
    return product
  }
  let root = 1
  for (let k = 0; k < check; k += 1, root = times(root, 2)) {
    const here = root
    if (block.reduce((sum, codeword) => times(sum, here) ^ codeword, 0) !== 0) return false
  }
  return true
}

function fail(sentence: string): never {
  throw new Error(sentence)
}
