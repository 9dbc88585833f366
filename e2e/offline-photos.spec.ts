// Coupons with photos on a device without a connection, and a connection cut at every step of sending one: each arrives once, with its own photo.
import sharp from 'sharp'
import { as, couponNumber, expect, openLog, sendButton, test, type Person } from './app'
import { intakeAnswers, logHere, newcomerWhoLogs, nothingWaits, openKeptLog, photoOf, photosTaken } from './queue'
import { layWire } from './wire'
import type { Page } from '@playwright/test'

let student: Person

test.beforeAll(async ({ browser }) => {
  student = await newcomerWhoLogs(browser)
})

/** The colour of each photo on a coupon's page, as its owner gets it from the server. */
async function coloursOf(page: Page, couponId: string, number: number): Promise<('red' | 'green' | 'blue')[]> {
  await page.goto(`/learn/coupons/${couponId}`)
  expect(await couponNumber(page)).toBe(number)
  const addresses = await page.getByRole('img', { name: new RegExp(`^Coupon ${number}, photo \\d+$`) }).evaluateAll((images) => images.map((image) => image.getAttribute('src') ?? ''))
  return Promise.all(addresses.map(async (address) => {
    const answer = await page.request.get(address)
    expect(answer.status()).toBe(200)
    const { channels } = await sharp(await answer.body()).stats()
    const means = channels.slice(0, 3).map(({ mean }) => mean)
    return (['red', 'green', 'blue'] as const)[means.indexOf(Math.max(...means))]!
  }))
}

test('coupons logged with photos without a connection, the tab closed, arrive once, each with its own photo once', async ({ browser }) => {
  test.slow()
  const page = await openKeptLog(browser, student)
  const context = page.context()
  await context.setOffline(true)
  const logged = [['Red plate', '#c01818'], ['No photo', null], ['Blue plate', '#1818c0']] as const
  for (const [note, colour] of logged) {
    await logHere(page, note, colour === null ? undefined : await photoOf(colour))
    if (colour !== null) await expect(page.getByText('no sizes measured, no indications, 1 photo')).toBeVisible()
    await page.getByRole('button', { name: 'Log the next one' }).click()
  }
  await page.close()

  const next = await context.newPage()
  const answers = intakeAnswers(next)
  const photos = photosTaken(context)
  await next.goto('/learn/waiting')
  await expect(next.getByRole('main').getByRole('listitem')).toHaveCount(3)
  await expect(next.getByRole('main').getByRole('listitem').first()).toContainText('1 photo')
  await context.setOffline(false)
  await expect(nothingWaits(next)).toBeVisible({ timeout: 20_000 })
  expect(answers.map(({ note, created }) => [note, created])).toEqual(logged.map(([note]) => [note, true]))
  expect(new Set(photos).size).toBe(2)
  expect(photos).toHaveLength(2)
  const [red, none, blue] = answers
  expect(await coloursOf(next, red!.id, red!.number)).toEqual(['red'])
  expect(await coloursOf(next, none!.id, none!.number)).toEqual([])
  expect(await coloursOf(next, blue!.id, blue!.number)).toEqual(['blue'])
})

test('the connection cut between a coupon and its photo leaves only the photo to send', async ({ browser }) => {
  const page = await as(browser, student)
  const context = page.context()
  await openLog(page)
  const answers = intakeAnswers(page)
  const photos = photosTaken(context)
  await context.setOffline(true)
  await logHere(page, 'Cut after the coupon', await photoOf('#18a018'))
  await context.route('**/api/photos?*', (route) => route.abort('internetdisconnected'))
  await context.setOffline(false)
  await expect.poll(() => answers.length).toBe(1)
  await page.close()

  const next = await context.newPage()
  await next.goto('/learn/waiting')
  await expect(next.getByText(`Number ${answers[0]!.number} is logged; its photo is still to be sent.`)).toBeVisible()
  await context.unroute('**/api/photos?*')
  await next.getByRole('button', { name: 'Send now' }).click({ timeout: 3000 }).catch(() => undefined) // it may have sent itself already
  await expect(nothingWaits(next)).toBeVisible()
  expect(answers.map(({ created }) => created)).toEqual([true])
  expect(photos).toHaveLength(1)
  expect(await coloursOf(next, answers[0]!.id, answers[0]!.number)).toEqual(['green'])
})

