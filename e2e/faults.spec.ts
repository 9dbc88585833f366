// What goes wrong beside an open form: a class archived, an instructor taken off it. Nobody loses what they typed, and each is told.
import type { Browser, Page } from '@playwright/test'
import { box, CLEAN, expect, expectGoodScreen, expectVerdict, fillLook, logCoupon, openLog, PEOPLE, sendButton, submitButton, test, type Person } from './app'
import { addFromLibrary, archive, joined, ownClass, TEACHER, teacherOf, type OwnClass } from './own-class'

const LAP = 'FCAW-S: 2F, lap joint, 1/4 in plate, 0.045 in E71T-11'

type Scene = { readonly own: OwnClass; readonly page: Page; readonly student: Page; readonly person: Person; readonly couponId: string }

/** A class with one exercise and one student, whose first coupon waits for its instructor. */
async function waitingIn(browser: Browser): Promise<Scene> {
  const own = await ownClass(browser)
  const page = await teacherOf(browser)
  await page.goto(`/teach/course/${own.id}`)
  await addFromLibrary(page, [LAP])
  const { page: student, person } = await joined(browser, own, page)
  await openLog(student, LAP.replace(/^[^:]+: /, ''))
  const couponId = await logCoupon(student, CLEAN)
  return { own, page, student, person, couponId }
}

/** Opens the grading form of a coupon and fills it in, ready to be submitted. */
async function fillGrading(page: Page, couponId: string): Promise<void> {
  await page.goto(`/teach/coupons/${couponId}`)
  await expect(page.locator('form[inert]')).toHaveCount(0)
  await fillLook(page, CLEAN)
  await page.getByLabel('Remark to the student').fill('Even toes all along.')
}

test('a class archived under open forms: the student is told and keeps what they typed, what waits is graded, nothing new is logged', async ({ browser }) => {
  test.slow()
  const { own, page, student, couponId } = await waitingIn(browser)
  await student.getByRole('link', { name: 'Log the next one' }).click()
  await expect(student.locator('form[inert]')).toHaveCount(0)
  await fillLook(student, CLEAN)
  await student.getByLabel(/^Note to yourself/).fill('Slower at the start.')
  await fillGrading(page, couponId)
  await archive(own)

  await sendButton(student).click()
  await expect(student.getByRole('alert').filter({ hasText: 'This class has been archived, so nothing new is logged in it.' })).toBeVisible()
  await expect(student.getByLabel(/^Note to yourself/)).toHaveValue('Slower at the start.')
  await expect(box(student, 'Station 3', 'Lower leg')).toHaveValue('.312')
  await expectGoodScreen(student, { gloves: true })

  // The record is finished: the coupon that waits leads there from the instructor's classes, and its open form goes through.
  const other = await teacherOf(browser)
  await other.goto('/teach')
  const line = other.getByRole('listitem').filter({ has: other.getByRole('link', { name: own.name, exact: true }) })
  await expect(line).toContainText('Archived')
  await line.getByRole('link', { name: '1 waiting' }).click()
  await expect(other.getByRole('heading', { level: 1, name: own.name })).toBeVisible()
  await expect(other.getByRole('link', { name: /no\..1/ }).first()).toBeVisible()
  await submitButton(page).click()
  await expectVerdict(page, 'Accept')
  await other.goto('/teach')
  await expect(other.getByRole('link', { name: own.name, exact: true })).toHaveCount(0)

  // Taken back, the same form goes through.
  await archive(own, 'Take back')
  await sendButton(student).click()
  await student.waitForURL(/\/learn\/coupons\//)
  await expectVerdict(student, 'Accept')
  await archive(own)
})

test('an instructor taken off a class with a grading form open is refused at the next request and keeps what they typed', async ({ browser }) => {
  test.slow()
  const { own, page, couponId } = await waitingIn(browser)
  await fillGrading(page, couponId)
  // A class is never left without an instructor: another comes first.
  const { office } = own
  const add = async (name: string): Promise<void> => {
    await office.getByLabel('One more instructor').selectOption({ label: name })
    await office.getByRole('button', { name: 'Add to this class' }).click()
    await expect(office.getByRole('button', { name: `Take ${name} off this class` })).toBeVisible()
  }
  await office.goto(`/program/people/${own.id}`)
  await add(PEOPLE.stick.name)
  await office.getByRole('button', { name: `Take ${TEACHER.name} off this class` }).click()
  await expect(office.getByRole('button', { name: `Take ${TEACHER.name} off this class` })).toHaveCount(0)

  await submitButton(page).click()
  const told = page.getByRole('alert').filter({ hasText: 'Not submitted' })
  await expect(told).toContainText('This is not here, or not yours to see.')
  await expect(told).toContainText('If you no longer teach this class, the coordinator knows who does. What you typed is kept on this device.')
  await expect(box(page, 'Station 3', 'Lower leg')).toHaveValue('.312')
  await expect(page.getByLabel('Remark to the student')).toHaveValue('Even toes all along.')
  await expectGoodScreen(page, { gloves: true })
  const other = await teacherOf(browser)
  for (const address of [`/teach/classes/${own.id}`, `/teach/coupons/${couponId}`, `/teach/course/${own.id}`]) expect((await other.goto(address))?.status(), address).toBe(404)
  await expect(other.getByText('Not here, or not yours to see')).toBeVisible()

  // Back on the class, what was typed stands in the form again.
  await add(TEACHER.name)
  await page.reload()
  await expect(page.locator('form[inert]')).toHaveCount(0)
  await expect(box(page, 'Station 3', 'Lower leg')).toHaveValue('.312')
  await submitButton(page).click()
  await expectVerdict(page, 'Accept')
  await archive(own)
})
