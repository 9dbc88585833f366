/** Runs once when the server starts: on an empty database it prints the code that lets its first visitor set up the program. */
export async function register(): Promise<void> {
  if (process.env['NEXT_RUNTIME'] !== 'nodejs') return
  const { announceSetup } = await import('./app/_server/announce-setup')
  await announceSetup()
}
