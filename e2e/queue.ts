// The device's queue as a test sees it: logging without a connection, what is on the device, and what the server was sent and answered.
import sharp from 'sharp'
import { as, expect, newcomer, openLog, sendButton, type Person } from './app'
import type { Browser, BrowserContext, Locator, Page } from '@playwright/test'

export const saved = (page: Page): Locator => page.getByText('Saved on this device', { exact: true })
export const nothingWaits = (page: Page): Locator => page.getByRole('heading', { name: 'Nothing is waiting' })

/** A student of their own for one file of tests, with the cautions confirmed that lie before the log form. */
export async function newcomerWhoLogs(browser: Browser): Promise<Person> {
  const { page, person } = await newcomer(browser)
  await openLog(page)
  await page.context().close()
  return person
}

type IntakeAnswer = { readonly id: string; readonly number: number; readonly created: boolean; readonly note: string }

/** What the intake answered, in order, on all pages of a browser. */
export function intakeAnswers(page: Page): IntakeAnswer[] {
  const answers: IntakeAnswer[] = []
  page.context().on('response', async (response) => {
    if (!response.url().endsWith('/api/intake/coupons') || response.status() !== 200) return
    const { coupon } = response.request().postDataJSON() as { coupon: { id: string; note: string } }
    const { value } = (await response.json()) as { value: { number: number; created: boolean } }
    answers.push({ id: coupon.id, number: value.number, created: value.created, note: coupon.note })
  })
  return answers
}

/** The ids of the photos the server took, in order, on all pages of a browser. */
export function photosTaken(context: BrowserContext): string[] {
  const taken: string[] = []
  context.on('response', (response) => {
    const url = new URL(response.url())
    if (url.pathname === '/api/photos' && response.request().method() === 'POST' && response.ok()) taken.push(url.searchParams.get('id') ?? '')
  })
  return taken
}

/** Logs a coupon of nothing but a note, from the form that is open, without a connection. */
export async function logHere(page: Page, note: string, photo?: Buffer): Promise<void> {
  if (photo) await choosePhoto(page, photo)
  await page.getByLabel(/^Note to yourself/).fill(note)
  await sendButton(page).click()
  await expect(saved(page)).toBeVisible()
}

/** Chooses a photo in the form that is open. */
export async function choosePhoto(page: Page, photo: Buffer): Promise<void> {
  await page.getByLabel('Photo').setInputFiles({ name: 'coupon.jpg', mimeType: 'image/jpeg', buffer: photo })
  await expect(page.getByRole('button', { name: 'Remove the photo' })).toBeVisible()
}

/** A photograph of one colour, by which it is known again; a noisy one is what no encoder makes small. */
export function photoOf(background: string, { width = 1200, height = 900, noisy = false } = {}): Promise<Buffer> {
  const plain = sharp({ create: { width, height, channels: 3, background } })
  const grain = { create: { width, height, channels: 3 as const, background: '#808080', noise: { type: 'gaussian' as const, mean: 128, sigma: 50 } } }
  return (noisy ? plain.composite([{ input: grain, blend: 'soft-light' }]) : plain).jpeg({ quality: 95 }).toBuffer()
}

/** Opens the log form with the worker at work, and waits until the device keeps it. */
export async function openKeptLog(browser: Browser, who: Person, server?: string): Promise<Page> {
  const page = await as(browser, who, { worker: true, ...(server && { server }) })
  await openLog(page)
  const path = new URL(page.url()).pathname
  const wanted = [path, path.replace(/\/log$/, ''), '/learn', '/learn/waiting']
  await expect.poll(() => page.evaluate(async (paths) => (await Promise.all(paths.map((each) => caches.match(each, { ignoreVary: true })))).filter(Boolean).length, wanted), { timeout: 30_000 }).toBe(wanted.length)
  // Scripts and styles come after the pages.
  const assets = () => page.evaluate(async () => (await (await caches.open('toeline-assets')).keys()).length)
  let before = -1
  await expect.poll(async () => { const now = await assets(); const same = now > 0 && now === before; before = now; return same }, { timeout: 30_000, intervals: [700] }).toBe(true)
  return page
}
