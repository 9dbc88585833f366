import 'server-only'
import { hasRole, type Viewer } from './viewer'

/** Where a person starts. Those with several roles start where a class waits for them. */
export function homeOf(viewer: Viewer): '/teach' | '/program' | '/learn' {
  if (hasRole(viewer, 'instructor')) return '/teach'
  if (hasRole(viewer, 'coordinator')) return '/program'
  return '/learn'
}

/** A path to return to after signing in; anything that could lead off this site becomes the start. */
export function safeBack(back: string | undefined): string {
  return back && /^\/(?![/\\])/.test(back) && !/[\u0000-\u001f\\]/.test(back) ? back : '/'
}
