import type { Browser, Page } from '@playwright/test'
import {
  as, box, CLASS, CLEAN, couponNumber, expect, expectGoodScreen, expectVerdict, fillLook, gradeCoupon, logCoupon, newcomer, openLog, PEOPLE, readCode, signIn,
  submitButton, TABLET, test, type Person, type TypedLook,
} from './app'

/** Readings no other coupon has, so that they would be noticed wherever they leak to. */
const SELF: TypedLook = { stations: [{ Width: '0.4139', 'Upper leg': '0.3217', 'Lower leg': '0.3363', Convexity: '0.0207' }] }
/** How the scorecard shows the student's shortest leg. */
const SHOWN = '0.322 in'
/** As typed in inches, in millimetres, and as shown. */
const TELLTALES = ['4139', '3217', '3363', '0207', '10.513', '8.171', '8.542', SHOWN]

/** A new student's coupon that waits, and the instructor's board with it. */
async function waitingCoupon(browser: Browser, look: TypedLook = CLEAN): Promise<{ page: Page; student: Page; person: Person; couponId: string }> {
  const { page: student, person } = await newcomer(browser)
  await openLog(student)
  const couponId = await logCoupon(student, look)
  const page = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  return { page, student, person, couponId }
}

async function openBoard(page: Page): Promise<void> {
  await page.goto('/teach')
  await page.getByRole('link', { name: CLASS, exact: true }).first().click()
  await expect(page.getByRole('heading', { name: 'Waiting for you' })).toBeVisible()
}

async function openWaiting(page: Page, person: Person): Promise<void> {
  await openBoard(page)
  await page.getByRole('link', { name: new RegExp(`${person.name}.*no\\.`, 's') }).first().click()
  await expect(submitButton(page)).toBeVisible()
  await expect(page.locator('form[inert]')).toHaveCount(0)
}

test('an instructor looks at a coupon unswayed by the student’s numbers; each sees both looks, and a verdict decided over them', async ({ browser }) => {
  test.slow() // every screen of the way is checked
  const { page, student, person, couponId } = await waitingCoupon(browser, SELF)
  await page.goto('/teach')
  await expect(page.getByText(/\d+ coupons? waits? for your look/)).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await openBoard(page)
  await expectGoodScreen(page)
  const studentHref = await page.getByRole('rowheader').getByRole('link', { name: person.name }).getAttribute('href') ?? ''

  // Neither the form nor the student's page carries a number of the student's, in what is shown or in what was sent.
  await openWaiting(page, person)
  await expectGoodScreen(page, { gloves: true })
  for (const address of [page.url(), studentHref]) {
    const sent = await (await page.request.get(address)).text()
    expect(sent).toContain(person.name)
    for (const telltale of TELLTALES) expect(sent, `${address} gives ${telltale} away`).not.toContain(telltale)
  }
  await page.goto(studentHref)
  await expect(page.getByRole('link', { name: /^Look at .*, no\. 1$/ })).toBeVisible()
  await expect(page.getByText('Accept', { exact: true })).toHaveCount(0)
  await expectGoodScreen(page)
  await page.getByRole('link', { name: /^Look at .*, no\. 1$/ }).click()
  await expect(page.locator('form[inert]')).toHaveCount(0)

  await gradeCoupon(page, {
    stations: [{ Width: '7/16', 'Upper leg': '3/16', 'Lower leg': '5/16', Convexity: '1/32' }],
    indications: [{ what: 'Undercut', sizes: { 'From the start': '3', Length: '1/2', Depth: '1/64' }, toe: 'Lower' }],
  }, 'Upper leg is short all along: point the wire a little higher.')
  await expectVerdict(page, 'Reject')
  await expect(page.getByText(`Inspected by ${PEOPLE.selfShielded.name}`)).toBeVisible()
  await expectBothLooks(page, 'Student’s own look')
  expect(await (await page.request.get(page.url())).text(), 'once looked at, the student’s reading is there to be found').toContain(SHOWN)
  await expectGoodScreen(page)
  await openBoard(page)
  await expect(page.getByRole('link', { name: new RegExp(`${person.name}.*no\\.`, 's') })).toHaveCount(0)

  await student.goto(`/learn/coupons/${couponId}`)
  await expectVerdict(student, 'Reject')
  await expectBothLooks(student, 'Your own look')
  await expect(student.getByText('Upper leg is short all along: point the wire a little higher.')).toBeVisible()
  await expect(student.getByText(/^Instructor’s look: /)).toContainText(PEOPLE.selfShielded.name)
  await expectGoodScreen(student, { gloves: true })

  // The instructor decides otherwise: never without a reason, and the student reads it beside what the readings gave.
  await page.goto(`/teach/coupons/${couponId}`)
  await page.getByText('Decide the verdict yourself').click()
  const reason = page.getByLabel('Reason')
  await reason.fill('Fine.')
  await page.getByRole('button', { name: 'Decide it' }).click()
  await expect(reason).toHaveAttribute('aria-invalid', 'true')
  await expect(reason).toHaveValue('Fine.')
  await reason.fill('The gauge sat on spatter; cleaned, the upper leg is long enough.')
  await page.getByRole('button', { name: 'Decide it' }).click()
  await expect(page.getByText('The readings by themselves: Reject.')).toBeVisible() // the form offered an Accept before there was one
  await expectVerdict(page, 'Accept')
  await student.reload()
  await expectVerdict(student, 'Accept')
  await expect(student.getByText('The readings by themselves: Reject.')).toBeVisible()
  await expect(student.getByText('The gauge sat on spatter; cleaned, the upper leg is long enough.')).toBeVisible()
  await expectGoodScreen(student, { gloves: true })
})

