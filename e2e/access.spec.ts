import type { Page } from '@playwright/test'
import { as, CLEAN, DESK, expect, expectGoodScreen, logCoupon, newcomer, openLog, PEOPLE, signIn, stranger, TABLET, test } from './app'

/** Well formed, and nobody's. */
const NOBODYS = '01a00000-0000-7000-8000-000000000000'

type Seen = { readonly status: number; readonly title: string; readonly text: string }

/** What a visitor of an address can tell. */
async function visit(page: Page, address: string): Promise<Seen> {
  const answer = await page.goto(address)
  return { status: answer?.status() ?? 0, title: await page.title(), text: (await page.locator('body').innerText()).trim() }
}

test('an address that is someone else’s looks like one that is nobody’s, in every room', async ({ browser }) => {
  test.slow()
  const { page: owner } = await newcomer(browser)
  await openLog(owner)
  const log = new URL(owner.url()).pathname
  const [, , classId = '', exerciseId = ''] = log.split('/')
  const couponId = await logCoupon(owner, CLEAN)

  const teacher = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  await teacher.goto(`/teach/classes/${classId}`)
  const studentHref = await teacher.getByRole('rowheader').getByRole('link').first().getAttribute('href') ?? ''

  const asStudent = await as(browser, PEOPLE.stickStudent)
  const asTeacher = await as(browser, PEOPLE.stick, { viewport: TABLET })
  const nowhere = await visit(asStudent, '/nowhere/at/all')
  expect(nowhere.status).toBe(404)
  expect(nowhere.text).toContain('Not here, or not yours to see')
  await expectGoodScreen(asStudent)

  const addresses: readonly { readonly mine: Page; readonly other: Page; readonly path: string; readonly same: readonly string[] }[] = [
    { mine: owner, other: asStudent, path: `/learn/coupons/${couponId}`, same: [`/learn/coupons/${NOBODYS}`, '/learn/coupons/nonsense'] },
    { mine: owner, other: asStudent, path: `/learn/${classId}/${exerciseId}`, same: [`/learn/${classId}/${NOBODYS}`, `/learn/${NOBODYS}/${exerciseId}`, '/learn/a/b'] },
    { mine: owner, other: asStudent, path: log, same: [`/learn/${NOBODYS}/${NOBODYS}/log`, '/learn/a/b/log'] },
    { mine: teacher, other: asTeacher, path: `/teach/classes/${classId}`, same: [`/teach/classes/${NOBODYS}`, '/teach/classes/nonsense'] },
    { mine: teacher, other: asTeacher, path: `/teach/coupons/${couponId}`, same: [`/teach/coupons/${NOBODYS}`, '/teach/coupons/nonsense'] },
    { mine: teacher, other: asTeacher, path: studentHref, same: [`/teach/students/${NOBODYS}`, '/teach/students/nonsense'] },
    // Other rooms, by role.
    { mine: teacher, other: asStudent, path: '/teach', same: [] },
    { mine: teacher, other: asStudent, path: `/teach/coupons/${couponId}`, same: [] },
    { mine: owner, other: asTeacher, path: '/learn', same: [] },
    { mine: owner, other: asTeacher, path: `/learn/coupons/${couponId}`, same: [] },
  ]
  for (const { mine, other, path, same } of addresses) {
    const control = await visit(mine, path)
    expect(control.status, `${path} is there for the one it belongs to`).toBe(200)
    expect(control.text).not.toContain('Not here, or not yours to see')
    for (const address of [path, ...same]) expect(await visit(other, address), address).toEqual(nowhere)
  }
})

test('a photo is sent to those who may see its coupon, and to nobody else', async ({ browser }) => {
  const { page: owner } = await newcomer(browser)
  await openLog(owner)
  await owner.getByLabel('Photo').setInputFiles({ name: 'coupon.png', mimeType: 'image/png', buffer: ONE_PIXEL })
  await logCoupon(owner, CLEAN)
  const photo = await owner.getByRole('img', { name: 'Coupon 1, photo 1' }).getAttribute('src') ?? ''
  const seen = await owner.request.get(photo)
  expect(seen.status()).toBe(200)
  expect(seen.headers()['content-type']).toBe('image/webp')
  const teacher = await as(browser, PEOPLE.selfShielded)
  expect((await teacher.request.get(photo)).status()).toBe(200)

  const nothing = await (await as(browser, PEOPLE.stickStudent)).request.get(`/api/photos/${NOBODYS}`)
  expect(nothing.status()).toBe(404)
  for (const other of [await as(browser, PEOPLE.stickStudent), await as(browser, PEOPLE.stick), await stranger(browser)]) {
    const refused = await other.request.get(photo)
    expect(refused.status()).toBe(404)
    expect(await refused.text()).toBe(await nothing.text())
  }
})

