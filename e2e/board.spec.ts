import {
  as, classAddress, expect, expectAccessible, expectGoodScreen, expectNoSidewaysScroll, logCoupon, newcomer, openLog, PEOPLE, PHONE, TABLET, DESK, test,
} from './app'

const LIVE = 'Live: new coupons appear by themselves.'

test('a coupon appears in the instructor’s queue by itself, and what was sent while the line was down appears when it is back', async ({ browser }) => {
  test.slow()
  const { page: student, person } = await newcomer(browser)
  await openLog(student)
  const address = await classAddress(browser)
  const board = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  await board.goto(address)
  await expect(board.getByText(LIVE)).toBeVisible()
  const queued = board.getByRole('link', { name: new RegExp(`${person.name}.*no\\.`, 's') })
  await expect(queued).toHaveCount(0)
  // A mark on this very page: it would be gone had it been loaded again.
  await board.evaluate(() => document.documentElement.setAttribute('data-same-page', 'yes'))

  await logCoupon(student)
  await expect(queued).toHaveCount(1)
  await expect(board.locator('html')).toHaveAttribute('data-same-page', 'yes')

  await board.context().setOffline(true)
  await expect(board.getByText(/^Not live since \d+:\d\d [AP]M; press to refresh\.$/)).toBeVisible({ timeout: 20_000 })
  await student.getByRole('link', { name: 'Log the next one' }).click()
  await expect(student.locator('form[inert]')).toHaveCount(0)
  await logCoupon(student)
  await board.getByRole('button', { name: 'Refresh' }).click()
  await expect(board.getByText(/Still no connection\.$/)).toBeVisible()
  await expect(queued).toHaveCount(1)
  await expectNoSidewaysScroll(board)

  await board.context().setOffline(false)
  await expect(board.getByText(LIVE)).toBeVisible({ timeout: 20_000 })
  await expect(queued).toHaveCount(2)
  await expect(board.locator('html')).toHaveAttribute('data-same-page', 'yes')
})

test('the queue says who has a coupon open, to every instructor, and goes booth by booth where asked', async ({ browser }) => {
  const { page: student, person } = await newcomer(browser)
  await openLog(student)
  const couponId = await logCoupon(student)
  const address = await classAddress(browser)
  const board = await as(browser, PEOPLE.selfShielded, { viewport: DESK })
  await board.goto(address)
  await expect(board.getByText(LIVE)).toBeVisible()
  const grading = await board.context().newPage()
  await grading.goto(`/teach/coupons/${couponId}`)
  await board.bringToFront()
  await expect(board.getByRole('link', { name: new RegExp(`${person.name}.*You have it open, since `, 's') })).toBeVisible()

  await board.getByText('Longest waiting first', { exact: true }).click()
  const from = board.getByLabel('Walk on from booth')
  await from.selectOption({ index: 1 })
  const booth = await from.inputValue()
  await board.getByRole('button', { name: 'Nearest booth first' }).click()
  await expect(board).toHaveURL(new RegExp(`queue=booth&start=${booth}$`))
  const waiting = board.getByRole('region', { name: 'Waiting for you' })
  const booths = (await waiting.getByRole('listitem').locator('.figures').allInnerTexts()).map((text) => Number(text.replace(/\D/g, '')) || Infinity)
  const round = (at: number): number => (at === Infinity ? 2 : at >= Number(booth) ? 0 : 1)
  expect(booths).toEqual([...booths].sort((a, b) => round(a) - round(b) || (a === b ? 0 : a - b)))
  await board.getByRole('link', { name: 'Longest waiting first' }).click()
  await expect(board).toHaveURL(new RegExp(`${address}$`))
})

test('the class page is good on every screen, and on a projector names nobody', async ({ browser }) => {
  test.slow()
  const address = await classAddress(browser)
  for (const viewport of [PHONE, TABLET, DESK]) {
    const page = await as(browser, PEOPLE.selfShielded, { viewport })
    await page.goto(address)
    await expect(page.getByText(LIVE)).toBeVisible()
    await expect(page.getByRole('heading', { name: 'Needs you today' })).toBeVisible()
    await expectGoodScreen(page)
    if (viewport === DESK) {
      await page.getByRole('link', { name: 'For the projector' }).click()
      await expect(page.getByRole('heading', { name: 'Needs you today' })).toHaveCount(0)
      await expect(page.getByRole('rowheader', { name: 'Booth 1', exact: false }).first()).toBeVisible()
      const sent = await (await page.request.get(page.url())).text()
      for (const { name } of [PEOPLE.klara, PEOPLE.jimena, PEOPLE.tetteh]) expect(sent).not.toContain(name)
      await expectAccessible(page)
      await page.getByRole('link', { name: 'Show names again' }).click()
      await expect(page.getByRole('rowheader', { name: PEOPLE.jimena.name })).toBeVisible()
    }
    await page.context().close()
  }
})

test('without scripts the board still sorts and filters, and says as of when it stands', async ({ browser }) => {
  const address = await classAddress(browser)
  const signedIn = await as(browser, PEOPLE.selfShielded)
  await signedIn.goto(address)
  const cookies = await signedIn.context().cookies()
  const context = await browser.newContext({ viewport: TABLET, javaScriptEnabled: false })
  await context.addCookies(cookies)
  const page = await context.newPage()
  await page.goto(address)
  await expect(page.getByText(/^As of /)).toBeVisible()
  await expect(page.getByRole('link', { name: 'Show it as it is now' })).toHaveAttribute('href', address)
  await page.getByText('Sort and filter').click()
  await page.getByLabel('From booth', { exact: true }).fill('1')
  await page.getByLabel('To booth', { exact: true }).fill('1')
  await page.getByLabel('Exercise', { exact: true }).selectOption({ index: 1 })
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  await expect(page).toHaveURL(/exercise=.*&from=1&to=1/)
  await expect(page.getByRole('rowheader')).toHaveCount(1)
  await expect(page.getByRole('columnheader')).toHaveCount(3) // booth, student, the one exercise
})
