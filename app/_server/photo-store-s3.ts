import 'server-only'
import { AwsClient } from 'aws4fetch'
import type { PhotoStoreSettings } from './env'
import type { PhotoStore } from './photo-store'
import { StoreDown } from './store-down'

/** A store that has not answered by then is down; a class waits for it. */
const PATIENCE_MS = 15_000
/** Answers of 429 and 5xx are asked again so often. */
const RETRIES = 2

/**
 * Photos in a bucket of an S3-compatible store, addressed as endpoint/bucket/key, signed with AWS Signature Version 4. The bucket
 * stays private: photos leave it through this server only. A PUT is all or nothing, and carries the hash of its bytes for the
 * store to check.
 */
export function s3Store({ endpoint, bucket, region, accessKeyId, secretAccessKey }: PhotoStoreSettings): PhotoStore {
  const client = new AwsClient({ accessKeyId, secretAccessKey, region, service: 's3', retries: RETRIES })
  const address = (sha256: string): string => `${endpoint.replace(/\/+$/, '')}/${bucket}/photos/${sha256.slice(0, 2)}/${sha256}.webp`

  async function ask(sha256: string, init: RequestInit & { readonly method: string }): Promise<Response> {
    // Only until it answers: a picture on its way to a slow phone may take its time.
    const patience = new AbortController()
    const alarm = setTimeout(() => patience.abort(), PATIENCE_MS)
    try {
      return await client.fetch(address(sha256), { ...init, redirect: 'error', signal: patience.signal })
    } catch (error) {
      throw new StoreDown(`The photo store at ${endpoint} does not answer.`, { cause: error })
    } finally {
      clearTimeout(alarm)
    }
  }
  const refused = async (answer: Response, doing: string): Promise<StoreDown> => {
    const [, code = 'no code'] = /<Code>([^<]*)<\/Code>/.exec(await answer.text().catch(() => '')) ?? []
    return new StoreDown(`The photo store at ${endpoint} refused to ${doing}: ${answer.status}, ${code}.`)
  }

  return {
    async put(sha256, bytes) {
      const answer = await ask(sha256, {
        method: 'PUT', body: new Uint8Array(bytes), headers: { 'Content-Type': 'image/webp', 'X-Amz-Content-Sha256': sha256 },
      })
      if (!answer.ok) throw await refused(answer, 'keep a photo')
      await answer.body?.cancel()
    },
    async get(sha256) {
      const answer = await ask(sha256, { method: 'GET' })
      if (answer.ok && answer.body) return { body: answer.body, byteSize: Number(answer.headers.get('content-length')) || null }
      const problem = await refused(answer, 'give a photo')
      // A bucket that is not there is a mistake of the set-up, not a photo that is gone.
      if (answer.status === 404 && !problem.message.includes('NoSuchBucket')) return null
      throw problem
    },
  }
}