/** Leg size, side by side: the instructor's 3/16 in rejects, the student's own 0.322 in accepts. */
async function expectBothLooks(page: Page, own: string): Promise<void> {
  const table = page.getByRole('table', { name: 'Side by side' })
  await expect(table.getByRole('columnheader')).toHaveText(['Rule', 'Instructor’s look', own])
  const legs = table.getByRole('row').filter({ has: page.getByRole('rowheader', { name: /^Leg size/ }) })
  await expect(legs.getByRole('cell').nth(0)).toContainText('Reject. 3/16 in')
  await expect(legs.getByRole('cell').nth(1)).toContainText(`Accept. ${SHOWN}`)
  await expect(legs.getByRole('rowheader')).toContainText('the verdicts differ')
  await expect(page.getByText(/The two looks agree on \d+ of \d+ rules\./)).toBeVisible()
}

test('what cannot be used in a look is said at its box, and nothing typed is lost', async ({ browser }) => {
  const { page, person } = await waitingCoupon(browser)
  await openWaiting(page, person)
  await fillLook(page, CLEAN)
  await box(page, 'Station 3', 'Lower leg').fill('about right')
  await page.getByLabel('Remark to the student').fill('Good restart.')
  await submitButton(page).click()
  await expect(box(page, 'Station 3', 'Lower leg')).toHaveAccessibleDescription(/“about right” is not a length/)
  await expect(box(page, 'Station 3', 'Lower leg')).toBeFocused()
  await expect(page.getByLabel('Remark to the student')).toHaveValue('Good restart.')
  await expectGoodScreen(page, { gloves: true })
  await page.context().clearCookies()
  await box(page, 'Station 3', 'Lower leg').fill('9/32')
  await submitButton(page).click()
  await expect(page.getByText('You are signed out')).toBeVisible()
  await page.getByLabel('Password').fill(PEOPLE.selfShielded.password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await expectVerdict(page, 'Accept')
  await expect(page.getByText('Good restart.')).toBeVisible()
})

test('of two tabs on one coupon the second is told, and keeps what was typed', async ({ browser }) => {
  const { page: first, person } = await waitingCoupon(browser)
  await openWaiting(first, person)
  const second = await first.context().newPage()
  await second.goto(first.url())
  await expect(second.locator('form[inert]')).toHaveCount(0)
  await fillLook(second, { stations: [{ Width: '3/8', 'Upper leg': '1/8', 'Lower leg': '1/8', Convexity: '1/16' }] })
  await gradeCoupon(first, CLEAN)
  await expectVerdict(first, 'Accept')

  await submitButton(second).click()
  const told = second.getByRole('alert').filter({ hasText: 'Not submitted' })
  await expect(told).toContainText('Someone submitted an inspection of this coupon while you had it open.')
  await expect(box(second, 'Station 4', 'Upper leg')).toHaveValue('1/8')
  await expectGoodScreen(second, { gloves: true })
  await told.getByRole('link', { name: 'See the inspection that stands' }).click()
  await expectVerdict(second, 'Accept')
})

test('a correction replaces the look and keeps the earlier one listed for both', async ({ browser }) => {
  const { page, student, person, couponId } = await waitingCoupon(browser)
  await openWaiting(page, person)
  await gradeCoupon(page, CLEAN)
  await expectVerdict(page, 'Accept')
  await expect(page.getByRole('heading', { name: 'Earlier looks, replaced' })).toHaveCount(0)

  await page.getByRole('link', { name: 'Correct this inspection' }).click()
  await expect(page.getByText('Your look replaces the one that stands.')).toBeVisible()
  await expect(box(page, 'Station 2', 'Width')).toHaveValue('7/16')
  await expectGoodScreen(page, { gloves: true })
  await expect(page.locator('form[inert]')).toHaveCount(0)
  await box(page, 'Station 2', 'Lower leg').fill('1/8')
  await submitButton(page).click()
  await expectVerdict(page, 'Reject')
  await expect(page.getByText(/correction 1/)).toBeVisible()
  await student.goto(`/learn/coupons/${couponId}`)
  await expectVerdict(student, 'Reject')
  for (const screen of [page, student]) {
    const earlier = screen.getByRole('heading', { name: 'Earlier looks, replaced' }).locator('..')
    await expect(earlier.getByRole('listitem')).toHaveText([/^Instructor’s look: Accept, Mark \d+ \(/])
  }
})

test('the next coupon that waits is one step from the one just graded', async ({ browser }) => {
  const { page, student, person } = await waitingCoupon(browser)
  await student.getByRole('link', { name: 'Log the next one' }).click()
  await expect(student.locator('form[inert]')).toHaveCount(0)
  await logCoupon(student)
  expect(await couponNumber(student)).toBe(2)
  await openWaiting(page, person)
  await gradeCoupon(page, CLEAN)
  await expectVerdict(page, 'Accept')
  await page.getByRole('link', { name: /^Next: / }).click()
  await expect(submitButton(page)).toBeVisible()
})

test('a reset password ends the student’s session at once, and must be replaced before anything else', async ({ browser }) => {
  const { page, student, person } = await waitingCoupon(browser)
  await openBoard(page)
  await page.getByRole('rowheader').getByRole('link', { name: person.name }).click()
  await expect(page.getByText(`${person.name} signs in as ${person.signInName}.`)).toBeVisible()
  await page.getByRole('button', { name: 'Reset the password' }).click()
  await page.getByRole('button', { name: `Sign ${person.name} out everywhere and reset` }).click()
  const told = page.getByRole('status').filter({ hasText: 'New first password' })
  const first = /[a-z]+(?:-[a-z]+){3}-\d{4}/.exec(await told.innerText())?.[0] ?? ''
  expect(first).not.toBe('')
  await expectGoodScreen(page)

  await student.goto('/learn')
  await expect(student).toHaveURL(/\/sign-in/)
  await signIn(student, person)
  await expect(student.getByText(/The name or the password is not right/)).toBeVisible()
  await signIn(student, { ...person, password: first })
  await expect(student.getByText('Your instructor gave you this password. Choose your own now.')).toBeVisible()
  await student.goto('/learn')
  await expect(student).toHaveURL(/\/account$/)
  await expectGoodScreen(student, { gloves: true })

  await student.getByLabel('Current password').fill('not the one read out')
  await student.getByLabel('New password').fill('six-brass-hinges-and-a-kite')
  await student.getByRole('button', { name: 'Change the password' }).click()
  await expect(student.getByLabel('Current password')).toHaveAccessibleDescription(/This is not your current password/)
  await student.getByLabel('Current password').fill(first)
  await student.getByRole('button', { name: 'Change the password' }).click()
  await expect(student.getByText('The password is changed')).toBeVisible()
  await student.goto('/learn')
  await expect(student.getByRole('heading', { level: 1, name: new RegExp(CLASS.replace(/[()]/g, '\\$&')) })).toBeVisible()
})

test('a new class code ends the old one', async ({ browser }) => {
  const page = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  await openBoard(page)
  const old = await readCode(page)
  await page.getByRole('button', { name: 'Make a new code' }).click()
  await page.getByRole('button', { name: 'Keep the old code' }).click()
  expect(await readCode(page)).toBe(old)
  await page.getByRole('button', { name: 'Make a new code' }).click()
  await page.getByRole('button', { name: 'End the old code and make a new one' }).click()
  await expect.poll(() => readCode(page)).not.toBe(old)
})
