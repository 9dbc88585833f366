// A coupon read twice: it waits for the second reader like any other, without the first look; afterwards the staff see where the two
// differ, and the student sees nothing of it.
import type { Browser, Page } from '@playwright/test'
import {
  as, CLEAN, expect, expectGoodScreen, expectVerdict, fillLook, gradeCoupon, logCoupon, openLog, PEOPLE, PHONE, submitButton, TABLET, test, type Person, type TypedLook,
} from './app'
import { archive, joined, ownClass, TEACHER, teacherOf, type OwnClass } from './own-class'

/** Readings no other look has, so that they would be noticed wherever they leak to. */
const FIRST: TypedLook = { stations: [{ Width: '0.4139', 'Upper leg': '0.1713', 'Lower leg': '0.3363', Convexity: '0.0207' }] }
/** As typed in inches, in millimetres, and in words. */
const TELLTALES = ['4139', '1713', '0207', '10.513', '4.351', 'Point the wire higher']

/** From now on so many of the coupons graded are read twice. */
async function readTwice(browser: Browser, percent: string): Promise<void> {
  const page = await as(browser, PEOPLE.coordinator, { viewport: PHONE })
  await page.goto('/program/agreement')
  await expect(page.locator('form[inert]')).toHaveCount(0)
  await page.getByLabel('Coupons read twice, in percent').fill(percent)
  await page.getByRole('button', { name: 'Save the share' }).click()
  await expect(page.getByText('It holds for coupons graded from now on.')).toBeVisible()
  await page.context().close()
}

/** Other tests grade coupons that nobody is to read again. */
test.afterEach(async ({ browser }) => readTwice(browser, '0'))

async function waitingCoupon(browser: Browser, own: OwnClass, teacher: Page): Promise<{ student: Page; person: Person; couponId: string }> {
  const { page: student, person } = await joined(browser, own, teacher)
  await openLog(student)
  return { student, person, couponId: await logCoupon(student, CLEAN) }
}

async function openCoupon(page: Page, couponId: string): Promise<void> {
  await page.goto(`/teach/coupons/${couponId}`)
  await expect(submitButton(page)).toBeVisible()
  await expect(page.locator('form[inert]')).toHaveCount(0)
}

/** The first look: the upper leg too short, with a remark to the student. */
async function firstLook(page: Page, couponId: string): Promise<void> {
  await openCoupon(page, couponId)
  await gradeCoupon(page, FIRST, 'Point the wire higher.')
  await expectVerdict(page, 'Reject')
  await expect(page.getByText('Point the wire higher.')).toBeVisible()
}

async function expectNothingOf(page: Page, addresses: readonly string[], secrets: readonly string[]): Promise<void> {
  for (const address of addresses) {
    const sent = await (await page.request.get(address)).text()
    for (const secret of secrets) expect(sent, `${address} gives “${secret}” away`).not.toContain(secret)
  }
}

