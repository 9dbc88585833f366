// The coordinator's people: a roster with a mistake is mended and brought in; who is withdrawn or taken off a class is out at the next request.
import type { Browser, Page } from '@playwright/test'
import { as, CLASS, classAddress, DESK, expect, expectGoodScreen, inventPerson, PEOPLE, PHONE, test } from './app'

async function openPeople(browser: Browser, viewport: { width: number; height: number } = DESK): Promise<Page> {
  const page = await as(browser, PEOPLE.coordinator, { viewport })
  await page.goto('/program/people')
  await page.getByRole('link', { name: CLASS, exact: true }).first().click()
  await expect(page.getByRole('heading', { name: `People of ${CLASS}`, level: 1 })).toBeVisible()
  return page
}

const lines = (page: Page) => page.getByLabel('Or paste the lines')
const checkRoster = (page: Page) => page.getByRole('button', { name: 'Check the roster' }).click()
const rowOf = (page: Page, name: string) => page.getByRole('region', { name: 'Students of the class' }).getByRole('row').filter({ hasText: name })

test('a coordinator checks a roster file, mends its mistake, brings it in, withdraws a student and readmits them', async ({ browser }) => {
  const page = await openPeople(browser)
  const [one, two] = [inventPerson(), inventPerson()]
  // As a spreadsheet on Windows saves it: semicolons and an encoding of its own.
  const file = `username;givenName;familyName;booth\r\n${one.signInName};Señada;${one.family};4\r\n${two.signInName};Ada;${two.family};four\r\n`
  await page.getByLabel('A file of your computer').setInputFiles({ name: 'roster.csv', mimeType: 'text/csv', buffer: Buffer.from(file, 'latin1') })
  await expect(lines(page)).toHaveValue(/Señada/)
  await checkRoster(page)
  await expect(page.getByText('Nothing is written yet. 1 added, 0 changed, 0 unchanged, 1 rejected.')).toBeVisible()
  await expect(page.getByRole('row', { name: /^3 rejected The booth is “four”/ })).toBeVisible()
  await lines(page).fill(file.replace('four', '5'))
  await checkRoster(page)
  await page.getByRole('button', { name: 'Bring in 2 students' }).click()
  await expect(page.getByText('2 students added or changed.')).toBeVisible()
  await expect(rowOf(page, one.signInName)).toContainText(/Señada.*4\s*active/)

  await page.getByRole('button', { name: `Withdraw ${two.name}`, exact: true }).click()
  await expect(rowOf(page, two.signInName)).toContainText('withdrawn')
  await page.getByRole('button', { name: `Readmit ${two.name}`, exact: true }).click()
  await expect(rowOf(page, two.signInName)).toContainText('active')
})

test('a roster without a needed column says so at the box', async ({ browser }) => {
  const page = await openPeople(browser)
  await lines(page).fill('username,booth\na.b,1')
  await checkRoster(page)
  await expect(page.getByText('The first line names the columns, and it has no column for: given name, family name.')).toBeVisible()
  await expect(lines(page)).toHaveAttribute('aria-invalid', 'true')
})

test('an instructor taken off a class while at work in it is refused at the next request', async ({ browser }) => {
  const address = await classAddress(browser)
  const page = await openPeople(browser)
  const off = page.getByRole('button', { name: `Take ${PEOPLE.stick.name} off this class` })
  // A run that was broken off may have left him here.
  if ((await off.count()) === 0) {
    await page.getByLabel('One more instructor').selectOption({ label: PEOPLE.stick.name })
    await page.getByRole('button', { name: 'Add to this class' }).click()
  }
  await expect(off).toBeVisible()
  const instructor = await as(browser, PEOPLE.stick, { viewport: DESK })
  expect((await instructor.goto(address))?.status()).toBe(200)
  await off.click()
  await expect(off).toHaveCount(0)
  expect((await instructor.reload())?.status()).toBe(404)
})

for (const [name, viewport] of [['phone', PHONE], ['desk', DESK]] as const) {
  test(`the people of a class are in order on a ${name}`, async ({ browser }) => {
    const page = await openPeople(browser, viewport)
    await lines(page).fill('username,givenName,familyName\nq.q,,Q')
    await checkRoster(page)
    await expect(page.getByText(/1 rejected\./)).toBeVisible()
    await expectGoodScreen(page)
  })
}
