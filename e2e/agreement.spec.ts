// Whether people judge alike: the coordinator over the program, an instructor against the others, students against their instructors.
import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { as, CLASS, DESK, expect, expectGoodScreen, PEOPLE, PHONE, tabTo, TABLET, test } from './app'

/** Rows of a drawing with figures: the name, how many were alike of how many, and the percentage with its interval where one is said. */
async function rowsOf(page: Page, title: string) {
  const rows = await page.getByRole('list', { name: title, exact: true }).getByRole('listitem').all()
  return Promise.all(rows.map(async (row) => {
    const text = (await row.innerText()).replaceAll(/\s+/g, ' ')
    const [, name = '', alike = '', compared = ''] = /^(.*?) ([\d,]+) of ([\d,]+)/.exec(text) ?? []
    return { text, name, alike: Number(alike.replaceAll(',', '')), compared: Number(compared.replaceAll(',', '')), share: /, ([<>]?\d+) % \(([<>]?\d+) % to ([<>]?\d+) %\)/.exec(text)?.slice(1) ?? null }
  }))
}

const percent = (alike: number, compared: number): string => {
  const rounded = Math.round((100 * alike) / compared)
  return rounded === 100 && alike < compared ? '>99' : String(rounded)
}

test('a coordinator sees whether instructors judge alike, by rule and by readers, with intervals', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program')
  await page.getByRole('link', { name: 'Agreement', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Agreement', level: 1 })).toBeVisible()
  await expect(page.getByText(/^Two readers reached the same verdict on [\d,]+ of [\d,]+ coupons: \d+ % \(\d+ % to \d+ %\)\.$/)).toBeVisible()
  await expect(page.getByText(/^They part most over .+: alike on [\d,]+ of [\d,]+, /)).toBeVisible()
  // The invented school's readers have an eye of their own, so somebody parts one way, with coupons to put on the table.
  const leaning = page.getByRole('listitem').filter({ hasText: /(accepts|rejects) .+ that .+: \d+ of the \d+ coupons on which they parted.*, of \d+ compared\./ }).first()
  await expect(leaning.getByRole('list', { name: 'The newest of these coupons' }).getByRole('link').first()).toHaveText(/ no\. \d+$/)
  await expect(page.getByText(/It does not say who saw right/)).toBeVisible()
  const [rules, pairs] = [await rowsOf(page, 'Rule by rule'), await rowsOf(page, 'The whole coupon, by readers')]
  expect(rules.length).toBeGreaterThan(1)
  expect(pairs.length).toBeGreaterThanOrEqual(3)
  for (const { text, alike, compared, share } of [...rules, ...pairs]) {
    if (compared < 5) expect(text).toContain('too few to compare')
    else expect(share?.[0], text).toBe(percent(alike, compared))
    if (compared >= 10) expect(text).toMatch(/AC1 −?\d\.\d\d.*kappa (−?\d\.\d\d|not defined)/)
  }
  // Rules nobody parted over are no rows, but a sentence.
  for (const { alike, compared } of rules) expect(alike).toBeLessThan(compared)
  await expect(page.getByText(/^Alike on every coupon: .+ \([\d,]+\)/).first()).toBeVisible()
  const widths = await page.getByRole('list', { name: 'Measured widths, each reader against all others' }).getByRole('listitem').allInnerTexts()
  expect(widths.length).toBeGreaterThanOrEqual(3)
  for (const text of widths) expect(text).toMatch(/[+−]?\d\.\d{3} in \([+−]?\d\.\d{3} to [+−]?\d\.\d{3}\)|from 5 coupons on/)
  await expectGoodScreen(page)
  await page.setViewportSize(PHONE)
  await expectGoodScreen(page)
})

test('the coordinator’s file says what the page says', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program/agreement')
  const pairs = await rowsOf(page, 'The whole coupon, by readers')
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Download as CSV' }).click()])
  expect(download.suggestedFilename()).toBe('agreement.csv')
  const [header = [], ...rows] = (await readFile(await download.path(), 'utf8')).replace('\uFEFF', '').trimEnd().split('\r\n').map((line) => line.split(','))
  const at = (row: readonly string[], column: string): string => row[header.indexOf(column)] ?? ''
  const told = rows.filter((row) => at(row, 'between') === 'pair' && at(row, 'about') === 'whole coupon')
  expect(told.map((row) => ({ name: `${at(row, 'first')} and ${at(row, 'second')}`, alike: Number(at(row, 'alike')), compared: Number(at(row, 'compared')) })))
    .toEqual(pairs.map(({ name, alike, compared }) => ({ name, alike, compared })))
})

