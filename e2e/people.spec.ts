// The coordinator's people: a roster with a mistake is mended and brought in; who is withdrawn or taken off a class is out at the next request.
import { readFile } from 'node:fs/promises'
import type { Browser, Page } from '@playwright/test'
import { as, CLASS, classAddress, DESK, expect, expectGoodScreen, inventPerson, PEOPLE, PHONE, signIn, stranger, test } from './app'

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

test('a downloaded roster is taken back unchanged', async ({ browser }) => {
  const page = await openPeople(browser)
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Download the roster' }).click()])
  expect(file.suggestedFilename()).toBe('roster.csv')
  await page.getByLabel('A file of your computer').setInputFiles({ name: 'roster.csv', mimeType: 'text/csv', buffer: await readFile(await file.path()) })
  await expect(lines(page)).toHaveValue(/^username,givenName,familyName,booth/)
  await checkRoster(page)
  await expect(page.getByText(/Nothing is written yet\. 0 added, 0 changed, [1-9]\d* unchanged, 0 rejected\./)).toBeVisible()
})

/** Opens someone's page by searching for their sign-in name. */
async function findPerson(page: Page, signInName: string, name: string): Promise<void> {
  await page.goto('/program/people')
  await page.getByLabel('Name or sign-in name').fill(signInName)
  await page.getByRole('button', { name: 'Find' }).click()
  await expect(page.getByText('1 person.')).toBeVisible()
  await page.getByRole('link', { name, exact: true }).click()
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
}

test('a coordinator makes an instructor, who replaces the first password, and whose account is then disabled and enabled', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  const person = inventPerson()
  await page.goto('/program/people')
  await page.getByRole('link', { name: 'New instructor' }).click()
  await page.getByLabel('Family name').fill(person.family)
  await page.getByLabel('Sign-in name').fill('No Name!')
  await page.getByRole('button', { name: 'Make the account' }).click()
  await expect(page.getByLabel('Given name')).toHaveAttribute('aria-invalid', 'true')
  await expect(page.getByLabel('Sign-in name')).toHaveAttribute('aria-invalid', 'true')
  await expect(page.getByLabel('Family name')).toHaveValue(person.family)
  await page.getByLabel('Given name').fill(person.given)
  await page.getByLabel('Sign-in name').fill(person.signInName)
  await page.getByRole('button', { name: 'Make the account' }).click()
  const notice = page.getByRole('status').filter({ hasText: 'Account made' })
  await expect(notice).toBeVisible()
  const password = /(?:[a-z]+-){4}\d{4}/.exec(await notice.innerText())?.[0] ?? ''
  await notice.getByRole('link', { name: 'Open the account' }).click()
  await page.getByRole('button', { name: 'Add to this class' }).click()
  const off = page.getByRole('button', { name: `Take ${person.name} off` })
  await off.click()
  await expect(off).toHaveCount(0)

  const theirs = await stranger(browser, { viewport: DESK })
  await signIn(theirs, { ...person, password })
  await expect(theirs).toHaveURL(/\/account$/)
  await theirs.goto('/teach')
  await expect(theirs).toHaveURL(/\/account$/)
  await theirs.getByLabel('Current password').fill(password)
  await theirs.getByLabel('New password').fill(person.password)
  await theirs.getByRole('button', { name: 'Change the password' }).click()
  await expect(async () => {
    expect((await theirs.goto('/teach'))?.url()).toMatch(/\/teach$/)
  }).toPass()

  await page.reload()
  await expect(page.getByRole('heading', { name: 'Signed in now' }).locator('..').getByRole('listitem')).not.toHaveCount(0)
  await page.getByRole('button', { name: 'Disable the account' }).click()
  await page.getByRole('button', { name: `Sign ${person.name} out and let them in no more` }).click()
  await expect(page.getByText('cannot sign in. The record stays.')).toBeVisible()
  await theirs.goto('/teach')
  await expect(theirs).toHaveURL(/\/sign-in/)
  await signIn(theirs, person)
  await expect(theirs.getByRole('alert').filter({ hasText: 'Not signed in' })).toContainText('The name or the password is not right.')
  await page.getByRole('button', { name: 'Enable the account' }).click()
  await expect(page.getByText('can sign in again.')).toBeVisible()
  await signIn(theirs, person)
  await expect(theirs).toHaveURL(/\/teach$/)
})

test('a term is changed with bad days refused at the field, says what it shares days with, and is deleted while it has no class', async ({ browser }) => {
  const page = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  const name = `Workshop ${Date.now().toString(36)}`
  await page.goto('/program/classes')
  const made = page.getByRole('heading', { name: 'A new term' }).locator('..')
  await made.getByLabel('Name of the term').last().fill(name)
  await made.getByLabel('First day').last().fill('2031-03-09')
  await made.getByLabel('Last day').last().fill('2031-03-02')
  await made.getByRole('button', { name: 'Make the term' }).click()
  await expect(page.getByText('A term ends on or after the day it starts.')).toBeVisible()
  await expect(made.getByLabel('Name of the term').last()).toHaveValue(name)
  await made.getByLabel('Last day').last().fill('2031-03-29')
  await made.getByRole('button', { name: 'Make the term' }).click()
  const item = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name, exact: true }) })
  await expect(item).toContainText('Mar 9, 2031 to Mar 29, 2031 · 0 classes')
  await item.getByText(`Change ${name}`).click()
  await item.getByLabel('First day').fill('2026-10-05')
  await item.getByRole('button', { name: 'Save' }).click()
  await expect(item).toContainText(/Shares days with .*Fall 2026/)
  await item.getByRole('button', { name: `Delete ${name}` }).click()
  await expect(item).toHaveCount(0)
  await expect(page.getByRole('button', { name: /^Delete Fall/ })).toHaveCount(0)
})

