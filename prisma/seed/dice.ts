import { createHash } from 'node:crypto'

/** A stream of chance that always falls the same way for the same name. */
export type Dice = {
  /** From 0 up to, not including, 1. */
  readonly next: () => number
  readonly chance: (probability: number) => boolean
  readonly between: (low: number, high: number) => number
  /** A whole number, both ends included. */
  readonly whole: (low: number, high: number) => number
  readonly normal: (mean: number, sd: number) => number
  /** A positive number about `median`; `spread` is the sd of its logarithm. */
  readonly logNormal: (median: number, spread: number) => number
  readonly poisson: (mean: number) => number
  readonly pick: <T>(list: readonly T[]) => T
  /** Another stream, of its own: drawing from it leaves this one where it is. */
  readonly fork: (name: string) => Dice
  /** An id shaped like UUIDv7, made at `at`. */
  readonly id: (at: Date) => string
}

/** sfc32 of Chris Doty-Humphrey's PractRand, started from a hash of the name. From memory. */
function streamOf(name: string): () => number {
  const hash = createHash('sha256').update(name).digest()
  let a = hash.readInt32LE(0)
  let b = hash.readInt32LE(4)
  let c = hash.readInt32LE(8)
  let counter = 1
  const next = (): number => {
    const sum = (a + b + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + sum) | 0
    return (sum >>> 0) / 2 ** 32
  }
  for (let i = 0; i < 12; i++) next()
  return next
}

export function diceOf(name: string): Dice {
  const next = streamOf(name)
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1))
  const normal = (mean: number, sd: number): number =>
    mean + sd * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())
  return {
    next,
    whole,
    normal,
    chance: (probability) => next() < probability,
    between: (low, high) => low + next() * (high - low),
    logNormal: (median, spread) => median * Math.exp(normal(0, spread)),
    poisson: (mean) => {
      let count = 0
      for (let product = next(); product > Math.exp(-mean); product *= next()) count += 1
      return count
    },
    pick: (list) => {
      const item = list[whole(0, list.length - 1)]
      if (item === undefined) throw new RangeError('There is nothing to pick from.')
      return item
    },
    fork: (child) => diceOf(`${name}/${child}`),
    id: (at) => uuid7(at, next),
  }
}

const hex = (value: number, digits: number): string => Math.floor(value).toString(16).padStart(digits, '0')

/** RFC 9562 section 5.7: 48 bits of milliseconds, the version, 12 bits of chance, the variant, 62 bits of chance. */
function uuid7(at: Date, next: () => number): string {
  const time = hex(at.getTime(), 12)
  const [a, b, c] = [next() * 2 ** 12, 0x8000 + next() * 2 ** 14, next() * 2 ** 48]
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hex(a, 3)}-${hex(b, 4)}-${hex(c, 12)}`
}
