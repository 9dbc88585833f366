// A device that is not as it should be: no storage or none left, a clock that is wrong, photos far too large for the link, nobody there any more.
import sharp from 'sharp'
import { as, couponNumber, expect, expectGoodScreen, newcomer, openLog, PEOPLE, sendButton, signIn, signOut, test, type Person } from './app'
import { choosePhoto, intakeAnswers, logHere, newcomerWhoLogs, nothingWaits, openKeptLog, photoOf, photosTaken, saved } from './queue'
import { layWire } from './wire'
import type { Page } from '@playwright/test'

let student: Person

test.beforeAll(async ({ browser }) => {
  student = await newcomerWhoLogs(browser)
})

const NO_STORAGE = {
  'has none': () => Object.defineProperty(window, 'indexedDB', { value: undefined }),
  'is refused it': () => { IDBFactory.prototype.open = () => { throw new DOMException('Not in a private window.', 'SecurityError') } },
  'never opens it': () => { IDBFactory.prototype.open = () => new EventTarget() as IDBOpenDBRequest },
}
for (const [how, script] of Object.entries(NO_STORAGE)) {
  test(`a browser that ${how} as storage sends straight away, and says what waits on the page alone`, async ({ browser }) => {
    const page = await as(browser, student)
    const context = page.context()
    await page.addInitScript(script)
    await openLog(page)
    const answers = intakeAnswers(page)
    await page.getByLabel(/^Note to yourself/).fill('Straight away')
    await sendButton(page).click()
    await couponNumber(page)
    await openLog(page)
    await context.setOffline(true)
    await page.getByLabel(/^Note to yourself/).fill('On the page alone')
    await sendButton(page).click()
    await expect(page.getByText('Waiting on this page', { exact: true })).toBeVisible()
    await expect(page.getByText('1 coupon waits on this page for a connection.')).toBeVisible()
    await expect(page.getByText('Keep this page open until everything is sent.')).toBeVisible()
    await expect(page.getByText(/Saved on this device|You can close this page/)).toHaveCount(0)
    if (how === 'is refused it') await expectGoodScreen(page, { gloves: true })

    // Left all the same: the browser asks, and what was typed comes back under the coupon's own id.
    let asked = ''
    page.once('dialog', (dialog) => {
      asked = dialog.type()
      void dialog.accept()
    })
    await context.route('**/api/intake/coupons', (route) => route.abort('internetdisconnected'))
    await context.setOffline(false)
    await page.reload()
    expect(asked).toBe('beforeunload')
    await context.unroute('**/api/intake/coupons')
    await expect(page.getByLabel(/^Note to yourself/)).toHaveValue('On the page alone')
    await sendButton(page).click()
    await couponNumber(page)
    expect(answers.map(({ note, created }) => [note, created])).toEqual([['Straight away', true], ['On the page alone', true]])
  })
}

test('a device with no room for the photo keeps the coupon without it and sends it later', async ({ browser }) => {
  const page = await as(browser, student)
  const context = page.context()
  await openLog(page)
  const answers = intakeAnswers(page)
  const wire = await context.newCDPSession(page)
  await wire.send('Storage.overrideQuotaForOrigin', { origin: new URL(page.url()).origin, quotaSize: (await page.evaluate(async () => (await navigator.storage.estimate()).usage ?? 0)) + 300_000 })
  await context.setOffline(true)
  await choosePhoto(page, await photoOf('#c01818', { width: 2000, height: 1500, noisy: true }))
  await page.getByLabel(/^Note to yourself/).fill('No room for the picture')
  await sendButton(page).click()
  const full = page.getByRole('alert').filter({ hasText: 'This device’s storage is full' })
  await expect(full).toContainText('The coupon and its photo do not fit')
  await full.getByRole('button', { name: 'Send without the photo' }).click()
  await expect(saved(page)).toBeVisible()
  await context.setOffline(false)
  await expect.poll(() => answers.map(({ note }) => note)).toEqual(['No room for the picture'])
})

/** The day a coupon's page says it was welded. */
async function dayOf(page: Page): Promise<string> {
  await couponNumber(page)
  return (await page.getByText(/^No\. \d+ · /).innerText()).replace(/^No\. \d+ · /i, '').replace(/,? *\d+:.*$/, '')
}

