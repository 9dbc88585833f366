import 'server-only'
import { env } from './env'

/**
 * Whether a writing request comes from our own pages. Browsers say so themselves; those too old to say send an Origin.
 * (OWASP ASVS 5.0 V3.5: route handlers do not get the check that server actions have.)
 */
export function isSameOrigin(request: Request): boolean {
  const site = request.headers.get('sec-fetch-site')
  if (site !== null) return site === 'same-origin'
  return request.headers.get('origin') === new URL(env().NEXTAUTH_URL).origin
}