test('the connection cut in the middle of a photo sends it again whole, and the answer to a photo lost on the way makes no second one', async ({ browser, baseURL }) => {
  const wire = await layWire(baseURL!)
  const page = await as(browser, student, { server: wire.address })
  const context = page.context()
  await openLog(page)
  const answers = intakeAnswers(page)
  await page.waitForLoadState('networkidle') // what the form says without a connection is fetched ahead
  wire.cut()
  await logHere(page, 'Cut in the photo', await photoOf('#c01818', { noisy: true }))
  const cut = wire.cutWithin('/api/photos?', 60_000)
  wire.mend()
  await page.evaluate(() => window.dispatchEvent(new Event('online')))
  await cut
  await expect(page.getByText('The coupon has arrived.')).toBeVisible()
  await page.getByRole('link', { name: 'See the result' }).waitFor()
  let lost = 0
  await context.route('**/api/photos?*', async (route) => {
    lost += 1
    if (lost > 1) return route.continue()
    await route.fetch() // the server has it
    return route.abort('connectionreset')
  })
  wire.mend()
  await page.goto('/learn/waiting')
  await expect.poll(() => lost).toBeGreaterThan(0)
  await page.getByRole('button', { name: 'Send now' }).click({ timeout: 3000 }).catch(() => undefined) // it may have sent itself already
  await expect(nothingWaits(page)).toBeVisible({ timeout: 20_000 })
  expect(lost).toBe(2)
  expect(wire.seen.filter((each) => each === 'POST /api/photos')).toHaveLength(3)
  expect(answers.map(({ created }) => created)).toEqual([true])
  expect(await coloursOf(page, answers[0]!.id, answers[0]!.number)).toEqual(['red'])
  await context.close()
  await wire.close()
})

test('two tabs of one device that come back at once send each coupon and each photo once', async ({ browser }) => {
  test.slow()
  const page = await as(browser, student)
  const context = page.context()
  await openLog(page)
  const other = await context.newPage()
  await other.goto('/learn')
  await expect(other.getByRole('heading', { level: 1 })).toBeVisible()
  await page.bringToFront()
  const answers = intakeAnswers(page)
  const sent: string[] = []
  context.on('request', (request) => {
    const url = new URL(request.url())
    if (request.method() !== 'POST') return
    if (url.pathname === '/api/intake/coupons') sent.push((request.postDataJSON() as { coupon: { id: string } }).coupon.id)
    if (url.pathname === '/api/photos') sent.push(url.searchParams.get('id') ?? '')
  })
  await context.setOffline(true)
  const notes = Array.from({ length: 4 }, (_, index) => `Of two tabs ${index + 1}`)
  for (const note of notes) {
    await logHere(page, note, await photoOf('#18a018'))
    await page.getByRole('button', { name: 'Log the next one' }).click()
  }
  await expect(other.getByText('Saved on this device. 4 coupons wait for a connection.')).toBeVisible()
  sent.length = 0 // tries without a connection
  await context.setOffline(false)
  for (const tab of [page, other]) await tab.evaluate(() => window.dispatchEvent(new Event('online'))) // and once more, in the middle of it
  await expect.poll(() => sent.length, { timeout: 20_000 }).toBe(8)
  await expect(other.getByText(/coupons? waits? for a connection|Sending \d+ coupons?/)).toHaveCount(0)
  await expect(page.getByText(/coupons? waits? for a connection|Sending \d+ coupons?/)).toHaveCount(0)
  expect(new Set(sent).size).toBe(8)
  expect(answers.map(({ note, created }) => [note, created])).toEqual(notes.map((note) => [note, true]))
  // The form still works after its queue was sent by whichever tab.
  await page.getByLabel(/^Note to yourself/).fill('After the two tabs')
  await sendButton(page).click()
  await couponNumber(page)
  expect(sent).toHaveLength(9)
})
