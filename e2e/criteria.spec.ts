// Writing criteria: a copy of the shop rule with a tighter undercut, tried on a sample and on the coupons there are, then published.
import type { Locator, Page } from '@playwright/test'
import { as, DESK, expect, expectGoodScreen, PEOPLE, PHONE, TABLET, test } from './app'

const heading = (page: Page, name: string | RegExp, level = 1): Locator => page.getByRole('heading', { name, level })
const preview = (page: Page): Locator => page.getByRole('region', { name: 'On a sample coupon' })
/** A rule of the list being written. */
const ruleOf = (page: Page, name: string): Locator => page.getByRole('listitem').filter({ has: heading(page, name, 3) }).first()

/** Begins a set as a copy of the shop rule; a title nobody else has, so that tests can run again on one database. */
async function beginCopy(page: Page, words: string, from = 'shop-bead 1'): Promise<string> {
  const title = `${words} ${Date.now().toString(36)}${Math.random().toString(36).slice(2, 6)}`
  await page.goto('/program/criteria')
  await page.getByLabel('Title').fill(title)
  await page.getByLabel('Begin with').selectOption(from)
  await page.getByRole('button', { name: 'Begin the set' }).click()
  await expect(heading(page, title)).toBeVisible()
  return title
}

/** Throws away the draft that is open, so that no test leaves one behind. */
async function throwAway(page: Page): Promise<void> {
  await page.getByText('Throw this draft away').click()
  await page.getByRole('button', { name: 'Throw it away' }).click()
  await page.waitForURL(/\/program\/criteria$/)
}

async function editUndercut(page: Page, limit: string, note: string | null): Promise<void> {
  const open = page.getByRole('button', { name: 'Edit Undercut' })
  if (await open.isVisible()) await open.click()
  const rule = ruleOf(page, 'Undercut')
  await rule.getByLabel('Length', { exact: true }).fill(limit)
  if (note !== null) await rule.getByLabel('Note (may be empty)').fill(note)
}

test('a coordinator copies the shop rule, tightens undercut, sees what it does and publishes it', async ({ browser }) => {
  test.setTimeout(90_000)
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  const title = await beginCopy(page, 'Tight undercut')
  await expect(preview(page).getByText('Accept', { exact: true }).first()).toBeVisible()

  await editUndercut(page, '1/64', null)
  await expect(preview(page).getByText('Reject', { exact: true }).first()).toBeVisible()
  await expect(ruleOf(page, 'Undercut').getByText('Undercut: depth at most 1/64 in.')).toBeVisible()

  await page.getByRole('button', { name: 'Judge them again' }).click()
  await expect(page.getByText(/^With these limits, (none|\d+) of the last \d+ coupons would change verdict\.$/)).toBeVisible({ timeout: 30_000 })

  // The note still speaks of the limit before: publishing asks for another.
  await page.getByRole('button', { name: 'Publish', exact: true }).click()
  await expect(page.getByText('This note was written for the limit before. Say what holds now, or empty it.')).toBeVisible()
  await expect(page.getByLabel('Note (may be empty)')).toBeFocused()
  await editUndercut(page, '1/64', 'Half the welder test limit.')
  await page.getByRole('button', { name: 'Publish', exact: true }).click()
  await page.waitForURL(/\/program\/criteria\/sets\/own\./)
  await expect(heading(page, title)).toBeVisible()
  await expect(page.getByText('Now: Undercut: depth at most 1/64 in.')).toBeVisible()
  await expect(page.getByText('Undercut: depth at most 1/64 in.', { exact: true })).toBeVisible()
  await expectGoodScreen(page)

  // It can be changed only by a next version.
  await page.getByRole('button', { name: `Change ${title}` }).click()
  await expect(page.getByText('Will be version 2')).toBeVisible()
  await page.getByRole('button', { name: 'Publish', exact: true }).click()
  await expect(page.getByText('Nothing differs from version 1, which is published already.')).toBeVisible()
  await editUndercut(page, '1/128', 'A quarter of the welder test limit.')
  await page.getByRole('button', { name: 'Publish', exact: true }).click()
  await page.waitForURL(/\/sets\/own\.[^/]+\/2$/)

  // Retired it is read and kept, and no longer offered; the one before it still is.
  await page.getByRole('button', { name: 'Retire version 2' }).click()
  await expect(page.getByText('This version is no longer offered to exercises.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Offer version 2 again' })).toBeVisible()
  await expectGoodScreen(page)
  await page.goto('/program/criteria')
  await expect(page.getByRole('listitem').filter({ has: page.getByRole('link', { name: title }) }).getByRole('link', { name: /^version 1 of / })).toBeVisible()
  await expect(page.getByRole('listitem').filter({ has: page.getByRole('link', { name: title }) }).getByText(/^Version 2 of .+, retired/)).toBeVisible()
})