test('the other instructor of a class reads a graded coupon as if it waited, and the grade stays', async ({ browser }) => {
  test.slow() // every screen of the way is checked
  const own = await ownClass(browser, /Self-shielded/)
  await own.office.goto(`/program/people/${own.id}`)
  await own.office.getByLabel('One more instructor').selectOption({ label: PEOPLE.stick.name })
  await own.office.getByRole('button', { name: 'Add to this class' }).click()
  await expect(own.office.getByRole('button', { name: `Take ${PEOPLE.stick.name} off this class` })).toBeVisible()
  await readTwice(browser, '100')
  const first = await teacherOf(browser)
  const { student, person, couponId } = await waitingCoupon(browser, own, first)
  const second = await as(browser, PEOPLE.stick, { viewport: TABLET })
  const board = `/teach/classes/${own.id}`
  const line = second.getByRole('main').getByRole('link', { name: new RegExp(`${person.name}.*no\\.`, 's') })
  await second.goto(board)
  const before = await line.first().innerText()

  await firstLook(first, couponId)
  await expect(first.getByRole('heading', { name: 'First look and second reading' })).toHaveCount(0)

  // The same line in the same words, and nothing of the first look on any page that could tell of it.
  await second.goto(board)
  expect(await line.first().innerText()).toBe(before)
  const studentHref = await second.getByRole('rowheader').getByRole('link', { name: person.name }).getAttribute('href') ?? ''
  await line.first().click()
  await expect(submitButton(second)).toBeVisible()
  await expect(second.locator('form[inert]')).toHaveCount(0)
  await expectNothingOf(second, [second.url(), studentHref], TELLTALES)
  await expect(second.getByText('Reject', { exact: true })).toHaveCount(0)
  await second.goto(studentHref)
  await expect(second.getByText('Reject', { exact: true })).toHaveCount(0)
  await expect(second.getByRole('link', { name: /^Look at .*, no\. 1$/ })).toBeVisible()

  await openCoupon(second, couponId)
  await gradeCoupon(second, CLEAN, 'I would take this one.')
  await expect(second.getByRole('heading', { name: 'First look and second reading' })).toBeVisible()
  await expectVerdict(second, 'Reject') // the grade is the first look's

  // Both see where they differ.
  await first.goto(`/teach/coupons/${couponId}`)
  for (const page of [first, second]) {
    const table = page.getByRole('table', { name: 'Where the first look and the second reading differ' })
    await expect(table.getByRole('columnheader')).toHaveText(['Rule', `First look, ${TEACHER.name}`, `Second reading, ${PEOPLE.stick.name}`])
    await expect(table.getByRole('row').filter({ has: page.getByRole('rowheader', { name: /^Leg size/ }) })).toContainText('the verdicts differ')
    await expect(page.getByText('The verdicts differ.', { exact: true })).toBeVisible()
    await expectGoodScreen(page)
  }
  await first.getByText('Every rule, side by side').click()
  await expect(first.getByRole('table', { name: 'The first look and the second reading, every rule' })).toBeVisible()
  await expectGoodScreen(first)
  await first.goto(studentHref)
  await expect(first.getByText('Second reading of 2F lap, no. 1: I would take this one.').first()).toBeVisible() // at the top and among the notes

  // The student sees the grade, the first look's words, and nothing of a second.
  await student.goto(`/learn/coupons/${couponId}`)
  await expectVerdict(student, 'Reject')
  await expect(student.getByText('Point the wire higher.')).toBeVisible()
  const addresses = [`/learn/coupons/${couponId}`, '/learn', '/learn/progress', `/print/progress/${studentHref.split('/').at(-1)}`]
  await expectNothingOf(student, addresses, [PEOPLE.stick.name, 'Second read', 'second read', 'I would take this one'])
  await archive(own)
})

test('where a class has one instructor another one of the school reads, without the student’s name, and sees their own reading', async ({ browser }) => {
  test.slow()
  const own = await ownClass(browser, /Self-shielded/)
  await readTwice(browser, '100')
  const teacher = await teacherOf(browser)
  const { person, couponId } = await waitingCoupon(browser, own, teacher)
  const reader = await as(browser, PEOPLE.stick, { viewport: PHONE })
  const link = reader.locator(`a[href="/teach/coupons/${couponId}"]`)
  await reader.goto('/teach')
  await expect(reader.getByRole('heading', { name: 'Your classes' })).toBeVisible()
  await expect(link, 'it waits for its own instructor first').toHaveCount(0)
  await firstLook(teacher, couponId)

  await reader.goto('/teach')
  await expect(reader.getByRole('heading', { name: 'Coupons of other classes to look at' })).toBeVisible()
  await expectGoodScreen(reader, { gloves: true })
  await link.click()
  await expect(submitButton(reader)).toBeVisible()
  await expect(reader.locator('form[inert]')).toHaveCount(0)
  await expectGoodScreen(reader, { gloves: true })
  await expectNothingOf(reader, ['/teach', reader.url()], [...TELLTALES, TEACHER.name, person.name])
  await fillLook(reader, CLEAN)
  await reader.getByLabel('Remark to the coupon’s instructors').fill('I would take this one.')
  await submitButton(reader).click()
  await expect(reader.getByText('It changes no grade; it shows how alike people judge.', { exact: false })).toBeVisible()
  await expectVerdict(reader, 'Accept')
  await expectGoodScreen(reader, { gloves: true })
  await expectNothingOf(reader, [reader.url()], [...TELLTALES, TEACHER.name, person.name])
  await reader.getByRole('link', { name: 'Back to your classes' }).click()
  await expect(reader.getByRole('heading', { name: 'Your classes' })).toBeVisible()
  await expect(link).toHaveCount(0)

  await teacher.goto(`/teach/coupons/${couponId}`)
  await expectVerdict(teacher, 'Reject')
  await expect(teacher.getByText(`${PEOPLE.stick.name} read this coupon too`, { exact: false })).toBeVisible()
  await archive(own)
})

test('a share that is none is said at its box', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: PHONE })
  await page.goto('/program/agreement')
  await expect(page.locator('form[inert]')).toHaveCount(0)
  const share = page.getByLabel('Coupons read twice, in percent')
  await share.fill('a few')
  await page.getByRole('button', { name: 'Save the share' }).click()
  await expect(share).toHaveAccessibleDescription(/Type a whole number from 0 to 100\./)
  await expect(share).toHaveValue('a few')
})
