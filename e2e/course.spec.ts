// The course of a class: its list and its exercises, kept by its instructor and by the coordinator, while students weld to them.
import type { Locator, Page } from '@playwright/test'
import { as, CLEAN, DESK, expect, expectGoodScreen, expectVerdict, fillLook, logCoupon, openLog, PEOPLE, PHONE, sendButton, tabTo, test } from './app'
import { addFromLibrary, archive, joined, ownClass, teacherOf } from './own-class'

const LAP = 'FCAW-S: 2F, lap joint, 1/4 in plate, 0.045 in E71T-11'
const FLAT = 'FCAW-S: 1F, lap joint, 1/4 in plate, 0.045 in E71T-11'
const DOWN = 'FCAW-S: 3F down, lap joint, 1/4 in plate, 0.045 in E71T-11'
const bare = (title: string): string => title.replace(/^[^:]+: /, '')

/** The exercises on the list, in their order. */
const listed = (page: Page): Locator => page.getByRole('region', { name: 'The list' }).getByRole('heading', { level: 3 })
const numbered = (...titles: readonly string[]): string[] => titles.map((title, index) => `${index + 1}. ${bare(title)}`)

async function onPhoneAndDesk(page: Page): Promise<void> {
  const before = page.viewportSize() ?? DESK
  for (const viewport of [PHONE, DESK]) {
    await page.setViewportSize(viewport)
    await expectGoodScreen(page)
  }
  await page.setViewportSize(before)
}

test('the list of a class is filled from the library and from another term, ordered and made to wait by keyboard', async ({ browser }) => {
  test.slow()
  const own = await ownClass(browser)
  const page = await teacherOf(browser)
  await page.goto(`/teach/course/${own.id}`)
  await expect(page.getByText('No exercises yet')).toBeVisible()
  await addFromLibrary(page, [FLAT, LAP, DOWN])
  await expect(listed(page)).toHaveText(numbered(FLAT, LAP, DOWN))

  const down = page.getByRole('button', { name: `Move down ${bare(FLAT)}` })
  await tabTo(page, down)
  await page.keyboard.press('Enter')
  await expect(listed(page)).toHaveText(numbered(LAP, FLAT, DOWN))
  await expect(down).toBeFocused()
  await expect(page.getByRole('status').filter({ hasText: `${bare(FLAT)} is number 2 of 3 now.` })).toHaveCount(1)
  await page.keyboard.press('Enter')
  await expect(listed(page)).toHaveText(numbered(LAP, DOWN, FLAT))
  await expect(page.getByRole('button', { name: `Move up ${bare(FLAT)}` })).toBeFocused()

  /** Says by keyboard alone what opens an exercise: the next choice of its box. */
  const setOpens = async (title: string): Promise<void> => {
    const row = page.getByRole('listitem').filter({ has: page.getByRole('button', { name: `Move up ${bare(title)}` }) })
    const opens = row.getByLabel('Opens when ready in')
    await tabTo(page, opens)
    await page.keyboard.press('ArrowDown')
    await tabTo(page, row.getByRole('button', { name: `Set what opens ${bare(title)}` }))
    await page.keyboard.press('Enter')
  }
  await setOpens(DOWN)
  await expect(page.getByText(`Saved. It opens when ready in ${bare(LAP)}.`)).toBeVisible()
  await expect(page.getByRole('button', { name: `Set what opens ${bare(DOWN)}` })).toBeFocused()
  await page.reload()
  const waits = page.getByRole('listitem').filter({ has: page.getByRole('link', { name: `Edit ${bare(DOWN)}` }) }).getByLabel('Opens when ready in')
  await expect(waits.locator('option:checked')).toHaveText(bare(LAP))

  // The first may not wait for the one that waits for it: said at its box, and the choice is still there.
  const first = page.getByRole('listitem').filter({ has: page.getByRole('link', { name: `Edit ${bare(LAP)}` }) })
  await first.getByLabel('Opens when ready in').selectOption({ label: bare(DOWN) })
  await first.getByRole('button', { name: `Set what opens ${bare(LAP)}` }).click()
  await expect(first.getByLabel('Opens when ready in')).toHaveAccessibleDescription(/wait for each other/)
  await expect(first.getByLabel('Opens when ready in').locator('option:checked')).toHaveText(bare(DOWN))
  await onPhoneAndDesk(page)

  await page.getByRole('button', { name: `Take off ${bare(DOWN)}` }).click()
  await expect(listed(page)).toHaveText(numbered(LAP, FLAT))
  await expect(page.getByRole('heading', { name: 'The list' })).toBeFocused()

  const from = page.getByLabel('The whole list of another class')
  const summer = (await from.getByRole('option').allInnerTexts()).find((text) => /^Solid wire .*, Summer/.test(text)) ?? ''
  await from.selectOption({ label: summer })
  await page.getByRole('button', { name: 'Copy the list' }).click()
  await expect.poll(() => listed(page).count()).toBeGreaterThan(4)
  await expect(listed(page).first()).toHaveText(`1. ${bare(LAP)}`)
  const copied = await listed(page).count()
  await page.getByRole('button', { name: 'Copy the list' }).click()
  await page.reload()
  expect(await listed(page).count(), 'copied a second time, nothing comes twice').toBe(copied)
  await archive(own)
})

