// The wire between a browser and the server, as a test holds it in its hand: cut, cut in the middle of an upload, slow, or led to another server.
import http from 'node:http'
import type { AddressInfo } from 'node:net'

export type Wire = {
  /** Where the browser finds the server by way of this wire. */
  readonly address: string
  /** Every connection breaks, and no new one is made. */
  cut(): void
  /** The same at the moment when this much of the next request to an address that begins so has gone up. Resolves when it is cut. */
  cutWithin(path: string, bytes: number): Promise<void>
  mend(): void
  /** What goes up from now on goes no faster; null is as fast as it can. */
  slowUp(bytesPerSecond: number | null): void
  /** From now on the wire leads here, where answers may be changed on their way. */
  leadTo(server: string, change?: Change): void
  /** Requests that came, as 'POST /api/photos', oldest first, whatever became of them. */
  readonly seen: readonly string[]
  /** The most that one request carried up, in bytes. */
  heaviest(): number
  close(): Promise<void>
}

/** Another version of the server, made of the one that runs. */
export type Change = {
  /** What the running server calls an address; null is one it does not have. */
  readonly asked: (path: string) => string | null
  readonly answered: (path: string, type: string, body: Buffer) => Buffer
}

/** Lays a wire to the server whose address is given. */
export async function layWire(server: string): Promise<Wire> {
  let target = server
  let change: Change | null = null
  let whole = true
  let pace: number | null = null
  let heaviest = 0
  let knife: { path: string; bytes: number; done: () => void } | null = null
  const seen: string[] = []

  const proxy = http.createServer((request, answer) => {
    const { socket } = request
    if (!whole) return void socket.destroy()
    const path = request.url ?? '/'
    seen.push(`${request.method} ${path.split('?')[0]}`)
    const named = change ? change.asked(path) : path
    if (named === null) return void answer.writeHead(404).end('Not Found')
    const altered = change
    const headers = { ...request.headers, ...(altered && { 'accept-encoding': 'identity' }) }
    const up = http.request(new URL(named, target), { method: request.method, headers }, (down) => {
      const type = down.headers['content-type'] ?? ''
      if (!altered || !/^(text|application)\//.test(type)) {
        answer.writeHead(down.statusCode ?? 502, down.headers)
        return void down.pipe(answer)
      }
      const parts: Buffer[] = []
      down.on('data', (part: Buffer) => parts.push(part))
      down.on('end', () => {
        const { 'content-length': _length, etag: _etag, ...kept } = down.headers
        answer.writeHead(down.statusCode ?? 502, kept).end(altered.answered(path, type, Buffer.concat(parts)))
      })
    })
    up.on('error', () => socket.destroy())
    answer.on('close', () => up.destroy())
    void carryUp(request, up, path)
  })

  async function carryUp(request: http.IncomingMessage, up: http.ClientRequest, path: string): Promise<void> {
    let gone = 0
    try {
      for await (const part of request as AsyncIterable<Buffer>) {
        for (let at = 0; at < part.length; at += 8192) {
          const piece = part.subarray(at, at + 8192)
          if (pace !== null) await new Promise((resolve) => setTimeout(resolve, (piece.length / pace!) * 1000))
          up.write(piece)
          gone += piece.length
          heaviest = Math.max(heaviest, gone)
          if (knife && path.startsWith(knife.path) && gone >= knife.bytes) {
            cut()
            knife.done()
            knife = null
            return
          }
        }
      }
      up.end()
    } catch {
      up.destroy()
    }
  }

  const cut = (): void => {
    whole = false
    proxy.closeAllConnections()
  }
  await new Promise<void>((resolve) => proxy.listen(0, '127.0.0.1', resolve))
  return {
    address: `http://127.0.0.1:${(proxy.address() as AddressInfo).port}`,
    cut,
    cutWithin: (path, bytes) => new Promise((done) => { knife = { path, bytes, done } }),
    mend: () => { whole = true },
    slowUp: (bytesPerSecond) => { pace = bytesPerSecond },
    leadTo: (next, how) => {
      target = next
      change = how ?? null
      proxy.closeAllConnections()
    },
    seen,
    heaviest: () => heaviest,
    close: () => new Promise((resolve) => {
      proxy.closeAllConnections()
      proxy.close(() => resolve())
    }),
  }
}