test('an instructor prints the class code without scripts, and whoever opens its address has the code filled in', async ({ browser }) => {
  const address = await classAddress(browser)
  const page = await as(browser, PEOPLE.selfShielded, { viewport: DESK })
  await page.goto(address)
  const sheet = (await page.getByRole('link', { name: 'Print it for the board' }).getAttribute('href')) ?? ''
  const still = await browser.newContext({ javaScriptEnabled: false, storageState: await page.context().storageState() })
  const paper = await still.newPage()
  for (const [size, points] of [['letter', [612, 792]], ['a4', [595, 842]]] as const) {
    await paper.goto(`${sheet}?languages=both&paper=${size}`)
    await paper.emulateMedia({ media: 'print' })
    const pdf = (await paper.pdf({ preferCSSPageSize: true })).toString('latin1')
    expect([...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)], `sheets on ${size}`).toHaveLength(1)
    const [, width, height] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/.exec(pdf) ?? []
    expect([Math.round(Number(width)), Math.round(Number(height))]).toEqual([...points])
  }
  await expect(paper.getByText(/Works until .+ C[DS]T\./)).toBeVisible()
  await expect(paper.getByText(/Sirve hasta el .+ C[DS]T\./)).toBeVisible()
  const label = (await paper.getByRole('img', { name: /^Opens the join page/ }).getAttribute('aria-label')) ?? ''
  await still.close()
  await page.setViewportSize(PHONE)
  await page.goto(sheet)
  await expectGoodScreen(page)

  const join = new URL(label.slice(label.indexOf('http')))
  const phone = await stranger(browser)
  await phone.goto(`${join.pathname}${join.search}`)
  await expect(phone.getByLabel('Class code')).toHaveValue(/^[2-9A-Z]{4}-[2-9A-Z]{4}$/)
  expect((await (await as(browser, PEOPLE.stick)).request.get(sheet)).status()).toBe(404)
})

test('an instructor makes a first password for a student whom a roster brought, and the student gets in with it', async ({ browser }) => {
  const page = await openPeople(browser)
  const person = inventPerson()
  await lines(page).fill(`username,givenName,familyName\n${person.signInName},${person.given},${person.family}`)
  await checkRoster(page)
  await page.getByRole('button', { name: 'Bring in 1 student' }).click()
  await expect(page.getByText('1 student added or changed.')).toBeVisible()

  const shop = await as(browser, PEOPLE.selfShielded)
  await shop.goto(await classAddress(browser))
  await shop.getByRole('link', { name: 'People', exact: true }).click()
  await expect(shop.getByText(`${person.signInName}, no booth, no password yet, no PIN yet`)).toBeVisible()
  await shop.getByRole('button', { name: `Make a first password of ${person.name}` }).click()
  const notice = shop.getByRole('status').filter({ hasText: 'New first password' })
  await expect(notice).toBeVisible()
  const password = /(?:[a-z]+-){4}\d{4}/.exec(await notice.innerText())?.[0] ?? ''
  await expect(shop.getByRole('button', { name: `Reset the password of ${person.name}` })).toBeVisible()
  const theirs = await stranger(browser)
  await signIn(theirs, { ...person, password })
  await expect(theirs).toHaveURL(/\/account$/)
})

for (const [name, viewport] of [['phone', PHONE], ['desk', DESK]] as const) {
  test(`the people of a class are in order on a ${name}`, async ({ browser }) => {
    const page = await openPeople(browser, viewport)
    await lines(page).fill('username,givenName,familyName\nq.q,,Q')
    await checkRoster(page)
    await expect(page.getByText(/1 rejected\./)).toBeVisible()
    await expectGoodScreen(page)

    const shop = await as(browser, PEOPLE.selfShielded, { viewport })
    await shop.goto(`${await classAddress(browser)}/people`)
    await shop.getByRole('button', { name: `Reset the password of ${PEOPLE.jimena.name}` }).click()
    await expectGoodScreen(shop, { gloves: true })
  })

  test(`the list of people, one person and a new instructor are in order on a ${name}`, async ({ browser }) => {
    const page = await as(browser, PEOPLE.coordinator, { viewport })
    await page.goto('/program/people?q=nobody-at-all')
    await expect(page.getByRole('heading', { name: 'Nobody like that' })).toBeVisible()
    await page.getByRole('link', { name: 'Show everyone' }).click()
    await expect(page.getByRole('region', { name: 'People', exact: true }).getByRole('row').nth(3)).toBeVisible()
    await expectGoodScreen(page)
    await findPerson(page, PEOPLE.stick.signInName, PEOPLE.stick.name)
    await page.getByText('Change the names').click()
    await page.getByLabel('Given name').fill(' ')
    await page.getByRole('button', { name: 'Save the names' }).click()
    await expect(page.getByLabel('Given name')).toHaveAttribute('aria-invalid', 'true')
    await page.getByRole('button', { name: 'Reset the password' }).click()
    await expectGoodScreen(page)
    await page.goto('/program/people/new')
    await page.getByRole('button', { name: 'Make the account' }).click()
    await expect(page.getByLabel('Given name')).toHaveAttribute('aria-invalid', 'true')
    await expectGoodScreen(page)
    await page.goto('/program/classes')
    await expectGoodScreen(page)
  })
}
