import 'server-only'
import { randomInt, timingSafeEqual } from 'node:crypto'
import { CODE_LETTERS, writeCode } from '@/lib/schemas/person'

const held = globalThis as { toelineSetupCode?: string }

/** The one-time code of this server's life, which only someone who can read its log knows. */
export function setupCode(): string {
  held.toelineSetupCode ??= Array.from({ length: 8 }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('')
  return writeCode(held.toelineSetupCode)
}

const bare = (code: string): string => code.toUpperCase().replace(/[^0-9A-Z]/g, '')

export function isSetupCode(given: string): boolean {
  const mine = Buffer.from(bare(setupCode()))
  const theirs = Buffer.from(bare(given))
  return mine.length === theirs.length && timingSafeEqual(mine, theirs)
}
