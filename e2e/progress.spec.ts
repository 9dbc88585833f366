import { as, expect, expectGoodScreen, newcomer, PEOPLE, test } from './app'

test('a student reads their skill map, what to aim for, and one exercise over time', async ({ browser }) => {
  const page = await as(browser, PEOPLE.jimena)
  await page.goto('/learn')
  await page.getByRole('navigation').getByRole('link', { name: 'My progress', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'My progress' })).toBeVisible()
  // The shade is also a figure, a word and rising steps.
  const cell = page.getByRole('link', { name: /^2F, lap joint, .*: chance of passing \d\.\d\d, between \d\.\d\d and \d\.\d\d, (keep practising|nearly there|ready to talk about a test|weld it again first)$/ })
  await expect(cell).toContainText(/0\.\d\d/)
  await expect(page.getByRole('link', { name: /: not started, not started$/ }).first()).toBeVisible()
  await expect(page.getByRole('heading', { name: 'What to aim for' })).toBeVisible()
  await expect(page.getByText(/^You and your instructor reached the same verdict on \d+ of \d+ coupons|^Not enough yet: you and your instructor/)).toBeVisible()
  await expectGoodScreen(page, { gloves: true })

  await cell.focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'How far inside each limit' })).toBeVisible()
  await expect(page.getByRole('img', { name: /^Leg size over coupons \d+ to \d+: / })).toBeVisible()
  await expect(page.getByText(/^Within one coupon your widths vary by \d+ % of their mean/)).toBeVisible()
  await expect(page.getByRole('link', { name: 'No. 1', exact: true })).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
})

test('who has logged nothing is told so, and what the first step is', async ({ browser }) => {
  const { page } = await newcomer(browser)
  await page.goto('/learn/progress')
  await expect(page.getByText('You have not logged a coupon yet. After the first one this page begins to fill.')).toBeVisible()
  await page.getByRole('link', { name: /: not started, not started$/ }).first().click()
  await expect(page.getByText('Weld a first coupon and log it.')).toBeVisible()
  await expect(page.getByText('No coupons of this exercise yet')).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
})
