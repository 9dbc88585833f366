// A small S3-compatible store for tests: it keeps objects in memory and lets in only what is signed, working the signature out anew
// from the published recipe (AWS Signature Version 4, "Authenticating Requests: Using the Authorization Header").
import { createHash, createHmac } from 'node:crypto'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'

const KEYS = { accessKeyId: 'AKTEST', secretAccessKey: 'a secret key of the test store' }
const REGION = 'test-1'
const BUCKET = 'coupon-photos'

const hex = (bytes: Buffer | string): string => createHash('sha256').update(bytes).digest('hex')
const hmac = (key: Buffer | string, text: string): Buffer => createHmac('sha256', key).update(text).digest()

/** The signature that belongs to a request, from its method, address, signed headers and payload hash. */
function signatureOf(request: IncomingMessage, signedHeaders: string): string {
  const [path = '/', query = ''] = (request.url ?? '/').split('?')
  const headers = signedHeaders.split(';').map((name) => `${name}:${String(request.headers[name]).trim().replace(/\s+/g, ' ')}\n`).join('')
  const canonical = [request.method, path, query, headers, signedHeaders, request.headers['x-amz-content-sha256']].join('\n')
  const time = String(request.headers['x-amz-date'])
  const day = time.slice(0, 8)
  const toSign = ['AWS4-HMAC-SHA256', time, `${day}/${REGION}/s3/aws4_request`, hex(canonical)].join('\n')
  const key = ['s3', 'aws4_request'].reduce((from, part) => hmac(from, part), hmac(hmac(`AWS4${KEYS.secretAccessKey}`, day), REGION))
  return hmac(key, toSign).toString('hex')
}

function isSigned(request: IncomingMessage): boolean {
  const found = /^AWS4-HMAC-SHA256 Credential=([^/]+)\/(\d{8})\/([^/]+)\/s3\/aws4_request, SignedHeaders=([^,]+), Signature=([0-9a-f]{64})$/.exec(request.headers.authorization ?? '')
  if (!found) return false
  const [, accessKeyId, , region, signedHeaders = '', signature] = found
  const required = ['host', 'x-amz-content-sha256', 'x-amz-date'].every((name) => signedHeaders.split(';').includes(name))
  return required && accessKeyId === KEYS.accessKeyId && region === REGION && signature === signatureOf(request, signedHeaders)
}

export type TestStore = {
  readonly settings: { readonly endpoint: string; readonly bucket: string; readonly region: string; readonly accessKeyId: string; readonly secretAccessKey: string }
  readonly objects: Map<string, { readonly bytes: Buffer; readonly type: string }>
  /** Requests that arrived, as 'PUT /bucket/key 200'. */
  readonly seen: string[]
  /** Answers this instead of working, once or until it is taken away: a status and an S3 error code; 'hang up' closes the connection. */
  trouble: { readonly status: number; readonly code: string; readonly once?: true } | 'hang up' | null
  readonly close: () => Promise<void>
}

/** Starts the store on a free port of this machine. */
export async function startStore(): Promise<TestStore> {
  const objects: TestStore['objects'] = new Map()
  const seen: string[] = []
  const server: Server = createServer((request, response) => void receive(request, response))
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const store: TestStore = {
    settings: { endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, bucket: BUCKET, region: REGION, ...KEYS },
    objects, seen, trouble: null,
    close: () => new Promise((done) => {
      server.closeAllConnections()
      server.close(() => done())
    }),
  }

  async function receive(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const parts: Buffer[] = []
    for await (const part of request) parts.push(part as Buffer)
    const bytes = Buffer.concat(parts)
    const say = (status: number, body: string | Buffer = '', headers: Record<string, string> = {}): void => {
      seen.push(`${request.method} ${request.url} ${status}`)
      response.writeHead(status, headers).end(body)
    }
    const deny = (status: number, code: string): void => say(status, `<?xml version="1.0"?><Error><Code>${code}</Code></Error>`)
    const { trouble } = store
    if (trouble === 'hang up') return void request.socket.destroy()
    if (trouble?.once) store.trouble = null
    if (trouble) return deny(trouble.status, trouble.code)
    if (!isSigned(request)) return deny(403, 'SignatureDoesNotMatch')
    if (!request.url?.startsWith(`/${BUCKET}/`)) return deny(404, 'NoSuchBucket')
    if (request.method === 'PUT') {
      if (hex(bytes) !== request.headers['x-amz-content-sha256']) return deny(400, 'XAmzContentSHA256Mismatch')
      objects.set(request.url, { bytes, type: request.headers['content-type'] ?? '' })
      return say(200)
    }
    const object = objects.get(request.url)
    if (!object) return deny(404, 'NoSuchKey')
    return say(200, object.bytes, { 'Content-Type': object.type, 'Content-Length': String(object.bytes.length) })
  }
  return store
}
