/** What a page asks of the worker: copies of these pages for this person, kept when they are missing or old, or made anew. */
export type WorkerMessage = { readonly type: 'keep' | 'renew'; readonly person: string; readonly paths: readonly string[] }

/** Installs the worker. Without one (a private window, an old browser, no https) everything else works as it does with a connection. */
export async function installWorker(): Promise<void> {
  try {
    const address = process.env.NODE_ENV === 'development' ? '/sw.js?development' : '/sw.js'
    await navigator.serviceWorker?.register(address, { scope: '/', updateViaCache: 'none' })
  } catch {
    // Not allowed here: pages need a connection, the queue does not.
  }
}

/** Tells the worker, once there is one. */
export function tellWorker(message: WorkerMessage): void {
  void navigator.serviceWorker?.ready.then((registration) => registration.active?.postMessage(message))
}
