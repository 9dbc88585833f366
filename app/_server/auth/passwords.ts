import 'server-only'
import { hash, verify } from '@node-rs/argon2'

// OWASP Password Storage Cheat Sheet: argon2id with at least 19 MiB, two passes, one lane.
// The library names argon2id by an ambient enum that isolated modules cannot read; its value is 2, and its default.
const settings = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 }

// A flood of sign-ins must not take all memory: four hashes at a time, the rest wait.
const limit = 4
let running = 0
const waiting: (() => void)[] = []

async function oneOfFew<T>(work: () => Promise<T>): Promise<T> {
  if (running >= limit) await new Promise<void>((resolve) => waiting.push(resolve))
  running += 1
  try {
    return await work()
  } finally {
    running -= 1
    waiting.shift()?.()
  }
}

/** Unicode passwords compare as the same text however the keyboard composed them. */
const normalise = (password: string): string => password.normalize('NFKC')

export function hashPassword(password: string): Promise<string> {
  return oneOfFew(() => hash(normalise(password), settings))
}

let decoy: Promise<string> | null = null

/** Verifies in the same time whether or not the person exists, so that timing does not tell names apart. */
export async function passwordMatches(stored: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword('a password nobody has')
  const against = stored ?? (await decoy)
  const matches = await oneOfFew(() => verify(against, normalise(password)))
  return matches && stored !== null
}
