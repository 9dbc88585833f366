// One student on one page: what to do next first, what was said of their coupons, notes for staff; and who may open it.
import type { Browser, Page } from '@playwright/test'
import { as, classAddress, CLEAN, DESK, expect, expectGoodScreen, expectVerdict, gradeCoupon, logCoupon, newcomer, openLog, PEOPLE, PHONE, submitButton, TABLET, test, type Person } from './app'

/** A new student with one coupon that waits, and their page on their instructor's desk. */
async function openStudent(browser: Browser): Promise<{ staff: Page; student: Page; person: Person }> {
  const { page: student, person } = await newcomer(browser)
  await openLog(student)
  await logCoupon(student, CLEAN)
  const staff = await as(browser, PEOPLE.selfShielded, { viewport: DESK })
  await staff.goto(await classAddress(browser))
  await staff.goto((await staff.getByRole('link', { name: new RegExp(`^${person.name}`) }).last().getAttribute('href')) ?? '')
  await expect(staff.getByRole('heading', { name: person.name, level: 1 })).toBeVisible()
  return { staff, student, person }
}

const next = (page: Page) => page.getByRole('region', { name: 'What to do next' })
const remarks = (page: Page) => page.getByRole('region', { name: 'Remarks on coupons' })

test('an instructor is told what to do next, does it, and finds the remark and the comparison on the page', async ({ browser }) => {
  const { staff, person } = await openStudent(browser)
  const address = staff.url()
  await expect(staff.getByText('student and instructor have both judged 0 of the 5 coupons it takes')).toBeVisible()
  await expect(remarks(staff)).toContainText('Nobody has written anything on a coupon yet.')
  await next(staff).getByRole('link', { name: /^Look at 2F, lap joint.*no\. 1$/ }).click()
  await staff.waitForURL('**/teach/coupons/*')
  await gradeCoupon(staff, CLEAN, 'Even. Hold that angle.')
  await expect(submitButton(staff)).toHaveCount(0)
  await expectVerdict(staff, 'Accept')
  await staff.goto(address)
  await expect(next(staff).getByRole('link', { name: /^Look at/ })).toHaveCount(0)
  await expect(staff.getByText('student and instructor have both judged 1 of the 5 coupons it takes')).toBeVisible()
  await expect(remarks(staff)).toContainText('Even. Hold that angle.')
  await remarks(staff).getByRole('link', { name: /^Accept: 2F, lap joint.*no\. 1$/ }).click()
  await expect(staff.getByRole('heading', { name: `${person.name}, no. 1`, level: 1 })).toBeVisible()
})

test('a note for staff is read by instructor and coordinator, and neither it nor the page by the student', async ({ browser }) => {
  const { staff, student, person } = await openStudent(browser)
  const studentId = new URL(staff.url()).pathname.split('/').at(-1) ?? ''
  await staff.getByRole('link', { name: 'Write a note for staff' }).click()
  await staff.getByLabel('New note').fill('Wears bifocals. Seat the hood lower.')
  await staff.getByRole('button', { name: 'Keep the note' }).click()
  await expect(next(staff)).toContainText('Wears bifocals. Seat the hood lower.')
  for (const viewport of [DESK, TABLET, PHONE]) {
    await staff.setViewportSize(viewport)
    await expectGoodScreen(staff)
  }

  const coordinator = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await coordinator.goto(`/program/people/person/${studentId}`)
  await coordinator.getByRole('link', { name: 'Practice and tests' }).click()
  await expect(coordinator.getByRole('heading', { name: person.name, level: 1 })).toBeVisible()
  await expect(coordinator.getByRole('region', { name: 'In short' })).toContainText('Wears bifocals. Seat the hood lower.')
  await expect(coordinator.getByRole('link', { name: /^Look at/ })).toHaveCount(0)
  await expectGoodScreen(coordinator)
  await coordinator.getByRole('button', { name: /^Take down the note of/ }).click()
  await expect(coordinator.getByText('Wears bifocals')).toHaveCount(0)

  for (const path of [`/teach/students/${studentId}`, `/program/students/${studentId}`]) expect((await student.goto(path))?.status(), path).toBe(404)
  expect((await (await as(browser, PEOPLE.stick)).goto(`/teach/students/${studentId}`))?.status(), 'an instructor of another class').toBe(404)
})