test('whoever is signed out is led to the door, and through it to where they were going', async ({ browser }) => {
  const page = await stranger(browser, { viewport: TABLET })
  const teacher = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  await teacher.goto('/teach')
  const address = await teacher.getByRole('main').getByRole('link').first().getAttribute('href') ?? ''
  for (const path of ['/learn', '/teach', '/program', '/account', `/learn/coupons/${NOBODYS}`, address]) {
    await page.goto(path)
    expect(page.url()).toContain(`/sign-in?back=${encodeURIComponent(path)}`)
  }
  await signIn(page, PEOPLE.selfShielded)
  await page.waitForURL(`**${address}`)
})

test('a coupon cannot be sent from another site, nor for a class one is not in', async ({ browser, baseURL }) => {
  const { page } = await newcomer(browser)
  await openLog(page)
  const [, , classId = '', exerciseId = ''] = new URL(page.url()).pathname.split('/')
  const send = (of: Page, headers: Record<string, string>) => of.request.post('/api/intake/coupons', { data: { id: NOBODYS, classId, exerciseId }, headers })
  const own = new URL(baseURL ?? page.url()).origin
  expect((await send(page, { origin: own })).status(), 'a half-filled coupon of their own is looked at').toBe(422)
  expect((await send(page, { origin: 'https://elsewhere.example' })).status()).toBe(404)
  expect((await send(page, { origin: own, 'sec-fetch-site': 'cross-site' })).status()).toBe(404)
  expect((await send(await as(browser, PEOPLE.stickStudent), { origin: own })).status()).toBe(404)
  expect((await send(await stranger(browser), { origin: own })).status()).toBe(401)
})

test('pages forbid framing, sniffing and leaking addresses, and the session cookie is out of reach of scripts', async ({ browser }) => {
  const page = await stranger(browser, { viewport: DESK })
  const headers = (await page.goto('/sign-in'))?.headers() ?? {}
  expect(headers['x-frame-options']).toBe('DENY')
  expect(headers['x-content-type-options']).toBe('nosniff')
  expect(headers['referrer-policy']).toBe('same-origin')
  expect(headers['cross-origin-opener-policy']).toBe('same-origin')
  expect(headers['x-powered-by']).toBeUndefined()
  const policy = directives(headers['content-security-policy'] ?? '')
  expect(policy['frame-ancestors']).toEqual(["'none'"])
  expect(policy['object-src']).toEqual(["'none'"])
  expect(policy['base-uri']).toEqual(["'none'"])
  expect(policy['form-action']).toEqual(["'self'"])
  expect(policy['script-src']).not.toContain("'unsafe-inline'")
  expect(policy['script-src']?.some((source) => /^'nonce-.{20,}'$/.test(source))).toBe(true)
  const again = directives((await page.goto('/sign-in'))?.headers()['content-security-policy'] ?? '')
  expect(again['script-src'], 'a nonce is used once').not.toEqual(policy['script-src'])

  await signIn(page, PEOPLE.jimena)
  await page.waitForURL('**/learn')
  const session = (await page.context().cookies()).find(({ name }) => name.endsWith('toeline.session'))
  expect(session).toMatchObject({ httpOnly: true, sameSite: 'Lax', path: '/' })
  expect(await page.evaluate(() => document.cookie)).not.toContain('toeline.session')
})

test('no inline script or style runs on the production build (a development server, asked by TOELINE_E2E_URL, needs both)', async ({ browser }) => {
  const page = await browser.newPage() // its console is not listened to: it will complain
  const policy = directives((await page.goto('/sign-in'))?.headers()['content-security-policy'] ?? '')
  test.skip(Boolean(process.env.TOELINE_E2E_URL) && policy['script-src']?.includes("'unsafe-eval'") === true, 'this is a development server')
  for (const sources of Object.values(policy)) {
    expect(sources).not.toContain("'unsafe-inline'")
    expect(sources).not.toContain("'unsafe-eval'")
  }
  // What markup that slipped past our escaping could carry: a handler on an element, and a style. The error itself must come,
  // or a handler that stayed silent would prove nothing.
  const outcome = await page.evaluate(async () => {
    document.body.insertAdjacentHTML('beforeend', '<img id="planted" src="data:," onerror="window.injected = true"><p id="dressed" style="color: rgb(1, 2, 3)">x</p>')
    const image = document.querySelector('#planted')
    await new Promise((resolve) => image?.addEventListener('error', resolve))
    const dressed = document.querySelector('#dressed')
    return { ran: 'injected' in window, colour: dressed ? getComputedStyle(dressed).color : null }
  })
  expect(outcome.ran).toBe(false)
  expect(outcome.colour).toMatch(/^rgb/)
  expect(outcome.colour).not.toBe('rgb(1, 2, 3)')
})

function directives(policy: string): Record<string, string[]> {
  return Object.fromEntries(policy.split(';').map((part) => part.trim().split(/\s+/)).map(([name = '', ...sources]) => [name, sources]))
}

/** The smallest PNG. */
const ONE_PIXEL = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNk+A8AAQUBAScY42YAAAAASUVORK5CYII=', 'base64')
