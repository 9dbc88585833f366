// Measuring on a photo: a drawn coupon whose bead has a known width, tapped by finger on a phone.
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import { as, box, CLEAN, couponNumber, expect, expectAccessible, expectGoodScreen, gradeCoupon, logCoupon, newcomer, openLog, PEOPLE, sendButton, TABLET, tabTo, test, type Person } from './app'

const PX_PER_MM = 8
const WIDTH = 1600
const HEIGHT = 900
/** A bank card, ISO/IEC 7810 ID-1. */
const CARD = { left: 200, top: 400, width: 85.6 * PX_PER_MM, height: 53.98 * PX_PER_MM } as const
const BEAD = { left: 150, right: 150 + 6 * 25.4 * PX_PER_MM, middle: 200, widthMm: 10 } as const
const PIECE = (BEAD.right - BEAD.left) / 6
const TOE = (BEAD.widthMm / 2) * PX_PER_MM

/** The photo as a phone held on its side writes it: turned, with the note in its metadata that says so. The bead in six pieces, each so wide, mm. */
async function drawnPhoto(widthsMm: readonly number[] = Array.from({ length: 6 }, () => BEAD.widthMm)): Promise<Buffer> {
  const rect = (x: number, y: number, width: number, height: number, fill: string): string => `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>`
  const bead = (mm: number, piece: number): string => rect(BEAD.left + piece * PIECE, BEAD.middle - (mm / 2) * PX_PER_MM, PIECE, mm * PX_PER_MM, '#505050')
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">${rect(0, 0, WIDTH, HEIGHT, '#a5a5a5')}
    ${rect(CARD.left, CARD.top, CARD.width, CARD.height, '#f0f0f0')}${widthsMm.map(bead).join('')}</svg>`
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

/** On the photo as the server keeps it, turned upright and written anew, the lines between the toes end at the sides of the dark bead. */
async function expectMarksOnToes(page: Page): Promise<void> {
  const figure = page.getByRole('figure').filter({ hasText: 'Measured by you' })
  const [, , picture = 1] = ((await figure.locator('svg').getAttribute('viewBox')) ?? '').split(' ').map(Number)
  const address = (await figure.getByRole('img').getAttribute('src')) ?? ''
  const { data, info } = await sharp(await (await page.request.get(address)).body()).greyscale().raw().toBuffer({ resolveWithObject: true })
  const grey = (x: number, y: number): number => data[Math.round((y * info.width) / picture) * info.width + Math.round((x * info.width) / picture)] ?? NaN
  const lines = await figure.locator('svg line[stroke="black"]:not([stroke-dasharray])').evaluateAll((all) => all.map((line) => ['x1', 'y1', 'x2', 'y2'].map((name) => Number(line.getAttribute(name)))))
  expect(lines).toHaveLength(2)
  for (const [x1 = NaN, y1 = NaN, x2 = NaN, y2 = NaN] of lines) {
    expect([grey(x1, y1 - 5), grey(x2, y2 + 5)].every((outside) => outside > 140), `steel beside ${x1}, ${y1}`).toBe(true)
    expect([grey(x1, y1 + 5), grey(x2, y2 - 5)].every((inside) => inside < 110), `bead at ${x1}, ${y1}`).toBe(true)
  }
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
  for (let station = 0; station < 2; station += 1) {
    const line = await stage(page).locator('svg line').first().evaluate((element) => Number(element.getAttribute('x1')))
    await tapMark(page, line, BEAD.middle - TOE + 2)
    if (station === 0) await expectAccessible(page)
    await tapMark(page, line, BEAD.middle + TOE - 2)
  }
  for (const station of [3, 4, 5, 6]) await dialog(page).getByRole('button', { name: `Leave out station ${station}` }).tap()
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await expect(dialog(page).getByRole('row', { name: 'not measured' })).toHaveCount(4)
  await expectAccessible(page)
  await dialog(page).getByRole('button', { name: 'Put these widths in the form' }).tap()
  await expect(dialog(page)).toBeHidden()
  for (const station of [1, 2]) {
    const inches = inchesOf(await box(page, `Station ${station}`, 'Width').inputValue())
    expect(Math.abs(inches * 25.4 - BEAD.widthMm), `width at station ${station}, off by mm`).toBeLessThan(0.3)
  }
  await page.getByRole('button', { name: 'Looked for everything, none found' }).tap()
  await sendButton(page).tap()
  await couponNumber(page)
  await expect(page.getByText(/Widths on the photo \(2\)/)).toBeVisible()
  await expectGoodScreen(page)
  await expectMarksOnToes(page)

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
  await expect(teacher.getByText(/Measured by you/)).toHaveCount(1)
  await expect(teacher.getByText(`Measured by ${student.name}`)).toHaveCount(0)
  await gradeCoupon(teacher, CLEAN)
  await expect(teacher.getByText(`Measured by ${student.name}`)).toHaveCount(1)
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
  await page.keyboard.press('Escape') // a browser lets a page hold back one Escape, not the next
  await expect(ask).toBeVisible()
  await ask.getByRole('button', { name: 'Keep measuring' }).tap()
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

test('by keyboard alone, in Spanish and millimetres, each width is held against the band', async ({ browser }) => {
  test.slow() // a few hundred key presses
  const { page } = await newcomer(browser)
  await openLog(page, '1F, lap joint, 3/8 in plate, 1/16 in E71T-11') // its band is 5 to 6 times a 1/16 in wire: 7.94 to 9.53 mm
  const log = page.url()
  await page.goto('/account')
  await page.locator('input[name="locale"][value="es"]').check()
  await page.locator('input[name="units"][value="si"]').check()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('button', { name: 'Guardar', exact: true })).toBeVisible()
  await page.goto(log)
  await page.getByLabel('Foto', { exact: true }).setInputFiles({ name: 'cordon.jpg', mimeType: 'image/jpeg', buffer: await drawnPhoto([8.75, 9.5, 10, 10, 10, 10]) })
  const measure = page.getByRole('dialog', { name: 'Medir en la foto' })
  await tabTo(page, page.getByRole('button', { name: 'Medir en la foto 1' }))
  await page.keyboard.press('Enter')
  await tabTo(page, measure.getByRole('radio').first())
  for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('ArrowDown') // two marks of a ruler
  await page.keyboard.press('Tab')
  await page.keyboard.type('50 mm')
  await page.keyboard.press('Enter')
  await expect(measure.getByRole('application')).toBeFocused()

  const set = async (right: number, down: number): Promise<void> => {
    await page.keyboard.press('Enter')
    await walk(page, right, down)
  }
  await set(-200, 0)
  await set(200, 0)
  await set(BEAD.left - WIDTH / 2, BEAD.middle - HEIGHT / 2)
  await set(BEAD.right - WIDTH / 2, BEAD.middle - HEIGHT / 2)
  for (const aside of [5, 2, 0]) { // a toe is put down 5 mm from the middle: walked to its edge, and E takes the edge
    for (const side of [-1, 1]) {
      await page.keyboard.press('Enter')
      const chosen = measure.getByRole('button', { name: 'Contorno' })
      if ((await chosen.getAttribute('aria-pressed')) === 'false') {
        await walk(page, 0, -side * aside)
        await page.keyboard.press('e')
      }
      await expect(chosen).toHaveAttribute('aria-pressed', 'true')
    }
  }
  await page.keyboard.press('e')
  await expect(measure.getByRole('button', { name: 'Mi toque' })).toHaveAttribute('aria-pressed', 'true')
  await page.keyboard.press('e')
  await tabTo(page, measure.getByRole('button', { name: 'Ver los anchos' }))
  await page.keyboard.press('Enter')
  await expect(measure.getByRole('row', { name: /^Estación 1 8\.[78] mm ± 0\.\d+ mm dentro de la banda$/ })).toBeVisible()
  await expect(measure.getByRole('row', { name: /^Estación 2 9\.[456] mm ± 0\.\d+ mm no se distingue/ })).toBeVisible()
  await expect(measure.getByRole('row', { name: /^Estación 3 (9\.9|10\.[01]) mm ± 0\.\d+ mm fuera de la banda$/ })).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
})

/** Moves the mark by so many pixels of the photo, by the arrow keys. */
async function walk(page: Page, right: number, down: number): Promise<void> {
  for (const [way, back, by] of [['ArrowRight', 'ArrowLeft', right], ['ArrowDown', 'ArrowUp', down]] as const) {
    const key = by > 0 ? way : back
    const far = Math.round(Math.abs(by))
    for (let tens = 0; tens < Math.floor(far / 10); tens += 1) await page.keyboard.press(`Shift+${key}`)
    for (let ones = 0; ones < far % 10; ones += 1) await page.keyboard.press(key)
  }
}

/** '25/64' or '.394' as a number. */
function inchesOf(text: string): number {
  return text.split(' ').reduce((sum, part) => {
    const [over = NaN, under = 1] = part.split('/').map(Number)
    return sum + over / under
  }, 0)
}
