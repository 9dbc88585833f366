// A gauge study: two instructors of a class measure the same coupons twice, each in an order of their own, and read what came of it.
import type { Browser, Page } from '@playwright/test'
import { CLASS_NAMES } from '../prisma/seed/course'
import { INSTRUCTORS, PASSWORDS } from '../prisma/seed/people'
import { as, DESK, expect, expectGoodScreen, PEOPLE, PHONE, test, type Person } from './app'

const staff = ({ signInName, given, family }: (typeof INSTRUCTORS)['GMAW']): Person => ({ signInName, password: PASSWORDS.instructor, name: `${given} ${family}` })
const PARVEEN = staff(INSTRUCTORS.GMAW)
/** Teaches another class; he is given this one for a while. */
const SIONE = staff(INSTRUCTORS['FCAW-G'])

/** The page on which the coordinator says who teaches the class; the class of the term that runs stands first. */
async function classPeople(browser: Browser): Promise<Page> {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await page.goto('/program/people')
  await page.getByRole('link', { name: CLASS_NAMES.GMAW }).first().click()
  await expect(page.getByRole('heading', { name: 'Instructors', exact: true })).toBeVisible()
  return page
}

const off = (page: Page) => page.getByRole('button', { name: `Take ${SIONE.name} off this class` })

/** Goes to the form from the page of the class, that of the term that runs. */
async function toForm(page: Page): Promise<void> {
  await page.goto('/teach')
  await page.getByRole('link', { name: CLASS_NAMES.GMAW, exact: true }).first().click()
  await page.getByRole('link', { name: 'Gauge study' }).click()
  await page.waitForURL(/\/teach\/studies\/new\?class=/)
  await expect(page.locator('form[inert]')).toHaveCount(0)
}

/** Opens a study of the latest coupons, under a name nobody else has. */
async function openStudy(page: Page, coupons: number): Promise<string> {
  const name = `Bench ${Date.now().toString(36)}`
  await toForm(page)
  await page.getByLabel('Name', { exact: true }).fill(name)
  await page.getByLabel('Where on every coupon').fill('2 in from the start')
  for (let index = 0; index < coupons; index += 1) await page.getByRole('checkbox').nth(index).check()
  await page.getByRole('button', { name: 'Open the study' }).click()
  await expect(page.getByRole('heading', { name: `${name}: 2 in from the start` })).toBeVisible()
  await expect(page.locator('form[inert]')).toHaveCount(0)
  return name
}

const width = (page: Page) => page.getByRole('textbox', { name: 'Width, toe to toe' })
const shown = async (page: Page): Promise<string> => (await page.getByText(/^Coupon \d+ of \d+$/).innerText()).replace(/\D+(\d+).*/, '$1')

/** Reads what is left by keyboard: each coupon a size of its own, and a hair more in the second round. */
async function readAll(page: Page, from: number, all: number, apart: number): Promise<void> {
  for (let done = from; done < all; done += 1) {
    await expect(page.getByText(`${done} of your ${all} readings are in.`)).toBeVisible()
    const size = 0.3 + 0.05 * Number(await shown(page)) + apart + (done >= all / 2 ? 0.004 : 0)
    await width(page).focus()
    await page.keyboard.type(size.toFixed(3))
    await page.keyboard.press('Enter')
  }
  await expect(page.getByRole('heading', { name: 'What it waits for' })).toBeVisible()
}

