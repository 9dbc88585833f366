import { writeFile } from 'node:fs/promises'
import sharp from 'sharp'
import {
  as, box, CLEAN, confirmCautions, couponNumber, expect, expectGoodScreen, expectVerdict, fillLook, group, LAP_2F, logCoupon, newcomer, openExercise,
  openLog, PEOPLE, rule, sendButton, signIn, signOut, stranger, tabTo, test, type Person,
} from './app'

/** A photograph as a phone takes it, of nothing in particular. */
const photo = (): Promise<Buffer> =>
  sharp({ create: { width: 1600, height: 900, channels: 3, background: '#6b7078' } }).jpeg().toBuffer()

let student: Person

test.beforeAll(async ({ browser }) => {
  const { page, person } = await newcomer(browser)
  student = person
  await page.context().close()
})

test('a student confirms the cautions of the next exercise, logs a coupon and reads its scorecard', async ({ browser }) => {
  test.slow() // every screen of the way is checked
  const page = await stranger(browser)
  await page.goto('/learn')
  await signIn(page, PEOPLE.klara)
  await page.waitForURL('**/learn')
  await expectGoodScreen(page, { gloves: true })

  // The exercise that is next, its booth card, and the cautions with their sources.
  await openExercise(page)
  await expect(page.getByRole('heading', { level: 1, name: LAP_2F })).toBeVisible()
  await expect(page.getByText('DCEN, electrode negative')).toBeVisible()
  await expect(page.getByText('90 in/min to 120 in/min')).toBeVisible()
  await expect(page.getByRole('link', { name: 'Log a coupon' })).toHaveCount(0)
  await expect(page.getByText(/Never weld with a filter lighter than/)).toBeVisible()
  await expect(page.getByText(/OSHA 29 CFR 1910\.133/)).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await confirmCautions(page)
  await expectGoodScreen(page, { gloves: true })

  // What was run, what the gauge says, what was seen, and a photo.
  await group(page, 'Pass 1').getByLabel('Polarity').selectOption('DCEN')
  for (const [label, text] of [['Current, A', '145'], ['Voltage, V', '16.5'], ['Wire feed, in/min', '105'], ['Tip to work', '5/8'], ['Arc time, min:s', '0:36'], ['Length welded', '6 in']] as const) {
    await box(page, 'Pass 1', label).fill(text)
  }
  await fillLook(page, {
    stations: ['5/16', '.312', '8 mm', '5/16', '1/8', '1/8'].map((leg) => ({ Width: '7/16', 'Upper leg': leg, 'Lower leg': '5/16', Convexity: '1/32' })),
    indications: [{ what: 'Undercut', sizes: { 'From the start': '2', Length: '1 1/2', Depth: '3/64' }, toe: 'Upper' }],
  })
  await page.getByLabel('Photo').setInputFiles({ name: 'coupon.jpg', mimeType: 'image/jpeg', buffer: await photo() })
  await page.getByLabel(/^Note to yourself/).fill('Ran out of patience after four inches.')
  await expectGoodScreen(page, { gloves: true })
  await sendButton(page).click()

  // The scorecard: the answer, every rule with reading, limit and source, the drawn bead, the photo.
  expect(await couponNumber(page)).toBe(1)
  await expectVerdict(page, 'Reject')
  await expect(rule(page, 'Leg size')).toContainText('1/8 in')
  await expect(rule(page, 'Leg size')).toContainText(/Limit: at least .*1\/4 in/)
  await expect(rule(page, 'Undercut')).toContainText('3/64 in')
  for (const name of ['Leg size', 'Undercut', 'Cracks', 'Fusion', 'Craters', 'Porosity']) await expect(rule(page, name).first()).toContainText(/AWS D1\.1|handbook|from memory|read in the standard|agency/)
  await expect(page.getByRole('img', { name: /^A weld 6 in long\. Its start is at the left.*Undercut/i }).filter({ visible: true })).toHaveCount(1)
  const shown = page.getByRole('img', { name: 'Coupon 1, photo 1' })
  await shown.scrollIntoViewIfNeeded()
  await expect.poll(() => shown.evaluate((element) => (element as HTMLImageElement).naturalWidth)).toBe(1600)
  await expect(page.getByText('Ran out of patience after four inches.')).toBeVisible()
  await expect(page.getByText(/qualified inspector decide/)).toBeVisible()
  await expectGoodScreen(page, { gloves: true })

  // One coupon is no estimate.
  await page.getByRole('link', { name: 'Back to the exercise' }).click()
  await expect(page.getByText(/Not enough yet: \d of 5 coupons judged/)).toBeVisible()
  await expect(page.getByRole('link', { name: 'No. 1', exact: true })).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await signOut(page)
  await page.waitForURL('**/sign-in')
})