test('a clock wrong by a day, either way, moves no coupon to another day', async ({ browser }) => {
  const page = await as(browser, student)
  const context = page.context()
  await openLog(page)
  await page.getByLabel(/^Note to yourself/).fill('By the right clock')
  await sendButton(page).click()
  const days = new Set([await dayOf(page)])
  const answers = intakeAnswers(page)
  const wrong: string[] = []
  for (const ahead of [1, -1]) {
    const off = await context.newPage()
    await off.clock.setSystemTime(Date.now() + ahead * 24 * 3600_000)
    await openLog(off)
    await context.setOffline(true)
    await logHere(off, `A clock off by ${ahead}`)
    await expect(off.getByText(/^Logged /)).toBeVisible()
    await context.setOffline(false)
    await expect(off.getByText('The coupon has arrived.')).toBeVisible()
    await off.getByRole('link', { name: 'See the result' }).click()
    wrong.push(await dayOf(off))
    await off.close()
  }
  await openLog(page)
  await page.getByLabel(/^Note to yourself/).fill('And again by the right one')
  await sendButton(page).click()
  days.add(await dayOf(page))
  for (const day of wrong) expect([...days]).toContain(day)
  expect(answers.map(({ number }) => number - answers[0]!.number)).toEqual([0, 1, 2])
})

test('five photos of twelve megabytes on a slow link go small, one after the other, while the form goes on', async ({ browser, baseURL }) => {
  test.slow()
  const grain = await sharp({ create: { width: 500, height: 500, channels: 3, background: '#808080', noise: { type: 'gaussian', mean: 128, sigma: 9 } } }).png().toBuffer()
  const huge = await sharp({ create: { width: 4000, height: 3000, channels: 3, background: '#808080' } }).composite([{ input: grain, tile: true }])
    .jpeg({ quality: 96, chromaSubsampling: '4:4:4' }).toBuffer()
  expect(huge.length).toBeGreaterThan(11_000_000)
  expect(huge.length).toBeLessThan(15 * 1024 * 1024)
  const wire = await layWire(baseURL!)
  const page = await as(browser, student, { server: wire.address })
  await openLog(page)
  const answers = intakeAnswers(page)
  const photos = photosTaken(page.context())
  await page.waitForLoadState('networkidle') // what the form says without a connection is fetched ahead
  wire.cut()
  for (let n = 1; n <= 5; n += 1) {
    await logHere(page, `Large ${n}`, huge) // as large as it is: what makes it small cannot be fetched now
    await page.getByRole('button', { name: 'Log the next one' }).click()
  }
  wire.slowUp(250_000)
  wire.mend()
  await page.evaluate(() => window.dispatchEvent(new Event('online')))
  await expect(page.getByText(/^Sending \d coupons?$/)).toBeVisible()
  await page.getByLabel(/^Note to yourself/).fill('Behind the large ones')
  await sendButton(page).click()
  await expect(saved(page)).toBeVisible({ timeout: 6000 })
  await expect(page.getByText(/safe here and on its way, after those logged before it/)).toBeVisible()
  await expect(page.getByText('There is no connection now')).toHaveCount(0)
  await expect.poll(() => answers.length, { timeout: 60_000 }).toBe(6)
  await page.goto('/learn/waiting')
  await expect(nothingWaits(page)).toBeVisible()
  expect(answers.map(({ note, created }) => [note, created])).toEqual([...[1, 2, 3, 4, 5].map((n) => [`Large ${n}`, true]), ['Behind the large ones', true]])
  expect(new Set(photos).size).toBe(5)
  expect(photos).toHaveLength(5)
  expect(wire.heaviest(), 'of each photo').toBeLessThan(2_500_000)

  // With a connection the button pressed at once waits until the photo is small.
  await openLog(page)
  await choosePhoto(page, huge)
  await sendButton(page).click()
  await couponNumber(page)
  await expect.poll(() => photos.length, { timeout: 20_000 }).toBe(6)
  expect(wire.heaviest()).toBeGreaterThan(20_000)
  expect(wire.heaviest()).toBeLessThan(2_500_000)
  await page.context().close()
  await wire.close()
})

