// What a coordinator does: compares pass rates, takes them along as a file, and sets when a test is suggested.
import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { as, DESK, expect, expectGoodScreen, PEOPLE, PHONE, TABLET, test } from './app'

/** Rows of a table of rates: the group, its count, and the rate with its interval where one is said. */
async function ratesOf(page: Page, table: string) {
  const rows = await page.getByRole('region', { name: table, exact: true }).locator('tbody tr').all()
  return Promise.all(rows.map(async (row) => {
    const [name = '', count = '', rest = ''] = [await row.getByRole('rowheader').innerText(), await row.locator('td').last().locator('.figures').innerText(), await row.locator('td').last().innerText()]
    const [passed, n] = count.replaceAll(',', '').split(' of ').map(Number)
    return { name, passed, n, rate: /([<>]?\d+ %)\s*\(([<>]?\d+ %) to ([<>]?\d+ %)\)/.exec(rest)?.slice(1) ?? null, text: rest }
  }))
}

const percent = (share: string): string => `${Math.round(Number(share) * 100)} %`

test('a coordinator reads pass rates with counts and intervals, and none where there are too few', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program')
  await expect(page.getByRole('heading', { name: 'Pass rates', level: 1 })).toBeVisible()
  await expect(page.getByText(/^\d+ % of the [\d,]+ coupons inspected in .+ were accepted \(\d+ % to \d+ %\)\.$/)).toBeVisible()
  await expect(page.getByText(/more were incomplete and \d+ have not been looked at by an instructor/)).toBeVisible()
  const classes = await ratesOf(page, 'Coupons accepted, by class')
  expect(classes.length).toBeGreaterThanOrEqual(4)
  const exercises = await ratesOf(page, 'Coupons accepted, by exercise')
  for (const { name, passed, n, rate, text } of [...classes, ...exercises]) {
    if ((n ?? 0) >= 5) expect(rate, `${name}: ${text}`).toEqual([percent(String((passed ?? 0) / (n ?? 1))), expect.any(String), expect.any(String)])
    else expect(text, name).toMatch(n === undefined || Number.isNaN(n) ? /none yet/ : /too few to compare/)
  }
})

test('a coordinator sets both terms beside each other', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program')
  const before = await ratesOf(page, 'Coupons accepted, by term')
  expect(before).toHaveLength(2)
  await page.getByRole('combobox', { name: 'Term' }).selectOption({ label: 'All terms' })
  await page.getByRole('button', { name: 'Show' }).click()
  await page.waitForURL(/term=all/)
  await expect(page.getByText(/coupons inspected in all terms were accepted/)).toBeVisible()
  const classes = await ratesOf(page, 'Coupons accepted, by class')
  expect(classes.length).toBeGreaterThanOrEqual(8)
  expect(classes.reduce((sum, { n }) => sum + (n ?? 0), 0)).toBe(before.reduce((sum, { n }) => sum + (n ?? 0), 0))
  expect(new Set(classes.map(({ name }) => name)).size, 'each class is named with its term').toBe(classes.length)
})

test('the file a coordinator takes along says what the page says', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program')
  const classes = await ratesOf(page, 'Coupons accepted, by class')
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Download as CSV' }).click()])
  expect(download.suggestedFilename()).toBe('pass-rates.csv')
  const [header = [], ...rows] = (await readFile(await download.path(), 'utf8')).replace('\uFEFF', '').trimEnd().split('\r\n').map((line) => line.split(','))
  const at = (row: readonly string[], column: string): string => row[header.indexOf(column)] ?? ''
  const told = rows.filter((row) => at(row, 'group') === 'class' && at(row, 'counted').startsWith('coupons'))
  expect(told.map((row) => ({
    name: at(row, 'class'), passed: Number(at(row, 'passed')), n: Number(at(row, 'of')),
    rate: at(row, 'rate') === '' ? null : [percent(at(row, 'rate')), percent(at(row, 'low_95')), percent(at(row, 'high_95'))],
  }))).toEqual(classes.map(({ name, passed, n, rate }) => ({ name: name.replaceAll(/\s+/g, ' '), passed, n, rate })))
})

test('a coordinator is told at the field what a threshold may be, and sets one that holds', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program/readiness')
  const threshold = page.getByLabel('Chance from which a test is suggested')
  const save = async (typed: string): Promise<void> => {
    await threshold.fill(typed)
    await page.getByRole('button', { name: 'Save', exact: true }).click()
  }
  await save('65')
  await expect(page.getByText('“65” is no such chance. Write one from 0.30 to 0.95, like 0.65.')).toBeVisible()
  await expect(threshold).toHaveAttribute('aria-invalid', 'true')
  await expect(threshold).toHaveValue('65')
  try {
    await save('0.70')
    await expect(page.getByText(/^The new rule holds from now on\. \d+ standings were worked out again with it\.$/)).toBeVisible({ timeout: 60_000 })
    await expect(page.getByText(/^A test is suggested from a chance of 0\.70\./)).toBeVisible()
    await page.reload()
    await expect(threshold).toHaveValue('0.70')
  } finally {
    await save('0.65')
    await expect(page.getByText(/^A test is suggested from a chance of 0\.65\./)).toBeVisible({ timeout: 60_000 })
  }
})

test('a coordinator works out what a failed test costs, and reads whether the forecasts came true', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program/readiness')
  const cheapest = async (cost: string): Promise<number> => {
    await page.getByLabel(/^A failed test costs/).fill(cost)
    await page.getByRole('button', { name: 'Work it out' }).click()
    await page.waitForURL(new RegExp(`cost=${cost}`))
    const answer = await page.getByText(new RegExp(`^When a failed test costs ${cost} coupons`)).innerText()
    return Number(/a threshold of (0\.\d+)/.exec(answer)?.[1])
  }
  expect(await cheapest('5')).toBeLessThan(await cheapest('40'))
  await page.goto('/program/readiness?cost=many')
  await expect(page.getByText('Write a number of coupons from 0 to 200.')).toBeVisible()
  const right = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Were we right?' }) })
  await expect(right.getByText(/^Over \d+ tests we said 0\.\d\d on average|^\d+ tests have a forecast to compare with/)).toBeVisible()
})

for (const [who, person] of [['a student', PEOPLE.jimena], ['an instructor', PEOPLE.selfShielded]] as const) {
  test(`${who} finds nothing of the coordinator’s room`, async ({ browser }) => {
    const page = await as(browser, person)
    for (const path of ['/program', '/program/readiness', '/api/exports/pass-rates']) expect((await page.request.get(path)).status(), path).toBe(404)
  })
}

for (const [name, viewport] of [['phone', PHONE], ['tablet', TABLET], ['desk', DESK]] as const) {
  test(`the coordinator’s screens are in order on a ${name}`, async ({ browser }) => {
    const page = await as(browser, PEOPLE.coordinator, { viewport })
    for (const path of ['/program', '/program/readiness']) {
      await page.goto(path)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      await expectGoodScreen(page)
    }
  })
}