test('a clean coupon is accepted, and the next form begins with its settings', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await box(page, 'Pass 1', 'Current, A').fill('150 A')
  await logCoupon(page, CLEAN)
  await expectVerdict(page, 'Accept')
  await expect(rule(page, 'Fusion')).toContainText('complete')
  await page.getByRole('link', { name: 'Log the next one' }).click()
  await expect(box(page, 'Pass 1', 'Current, A')).toHaveValue('150')
  await expect(box(page, 'Station 1', 'Width')).toHaveValue('')
})

test('something not measured is incomplete, never accepted', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await logCoupon(page, { ...CLEAN, looked: false })
  await expectVerdict(page, 'Incomplete')
  await expect(rule(page, 'Cracks')).toContainText('not measured')
})

test('what cannot be used is said at its box, and nothing typed is lost', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await fillLook(page, CLEAN)
  const wrong = [
    ['Station 1', 'Width', 'wide', '“wide” is not a length. Write it like 5/16, .312 or 8 mm.'],
    ['Station 2', 'From the start', '9 in', 'The weld is 6 in long; 9 in is past its end.'],
    ['Station 3', 'Upper leg', '-1/4', '“-1/4” is not a length. Write it like 5/16, .312 or 8 mm.'],
    ['Station 4', 'Lower leg', '500', /^Station 4: 500 is more than this weld could have\. The most taken here is /],
    ['Pass 1', 'Current, A', 'lots', /“lots” is not a number with the right unit\. Write it like 140/],
  ] as const
  for (const [of, label, text] of wrong) await box(page, of, label).fill(text)
  await sendButton(page).click()
  await expect(page.getByRole('alert').filter({ hasText: 'Not sent yet' })).toContainText('Some of this needs another look')
  for (const [of, label, text, sentence] of wrong) {
    await expect(box(page, of, label)).toHaveAttribute('aria-invalid', 'true')
    await expect(box(page, of, label)).toHaveAccessibleDescription(typeof sentence === 'string' ? new RegExp(escaped(sentence)) : sentence)
    await expect(box(page, of, label)).toHaveValue(text)
  }
  await expect(box(page, 'Pass 1', 'Current, A')).toBeFocused()
  await expect(box(page, 'Station 5', 'Convexity')).toHaveValue('1/32')
  await expectGoodScreen(page, { gloves: true })

  for (const [of, label, text] of [['Station 1', 'Width', '7/16'], ['Station 2', 'From the start', '1 1/2'], ['Station 3', 'Upper leg', '8 mm'], ['Station 4', 'Lower leg', '.312'], ['Station 6', 'From the start', '4 1/2 in'], ['Pass 1', 'Current, A', '140']] as const) {
    await box(page, of, label).fill(text)
  }
  await sendButton(page).click()
  await expect(box(page, 'Station 6', 'From the start')).toHaveAccessibleDescription(/Another station is already at 4 1\/2 in\./)
  await box(page, 'Station 6', 'From the start').fill('5 1/2')
  await sendButton(page).click()
  await couponNumber(page)
  await expectVerdict(page, 'Accept')
})

test('a photo of 40 MB and a file that is no picture are refused before anything is sent', async ({ browser }, info) => {
  const page = await as(browser, student)
  await openLog(page)
  const large = info.outputPath('large.jpg')
  await writeFile(large, Buffer.alloc(40 * 1024 * 1024))
  await page.getByLabel('Photo').setInputFiles(large)
  await expect(page.getByLabel('Photo')).toHaveAccessibleDescription(/Not a JPEG, PNG or WebP picture up to 15 MB/)
  await page.getByLabel('Photo').setInputFiles({ name: 'settings.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.7') })
  await expect(page.getByLabel('Photo')).toHaveAccessibleDescription(/Not a JPEG, PNG or WebP picture up to 15 MB/)
  await page.getByLabel('Photo').setInputFiles({ name: 'coupon.jpg', mimeType: 'image/jpeg', buffer: await photo() })
  await expect(page.getByLabel('Photo')).not.toHaveAttribute('aria-invalid')
  await expect(page.getByText('coupon.jpg')).toBeVisible()
})

