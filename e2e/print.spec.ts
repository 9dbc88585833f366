// What is put on paper: by the student, with scripts switched off, in black and white, on either sheet.
import { randomUUID } from 'node:crypto'
import type { Browser, Page } from '@playwright/test'
import { as, DESK, expect, expectAccessible, expectNoSidewaysScroll, LAP_2F, PEOPLE, PHONE, test, type Person } from './app'

const CAUTION = 'A practice record. The governing code edition, the local authority and a qualified inspector decide.'
const SHEETS = { letter: [612, 792], a4: [595, 842] } as const

/** A browser in which someone is signed in and no script runs. */
async function withoutScripts(browser: Browser, who: Person): Promise<Page> {
  const signedIn = await as(browser, who)
  const context = await browser.newContext({ javaScriptEnabled: false, viewport: DESK, storageState: await signedIn.context().storageState() })
  await signedIn.context().close()
  return context.newPage()
}

/** Prints the page and reads from the file how many sheets it took and of what size, in points. */
async function printed(page: Page): Promise<{ sheets: number; size: number[] }> {
  await page.emulateMedia({ media: 'print' })
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
  const [, width, height] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/.exec(pdf) ?? []
  return { sheets: [...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)].length, size: [Math.round(Number(width)), Math.round(Number(height))] }
}