test('two instructors read three coupons in two rounds by keyboard, close the study and are told where the spread is', async ({ browser }) => {
  test.setTimeout(240_000)
  const people = await classPeople(browser)
  if ((await off(people).count()) === 0) { // a run that was broken off may have left him here
    await people.getByLabel('One more instructor').selectOption({ label: SIONE.name })
    await people.getByRole('button', { name: 'Add to this class' }).click()
  }
  await expect(off(people)).toBeVisible()

  const desk = await as(browser, PARVEEN, { viewport: DESK })
  await desk.goto('/teach')
  await desk.getByRole('link', { name: 'Gauge studies' }).click()
  await expectGoodScreen(desk)
  const name = await openStudy(desk, 3)
  await expect(desk.getByText('Round 1 of 2')).toBeVisible()
  await expect(width(desk)).toBeFocused()
  await desk.keyboard.type('wide')
  await desk.keyboard.press('Enter')
  await expect(width(desk)).toHaveAccessibleDescription(/“wide” is not a length\./)
  await expect(width(desk)).toBeFocused()
  await expect(width(desk)).toHaveValue('wide')
  await expectGoodScreen(desk)
  await width(desk).fill('')
  await readAll(desk, 0, 6, 0)
  await expect(desk.getByText('Your readings are in: 6 of 6.')).toBeVisible()
  await expect(desk.getByText(`${SIONE.name} has not begun: 6 readings.`)).toBeVisible()
  await expectGoodScreen(desk)

  const phone = await as(browser, SIONE, { viewport: PHONE })
  await phone.goto('/teach/studies')
  await expectGoodScreen(phone)
  await phone.getByRole('region', { name: 'Waiting for your readings' }).getByRole('link', { name }).click()
  await expect(phone.getByText('Round 1 of 2')).toBeVisible()
  await expect(phone.locator('form[inert]')).toHaveCount(0)
  await expectGoodScreen(phone, { gloves: true })
  // Nothing that Parveen read is anywhere in what was sent to him.
  expect(await (await phone.request.get(phone.url())).text()).not.toMatch(/widthMm/)
  await phone.getByRole('group', { name: 'Width, toe to toe' }).getByRole('button').nth(3).click()
  await expect(width(phone)).not.toHaveValue('')
  await width(phone).fill('')
  await readAll(phone, 0, 6, 0.02)
  await expect(phone.getByText('Everyone has read everything. Close the study to see what came of it.')).toBeVisible()
  await phone.getByRole('button', { name: 'Close the study' }).click()
  await phone.getByRole('button', { name: 'Close it and show the widths' }).click()
  await expect(phone.getByText('Most of the spread is the coupons themselves. Of what the measuring adds, most is one reader against another', { exact: false })).toBeVisible()
  await expect(phone.getByText(`${SIONE.name} reads 0.010 in wider than the mean of all.`)).toBeVisible()
  await expectGoodScreen(phone)
  await phone.getByText('Show the table').click()
  await expect(phone.getByRole('table', { name: 'Every width read, in inches' }).getByRole('row')).toHaveCount(4)

  const coordinator = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await coordinator.goto('/program/studies')
  await expect(coordinator.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Agreement' })).toHaveAttribute('aria-current', 'page')
  await expectGoodScreen(coordinator)
  await coordinator.getByRole('region', { name: 'Closed' }).getByRole('link', { name }).click()
  await expect(coordinator.getByText('Most of the spread is the coupons themselves.', { exact: false })).toBeVisible()
  await expect(coordinator.getByRole('table', { name: 'Where the spread comes from' }).getByRole('row', { name: /^Reproducibility: one reader against another/ })).toBeVisible()
  await expect(coordinator.getByText('Source: AIAG, Measurement Systems Analysis', { exact: false })).toBeVisible()
  await expectGoodScreen(coordinator)

  await off(people).click()
  await expect(off(people)).toHaveCount(0)
  expect((await phone.reload())?.status()).toBe(404)
})

test('a new study says at each field what is missing', async ({ browser }) => {
  const page = await as(browser, PARVEEN, { viewport: PHONE })
  await toForm(page)
  await expectGoodScreen(page)
  await page.getByLabel('Rounds').fill('1')
  await page.getByRole('button', { name: 'Open the study' }).click()
  await expect(page.getByLabel('Name', { exact: true })).toBeFocused()
  await expect(page.getByLabel('Name', { exact: true })).toHaveAccessibleDescription(/Type a name/)
  await expect(page.getByLabel('Rounds')).toHaveAccessibleDescription(/from 2 to 5/)
  await expect(page.getByRole('group', { name: 'Coupons' })).toHaveAccessibleDescription(/Choose two coupons at least/)
  await expectGoodScreen(page)
})

test('a width from another tab, and a study closed under an open form, are said and nothing is overwritten', async ({ browser }) => {
  test.slow()
  const page = await as(browser, PARVEEN, { viewport: DESK })
  await openStudy(page, 2)
  const other = await page.context().newPage()
  await other.goto(page.url())
  await expect(other.locator('form[inert]')).toHaveCount(0)
  await width(page).fill('.31')
  await width(page).press('Enter')
  await expect(page.getByText('1 of your 4 readings are in.')).toBeVisible()
  await width(other).fill('.35')
  await width(other).press('Enter')
  await expect(other.getByText('You read this coupon in round 1 before. That width stands; a reading is never changed.')).toBeVisible()
  await expect(width(other)).toHaveValue('.35')
  await other.getByRole('button', { name: 'Show what is next' }).click()
  await expect(other.getByText('1 of your 4 readings are in.')).toBeVisible()
  await expect(width(other)).toHaveValue('')

  await other.getByText('Close this study').click()
  await other.getByRole('button', { name: 'Give the study up' }).click()
  await other.getByRole('button', { name: 'Give it up: nobody reads on' }).click()
  await expect(other.getByText('There are no figures: two readers must each have read every coupon in two rounds at least.', { exact: false })).toBeVisible()
  await expectGoodScreen(other)
  await width(page).fill('.32')
  await width(page).press('Enter')
  await expect(page.getByText('This study was closed meanwhile. Your reading was not taken.')).toBeVisible()
  await page.getByRole('button', { name: 'Show what is next' }).click()
  await expect(page.getByText('There are no figures', { exact: false })).toBeVisible()
})
