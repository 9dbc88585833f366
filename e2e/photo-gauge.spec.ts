// Measuring on a photo: a drawn coupon whose bead has a known width, tapped by finger on a phone.
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import { as, box, couponNumber, expect, expectAccessible, expectGoodScreen, logCoupon, newcomer, openLog, PEOPLE, sendButton, TABLET, test, type Person } from './app'

const PX_PER_MM = 8
const WIDTH = 1600
const HEIGHT = 900
/** A bank card, ISO/IEC 7810 ID-1. */
const CARD = { left: 200, top: 400, width: 85.6 * PX_PER_MM, height: 53.98 * PX_PER_MM } as const
const BEAD = { left: 150, right: 150 + 6 * 25.4 * PX_PER_MM, middle: 200, widthMm: 10 } as const
const TOE = (BEAD.widthMm / 2) * PX_PER_MM

/** The photo as a phone held on its side writes it: turned, with the note in its metadata that says so. */
async function drawnPhoto(): Promise<Buffer> {
  const rect = (x: number, y: number, width: number, height: number, fill: string): string => `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>`
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">${rect(0, 0, WIDTH, HEIGHT, '#a5a5a5')}
    ${rect(CARD.left, CARD.top, CARD.width, CARD.height, '#f0f0f0')}${rect(BEAD.left, BEAD.middle - TOE, BEAD.right - BEAD.left, 2 * TOE, '#505050')}</svg>`
  const upright = await sharp(Buffer.from(drawing)).blur(1.2).jpeg({ quality: 95 }).toBuffer()
  return sharp(await sharp(upright).rotate(-90).toBuffer()).withMetadata({ orientation: 6 }).jpeg({ quality: 92 }).toBuffer()
}

const dialog = (page: Page) => page.getByRole('dialog', { name: 'Measure on the photo' })
const stage = (page: Page) => dialog(page).getByRole('application')

/** What the last tap changed is drawn: read or tapped earlier, the picture would still lie where it was. */
const drawnAnew = (page: Page): Promise<unknown> => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))

async function tapHere(page: Page, x: number, y: number): Promise<void> {
  await drawnAnew(page)
  const picture = stage(page).locator('svg')
  const [left = 0, top = 0, width = 1, height = 1] = ((await picture.getAttribute('viewBox')) ?? '').split(' ').map(Number)
  const place = await picture.boundingBox()
  if (!place) throw new Error('The photo is not on the screen.')
  await page.touchscreen.tap(place.x + ((x + 0.5 - left) / width) * place.width, place.y + ((y + 0.5 - top) / height) * place.height)
  await drawnAnew(page)
}

const marked = (page: Page): Promise<number> => stage(page).locator('svg > g:has(path)').count()

/** Sets one mark: the first tap of a finger may only come nearer. */
async function tapMark(page: Page, x: number, y: number): Promise<void> {
  const before = await marked(page)
  await tapHere(page, x, y)
  if ((await marked(page)) === before) await tapHere(page, x, y)
  expect(await marked(page)).toBe(before + 1)
}

async function choosePhoto(page: Page): Promise<void> {
  await page.getByLabel('Photo', { exact: true }).setInputFiles({ name: 'coupon.jpg', mimeType: 'image/jpeg', buffer: await drawnPhoto() })
  await page.getByRole('button', { name: 'Measure on photo 1' }).tap()
  await expect(dialog(page)).toBeVisible()
}

async function tapCard(page: Page): Promise<void> {
  const [right, bottom] = [CARD.left + CARD.width, CARD.top + CARD.height]
  for (const [x, y] of [[CARD.left, CARD.top], [right, CARD.top], [right, bottom], [CARD.left, bottom]] as const) await tapMark(page, x, y)
}

/** Both ends of the weld and the toes of its first station. */
async function tapWeld(page: Page): Promise<void> {
  await tapMark(page, BEAD.left, BEAD.middle)
  await tapMark(page, BEAD.right, BEAD.middle)
  const line = await stage(page).locator('svg line').first().evaluate((element) => Number(element.getAttribute('x1')))
  await tapMark(page, line, BEAD.middle - TOE)
  await tapMark(page, line, BEAD.middle + TOE)
}

let student: Person
test.beforeAll(async ({ browser }) => {
  const { page, person } = await newcomer(browser)
  student = person
  await page.context().close()
})

test('a bead of known width fills the stations, and its marks stay on the photo', async ({ browser }) => {
  test.slow() // two people measure, one after the other
  const page = await as(browser, student)
  await openLog(page)
  await choosePhoto(page)
  await expectGoodScreen(page)
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  await tapCard(page)
  await tapMark(page, BEAD.left, BEAD.middle)
  await tapMark(page, BEAD.right, BEAD.middle)
  for (let station = 0; station < 6; station += 1) {
    const line = await stage(page).locator('svg line').first().evaluate((element) => Number(element.getAttribute('x1')))
    await tapMark(page, line, BEAD.middle - TOE + 2)
    if (station === 0) await expectAccessible(page)
    await tapMark(page, line, BEAD.middle + TOE - 2)
  }
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await expect(dialog(page).getByRole('row')).toHaveCount(7)
  await expectAccessible(page)
  await dialog(page).getByRole('button', { name: 'Put these widths in the form' }).tap()
  await expect(dialog(page)).toBeHidden()
  for (const station of [1, 2, 3, 4, 5, 6]) {
    const inches = inchesOf(await box(page, `Station ${station}`, 'Width').inputValue())
    expect(Math.abs(inches * 25.4 - BEAD.widthMm), `width at station ${station}, off by mm`).toBeLessThan(0.3)
  }
  await page.getByRole('button', { name: 'Looked for everything, none found' }).tap()
  await sendButton(page).tap()
  await couponNumber(page)
  await expect(page.getByText(/Widths on the photo \(6\)/)).toBeVisible()
  await expectGoodScreen(page)

  // The instructor's look is blind: the student's marks are not there, measuring is.
  const couponPage = new URL(page.url()).pathname.replace('/learn/', '/teach/')
  const teacher = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  await teacher.goto(couponPage)
  await expect(teacher.getByRole('img', { name: /photo 1/ })).toBeVisible()
  await expect(teacher.getByText('widths on the photo')).toHaveCount(0)
  await teacher.getByRole('button', { name: 'Measure on photo 1' }).tap()
  await dialog(teacher).getByRole('button', { name: 'Next' }).tap()
  await tapCard(teacher)
  await tapWeld(teacher)
  await dialog(teacher).getByRole('button', { name: 'Show the widths' }).tap()
  await dialog(teacher).getByRole('button', { name: 'Put these widths in the form' }).tap()
  await expect(teacher.getByText('The marks are kept with the photo.')).toBeVisible()
  expect(Math.abs(inchesOf(await box(teacher, 'Station 1', 'Width').inputValue()) * 25.4 - BEAD.widthMm)).toBeLessThan(0.3)
  await teacher.reload()
  await expect(teacher.getByText(/Measured by you/)).toBeVisible()
  await expect(teacher.getByText(/Measured by you/)).toHaveCount(1)
})

test('a scale of nothing and a rectangle that is a line are said in a sentence', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await choosePhoto(page)
  await dialog(page).getByText('Two marks on a ruler').tap()
  await dialog(page).getByLabel('Distance between the marks').fill('0')
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  await expect(dialog(page).getByText('is not a size that can be used here')).toBeVisible()
  await dialog(page).getByText('Bank card').tap()
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  for (const x of [300, 600, 900, 1200]) await tapMark(page, x, 600)
  await expect(dialog(page).getByRole('alert')).toContainText('Three corners lie on one line')
  await expect(dialog(page).getByRole('button', { name: 'Show the widths' })).toHaveCount(0)
  await expectGoodScreen(page, { gloves: true })

  // Going back to the scale keeps the marks; closing asks.
  await dialog(page).getByRole('button', { name: 'Back to the scale' }).tap()
  await expect(dialog(page).getByText('Your marks stay where they are.')).toBeVisible()
  await dialog(page).getByText('A6 paper').tap()
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  expect(await marked(page)).toBe(4)
  await page.keyboard.press('Escape')
  const ask = page.getByRole('dialog', { name: 'Throw the marks away?' })
  await expectAccessible(page)
  await page.keyboard.press('Escape')
  await expect(ask).toBeHidden()
  expect(await marked(page)).toBe(4)
  await dialog(page).getByRole('button', { name: 'Close without measuring' }).tap()
  await ask.getByRole('button', { name: 'Throw them away' }).tap()
  await expect(page.getByRole('button', { name: 'Measure on photo 1' })).toBeFocused()
})

test('a photo added afterwards is measured beside what was submitted, and refused marks are said', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await logCoupon(page)
  await page.getByLabel('Add a photo').setInputFiles({ name: 'later.jpg', mimeType: 'image/jpeg', buffer: await drawnPhoto() })
  await page.getByRole('button', { name: 'Measure on photo 1' }).tap()
  await dialog(page).getByText('Two marks on a ruler').tap()
  await dialog(page).getByLabel('Distance between the marks').fill('3 1/2')
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  await tapMark(page, CARD.left, 600)
  await tapMark(page, CARD.left + 3.5 * 25.4 * PX_PER_MM, 600)
  await tapWeld(page)
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await expect(dialog(page).getByText('The widths you submitted and their verdict stay as they are.')).toBeVisible()
  await expect(dialog(page).getByRole('row', { name: /Station 1/ })).toContainText(/submitted: 7\/16 in.*25\/64 in ± 0\.\d+ in/)
  await expectGoodScreen(page, { gloves: true })
  await dialog(page).getByRole('button', { name: 'Keep these marks with the photo' }).tap()

  const refusal = { ok: false, code: 'INVALID', message: 'These are not marks of this photo.', fields: {} }
  await page.route('**/marks', (route) => route.fulfill({ status: 400, json: refusal }))
  await page.getByRole('button', { name: 'Send the photo' }).tap()
  await expect(page.getByText('The marks you set on photo 1 could not be kept with it. These are not marks of this photo.')).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await page.unroute('**/marks')
  await page.getByRole('button', { name: 'Send them again' }).tap()
  await expect(page.getByText(/Widths on the photo \(1\): 25\/64 in ± 0\.\d+ in/)).toBeVisible()
  await expect(page.getByText('could not be kept')).toHaveCount(0)
})

/** '25/64' or '.394' as a number. */
function inchesOf(text: string): number {
  return text.split(' ').reduce((sum, part) => {
    const [over = NaN, under = 1] = part.split('/').map(Number)
    return sum + over / under
  }, 0)
}