test('coupons that would change verdict are listed with the way they change, and lead to the coupon', async ({ browser }) => {
  test.setTimeout(60_000)
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await beginCopy(page, 'No undercut at all')
  // No undercut of any depth: among the last coupons of a school some accepted one has a little.
  await editUndercut(page, '0', null)
  await page.getByRole('button', { name: 'Judge them again' }).click()
  const sentence = page.getByText(/^With these limits, /)
  await expect(sentence).toBeVisible({ timeout: 30_000 })
  const [, changed = '', total = ''] = /(\d+) of the last (\d+) coupons/.exec(await sentence.innerText()) ?? []
  const rows = page.getByRole('region', { name: 'Coupons that would change verdict' }).locator('tbody tr')
  expect(Number(total)).toBeGreaterThan(0)
  expect(Number(total)).toBeLessThanOrEqual(80)
  expect(Number(changed)).toBeGreaterThan(0)
  expect(await rows.count()).toBe(Number(changed))
  const was = await rows.first().locator('td').first().innerText()
  await rows.first().getByRole('link').click()
  await page.waitForURL(/\/program\/criteria\/coupons\//)
  await expect(page.getByRole('main').getByText(was, { exact: true }).first()).toBeVisible()
  await expectGoodScreen(page)
  await page.goBack() // what was typed and not saved is there again
  await expect(page.getByText('These boxes hold what you typed here before and did not save.')).toBeVisible()
  await throwAway(page)
})

test('what cannot be read is told at its box and kept, saved or not', async ({ browser }) => {
  test.setTimeout(60_000)
  const page = await as(browser, PEOPLE.coordinator, { viewport: PHONE })
  const title = await beginCopy(page, 'Half written')
  await editUndercut(page, 'about a hair', null)
  const length = ruleOf(page, 'undercut').or(ruleOf(page, 'Undercut')).first().getByLabel('Length', { exact: true })
  await expect(page.getByText('“about a hair” cannot be read. Type a length, like 1/32.')).toBeVisible()
  await expect(length).toHaveAttribute('aria-invalid', 'true')
  await expectGoodScreen(page)

  await page.reload() // never saved: kept on this device
  await expect(page.getByText('These boxes hold what you typed here before and did not save.')).toBeVisible()
  await page.getByRole('button', { name: 'Save the draft' }).click()
  await expect(page.getByText('The draft is kept as it stands.')).toBeVisible()
  await page.goto('/program/criteria')
  await expectGoodScreen(page)
  await page.getByRole('link', { name: `Go on with ${title}` }).click()
  await page.getByRole('button', { name: /^Edit undercut$/i }).click()
  await expect(page.getByLabel('Length', { exact: true })).toHaveValue('about a hair')
  await throwAway(page)
  await expect(page.getByRole('link', { name: `Go on with ${title}` })).toHaveCount(0)
})

test('the second of two who edit a draft is told, and chooses', async ({ browser }) => {
  test.setTimeout(60_000)
  const [one, two] = [await as(browser, PEOPLE.coordinator, { viewport: DESK }), await as(browser, PEOPLE.coordinator, { viewport: DESK })]
  await beginCopy(one, 'For two')
  await two.goto(one.url())
  await one.getByLabel('Edition').fill('Mine, 2026')
  await two.getByLabel('Edition').fill('Yours, 2026')
  await one.getByRole('button', { name: 'Save the draft' }).click()
  await expect(one.getByText('The draft is kept as it stands.')).toBeVisible()
  await two.getByRole('button', { name: 'Save the draft' }).click()
  await expect(two.getByText(/saved this draft after you opened it/)).toBeVisible()
  await expect(two.getByLabel('Edition')).toHaveValue('Yours, 2026')
  await two.getByRole('button', { name: 'Save mine over it' }).click()
  await expect(two.getByText('The draft is kept as it stands.')).toBeVisible()
  await one.reload()
  await expect(one.getByLabel('Edition')).toHaveValue('Yours, 2026')
  await throwAway(one)
})

test('a set is built from nothing out of the kinds of rules, its rows moved by keyboard, removed and put back', async ({ browser }) => {
  test.setTimeout(60_000)
  const page = await as(browser, PEOPLE.coordinator, { viewport: TABLET })
  const title = await beginCopy(page, 'From nothing', '')
  await page.getByRole('button', { name: 'Publish', exact: true }).click()
  await expect(page.getByText('Add a rule: a set needs at least one.')).toBeVisible()
  await page.getByLabel('Edition').fill('Shop practice, 2026')

  await page.getByLabel('A new rule').selectOption('reading-range')
  await page.getByRole('button', { name: 'Add the rule' }).click()
  const width = ruleOf(page, 'reading-range').or(ruleOf(page, 'Bead width')).first()
  await width.getByLabel('Written as').last().selectOption('fixed')
  await width.getByLabel('Length', { exact: true }).fill('3/8')
  await width.getByLabel('Readiness reads').selectOption('attribute')
  await expect(page.getByText('Bead width at most 3/8 in at every station.')).toBeVisible()

  await page.getByLabel('A new rule').selectOption('absent')
  await page.getByRole('button', { name: 'Add the rule' }).click()
  await page.getByRole('group', { name: 'None of these', exact: true }).getByLabel('Slag').check()
  await expect(page.getByText('None allowed: slag.')).toBeVisible()
  const order = () => page.getByRole('region', { name: 'Rules' }).getByRole('heading', { level: 3 }).allInnerTexts()
  await expect.poll(order).toEqual(['Bead width', 'Slag'])

  await page.getByRole('button', { name: 'Move Bead width down' }).focus()
  await page.keyboard.press('Enter')
  await expect.poll(order).toEqual(['Slag', 'Bead width'])
  await expect(page.getByRole('button', { name: 'Move Bead width down' })).toBeFocused()
  await page.getByRole('button', { name: 'Remove Slag' }).click()
  await expect(page.getByRole('button', { name: 'Put it back' })).toBeFocused()
  await expect.poll(order).toEqual(['Bead width'])
  await page.keyboard.press('Enter')
  await expect.poll(order).toEqual(['Slag', 'Bead width'])
  await expectGoodScreen(page)

  await page.getByRole('button', { name: 'Publish', exact: true }).click()
  await page.waitForURL(/\/program\/criteria\/sets\/own\./)
  await expect(heading(page, title)).toBeVisible()
})

test('an instructor reads the criteria of an exercise and cannot write any', async ({ browser }) => {
  const page = await as(browser, PEOPLE.selfShielded, { viewport: PHONE })
  await page.goto('/teach/criteria')
  await expectGoodScreen(page)
  await page.getByRole('link', { name: 'Shop rule for a practice bead' }).click()
  await page.waitForURL('**/teach/criteria/shop-bead/1')
  await expect(heading(page, 'Shop rule for a practice bead')).toBeVisible()
  await expect(page.getByText('Undercut: depth at most 1/32 in.')).toBeVisible()
  await expectGoodScreen(page)
  const refused = await page.goto('/program/criteria')
  expect(refused?.status()).toBe(404)
})

test('a reading of one’s own on the sample coupon is judged at once, and said at its box when it is none', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await beginCopy(page, 'Own readings')
  await expect(preview(page).getByText('Accept', { exact: true }).first()).toBeVisible()
  const depth = preview(page).getByLabel('Undercut depth')
  await depth.fill('3/64')
  await expect(preview(page).getByText('Reject', { exact: true }).first()).toBeVisible()
  await depth.fill('deep')
  await expect(depth).toHaveAttribute('aria-invalid', 'true')
  await expect(depth).toHaveValue('deep')
  await expectGoodScreen(page)
  await depth.fill('')
  await expect(preview(page).getByText('Accept', { exact: true }).first()).toBeVisible()
  await throwAway(page)
})
