import 'server-only'
import { createHash } from 'node:crypto'
import { RateLimiterPrisma } from 'rate-limiter-flexible'
import { db } from '../db'

const minutes = 60
const make = (keyPrefix: string, points: number, duration: number) =>
  new RateLimiterPrisma({ storeClient: db(), tableName: 'rateLimit', keyPrefix, points, duration, clearExpiredByTimeout: false })

const limits = {
  /** wrong passwords for one name */
  name: () => make('name', 10, 15 * minutes),
  /** wrong passwords from one address: a whole shop may share one */
  address: () => make('address', 200, 15 * minutes),
  /** join codes tried from one address */
  code: () => make('code', 20, 10 * minutes),
  /** wrong PINs for one person: four digits must not be guessed in an evening */
  pin: () => make('pin', 5, 15 * minutes),
  /** wrong PINs on one shared tablet, whoever's */
  tablet: () => make('tablet', 40, 15 * minutes),
  /** first-time set-up codes tried */
  setup: () => make('setup', 10, 10 * minutes),
} as const

export type Limit = keyof typeof limits

const held = new Map<Limit, RateLimiterPrisma>()
const limiter = (limit: Limit): RateLimiterPrisma => {
  const made = held.get(limit) ?? limits[limit]()
  held.set(limit, made)
  return made
}

/** Keys are hashed: the counters' table must not become a list of who signs in from where. */
const keyOf = (who: string): string => createHash('sha256').update(who).digest('hex').slice(0, 32)

/**
 * Takes one try; false when none is left until the window ends. Taken before the guess is checked, and given back when it was no wrong
 * guess: counted afterwards, a hundred guesses sent at the same moment would all find room.
 */
export async function takeTry(limit: Limit, who: string): Promise<boolean> {
  try {
    await limiter(limit).consume(keyOf(who))
    return true
  } catch (refused) {
    // The limiter says "no more" by rejecting with its counters. Anything else is a fault.
    if (refused instanceof Error) throw refused
    return false
  }
}

/** Gives a taken try back. */
export async function giveBackTry(limit: Limit, who: string): Promise<void> {
  await limiter(limit).reward(keyOf(who))
}

/** Begins anew, after a success. */
export async function forgetTries(limit: Limit, who: string): Promise<void> {
  await limiter(limit).delete(keyOf(who))
}
