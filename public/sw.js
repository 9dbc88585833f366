// The worker of the student's room. It keeps copies of one signed-in person's pages for when there is no connection, and sends what
// waits on the device when the browser wakes it without a page. With a connection every page comes from the server.
/// <reference lib="webworker" />

const DEVELOPMENT = new URL(self.location.href).searchParams.has('development')
/** Nobody's: the pages shown when there is no copy. */
const SHELL = 'toeline-shell'
/** Nobody's: scripts, styles and fonts. Their names change with their content. */
const ASSETS = 'toeline-assets'
/** One person's pages; there is never more than one such cache. */
const PAGES = 'toeline-pages:'
const OFFLINE = '/offline'
const SIGN_OUT_OFFLINE = '/offline?of=sign-out'
/** Stands in the shell's cache, and is no page, while the server has not heard yet that whoever was here signed out. */
const LEFT = '/left'
const MOST_COPIES = 40
const MOST_ASSETS = 400
const FRESH_MS = 10 * 60_000
/** The name of the queue's lock and of its waking. */
const QUEUE = 'toeline-outbox'
/** Says that nobody may be there: what the worker asks does not keep a session from going idle. */
const BY_ITSELF = { 'x-toeline-by-itself': '1' }
/** A network that has not answered for this long is none. */
const PATIENCE_MS = DEVELOPMENT ? 60_000 : 10_000

const KEEPABLE = /^\/learn(\/waiting|\/[0-9a-f-]{36}\/[0-9a-f-]{36}(\/log)?)?$/
/** Whoever stands at one of these is nobody yet, so the copies of whoever was here before go. */
const DOORS = /^\/(sign-in|join|set-up|tablet)(\/|$)/
const PERSON = /<meta name="toeline-person" content="([0-9a-f-]{36})"/

/** Raised when copies are dropped: a page that was on its way before that is not kept after it. */
let era = 0

self.addEventListener('install', (event) => {
  event.waitUntil(keepShell().then(() => self.skipWaiting()))
})

self.addEventListener('activate', (event) => {
  event.waitUntil(Promise.all([self.clients.claim(), self.registration.navigationPreload?.enable()]))
})

self.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  if (url.origin !== self.location.origin) return
  if (request.method === 'POST' && url.pathname === '/api/sign-out') return leave(event)
  if (request.method === 'POST' && DOORS.test(url.pathname)) event.waitUntil(forgetLeft()) // whoever signs in is somebody else's session
  if (request.method !== 'GET') return
  if (request.mode === 'navigate') event.respondWith(page(event, url))
  else if (url.pathname.startsWith('/_next/static/')) event.respondWith(asset(request))
  else if (isMove(request)) event.respondWith(fetch(request).catch(() => new Response('', { headers: { 'Content-Type': 'text/plain' } })))
})

/** A move inside the application. When it fails, an answer that is no page data makes the application load the whole page: its copy. */
function isMove({ headers }) {
  return headers.has('rsc') && !headers.has('next-router-prefetch') && !headers.has('next-router-segment-prefetch')
}

self.addEventListener('message', (event) => {
  const { type, person, paths } = event.data ?? {}
  if (type === 'keep') event.waitUntil(keep(person, paths, false))
  if (type === 'renew') event.waitUntil(keep(person, paths, true))
})

// ---- pages

async function page(event, url) {
  const network = signOutLate().then(async (late) => (late ? undefined : await event.preloadResponse) ?? fetch(event.request))
  network.catch(() => undefined) // awaited below, after the copy was looked for
  if (DOORS.test(url.pathname)) await dropPages()
  const copy = await findCopy(url.pathname)
  try {
    const response = await (copy ? Promise.race([network, patience()]) : network)
    if (copy && [502, 503, 504].includes(response.status)) return copy
    event.waitUntil(note(url, response.clone(), era))
    return response
  } catch {
    return copy ?? (await caches.match(OFFLINE, { cacheName: SHELL, ignoreVary: true })) ?? Response.error()
  }
}

function patience() {
  return new Promise((_resolve, reject) => setTimeout(() => reject(new Error('The network does not answer.')), PATIENCE_MS))
}

async function findCopy(path) {
  for (const name of await caches.keys()) {
    const copy = name.startsWith(PAGES) ? await caches.match(path, { cacheName: name, ignoreVary: true }) : undefined
    if (copy) return copy
  }
  return undefined
}

