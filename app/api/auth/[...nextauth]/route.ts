import NextAuth from 'next-auth'
import { authOptions } from '@/app/_server/auth/options'

type Context = { params: Promise<{ nextauth: string[] }> }

/** next-auth's own endpoints. The options are read at the request: at build time there is no environment to read. */
const handler = (request: Request, context: Context): Promise<Response> => NextAuth(authOptions())(request, context) as Promise<Response>

export { handler as GET, handler as POST }
