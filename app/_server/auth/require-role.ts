import 'server-only'
import { headers } from 'next/headers'
import { notFound, redirect } from 'next/navigation'
import { currentTablet } from './tablet'
import { currentViewer, type Role, type Viewer } from './viewer'

/** The viewer of a page, or a way to the sign-in page that leads back here; on a shared tablet, to the names of its class. */
export async function requireViewer(): Promise<Viewer> {
  const viewer = await currentViewer()
  if (viewer) return viewer
  const path = (await headers()).get('x-toeline-path') ?? '/'
  if (!/^\/(teach|program)\b/.test(path) && (await currentTablet())) redirect(`/tablet?back=${encodeURIComponent(path)}`)
  redirect(`/sign-in?back=${encodeURIComponent(path)}`)
}

/** The viewer of a page for one of these roles. Anyone else gets the same page as for an address that does not exist. */
export async function requireRole(...roles: readonly Role[]): Promise<Viewer> {
  const viewer = await requireViewer()
  if (viewer.mustChangePassword) redirect('/account')
  if (!roles.some((role) => viewer.roles.includes(role))) notFound()
  return viewer
}
