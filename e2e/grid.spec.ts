import type { Browser, Locator, Page } from '@playwright/test'
import { joined, ownClass, TEACHER, teacherOf } from './own-class'
import { as, CLASS, CLEAN, DESK, expect, expectGoodScreen, gradeCoupon, logCoupon, newcomer, openLog, PEOPLE, test } from './app'

const cell = (page: Page, couponId: string, name: string): Locator => page.locator(`[data-coupon="${couponId}"][data-cell="${name}"]`)

/** A coupon of a new student that waits, and the keyboard grid of its exercise on an instructor's desk; `clock`: one whose time can be put forward. */
async function openGrid(browser: Browser, { clock = false } = {}): Promise<{ grid: Page; student: Page; log: string; couponId: string }> {
  const { page: student } = await newcomer(browser)
  await openLog(student)
  const log = student.url()
  const couponId = await logCoupon(student, CLEAN)
  const grid = await as(browser, PEOPLE.selfShielded, { viewport: DESK })
  if (clock) await grid.clock.install()
  await grid.goto(new URL(log).pathname.replace(/^\/learn\/([^/]+)\/([^/]+)\/log$/, '/teach/classes/$1/grid/$2'))
  await expect(grid.getByText('Live: new coupons appear by themselves.')).toBeVisible()
  await expect(grid.locator('div[inert]')).toHaveCount(0)
  return { grid, student, log, couponId }
}

test('a coupon sent while the line is down is in the grid once it is back, and what was typed survives that and a reload', async ({ browser }) => {
  const { grid, student, log, couponId } = await openGrid(browser)
  await cell(grid, couponId, '0.legA').fill('5/16')
  await grid.context().setOffline(true)
  await student.goto(log)
  await expect(student.locator('form[inert]')).toHaveCount(0)
  const later = await logCoupon(student, CLEAN)
  await expect(grid.getByText('Not live since')).toBeVisible()
  await expect(cell(grid, later, '0.legA')).toHaveCount(0)
  await grid.context().setOffline(false)
  await expect(cell(grid, later, '0.legA')).toBeVisible()
  await expect(cell(grid, couponId, '0.legA')).toHaveValue('5/16')
  await grid.reload()
  await expect(cell(grid, couponId, '0.legA')).toHaveValue('5/16')
  await expectGoodScreen(grid)
})

test('a row that someone else graded says so by itself and keeps what was typed until it is discarded', async ({ browser }) => {
  const { grid, couponId } = await openGrid(browser)
  await cell(grid, couponId, '0.legA').fill('5/16')
  const other = await grid.context().newPage()
  await other.goto(`/teach/coupons/${couponId}`)
  await expect(other.locator('form[inert]')).toHaveCount(0)
  await gradeCoupon(other, CLEAN)
  await expect(grid.getByText('Someone else inspected this coupon meanwhile. What you typed is still here.')).toBeVisible()
  await expect(cell(grid, couponId, '0.legA')).toHaveValue('5/16')
  await expectGoodScreen(grid)
  await grid.getByRole('button', { name: 'Discard this row' }).click()
  await expect(cell(grid, couponId, '0.legA')).toHaveCount(0)
})

test('a size that cannot be read is said at its cell, and the row is not sent', async ({ browser }) => {
  const { grid, couponId } = await openGrid(browser)
  const leg = cell(grid, couponId, '0.legA')
  await leg.fill('a bit')
  await cell(grid, couponId, 'grade').click()
  await expect(leg).toHaveAttribute('aria-invalid', 'true')
  await expect(leg).toHaveAccessibleDescription(/\S/)
  await expect(leg).toHaveValue('a bit')
  await expect(cell(grid, couponId, 'grade')).toBeVisible()
})

test('a row that another instructor has begun is taken by name, and free again once they clear it or leave it', async ({ browser }) => {
  test.slow() // a class of its own, with two instructors and a student
  const own = await ownClass(browser, new RegExp(`^${CLASS.replace(/[()]/g, '\\$&')}`))
  await own.office.goto(`/program/people/${own.id}`)
  await own.office.getByLabel('One more instructor').selectOption({ label: PEOPLE.stick.name })
  await own.office.getByRole('button', { name: 'Add to this class' }).click()
  await expect(own.office.getByRole('button', { name: `Take ${PEOPLE.stick.name} off this class` })).toBeVisible()
  const first = await teacherOf(browser)
  const { page: student } = await joined(browser, own, first)
  await openLog(student)
  const address = new URL(student.url()).pathname.replace(/^\/learn\/([^/]+)\/([^/]+)\/log$/, '/teach/classes/$1/grid/$2')
  const couponId = await logCoupon(student, CLEAN)
  const second = await as(browser, PEOPLE.stick, { viewport: DESK })
  for (const page of [first, second]) {
    await page.goto(address)
    await expect(page.getByText('Live: new coupons appear by themselves.')).toBeVisible()
    await expect(page.locator('div[inert]')).toHaveCount(0)
  }
  const taken = second.getByText(`${TEACHER.name} has it open.`)
  await expect(taken).toHaveCount(0)
  await cell(first, couponId, '0.legA').fill('5/16')
  await expect(taken).toBeVisible()
  await expect(first.getByText('has it open.')).toHaveCount(0)
  await expectGoodScreen(second)
  await cell(second, couponId, '0.legB').fill('5/16')
  await expect(second.getByText(`${TEACHER.name} has `).and(second.getByText('Whoever grades it first counts'))).toBeVisible()
  await cell(first, couponId, '0.legA').fill('')
  await expect(taken).toHaveCount(0)

  await cell(second, couponId, '0.legB').fill('')
  await second.goto(`/teach/coupons/${couponId}`)
  const open = first.getByText(`${PEOPLE.stick.name} has it open.`)
  await expect(open).toBeVisible()
  await expect(second.locator('form[inert]')).toHaveCount(0)
  await second.getByRole('link', { name: 'Classes', exact: true }).click()
  await expect(open, 'left with nothing typed, it is free').toHaveCount(0)
})

test('a line that stays down for over a minute while the page is on is taken up again by itself, with what came meanwhile', async ({ browser }) => {
  const { grid, student, log } = await openGrid(browser, { clock: true })
  await grid.route('**/api/events/**', (route) => route.abort())
  await grid.context().setOffline(true)
  await grid.context().setOffline(false)
  await expect(grid.getByText('Not live since')).toBeVisible()
  await grid.clock.fastForward(70_000)
  await student.goto(log)
  await expect(student.locator('form[inert]')).toHaveCount(0)
  const later = await logCoupon(student, CLEAN)
  await expect(grid.getByText('Not live since')).toBeVisible()
  await expect(cell(grid, later, '0.legA')).toHaveCount(0)
  await grid.unroute('**/api/events/**')
  await grid.clock.fastForward(15_000) // the longest it waits between two tries
  await expect(grid.getByText('Live: new coupons appear by themselves.')).toBeVisible()
  await expect(cell(grid, later, '0.legA')).toBeVisible()
})
