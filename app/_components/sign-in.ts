/** Signs in through the credentials endpoint: a token against forgery first, then the form. Returns null, or what went wrong. */
export async function postSignIn(fields: { program: string; signInName: string; password: string }): Promise<null | 'wrong' | 'throttled' | 'failed'> {
  try {
    const { csrfToken } = (await (await fetch('/api/auth/csrf')).json()) as { csrfToken: string }
    const response = await fetch('/api/auth/callback/credentials', {
      method: 'POST',
      headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams({ ...fields, csrfToken, callbackUrl: '/', json: 'true' }),
    })
    const { url } = (await response.json()) as { url?: string }
    const error = url ? new URL(url, window.location.href).searchParams.get('error') : null
    if (response.ok && !error) return null
    return error === 'throttled' ? 'throttled' : response.status === 401 || error ? 'wrong' : 'failed'
  } catch {
    return 'failed'
  }
}