/** Looks at a page that came from the server: whose it is, and whether a copy is to be kept. Returns its text when it was kept. */
async function note(url, response, since) {
  if (!response.ok || response.redirected || !response.headers.get('content-type')?.startsWith('text/html')) return null
  const html = await response.text()
  const person = PERSON.exec(html)?.[1]
  if (!person) return null
  await keepOnly(person)
  if (since !== era || url.search !== '' || !KEEPABLE.test(url.pathname)) return null
  const cache = await caches.open(PAGES + person)
  await cache.put(url.pathname, copyOf(html, response))
  for (const old of (await cache.keys()).slice(0, -MOST_COPIES)) await cache.delete(old)
  return html
}

/** The page with its own headers, among them the policy that carries its nonce, and a mark that says from when it is. */
function copyOf(html, response) {
  const headers = new Headers(response.headers)
  for (const name of ['content-encoding', 'content-length']) headers.delete(name)
  const when = new Date().toISOString()
  headers.set('x-kept-at', when)
  return new Response(html.replace('</head>', `<meta name="toeline-copy" content="${when}"/></head>`), { status: 200, headers })
}

/** Drops every copy that is not this person's. */
async function keepOnly(person) {
  for (const name of await caches.keys()) {
    if (!name.startsWith(PAGES) || name === PAGES + person) continue
    era += 1
    await caches.delete(name)
  }
}

async function dropPages() {
  era += 1
  await keepOnly(null)
}

function leave(event) {
  if (self.navigator.onLine) event.waitUntil(dropPages().then(forgetLeft))
  else event.respondWith(leaveOffline())
}

async function leaveOffline() {
  await dropPages()
  await (await caches.open(SHELL)).put(LEFT, new Response())
  await self.registration.sync?.register(QUEUE).catch(() => undefined)
  return (await caches.match(SIGN_OUT_OFFLINE, { cacheName: SHELL, ignoreVary: true })) ?? Response.error()
}

/** Tells the server of a signing out that it could not hear of; true when there was one. Throws while it still cannot: then nothing of the server's is opened. */
async function signOutLate() {
  if (!(await caches.match(LEFT, { cacheName: SHELL }))) return false
  const answer = await fetch('/api/sign-out', { method: 'POST', redirect: 'manual' })
  if (answer.type !== 'opaqueredirect') throw new Error('The server did not take it.')
  await forgetLeft()
  return true
}

async function forgetLeft() {
  await (await caches.open(SHELL)).delete(LEFT)
}

// ---- keeping pages before they are asked for

/** Keeps copies of these pages for this person, one after the other; a fresh one is left alone unless it is to be renewed. */
async function keep(person, paths, renew) {
  if (typeof person !== 'string' || !Array.isArray(paths)) return
  await keepOnly(person)
  const pages = []
  for (const path of paths.slice(0, MOST_COPIES)) {
    if (!KEEPABLE.test(path)) continue
    const standing = await findCopy(path)
    if (!renew && standing && isFresh(standing)) continue
    const since = era
    const response = await fetch(path, { headers: { accept: 'text/html', ...BY_ITSELF } }).catch(() => null)
    if (!response) return // no connection: what is kept is kept
    if (response.redirected && DOORS.test(new URL(response.url).pathname)) return dropPages()
    const html = await note(new URL(path, self.location.origin), response, since)
    if (html) pages.push(html)
  }
  const shell = await caches.match(OFFLINE, { cacheName: SHELL, ignoreVary: true })
  if (!shell || !isFresh(shell)) await keepShell().catch(() => undefined)
  if (pages.length > 0) await keepAssets(pages)
  await prune()
}

/** A copy from the future is one of a clock that was wrong. */
function isFresh(copy) {
  return Math.abs(Date.now() - Date.parse(copy.headers.get('x-kept-at'))) < FRESH_MS
}

async function keepShell() {
  const pages = []
  const cache = await caches.open(SHELL)
  for (const path of [OFFLINE, SIGN_OUT_OFFLINE]) {
    const response = await fetch(path, { headers: { accept: 'text/html' } })
    if (!response.ok) throw new Error(`The page ${path} does not answer.`)
    const html = await response.text()
    await cache.put(path, copyOf(html, response))
    pages.push(html)
  }
  await keepAssets(pages)
}

// ---- scripts, styles, fonts

async function asset(request) {
  const cache = await caches.open(ASSETS)
  const kept = () => cache.match(request, { ignoreSearch: true, ignoreVary: true })
  if (!DEVELOPMENT) {
    const found = await kept()
    if (found) return unnamed(found)
  }
  try {
    const response = await fetch(request)
    if (response.ok) await cache.put(request, response.clone())
    return unnamed(response)
  } catch {
    const found = await kept()
    return found ? unnamed(found) : Response.error()
  }
}

/** Without the address it came from: a photo's worker reads what to load from the address it was asked by, behind its #. */
function unnamed(response) {
  const headers = new Headers(response.headers)
  for (const name of ['content-encoding', 'content-length']) headers.delete(name)
  return new Response(response.body, { status: response.status, statusText: response.statusText, headers })
}

