import 'server-only'
import { headers } from 'next/headers'

/** The address the request came from, as far as the server in front tells: the last entry, which it added itself. */
export async function requestAddress(): Promise<string> {
  return (await headers()).get('x-forwarded-for')?.split(',').at(-1)?.trim() || 'unknown'
}
