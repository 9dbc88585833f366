import type { Browser, Locator, Page } from '@playwright/test'
import { as, CLEAN, DESK, expect, expectGoodScreen, gradeCoupon, logCoupon, newcomer, openLog, PEOPLE, test } from './app'

const cell = (page: Page, couponId: string, name: string): Locator => page.locator(`[data-coupon="${couponId}"][data-cell="${name}"]`)

/** A coupon of a new student that waits, and the keyboard grid of its exercise on an instructor's desk. */
async function openGrid(browser: Browser): Promise<{ grid: Page; student: Page; log: string; couponId: string }> {
  const { page: student } = await newcomer(browser)
  await openLog(student)
  const log = student.url()
  const couponId = await logCoupon(student, CLEAN)
  const grid = await as(browser, PEOPLE.selfShielded, { viewport: DESK })
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