/** Everything these pages load, also what their scripts and styles name and load only later. Returns the addresses. */
async function keepAssets(pages) {
  const cache = await caches.open(ASSETS)
  const seen = new Set()
  const left = pages.flatMap((html) => namesIn(html, '/'))
  while (left.length > 0 && seen.size < MOST_ASSETS) {
    const path = left.shift()
    if (seen.has(path)) continue
    seen.add(path)
    let response = await cache.match(path, { ignoreSearch: true, ignoreVary: true })
    if (!response) {
      response = await fetch(path).catch(() => null)
      if (!response?.ok) continue
      await cache.put(path, response.clone())
    }
    if (/\.(js|css)$/.test(path)) left.push(...namesIn(await response.text(), path))
  }
  return seen
}

function namesIn(text, base) {
  const named = [...text.matchAll(/(?:\/_next\/)?static\/(?:chunks|css|media)\/[\w.~%@/[\]-]+\.(?:js|css|woff2)/g)].map(([name]) => (name.startsWith('/') ? name : `/_next/${name}`))
  if (!base.endsWith('.css')) return named
  const inStyles = [...text.matchAll(/url\(["']?([^)"']+\.woff2)["']?\)/g)].map(([, name]) => new URL(name, self.location.origin + base).pathname)
  return [...named, ...inStyles]
}

/** After many deployments: drops the files that no kept page uses any more. */
async function prune() {
  const cache = await caches.open(ASSETS)
  const files = await cache.keys()
  if (files.length <= MOST_ASSETS) return
  const pages = []
  for (const name of await caches.keys()) {
    if (name !== SHELL && !name.startsWith(PAGES)) continue
    const copies = await caches.open(name)
    for (const request of await copies.keys()) pages.push(await (await copies.match(request, { ignoreVary: true })).text())
  }
  const used = await keepAssets(pages)
  for (const file of files) if (!used.has(new URL(file.url).pathname)) await cache.delete(file)
}

// ---- sending without a page (where the browser wakes the worker when the connection is back)

self.addEventListener('sync', (event) => {
  if (event.tag === QUEUE) event.waitUntil(wake().then(signOutLate))
})

/** A page that is open sends by its own rules. Without one the worker sends, records what was taken, and leaves every other answer to the next page. */
async function wake() {
  const open = (await self.clients.matchAll({ type: 'window' })).filter(({ url }) => new URL(url).pathname.startsWith('/learn')) // only these send
  if (open.length > 0) return open.forEach((client) => client.postMessage({ type: 'send' }))
  await self.navigator.locks.request(QUEUE, async () => {
    const database = await asked(self.indexedDB.open('toeline'))
    try {
      if (!database.objectStoreNames.contains('outbox')) return
      for (const entry of await asked(database.transaction('outbox').objectStore('outbox').getAll())) await sendEntry(database, entry)
    } finally {
      database.close()
    }
  })
}

async function sendEntry(database, { seq }) {
  const entry = await asked(database.transaction('outbox').objectStore('outbox').get(seq))
  if (entry?.state !== 'waiting') return
  /** Changes it where it still is: a page may have thrown it away meanwhile. */
  const change = async (part) => {
    const store = database.transaction('outbox', 'readwrite').objectStore('outbox')
    const kept = await asked(store.get(seq))
    if (kept) await asked(store.put({ ...kept, ...part(kept) }))
  }
  if (entry.number === null) {
    const body = JSON.stringify({ schema: entry.schema, personId: entry.personId, sentAt: new Date().toISOString(), coupon: entry.payload })
    const answer = await taken('/api/intake/coupons', 'application/json', body)
    if (!answer) return
    await change(() => ({ number: answer.value.number }))
  }
  for (const photo of entry.photos) {
    const of = new URLSearchParams({ coupon: entry.id, id: photo.id, person: entry.personId })
    if (photo.measurement !== undefined || !(await taken(`/api/photos?${of}`, photo.blob.type, photo.blob))) return
    await change(({ photos }) => ({ photos: photos.filter(({ id }) => id !== photo.id) }))
  }
  await asked(database.transaction('outbox', 'readwrite').objectStore('outbox').delete(seq))
}

/** The answer when the server has it; null when it read it and said no; throws when nothing more can be sent now. */
async function taken(path, type, body) {
  const response = await fetch(path, { method: 'POST', body, headers: { 'Content-Type': type, ...BY_ITSELF } })
  const answer = await response.json()
  if (answer.ok === true) return answer
  if (response.status === 401 || response.status >= 500) throw new Error('Nothing can be sent now.')
  return null
}

function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
}
