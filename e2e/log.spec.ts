import type { Page } from '@playwright/test'
import { as, box, couponNumber, expect, expectAccessible, expectGoodScreen, expectVerdict, group, newcomer, openLog, rule, sendButton, test, type Person } from './app'

let student: Person

test.beforeAll(async ({ browser }) => {
  const { page, person } = await newcomer(browser)
  student = person
  await page.context().close()
})

/** Taps a step on the pad that is open for a size. */
const tapPad = (page: Page, of: string, step: string): Promise<void> =>
  group(page, `Gauge steps for: ${of}`).getByRole('button', { name: new RegExp(`^${step}(?! ?[/\\d])`) }).tap()

/** Taps the drawn bead at a share of its length, on the upper toe. */
async function tapBead(page: Page, share: number): Promise<void> {
  const bead = page.locator('form svg[role="img"]:visible')
  await bead.scrollIntoViewIfNeeded()
  const { width, height } = (await bead.boundingBox()) ?? { width: 0, height: 0 }
  await bead.tap({ position: { x: width * share, y: height * 0.3 } })
}

test('a clean coupon is logged by taps alone, one for each size and two more', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  for (const [size, step] of [['Width', '7/16'], ['Upper leg', '5/16'], ['Lower leg', '9/32'], ['Convexity', '1/32']] as const) {
    for (const station of [1, 2, 3, 4, 5, 6]) await tapPad(page, `${size}, station ${station}`, step)
  }
  await expect(page.getByText('Every size is measured')).toBeVisible()
  await expect(page.getByRole('region', { name: 'Before you send' })).toContainText('24 of 24 sizes measured')
  await page.getByRole('button', { name: 'Looked for everything, none found' }).tap()
  await expectGoodScreen(page, { gloves: true })
  await sendButton(page).tap()
  await couponNumber(page)
  await expectVerdict(page, 'Accept')
})

test('a tap fills only its own box; other pages, clearing, and typing in the same box all work', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  await tapPad(page, 'Width, station 1', '7/16')
  await expect(box(page, 'Station 1', 'Width')).toHaveValue('7/16')
  await expect(box(page, 'Station 2', 'Width')).toHaveValue('')
  await page.getByRole('button', { name: 'Larger', exact: true }).tap()
  await tapPad(page, 'Width, station 2', '17/32')
  await page.getByRole('button', { name: 'Same as station 2: 17/32' }).tap()
  await expect(box(page, 'Station 3', 'Width')).toHaveValue('17/32')
  await expect(box(page, 'Station 4', 'Width')).toHaveValue('')
  await box(page, 'Station 1', 'Width').tap()
  await page.getByRole('button', { name: 'Clear', exact: true }).tap()
  await expect(box(page, 'Station 1', 'Width')).toHaveValue('')
  await page.getByRole('button', { name: 'Type it' }).tap()
  await expect(box(page, 'Station 1', 'Width')).toBeFocused()
  await page.keyboard.type('.44')
  await page.keyboard.press('Enter')
  await expect(box(page, 'Station 4', 'Width')).toBeFocused()
  await expect(page.getByRole('region', { name: 'Before you send' })).toContainText('3 of 24 sizes measured')
  await expect(page.getByRole('region', { name: 'Before you send' })).toContainText('Width at 4, 5, 6')
  await page.keyboard.type('3/')
  await expect(page.getByRole('region', { name: 'Before you send' }), 'what cannot be read measures nothing').toContainText('3 of 24 sizes measured')
  await box(page, 'Station 4', 'Width').fill('')
  await page.getByRole('button', { name: 'Use the pad' }).tap()
  await expectGoodScreen(page, { gloves: true })
})

test('an indication is placed by tapping the bead, then named and sized by taps', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  for (const station of [1, 2, 3]) await tapPad(page, `Width, station ${station}`, '7/16')
  await page.getByRole('button', { name: 'Place an indication' }).tap()
  await tapBead(page, 0.5)
  await group(page, 'What is it?').getByRole('button', { name: 'Undercut', exact: true }).tap()
  const placed = group(page, 'Indication 1')
  await expect(placed.getByLabel('From the start', { exact: true })).toHaveValue('3')
  await expect(placed.getByRole('radio', { name: 'Upper' })).toBeChecked()
  await tapPad(page, 'Depth', '5/64')
  await tapPad(page, 'Length', '1')
  await expect(placed.getByLabel('Depth', { exact: true })).toHaveValue('5/64')
  await expect(placed.getByLabel('Length', { exact: true })).toHaveValue('1')
  await expectGoodScreen(page, { gloves: true })
  await page.getByRole('button', { name: 'Done with indication 1' }).tap()
  await expect(page.getByText('Undercut, 3 in from the start')).toBeVisible()
  await page.getByRole('button', { name: 'Looked for everything else, none found' }).tap()
  await sendButton(page).tap()
  await couponNumber(page)
  await expectVerdict(page, 'Reject')
  await expect(rule(page, 'Undercut')).toContainText('5/64 in')
})

