// The student's room with the network cut at each step: before the form opens, while it sends, after the tab is closed, under another name.
import sharp from 'sharp'
import {
  as, box, CLEAN, couponNumber, expect, expectGoodScreen, expectVerdict, fillLook, LAP_2F, openLog, PEOPLE, sendButton, showSettings, signIn, test, type Person,
} from './app'
import { intakeAnswers, logHere, newcomerWhoLogs, nothingWaits, openKeptLog } from './queue'

let student: Person

test.beforeAll(async ({ browser }) => {
  student = await newcomerWhoLogs(browser)
})

test('pages open without a connection; a coupon logged there waits, over a closed tab too, and sends itself', async ({ browser }) => {
  test.slow()
  const first = await openKeptLog(browser, student)
  const log = new URL(first.url()).pathname
  const context = first.context()
  await first.close()
  await context.setOffline(true)

  const page = await context.newPage()
  await page.goto('/learn')
  await expect(page.getByText(/^No connection\. The page as it was: /)).toBeVisible()
  await page.getByRole('main').getByRole('link', { name: LAP_2F, exact: true }).last().click()
  await expect(page.getByRole('heading', { name: 'Booth card' })).toBeVisible()
  await page.getByRole('link', { name: 'Log a coupon' }).click()
  await page.waitForURL(`**${log}`)
  await fillLook(page, CLEAN)
  await logHere(page, 'Logged in the dead corner of the shop.')
  await expect(page.getByText('6 stations measured, no indications')).toBeVisible()
  await expectGoodScreen(page, { gloves: true })

  await page.getByRole('link', { name: 'See what waits' }).last().click()
  await expect(page.getByRole('heading', { level: 1, name: 'Waiting to be sent' })).toBeVisible()
  await expect(page.getByRole('main').getByRole('listitem')).toHaveCount(1)
  await expectGoodScreen(page, { gloves: true })
  await page.goto('/learn/coupons/01940000-0000-7000-8000-000000000000')
  await expect(page.getByRole('heading', { level: 1, name: 'No connection' })).toBeVisible()
  await expect(page.getByRole('heading', { level: 2, name: 'Sin conexión' })).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await page.close()

  await context.setOffline(false)
  const later = await context.newPage()
  await later.goto('/learn/waiting')
  await expect(nothingWaits(later)).toBeVisible()
  await expect(later.getByText(/^No connection\. The page as it was/)).toHaveCount(0)
  await later.goto(log.replace(/\/log$/, ''))
  await later.getByRole('link', { name: /^No\. \d+$/ }).last().click()
  await expect(later.getByText('Logged in the dead corner of the shop.')).toBeVisible()
  await expectVerdict(later, 'Accept')
})

test('a coupon whose answer was lost on the way is there once', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  const answers = intakeAnswers(page)
  let lost = 0
  await page.route('**/api/intake/coupons', async (route) => {
    lost += 1
    if (lost > 1) return route.continue()
    await route.fetch() // the server has it
    return route.abort('connectionreset')
  })
  await logHere(page, 'The answer was lost.')
  await page.getByRole('link', { name: 'See what waits' }).last().click()
  await page.getByRole('button', { name: 'Send now' }).click({ timeout: 3000 }).catch(() => undefined) // it may have sent itself already
  await expect(nothingWaits(page)).toBeVisible()
  expect(answers.map(({ created, note }) => [created, note])).toEqual([[false, 'The answer was lost.']])
})

test('with the session over it waits, asks to sign in again, and goes on', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  const answers = intakeAnswers(page)
  await page.context().setOffline(true)
  await logHere(page, 'Waited for a password.')
  await page.context().clearCookies()
  await page.context().setOffline(false)
  await expect(page.getByText('You are signed out. Sign in again and what waits is sent.')).toBeVisible()
  expect(answers).toEqual([])
  await page.getByRole('status').getByRole('link', { name: 'Sign in' }).click()
  await page.waitForURL('**/sign-in**')
  await signIn(page, student)
  await page.waitForURL('**/log')
  await expect.poll(() => answers.map(({ note }) => note)).toEqual(['Waited for a password.'])
  await expect(page.getByText(/is not sent|waits? for a connection/)).toHaveCount(0)
})