test('an exercise edited under an open log form: the coupon is judged by the version it was opened with, the next by the new one', async ({ browser }) => {
  test.slow()
  const own = await ownClass(browser)
  const page = await teacherOf(browser)
  await page.goto(`/teach/course/${own.id}`)
  await addFromLibrary(page, [LAP])
  const { page: student } = await joined(browser, own, page)
  await openLog(student, bare(LAP))
  const first = await logCoupon(student, CLEAN)
  await expectVerdict(student, 'Accept')
  await student.getByRole('link', { name: 'Log the next one' }).click()
  await expect(student.locator('form[inert]')).toHaveCount(0)
  await fillLook(student, CLEAN)

  await page.goto(`/teach/course/${own.id}`)
  await page.getByRole('link', { name: `Edit ${bare(LAP)}` }).click()
  const leg = page.getByLabel('Fillet leg (in)')
  await leg.fill('about a quarter')
  await page.getByLabel('Voltage from (V)').fill('18')
  await page.getByLabel('Note and safety').fill('Both boxes are wrong; this note is not.')
  await page.getByRole('button', { name: 'Save as version 2' }).click()
  await expect(leg).toHaveAccessibleDescription(/is not a length/)
  await expect(leg).toHaveValue('about a quarter')
  await expect(page.getByLabel('Voltage to (V)')).toHaveAttribute('aria-invalid', 'true')
  await expect(page.getByLabel('Note and safety')).toHaveValue('Both boxes are wrong; this note is not.')
  await onPhoneAndDesk(page)

  // The card is checked against the wire as it is typed, once every box can be read; a warning stops nothing.
  const checks = page.getByRole('region', { name: 'Checks against the wire or rod' })
  await page.getByLabel('Polarity').selectOption('DCEP')
  await expect(checks.getByText('Some box cannot be read yet. The checks go on when it can.')).toBeVisible()
  await leg.fill('1/2')
  await page.getByLabel('Voltage from (V)').fill('15.5')
  await page.getByLabel('Voltage from (V)').blur()
  await expect(checks.getByText(/^E71T-11 runs on DC, electrode negative/)).toBeVisible()
  await page.getByLabel('Polarity').selectOption('DCEN')
  await expect(checks.getByText(/^E71T-11 runs on DC, electrode negative/)).toHaveCount(0)
  await page.getByRole('button', { name: 'Save as version 2' }).click()
  await expect(page.getByText('Saved as version 2')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Save as version 3' })).toBeVisible()

  await sendButton(student).click()
  await student.waitForURL(/\/learn\/coupons\//)
  await expectVerdict(student, 'Accept')
  await student.getByRole('link', { name: 'Log the next one' }).click()
  await expect(student.locator('form[inert]')).toHaveCount(0)
  await logCoupon(student, CLEAN)
  await expectVerdict(student, 'Reject')
  await student.goto(`/learn/coupons/${first}`)
  await expectVerdict(student, 'Accept')

  await page.getByRole('link', { name: 'Versions' }).click()
  await page.waitForURL('**/versions')
  const versions = page.getByRole('main').getByRole('listitem').filter({ has: page.getByRole('heading', { name: /^Version \d/ }) })
  await expect(versions.nth(0)).toContainText('1 coupon')
  await expect(versions.nth(0)).toContainText('Fillet leg: 3/16 in became 1/2 in.')
  await expect(versions.nth(1)).toContainText('2 coupons')
  await onPhoneAndDesk(page)
  await archive(own)
})

test('the coordinator keeps the course of a class and prints its papers, an instructor of another class does neither', async ({ browser }) => {
  test.slow()
  const own = await ownClass(browser)
  const { office } = own
  await office.getByRole('link', { name: new RegExp(`^Exercises of ${own.name}, `) }).click()
  await addFromLibrary(office, [FLAT, LAP])
  await office.getByRole('button', { name: `Move up ${bare(LAP)}` }).click()
  await expect(listed(office)).toHaveText(numbered(LAP, FLAT))
  await office.getByRole('link', { name: `Edit ${bare(LAP)}` }).click()
  await office.getByLabel('Title').fill('Lap joint, from the office')
  await office.getByRole('button', { name: 'Save as version 2' }).click()
  await expect(office.getByText('Saved as version 2')).toBeVisible()
  await expectGoodScreen(office)

  // Whoever had it open before is told, keeps what they typed, and may look first.
  const page = await teacherOf(browser)
  await page.goto(`/teach/course/${own.id}`)
  await page.getByRole('link', { name: 'Edit Lap joint, from the office' }).click()
  await expect(page.getByRole('button', { name: 'Save as version 3' })).toBeVisible()
  await office.getByLabel('Title').fill('Lap joint, once more')
  await office.getByRole('button', { name: 'Save as version 3' }).click()
  await expect(office.getByText('Saved as version 3')).toBeVisible()
  await page.getByLabel('Passes').fill('2')
  await page.getByRole('button', { name: 'Save as version 3' }).click()
  await expect(page.getByText('Somebody saved version 3 while you wrote. Everything you typed is still here.')).toBeVisible()
  await expect(page.getByLabel('Passes')).toHaveValue('2')
  await expect(page.getByRole('link', { name: /See what changed/ })).toHaveAttribute('href', new RegExp(`^/teach/course/${own.id}/`))

  await office.getByRole('link', { name: 'Versions' }).click()
  await office.waitForURL('**/versions')
  await expect(office.getByText(/Ottilie Marrable, 0 coupons/).first()).toBeVisible()
  await expectGoodScreen(office)
  await office.goto(`/program/classes/${own.id}/paper`)
  await onPhoneAndDesk(office)
  for (const name of ['Class sheet', 'Class code for the board', 'Progress summary of every student']) {
    const address = (await office.getByRole('link', { name }).getAttribute('href')) ?? ''
    expect((await office.request.get(address)).status(), address).toBe(200)
  }
  const other = await as(browser, PEOPLE.stick)
  for (const address of [`/teach/course/${own.id}`, `/program/classes/${own.id}/exercises`, `/print/class-sheet/${own.id}`, `/print/code-sheet/${own.id}`]) {
    expect((await other.request.get(address)).status(), address).toBe(404)
  }
  await archive(own)
  // An archived class's course is read and not changed.
  await office.goto(`/program/classes/${own.id}/exercises`)
  await expect(office.getByText('This class is archived')).toBeVisible()
  await expect(office.getByRole('button', { name: /^(Move|Take off|Add|Copy)/ })).toHaveCount(0)
})
