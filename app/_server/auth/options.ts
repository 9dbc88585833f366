import 'server-only'
import type { NextAuthOptions } from 'next-auth'
import Credentials from 'next-auth/providers/credentials'
import { env } from '../env'
import { SESSION_SECONDS, sessionCookieName, sessionCookieOptions } from './cookie'
import { signInWithIdentity } from './identity'
import { signInWithPassword } from './sign-in'

type Headers = Record<string, string | string[] | undefined> | undefined
const header = (headers: Headers, name: string): string => String(headers?.[name] ?? '')

/** The address the request came from, as far as the server in front tells. Only used to slow guessing down. */
const addressOf = (headers: Headers): string => header(headers, 'x-forwarded-for').split(',').at(-1)?.trim() || 'unknown'

function oidcProviders(): NextAuthOptions['providers'] {
  const { OIDC_ISSUER, OIDC_CLIENT_ID, OIDC_CLIENT_SECRET, OIDC_NAME } = env()
  if (!OIDC_ISSUER || !OIDC_CLIENT_ID || !OIDC_CLIENT_SECRET) return []
  return [
    {
      id: 'oidc',
      name: OIDC_NAME,
      type: 'oauth',
      issuer: OIDC_ISSUER,
      wellKnown: `${OIDC_ISSUER.replace(/\/$/, '')}/.well-known/openid-configuration`,
      clientId: OIDC_CLIENT_ID,
      clientSecret: OIDC_CLIENT_SECRET,
      authorization: { params: { scope: 'openid profile' } },
      idToken: true,
      checks: ['pkce', 'state', 'nonce'],
      profile: (profile: { sub: string }) => ({ id: profile.sub }),
    },
  ]
}

/** next-auth, kept behind this one file so that it can be replaced. The token holds two ids and no rights. */
export function authOptions(): NextAuthOptions {
  return {
    secret: env().NEXTAUTH_SECRET,
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    cookies: { sessionToken: { name: sessionCookieName(), options: sessionCookieOptions() } },
    pages: { signIn: '/sign-in', error: '/sign-in' },
    providers: [
      Credentials({
        credentials: { program: {}, signInName: {}, password: {} },
        authorize: async (given, request) => {
          const result = await signInWithPassword({
            programSlug: given?.program || null,
            signInName: given?.signInName ?? '',
            password: given?.password ?? '',
            address: addressOf(request.headers),
            device: header(request.headers, 'user-agent').slice(0, 200) || null,
          })
          if (result.kind === 'throttled') throw new Error('throttled')
          return result.kind === 'in' ? { id: result.token.sessionId, ...result.token } : null
        },
      }),
      ...oidcProviders(),
    ],
    callbacks: {
      signIn: async ({ user, account }) => {
        if (account?.provider !== 'oidc') return true
        const token = await signInWithIdentity(env().OIDC_ISSUER ?? '', account.providerAccountId)
        if (!token) return '/sign-in?error=unlinked'
        Object.assign(user, token)
        return true
      },
      jwt: ({ token, user }) => {
        const fresh = user as { programId?: string; sessionId?: string } | undefined
        return fresh?.sessionId ? { programId: fresh.programId, sessionId: fresh.sessionId } : token
      },
      session: ({ session }) => ({ expires: session.expires }),
    },
  }
}