test('another person on the same tablet neither sends it nor sees it, nor the pages of whoever was here', async ({ browser }) => {
  test.slow()
  const page = await openKeptLog(browser, student)
  const log = new URL(page.url()).pathname
  const context = page.context()
  const answers = intakeAnswers(page)
  await context.setOffline(true)
  await logHere(page, 'Not yours to read.')
  await context.clearCookies()
  await context.setOffline(false)

  await page.goto('/sign-in')
  await signIn(page, PEOPLE.tetteh)
  await page.waitForURL('**/learn')
  await expect(page.getByText(`1 coupon waits for ${student.signInName} to sign in.`)).toBeVisible()
  await page.goto('/learn/waiting')
  await expect(nothingWaits(page)).toBeVisible()
  await expect(page.getByText(`1 coupon waits for ${student.signInName} to sign in.`).first()).toBeVisible()
  expect(answers).toEqual([])
  await context.setOffline(true)
  await page.goto(log)
  await expect(page.getByRole('heading', { level: 1, name: 'No connection' })).toBeVisible()

  await context.setOffline(false)
  await context.clearCookies()
  await page.goto('/sign-in')
  await signIn(page, student)
  await page.waitForURL('**/learn')
  await expect.poll(() => answers.map(({ note, created }) => [note, created])).toEqual([['Not yours to read.', true]])
})

test('fifty coupons logged without a connection arrive once each, in order', async ({ browser }) => {
  test.slow()
  const page = await as(browser, student)
  await openLog(page)
  const answers = intakeAnswers(page)
  const notes = Array.from({ length: 50 }, (_, index) => `Queued ${index + 1}`)
  await page.context().setOffline(true)
  for (const note of notes) {
    await logHere(page, note)
    await page.getByRole('button', { name: 'Log the next one' }).click()
  }
  await expect(page.getByText('Saved on this device. 50 coupons wait for a connection.')).toBeVisible()
  await page.context().setOffline(false)
  await expect.poll(() => answers.length, { timeout: 60_000 }).toBe(50)
  await page.goto('/learn/waiting')
  await expect(nothingWaits(page)).toBeVisible()
  expect(answers.map(({ note }) => note)).toEqual(notes)
  const start = answers[0]?.number ?? NaN
  expect(answers.map(({ number, created }) => [number, created])).toEqual(notes.map((_, index) => [start + index, true]))
})

test('a full device says so, keeps what is typed, and sends when there is a connection', async ({ browser }) => {
  const page = await as(browser, student)
  await page.addInitScript(() => {
    IDBObjectStore.prototype.put = () => { throw new DOMException('No room.', 'QuotaExceededError') }
  })
  await openLog(page)
  await page.context().setOffline(true)
  const picture = await sharp({ create: { width: 800, height: 450, channels: 3, background: '#6b7078' } }).jpeg().toBuffer()
  await page.getByLabel('Photo').setInputFiles({ name: 'coupon.jpg', mimeType: 'image/jpeg', buffer: picture })
  await page.getByLabel(/^Note to yourself/).fill('The tablet is full.')
  await sendButton(page).click()
  const full = page.getByRole('alert').filter({ hasText: 'This device’s storage is full' })
  await expect(full).toContainText('send it without the photo')
  await expectGoodScreen(page, { gloves: true })
  await full.getByRole('button', { name: 'Send without the photo' }).click()
  await expect(full).toContainText('keep this page open')
  await expect(page.getByLabel(/^Note to yourself/)).toHaveValue('The tablet is full.')
  await page.context().setOffline(false)
  await sendButton(page).click()
  await couponNumber(page)
  await expect(page.getByText('The tablet is full.')).toBeVisible()
})

test('a refused one is kept with its reason, corrected in its form or thrown away at the second press', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await page.context().setOffline(true)
  for (const note of ['To correct', 'To throw away']) {
    await showSettings(page)
    await box(page, 'Pass 1', 'Current, A').fill('lots')
    await logHere(page, note)
    await page.getByRole('button', { name: 'Log the next one' }).click()
  }
  await page.context().setOffline(false)
  await page.getByRole('link', { name: '2 coupons were not taken. See why' }).click()
  const items = page.getByRole('main').getByRole('listitem').filter({ has: page.getByRole('heading') })
  await expect(items).toHaveCount(2)
  await expect(items.first()).toContainText('“lots” is not a number with the right unit.')
  await expectGoodScreen(page, { gloves: true })
  await items.last().getByRole('button', { name: 'Throw it away' }).click()
  await expect(items.last()).toContainText('nobody has it')
  await items.last().getByRole('button', { name: 'Throw it away for good' }).click()
  await expect(items).toHaveCount(1)
  await items.first().getByRole('button', { name: 'Correct it in the form' }).click()
  await page.waitForURL('**/log')
  await expect(page.getByLabel(/^Note to yourself/)).toHaveValue('To correct')
  await showSettings(page)
  await expect(box(page, 'Pass 1', 'Current, A')).toHaveValue('lots')
  await box(page, 'Pass 1', 'Current, A').fill('140')
  await sendButton(page).click()
  await couponNumber(page)
  await expect(page.getByText('To correct')).toBeVisible()
  await page.goto('/learn/waiting')
  await expect(nothingWaits(page)).toBeVisible()
})