test('a file that only says it is a picture is refused by the server; the coupon stands and a photo can follow', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await page.getByLabel('Photo').setInputFiles({ name: 'coupon.png', mimeType: 'image/png', buffer: Buffer.from('no picture at all') })
  await logCoupon(page)
  await expect(page.getByText(/The coupon is logged, but the photo did not arrive/)).toBeVisible()
  await page.getByLabel('Add a photo').setInputFiles({ name: 'coupon.png', mimeType: 'image/png', buffer: Buffer.from('still none') })
  await page.getByRole('button', { name: 'Send the photo' }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'This is not a JPEG, PNG or WebP picture.' })).toBeVisible()
  await page.getByLabel('Add a photo').setInputFiles({ name: 'coupon.jpg', mimeType: 'image/jpeg', buffer: await photo() })
  await page.getByRole('button', { name: 'Send the photo' }).click()
  await expect(page.getByRole('img', { name: /^Coupon \d+, photo 1$/ })).toBeVisible()
  await expect(page.getByText(/the photo did not arrive/)).toHaveCount(0)
})

test('two quick presses of send make one coupon', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await fillLook(page, CLEAN)
  await sendButton(page).dblclick()
  const first = await couponNumber(page)
  await openLog(page)
  await logCoupon(page)
  expect(await couponNumber(page)).toBe(first + 1)
})

test('a session that ends in the middle of a form is begun again inside it, and the coupon is sent', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await fillLook(page, CLEAN)
  await page.getByLabel(/^Note to yourself/).fill('Typed before the session ended.')
  await page.context().clearCookies()
  await sendButton(page).click()
  await expect(page.getByText('You are signed out')).toBeVisible()
  await expect(page.getByText(`You sign in as ${student.signInName}.`)).toBeVisible()
  await expect(box(page, 'Station 6', 'Lower leg')).toHaveValue('.312')
  await expectGoodScreen(page, { gloves: true })
  await page.getByLabel('Password').fill('not the password at all')
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await expect(page.getByText(/The name or the password is not right/)).toBeVisible()
  await page.getByLabel('Password').fill(student.password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await couponNumber(page)
  await expectVerdict(page, 'Accept')
  await expect(page.getByText('Typed before the session ended.')).toBeVisible()
})

test('what is typed is kept over a reload, and sent after it', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await fillLook(page, CLEAN)
  await page.reload()
  await expect(page.getByText('This is what you had typed before.')).toBeVisible()
  await expect(box(page, 'Station 2', 'Width')).toHaveValue('7/16')
  await sendButton(page).click()
  await couponNumber(page)
  await expectVerdict(page, 'Accept')
  await openLog(page)
  await expect(page.getByText('This is what you had typed before.')).toHaveCount(0)
})

test('a coupon is logged with the keyboard alone', async ({ browser }) => {
  const page = await as(browser, student, { viewport: { width: 820, height: 1180 } })
  await page.goto('/learn')
  await page.keyboard.press('Tab')
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused()
  await page.keyboard.press('Enter')
  await tabTo(page, page.getByRole('main').getByRole('link', { name: LAP_2F, exact: true }).last())
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Booth card' })).toBeVisible()
  const confirm = page.getByRole('button', { name: 'I have read these and my booth is ready' })
  const log = page.getByRole('link', { name: 'Log a coupon' })
  const unconfirmed = await confirm.isVisible()
  await tabTo(page, unconfirmed ? confirm : log)
  await page.keyboard.press(unconfirmed ? 'Space' : 'Enter')
  await expect(page.getByRole('heading', { name: 'Log a coupon' })).toBeVisible()
  await tabTo(page, box(page, 'Station 1', 'Width'))
  for (const [label, text] of [['Width', '7/16'], ['Upper leg', '5/16'], ['Lower leg', '.312'], ['Convexity', '1/32']] as const) {
    for (const station of [1, 2, 3, 4, 5, 6]) {
      await expect(box(page, `Station ${station}`, label)).toBeFocused() // Enter goes to the next size
      await page.keyboard.type(text)
      await page.keyboard.press('Enter')
    }
  }
  await tabTo(page, page.getByRole('button', { name: 'Looked for everything, none found' }))
  await page.keyboard.press('Space')
  await tabTo(page, sendButton(page))
  await page.keyboard.press('Enter')
  await couponNumber(page)
  await expectVerdict(page, 'Accept')
})

test('a Spanish reader meets Spanish from the door to the scorecard', async ({ browser }) => {
  const page = await as(browser, student, { locale: 'es-MX' })
  await page.goto('/account')
  await page.getByText('Español', { exact: true }).click()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Tu cuenta' })).toBeVisible()
  await page.goto('/learn')
  await page.getByRole('main').getByRole('link', { name: LAP_2F, exact: true }).last().click()
  await expect(page.getByRole('heading', { name: 'Tarjeta de la cabina' })).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  await page.goto('/learn/nowhere')
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  await page.goto('/account')
  await page.getByText('English', { exact: true }).click()
  await page.getByRole('button', { name: 'Guardar', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Your account' })).toBeVisible()
})

/** Text as it stands, for a regular expression. */
function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
}
