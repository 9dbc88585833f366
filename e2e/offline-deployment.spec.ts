// A new version is deployed while coupons wait on a device. Ordinarily the new one is made of the running one: other names for every script and
// style, another build id, another worker, and nothing under the old names. With TOELINE_E2E_NEXT it is a second server at that address, which runs
// another build on the same database.
import { couponNumber, expect, openLog, sendButton, test, type Person } from './app'
import { intakeAnswers, logHere, newcomerWhoLogs, nothingWaits, openKeptLog, photoOf, photosTaken } from './queue'
import { layWire, type Wire } from './wire'
import type { Page } from '@playwright/test'

let student: Person

test.beforeAll(async ({ browser }) => {
  student = await newcomerWhoLogs(browser)
})

const CHUNKS = '/_next/static/chunks/'

/** From now on the wire leads to the new version. */
async function deploy(wire: Wire, server: string): Promise<void> {
  const next = process.env.TOELINE_E2E_NEXT
  if (next) return wire.leadTo(next)
  const [, build] = /"b\\":\\"([\w-]{10,})/.exec(await (await fetch(`${server}/offline`)).text()) ?? []
  if (!build) throw new Error('The page does not say which build it is of.')
  wire.leadTo(server, {
    asked: (path) => (path.startsWith(`${CHUNKS}next_`) ? path.replace('next_', '') : path.startsWith(CHUNKS) ? null : path),
    answered: (path, _type, body) => {
      const text = body.toString('utf8').replaceAll('static/chunks/', 'static/chunks/next_').replaceAll(build, `${build}next`)
      return Buffer.from(path.startsWith('/sw.js') ? `${text}\n// the next version\n` : text)
    },
  })
}

/** Asks the browser to look for a new worker, as it does by itself at the next page; resolves when no other is on its way to take over. */
async function takesOver(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    await registration.update()
    while (registration.installing || registration.waiting) await new Promise((resolve) => setTimeout(resolve, 100))
  })
}

const workersFetched = (wire: Wire): number => wire.seen.filter((each) => each === 'GET /sw.js').length

test('what was queued under the old version is sent by the new one, once and in order, and the device opens without a connection before and after', async ({ browser, baseURL }) => {
  test.slow()
  const wire = await layWire(baseURL!)
  const page = await openKeptLog(browser, student, wire.address)
  const context = page.context()
  const log = new URL(page.url()).pathname
  const notes = ['Old version 1', 'Old version 2', 'Old version 3']
  await context.setOffline(true)
  for (const [index, note] of notes.entries()) {
    await logHere(page, note, index === 1 ? await photoOf('#18a018') : undefined)
    await page.getByRole('button', { name: 'Log the next one' }).click()
  }
  await page.close()
  await deploy(wire, baseURL!)
  const before = workersFetched(wire)

  const next = await context.newPage()
  const answers = intakeAnswers(next)
  const photos = photosTaken(context)
  await next.goto('/learn/waiting')
  await expect(next.getByText(/^No connection\. The page as it was: /)).toBeVisible()
  await expect(next.getByRole('main').getByRole('listitem')).toHaveCount(3)
  await context.setOffline(false)
  await takesOver(next)
  expect(workersFetched(wire)).toBeGreaterThan(before)
  await expect.poll(() => answers.length, { timeout: 20_000 }).toBe(3)
  await next.goto('/learn/waiting')
  await expect(nothingWaits(next)).toBeVisible()
  expect(answers.map(({ note, created }) => [note, created])).toEqual(notes.map((note) => [note, true]))
  expect(answers.map(({ number }) => number)).toEqual([1, 2, 3].map((step) => answers[0]!.number + step - 1))
  expect(photos).toHaveLength(1)

  // The new worker keeps what the old one kept.
  await context.setOffline(true)
  await next.goto(log)
  await expect(next.getByRole('heading', { name: 'Log a coupon' })).toBeVisible()
  await logHere(next, 'New version, no connection')
  await context.setOffline(false)
  await expect.poll(() => answers.length, { timeout: 20_000 }).toBe(4)
  await context.close()
  await wire.close()
})

test('a form left open over a deployment still sends what is in it, and goes on in the new version', async ({ browser, baseURL }) => {
  test.slow()
  const wire = await layWire(baseURL!)
  const page = await openKeptLog(browser, student, wire.address)
  const answers = intakeAnswers(page)
  await page.getByLabel(/^Note to yourself/).fill('Typed before the deployment')
  await deploy(wire, baseURL!)
  await sendButton(page).click()
  await couponNumber(page)
  await expect(page.getByText('Typed before the deployment')).toBeVisible()
  expect(await page.evaluate(() => [...document.scripts].map(({ src }) => src).filter((src) => src.includes('/chunks/')).length)).toBeGreaterThan(0)
  await openLog(page)
  await page.getByLabel(/^Note to yourself/).fill('And the next one')
  await sendButton(page).click()
  await couponNumber(page)
  expect(answers.map(({ note, created }) => [note, created])).toEqual([['Typed before the deployment', true], ['And the next one', true]])
  await page.context().close()
  await wire.close()
})