test('a coordinator looks at one term, and at the students of the program', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: TABLET })
  await page.goto('/program/agreement')
  const choices = await page.getByRole('combobox', { name: 'Term' }).locator('option').allInnerTexts()
  await page.getByRole('combobox', { name: 'Term' }).selectOption({ label: choices[0] ?? '' })
  await page.getByRole('button', { name: 'Show' }).click()
  await page.waitForURL(/term=/)
  await expect(page.locator('.eyebrow').getByText(choices[0] ?? '', { exact: true })).toBeVisible()
  await page.getByRole('link', { name: 'How students see their own welds' }).click()
  await expect(page.getByRole('heading', { name: 'How students see their own welds', level: 1 })).toBeVisible()
  await expect(page.getByText(/^Student and instructor reached the same verdict on [\d,]+ of [\d,]+ coupons: /)).toBeVisible()
  expect((await rowsOf(page, 'Student and instructor, rule by rule'))[0]?.name).toBe('The whole coupon')
  await expectGoodScreen(page)
  await page.setViewportSize(PHONE)
  await expectGoodScreen(page)
})

test('an instructor sees their own eye beside the others’, by keyboard, and nobody else’s pairs', async ({ browser }) => {
  const page = await as(browser, PEOPLE.selfShielded, { viewport: DESK })
  await page.goto('/teach')
  await page.getByRole('link', { name: 'Your eye and the others’' }).click()
  await expect(page.getByText(/^You and another instructor reached the same verdict on [\d,]+ of [\d,]+ coupons/)).toBeVisible()
  const pairs = page.locator('main summary')
  for (const text of await pairs.allInnerTexts()) expect(text).toMatch(/^You and .+: [\d,]+ of [\d,]+ alike$/)
  await tabTo(page, pairs.first())
  await page.keyboard.press('Enter')
  await expect(page.locator('main details').first().getByText(/^You read widths .+ \d+ coupons|^Widths cannot be compared yet/)).toBeVisible()
  await expect(page.getByText('You see only coupons that you read yourself.')).toBeVisible()
  await expectGoodScreen(page)
  await page.setViewportSize(PHONE)
  await expectGoodScreen(page)
})

test('an instructor sees how the students of a class see their own welds', async ({ browser }) => {
  const page = await as(browser, PEOPLE.selfShielded, { viewport: DESK })
  await page.goto('/teach/agreement')
  await page.getByRole('link', { name: new RegExp(`^${CLASS.replace(/[()]/g, '\\$&')}, `) }).first().click()
  await expect(page.getByRole('heading', { name: 'How students see their own welds', level: 1 })).toBeVisible()
  const rows = await page.getByRole('list', { name: 'Student by student' }).getByRole('listitem').all()
  expect(rows.length).toBeGreaterThanOrEqual(5)
  const names: string[] = []
  for (const row of rows) {
    names.push(await row.getByRole('link').innerText())
    expect((await row.innerText()).replaceAll(/\s+/g, ' ')).toMatch(/\d+ of \d+, [<>]?\d+ % \([<>]?\d+ % to [<>]?\d+ %\)|not enough yet, \d of 5 coupons/)
  }
  expect(names, 'by name, nobody is ranked').toEqual([...names].sort((a, b) => a.localeCompare(b, 'en')))
  await expectGoodScreen(page)
  await page.setViewportSize(PHONE)
  await expectGoodScreen(page)
})

test('a student finds nothing of it', async ({ browser }) => {
  const page = await as(browser, PEOPLE.tetteh)
  for (const address of ['/teach/agreement', '/program/agreement', '/program/agreement/students']) {
    await page.goto(address)
    await expect(page.getByText(/reached the same verdict/)).toHaveCount(0)
    await expect(page.getByRole('heading', { name: /Agreement|Your eye|own welds/ })).toHaveCount(0)
  }
  expect((await page.request.get('/api/exports/agreement')).status()).toBe(404)
})