/** The address of a student's summary, as their own page links to it. */
async function summaryAddress(browser: Browser, who: Person): Promise<string> {
  const page = await as(browser, who)
  await page.goto('/learn')
  const href = await page.getByRole('link', { name: 'Print my summary' }).first().getAttribute('href')
  await page.context().close()
  expect(href).toMatch(/^\/print\/progress\//)
  return href ?? ''
}

/** The address of the standard exercise in the student's own class: '/learn/<class>/<exercise>'. */
async function exerciseId(browser: Browser, who: Person): Promise<string> {
  const page = await as(browser, who)
  await page.goto('/learn')
  const href = await page.getByRole('main').getByRole('link', { name: LAP_2F, exact: true }).last().getAttribute('href')
  await page.context().close()
  return href?.split('/').at(-1) ?? ''
}

for (const [paper, size] of Object.entries(SHEETS)) {
  for (const person of [PEOPLE.jimena, PEOPLE.tetteh, PEOPLE.stickStudent]) {
    test(`${person.name} prints the summary on one ${paper} sheet without a script`, async ({ browser }) => {
      const address = await summaryAddress(browser, person)
      const page = await withoutScripts(browser, person)
      await page.goto(`${address}?paper=${paper}`)
      expect(await printed(page)).toEqual({ sheets: 1, size: [...size] })
      await expect(page.getByRole('heading', { name: person.name, level: 1 })).toBeVisible()
      await expect(page.getByText(CAUTION)).toBeVisible()
      await expect(page.getByText(/Criteria: .+ version \d+.*Scoring version .+ Readiness model: .+ Printed /)).toBeVisible()
      await expect(page.getByRole('navigation')).toHaveCount(0)
      await expect(page.getByRole('button')).toHaveCount(0)
      await expect(page.getByText('This page is made for paper')).toBeHidden()
      const strips = page.getByRole('main').locator('ol > li')
      expect(await strips.count()).toBeGreaterThan(0)
      for (const strip of await strips.all()) expect(await strip.locator('svg[role="img"] path').count(), 'lines of a bead').toBeGreaterThan(1)
      await expect(page.getByRole('img', { name: /^Chance of passing/ }).locator('path')).not.toHaveCount(0)
      await expect(page.getByRole('img', { name: /^Marks over time/ }).locator('circle, rect')).not.toHaveCount(0)
    })
  }
}

test('nothing on paper has a colour', async ({ browser }) => {
  const page = await withoutScripts(browser, PEOPLE.jimena)
  await page.goto(await summaryAddress(browser, PEOPLE.jimena))
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
  const coloured = await page.getByRole('main').locator('*').evaluateAll((elements) => elements.flatMap((element) => {
    const style = getComputedStyle(element)
    return [style.color, style.fill, style.stroke, style.backgroundColor, style.borderTopColor].flatMap((colour) => {
      if (colour === 'none') return []
      const [red, green, blue, alpha = 1] = (/^rgba?\((.+)\)$/.exec(colour)?.[1] ?? '').split(',').map(Number)
      return red !== undefined && (alpha === 0 || (red === green && green === blue)) ? [] : [`${element.tagName} ${colour}`]
    })
  }))
  expect([...new Set(coloured)]).toEqual([])
})

test('a student’s summary is not there for another student, as if it did not exist', async ({ browser }) => {
  const address = await summaryAddress(browser, PEOPLE.tetteh)
  const page = await as(browser, PEOPLE.jimena)
  const seen = async (path: string) => {
    const response = await page.goto(path)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    return { status: response?.status(), text: await page.locator('body').innerText(), title: await page.title() }
  }
  const missing = await seen(`/print/progress/${randomUUID()}`)
  expect(missing.status).toBe(404)
  expect(await seen(address)).toEqual(missing)
  expect(await seen('/print/progress/no-id-at-all')).toEqual(missing)
  expect(missing.text).not.toContain(PEOPLE.tetteh.name)
})

test('a student’s summary is there for their instructor and the coordinator, and for no other instructor', async ({ browser }) => {
  const address = await summaryAddress(browser, PEOPLE.jimena)
  for (const [person, status] of [[PEOPLE.selfShielded, 200], [PEOPLE.coordinator, 200], [PEOPLE.stick, 404]] as const) {
    const page = await as(browser, person)
    expect((await page.request.get(address)).status(), person.name).toBe(status)
  }
})

test('an instructor prints the readiness report, with every coupon and a line to sign', async ({ browser }) => {
  const [address, exercise] = await Promise.all([summaryAddress(browser, PEOPLE.jimena), exerciseId(browser, PEOPLE.jimena)])
  const page = await withoutScripts(browser, PEOPLE.selfShielded)
  await page.goto(`${address.replace('/progress/', '/readiness/')}/${exercise}?paper=a4`)
  const { sheets, size } = await printed(page)
  expect(sheets).toBeGreaterThanOrEqual(1)
  expect(size).toEqual([...SHEETS.a4])
  await expect(page.getByText(/chance to pass the next test coupon, between 0\.\d\d and 0\.\d\d, from \d+ coupons\./)).toBeVisible()
  const used = Number(await page.getByText('Coupons used', { exact: true }).first().locator('xpath=following-sibling::dd').innerText())
  await expect(page.getByRole('table', { name: 'Coupons used' }).locator('tbody tr')).toHaveCount(used)
  await expect(page.getByText('Instructor', { exact: true })).toBeVisible()
  await expect(page.getByText(`Student, ${PEOPLE.jimena.name}`)).toBeVisible()
  await expect(page.getByText(CAUTION)).toBeVisible()
  expect(await page.locator('footer').evaluate((foot) => getComputedStyle(foot).display), 'the foot comes again on every sheet').toBe('table-footer-group')
})

test('a student prints the booth card on one sheet, with its cautions and their sources', async ({ browser }) => {
  const exercise = await exerciseId(browser, PEOPLE.jimena)
  const page = await withoutScripts(browser, PEOPLE.jimena)
  for (const [paper, size] of Object.entries(SHEETS)) {
    await page.goto(`/print/booth-card/${exercise}?paper=${paper}`)
    expect(await printed(page)).toEqual({ sheets: 1, size: [...size] })
    await expect(page.getByText('DCEN, electrode negative')).toBeVisible()
    await expect(page.getByRole('heading', { name: 'Eyes' })).toBeVisible()
    await expect(page.getByText(/\[1\] OSHA/)).toBeVisible()
    await expect(page.getByText(CAUTION)).toBeVisible()
  }
})

test('pages for paper are in order on a screen, too', async ({ browser }) => {
  const [address, exercise] = await Promise.all([summaryAddress(browser, PEOPLE.jimena), exerciseId(browser, PEOPLE.jimena)])
  const page = await as(browser, PEOPLE.jimena, { viewport: PHONE })
  for (const path of [address, `${address.replace('/progress/', '/readiness/')}/${exercise}`, `/print/booth-card/${exercise}`]) {
    await page.goto(path)
    await expect(page.getByText('This page is made for paper')).toBeVisible()
    await expectNoSidewaysScroll(page)
    await expectAccessible(page)
  }
  await page.getByRole('link', { name: 'Lay it out for A4' }).click()
  await expect(page.getByText('Laid out for A4.')).toBeVisible()
})
