// Measuring on a photo where there is no connection: what it needs is on the device since the log page was open.
import { box, expect, sendButton, test, type Person } from './app'
import { BEAD, choosePhoto, dialog, inchesOf, tapCard, tapEnds, tapToes } from './gauge'
import { intakeAnswers, newcomerWhoLogs, openKeptLog, saved } from './queue'

let student: Person
test.beforeAll(async ({ browser }) => {
  student = await newcomerWhoLogs(browser)
})

test('a photo taken without a connection is measured there, and its marks arrive with it', async ({ browser }) => {
  test.slow()
  const first = await openKeptLog(browser, student)
  const context = first.context()
  const log = first.url()
  await first.close()
  await context.setOffline(true)
  const page = await context.newPage()
  await page.goto(log)
  await expect(page.locator('form[inert]')).toHaveCount(0)
  const worker = page.waitForEvent('worker')
  await choosePhoto(page)
  await worker
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  await tapCard(page)
  await tapEnds(page)
  await tapToes(page)
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await dialog(page).getByRole('button', { name: 'Put these widths in the form' }).tap()
  expect(Math.abs(inchesOf(await box(page, 'Station 1', 'Width').inputValue()) * 25.4 - BEAD.widthMm)).toBeLessThan(0.3)
  await sendButton(page).tap()
  await expect(saved(page)).toBeVisible()

  const answers = intakeAnswers(page)
  const kept = page.waitForResponse((response) => response.url().endsWith('/marks') && response.ok())
  await context.setOffline(false)
  await kept
  await page.goto(`/learn/coupons/${answers[0]!.id}`)
  await expect(page.getByText(/Widths on the photo \(1\)/)).toBeVisible()
})
