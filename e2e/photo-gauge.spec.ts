// Measuring on a photo: a drawn coupon whose bead has a known width, tapped by finger on a phone.
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import { as, box, CLEAN, couponNumber, expect, expectGoodScreen, expectTouchTargets, gradeCoupon, logCoupon, newcomer, openLog, PEOPLE, sendButton, TABLET, tabTo, test, type Person } from './app'
import { BEAD, CARD, choosePhoto, dialog, drawnPhoto, HEIGHT, inchesOf, marked, px, stage, tapCard, tapEnds, tapMark, tapToes, walk, WIDTH, writeLargePhoto } from './gauge'

/** Measuring again goes on from the seven or more marks there are; only a change is asked about, and it is taken over when accepted. */
async function measureAgain(page: Page): Promise<void> {
  const open = () => page.getByRole('button', { name: 'Measure again on photo 1' }).tap()
  await open()
  await expect(stage(page)).toBeVisible()
  expect(await marked(page)).toBe(8)
  await dialog(page).getByRole('button', { name: 'Close without measuring' }).tap()
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await open()
  await dialog(page).getByRole('button', { name: 'Back to the scale' }).tap()
  await expect(dialog(page).getByRole('radio', { name: 'Bank card' })).toBeChecked()
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  expect(await marked(page)).toBe(8)
  await tapToes(page)
  await dialog(page).getByRole('button', { name: 'Close without measuring' }).tap()
  await expect(page.getByText('The marks it had before stay.')).toBeVisible()
  await page.getByRole('button', { name: 'Keep measuring' }).tap()
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await expect(dialog(page).getByRole('row', { name: 'not measured' })).toHaveCount(4)
  const kept = page.waitForResponse((response) => response.url().endsWith('/marks') && response.ok())
  await dialog(page).getByRole('button', { name: 'Put these widths in the form' }).tap()
  await kept
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
  await expectGoodScreen(page, { gloves: true })
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  await tapCard(page)
  await tapEnds(page)
  await tapToes(page, { aside: 2 })
  await expectGoodScreen(page, { gloves: true })
  await tapToes(page, { aside: 2 })
  for (const station of [3, 4, 5, 6]) await dialog(page).getByRole('button', { name: `Leave out station ${station}` }).tap()
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await expect(dialog(page).getByRole('row', { name: 'not measured' })).toHaveCount(4)
  await expect(dialog(page).getByText('there is no band to hold it against')).toBeVisible()
  await expect(dialog(page).getByRole('columnheader')).toHaveCount(2)
  await expectGoodScreen(page, { gloves: true })
  await dialog(page).getByRole('button', { name: 'Put these widths in the form' }).tap()
  await expect(dialog(page)).toBeHidden()
  await expect(page.getByText('The marks go with the photo when it is sent.')).toBeVisible()
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
  await tapEnds(teacher)
  await tapToes(teacher)
  await dialog(teacher).getByRole('button', { name: 'Show the widths' }).tap()
  await dialog(teacher).getByRole('button', { name: 'Put these widths in the form' }).tap()
  await expect(teacher.getByText('The marks are kept with the photo.')).toBeVisible()
  expect(Math.abs(inchesOf(await box(teacher, 'Station 1', 'Width').inputValue()) * 25.4 - BEAD.widthMm)).toBeLessThan(0.3)
  await teacher.reload()
  await expect(teacher.getByText(/Measured by you/)).toHaveCount(1)
  await measureAgain(teacher)
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
  await dialog(page).getByRole('button', { name: 'Move the mark finely' }).tap()
  await expect(dialog(page).getByRole('button', { name: 'Done moving' })).toBeVisible()
  await expectTouchTargets(page)

  // Going back to the scale keeps the marks; closing asks.
  await dialog(page).getByRole('button', { name: 'Back to the scale' }).tap()
  await expect(dialog(page).getByText('Your marks stay where they are.')).toBeVisible()
  await dialog(page).getByText('A6 paper').tap()
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  expect(await marked(page)).toBe(4)
  await page.keyboard.press('Escape')
  const ask = page.getByRole('dialog', { name: 'Throw the marks away?' })
  await expectGoodScreen(page, { gloves: true })
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
  await tapMark(page, CARD.left + px(3.5 * 25.4), 600)
  await tapEnds(page)
  await tapToes(page)
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await expect(dialog(page).getByText('The widths you submitted and their verdict stay as they are.')).toBeVisible()
  await expect(dialog(page).getByRole('row', { name: /Station 1/ })).toContainText(/submitted: 7\/16 in.*25\/64 in ± 0\.\d+ in/)
  await expectGoodScreen(page, { gloves: true })
  await dialog(page).getByRole('button', { name: 'Keep these marks with the photo' }).tap()
  await expect(page.getByText('The marks go with the photo when it is sent.')).toBeVisible()

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
  await page.getByLabel('Foto', { exact: true }).focus()
  await expect(page.getByRole('button', { name: 'Medir en la foto 1' })).toBeVisible()
  await expect(page.getByLabel('Foto', { exact: true })).toBeFocused()
  await expect(page.getByLabel('Foto', { exact: true })).toHaveValue(/cordon\.jpg$/)
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

test('a photo of twelve megabytes is made small beside the page, and measures as it is', async ({ browser }, info) => {
  const file = info.outputPath('coupon.jpg')
  const large = await writeLargePhoto(file)
  expect(large.bytes).toBeGreaterThan(12e6)
  const page = await as(browser, student)
  await openLog(page)
  const worker = page.waitForEvent('worker')
  await page.getByLabel('Photo', { exact: true }).setInputFiles(file)
  await worker
  await page.getByLabel(/^Note to yourself/).fill('Typed while the photo is read.')
  const zoom = 2048 / WIDTH
  await page.getByRole('button', { name: 'Measure on photo 1' }).tap()
  await dialog(page).getByRole('button', { name: 'Next' }).tap()
  expect(await stage(page).locator('svg image').getAttribute('width')).toBe('2048')
  await tapCard(page, zoom)
  await tapEnds(page, zoom)
  await tapToes(page, { zoom })
  await dialog(page).getByRole('button', { name: 'Show the widths' }).tap()
  await dialog(page).getByRole('button', { name: 'Put these widths in the form' }).tap()
  expect(Math.abs(inchesOf(await box(page, 'Station 1', 'Width').inputValue()) * 25.4 - BEAD.widthMm)).toBeLessThan(0.3)
  const sent = page.waitForRequest((request) => new URL(request.url()).pathname === '/api/photos')
  await sendButton(page).tap()
  expect(Number((await (await sent).allHeaders())['content-length'])).toBeLessThan(large.bytes / 8)
  await couponNumber(page)
  await expect(page.getByText(/Widths on the photo \(1\)/)).toBeVisible()
})
