// What an instructor prints for a class: with scripts off, page by page, and only for those who teach it.
import { as, CLASS, expect, expectAccessible, expectNoSidewaysScroll, PEOPLE, PHONE, test } from './app'

const CAUTION = 'A practice record. The governing code edition, the local authority and a qualified inspector decide.'
const SIZES = { letter: [612, 792], a4: [595, 842] } as const

test('an instructor prints the class sheet, blank inspection sheets and coupon tags, each page with its number and the caution', async ({ browser }) => {
  const page = await as(browser, PEOPLE.selfShielded)
  await page.goto('/teach')
  await page.getByRole('link', { name: CLASS }).first().click()
  await page.getByRole('link', { name: 'Paper', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Paper for the class' })).toBeVisible()
  await page.setViewportSize(PHONE)
  await expectNoSidewaysScroll(page)
  await expectAccessible(page)
  const sheet = await page.getByRole('link', { name: 'Class sheet' }).getAttribute('href')
  const tags = await page.getByRole('link', { name: /^Coupon tags/ }).first().getAttribute('href')
  const blank = await page.getByRole('link', { name: /^Blank inspection sheet/ }).first().getAttribute('href')
  expect(sheet).toMatch(/^\/print\/class-sheet\//)
  expect(blank).toMatch(/^\/print\/blank-sheet\//)
  expect(tags).toMatch(/^\/print\/tags\//)

  const still = await browser.newContext({ javaScriptEnabled: false, storageState: await page.context().storageState() })
  const paper = await still.newPage()
  for (const address of [sheet, `${blank}?languages=both`, tags]) {
    for (const [size, points] of Object.entries(SIZES)) {
      await paper.goto(`${address}${address?.includes('?') ? '&' : '?'}paper=${size}`)
      await paper.emulateMedia({ media: 'print' })
      const pdf = (await paper.pdf({ preferCSSPageSize: true })).toString('latin1')
      const pages = await paper.getByRole('main').locator('section:has(> footer)').count()
      expect([...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)], `sheets of ${address} on ${size}`).toHaveLength(pages)
      const [, width, height] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/.exec(pdf) ?? []
      expect([Math.round(Number(width)), Math.round(Number(height))]).toEqual([...points])
      await expect(paper.getByText(CAUTION)).toHaveCount(pages)
      await expect(paper.getByText(new RegExp(`Page ${pages} of ${pages}\\. Printed .+ [AP]M \\w+\\.`))).toBeVisible()
    }
  }
  await expect(paper.getByRole('img', { name: /^Opens the log: .+\/learn\/.+\/log$/ })).not.toHaveCount(0)
  await still.close()

  const other = await as(browser, PEOPLE.stick)
  for (const address of [sheet, blank, tags]) expect((await other.request.get(address ?? '')).status()).toBe(404)
})