test('a photo on its side by its metadata is upright on the way and on the coupon', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await page.context().setOffline(true)
  const side = await sharp({ create: { width: 1200, height: 800, channels: 3, background: '#18a018' } }).withMetadata({ orientation: 6 }).jpeg().toBuffer()
  const photos = photosTaken(page.context())
  await logHere(page, 'On its side', side)
  await page.context().setOffline(false)
  await expect.poll(() => photos.length).toBe(1)
  await page.getByRole('link', { name: 'See the result' }).click()
  const shown = page.getByRole('img', { name: /^Coupon \d+, photo 1$/ })
  await expect(shown).toHaveCount(1)
  await shown.scrollIntoViewIfNeeded()
  await expect.poll(() => shown.evaluate((element) => [(element as HTMLImageElement).naturalWidth, (element as HTMLImageElement).naturalHeight])).toEqual([800, 1200])
})

test('who signs out without a connection leaves nothing open, and loses nothing that waits', async ({ browser }) => {
  test.slow()
  const { page: first, person: leaver } = await newcomer(browser) // the session ends here
  await first.context().close()
  const page = await openKeptLog(browser, leaver)
  const context = page.context()
  const answers = intakeAnswers(page)
  const photos = photosTaken(context)
  await context.setOffline(true)
  await logHere(page, 'Left waiting', await photoOf('#1818c0'))
  await signOut(page)
  await expect(page.getByRole('heading', { level: 1, name: 'Not signed out yet' })).toBeVisible()
  await expect(page.getByText(/What you logged and did not send yet stays here/)).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await page.goto('/learn')
  await expect(page.getByRole('heading', { level: 1, name: 'No connection' })).toBeVisible()

  // The next person comes with the connection: nothing of whoever was here opens.
  await context.setOffline(false)
  await page.goto('/learn')
  await page.waitForURL('**/sign-in**')
  await signIn(page, PEOPLE.klara)
  await page.waitForURL('**/learn')
  await expect(page.getByText(`1 coupon waits for ${leaver.signInName} to sign in.`)).toBeVisible()
  expect(answers).toEqual([])
  await page.reload()
  await expect(page.getByText(`1 coupon waits for ${leaver.signInName} to sign in.`)).toBeVisible()
  await signOut(page)
  await page.waitForURL('**/sign-in**')
  await signIn(page, leaver)
  await page.waitForURL('**/learn')
  await expect.poll(() => answers.map(({ note, created }) => [note, created])).toEqual([['Left waiting', true]])
  await expect.poll(() => photos.length).toBe(1)
})

test('woken by the browser with no page of the room open, the worker sends what waits, in order, with its photos', async ({ browser, baseURL }) => {
  test.slow()
  const wire = await layWire(baseURL!)
  const page = await openKeptLog(browser, student, wire.address)
  const context = page.context()
  await context.setOffline(true)
  const notes = ['Woken 1', 'Woken 2', 'Woken 3']
  for (const [index, note] of notes.entries()) {
    await logHere(page, note, index === 1 ? await photoOf('#18a018') : undefined)
    await page.getByRole('button', { name: 'Log the next one' }).click()
  }
  // The account page is no page that sends.
  await context.setOffline(false)
  wire.cut()
  const other = await context.newPage()
  await page.close()
  wire.mend()
  await other.goto('/account')
  const sent = () => wire.seen.filter((each) => /^POST \/api\/(intake|photos)/.test(each))
  expect(sent()).toEqual([])

  const cdp = await context.newCDPSession(other)
  const registered = new Promise<string>((resolve) => cdp.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
    const ours = registrations.find(({ scopeURL, isDeleted }) => scopeURL.startsWith(wire.address) && !isDeleted)
    if (ours) resolve(ours.registrationId)
  }))
  await cdp.send('ServiceWorker.enable')
  await cdp.send('ServiceWorker.dispatchSyncEvent', { origin: wire.address, registrationId: await registered, tag: 'toeline-outbox', lastChance: false })
  await expect.poll(sent).toEqual(['POST /api/intake/coupons', 'POST /api/intake/coupons', 'POST /api/photos', 'POST /api/intake/coupons'])
  await other.goto('/learn/waiting')
  await expect(nothingWaits(other)).toBeVisible()
  expect(sent()).toHaveLength(4)
  await context.close()
  await wire.close()
})
