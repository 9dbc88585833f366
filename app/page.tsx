import { redirect } from 'next/navigation'
import { currentTablet } from './_server/auth/tablet'
import { currentViewer } from './_server/auth/viewer'
import { anyProgram } from './_server/data/program'
import { homeOf } from './_server/auth/home'

/** The front door leads everyone to their own room. */
export default async function Start() {
  const viewer = await currentViewer()
  if (viewer) redirect(homeOf(viewer))
  if (await currentTablet()) redirect('/tablet')
  redirect((await anyProgram()) ? '/sign-in' : '/set-up')
}
