/** Runs once when the server starts: brings a release's new criteria to every program; on an empty database it prints the code that lets its first visitor set one up. */
export async function register(): Promise<void> {
  if (process.env['NEXT_RUNTIME'] !== 'nodejs') return
  const { announceSetup } = await import('./app/_server/announce-setup')
  const { bringCriteria } = await import('./app/_server/bring-criteria')
  await announceSetup()
  await bringCriteria()
}