test('arcs add up, survive a reload, and a timer left running is asked about', async ({ browser }) => {
  const page = await as(browser, student)
  const start = new Date('2026-11-25T13:00:00Z')
  await page.clock.install({ time: start })
  await openLog(page)
  await box(page, 'Pass 1', 'Current, A').fill('150')
  await box(page, 'Pass 1', 'Voltage, V').fill('18')
  await page.getByRole('button', { name: 'Arc on' }).tap()
  await page.clock.fastForward(20_000)
  await page.getByRole('button', { name: 'Arc off' }).tap()
  await expect(box(page, 'Pass 1', 'Arc time, min:s')).toHaveValue('0:20')
  await page.getByRole('button', { name: 'Arc on' }).tap()
  await page.reload()
  await expect(page.locator('form[inert]')).toHaveCount(0)
  await page.clock.fastForward(16_000)
  await page.getByRole('button', { name: 'Arc off' }).tap()
  await expect(box(page, 'Pass 1', 'Arc time, min:s')).toHaveValue(/^0:3[67]$/)
  await box(page, 'Pass 1', 'Arc time, min:s').fill('0:36')
  await page.getByRole('button', { name: 'The whole weld, 6 in' }).tap()
  await expect(page.getByText(/Travel 10\.0 in\/min · Arc energy 16\.2 kJ\/in · Heat input 13\.0 kJ\/in/)).toBeVisible()

  await page.getByRole('button', { name: 'Arc on' }).tap()
  await page.clock.fastForward('02:00:00')
  await expect(page.getByText(/The timer has run for 2:00:\d\d\. Was it left running\?/)).toBeVisible()
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Yes, leave that time out' }).tap()
  await expect(box(page, 'Pass 1', 'Arc time, min:s')).toHaveValue('0:36')

  await page.getByRole('button', { name: 'Arc on' }).tap()
  await page.clock.setSystemTime(new Date(start.getTime() - 86_400_000))
  await page.clock.fastForward(2000)
  await expect(page.getByText(/The clock of this device was set back/)).toBeVisible()
  await page.getByRole('button', { name: 'Stop the timer' }).tap()
  await expect(box(page, 'Pass 1', 'Arc time, min:s')).toHaveValue('0:36')
})

test('a set-up that differs is said before the arc, with why and who says so, and stops nobody', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  const before = page.getByRole('region', { name: 'Before the arc' })
  await group(page, 'Pass 1').getByLabel('Polarity').selectOption('DCEP')
  await expect(before).toContainText('E71T-11 runs on DC, electrode negative')
  await expect(before).toContainText('the arc is harsh')
  await expect(before).toContainText('AWS A5.20')
  await page.getByRole('button', { name: 'Check wire, rolls and position' }).tap()
  await before.getByLabel('Groove of the rolls').selectOption('smooth V')
  await expect(before).toContainText('commonly driven by knurled rolls')
  await expect(before).toContainText('common practice, no source')
  await expect(sendButton(page)).toBeEnabled()
  await expectGoodScreen(page, { gloves: true })
})

test('keys and boxes of the log screen lie 8 px apart at 360 px', async ({ browser }) => {
  const page = await as(browser, student)
  await openLog(page)
  const close = await page.evaluate(() => {
    const controls = [...document.querySelectorAll<HTMLElement>('main button, main input:not([type="radio"]), main select, main textarea')].filter((each) => each.checkVisibility())
    const dock = document.querySelector('[role="group"][aria-label^="Gauge steps"]')?.closest('.sticky')
    const gaps = controls.flatMap((a, i) => controls.slice(i + 1).flatMap((b) => {
      if (dock && dock.contains(a) !== dock.contains(b)) return [] // the pad lies over what scrolls under it
      const [r, s] = [a.getBoundingClientRect(), b.getBoundingClientRect()]
      const apart = Math.max(s.left - r.right, r.left - s.right, s.top - r.bottom, r.top - s.bottom)
      return apart < 7.5 ? [`${a.innerText || a.id} and ${b.innerText || b.id}: ${apart}`] : []
    }))
    return { gaps, count: controls.length }
  })
  expect(close.count).toBeGreaterThan(40)
  expect(close.gaps).toEqual([])
})
