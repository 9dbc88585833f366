// What people do in the application, as verbs, and what every screen owes them.
import AxeBuilder from '@axe-core/playwright'
import { test as base, expect, type Browser, type BrowserContext, type Cookie, type Locator, type Page } from '@playwright/test'
import { COORDINATOR, INSTRUCTORS, KNOWN, PASSWORDS, students } from '../prisma/seed/people'

export { expect }

export type Person = { readonly signInName: string; readonly password: string; readonly name: string }

export const known = (signInName: string): Person => {
  const found = students(true).find((student) => student.signInName === signInName)
  if (!found) throw new Error(`The invented school has no student ${signInName}.`)
  return { signInName, password: PASSWORDS.student, name: `${found.given} ${found.family}` }
}
const instructor = (process: keyof typeof INSTRUCTORS): Person => ({
  signInName: INSTRUCTORS[process].signInName, password: PASSWORDS.instructor, name: `${INSTRUCTORS[process].given} ${INSTRUCTORS[process].family}`,
})

/** People of the invented school that tests may meet. */
export const PEOPLE = {
  /** Next up for her is the 2F lap joint, its cautions unconfirmed. One test spends that. */
  klara: known(KNOWN.beforeCautions),
  jimena: known(KNOWN.withEstimate),
  tetteh: known(KNOWN.withFew),
  selfShielded: instructor('FCAW-S'),
  stick: instructor('SMAW'),
  stickStudent: known('h.grainger'),
  /** Reads Spanish. */
  yolanda: known('y.quispe'),
  coordinator: { signInName: COORDINATOR.signInName, password: PASSWORDS.coordinator, name: `${COORDINATOR.given} ${COORDINATOR.family}` },
} as const

/** The class most tests meet in. */
export const CLASS = 'Self-shielded flux-cored (FCAW-S)'

export const PHONE = { width: 360, height: 780 } as const
export const TABLET = { width: 820, height: 1180 } as const
export const DESK = { width: 1440, height: 900 } as const

// ---- the browser

/** What pages complained of in their console since the test began; checked after each test. */
let complaints: string[] = []
/** Answers a test asks for on purpose show in the console of any page; the test itself checks them. */
const EXPECTED = /Failed to load resource|net::ERR_|Download the React DevTools/

/** The browsers a test opened. Left open, pages that renew themselves would go on asking the server beside every later test. */
let opened: BrowserContext[] = []

/** A test whose pages may not throw, nor log an error, nor break their content security policy. */
export const test = base.extend<{ quietConsole: void }>({
  quietConsole: [async ({}, use, info) => {
    complaints = []
    await use()
    if (info.status === info.expectedStatus) { // after a failure its screens are still to be pictured
      await Promise.all(opened.map((context) => context.close()))
      opened = []
    }
    expect(complaints, 'errors in the browser’s console').toEqual([])
  }, { auto: true }],
})

function listen(context: BrowserContext): void {
  context.on('weberror', (error) => complaints.push(error.error().message))
  context.on('console', (message) => {
    if (message.type() === 'error' && !EXPECTED.test(message.text())) complaints.push(message.text())
  })
}

type Screen = {
  readonly viewport?: { readonly width: number; readonly height: number }
  readonly locale?: string
  /** Lets the worker in, which keeps pages for when there is no connection. */
  readonly worker?: boolean
  /** Where the browser finds the server, when not at its own address. */
  readonly server?: string
}

/** A new browser, as on a device nobody has used. */
export async function stranger(browser: Browser, { viewport = PHONE, locale = 'en-US', worker = false, server }: Screen = {}): Promise<Page> {
  const context = await browser.newContext({ viewport, locale, hasTouch: viewport.width < 900, serviceWorkers: worker ? 'allow' : 'block', ...(server && { baseURL: server }) })
  listen(context)
  opened.push(context)
  return context.newPage()
}

const sessions = new Map<string, readonly Cookie[]>()

/** A browser in which someone is signed in already. For tests about something else than signing in. */
export async function as(browser: Browser, who: Person, screen: Screen = {}): Promise<Page> {
  const page = await stranger(browser, screen)
  const kept = sessions.get(who.signInName)
  if (kept) await page.context().addCookies([...kept])
  else {
    const { csrfToken } = (await (await page.request.get('/api/auth/csrf')).json()) as { csrfToken: string }
    const answer = await page.request.post('/api/auth/callback/credentials', {
      form: { program: '', signInName: who.signInName, password: who.password, csrfToken, callbackUrl: '/', json: 'true' },
    })
    expect(answer.ok(), `${who.signInName} signs in`).toBe(true)
    sessions.set(who.signInName, await page.context().cookies())
  }
  return page
}

// ---- the door

/** Signs in by the form, from wherever the page is. */
export async function signIn(page: Page, who: Person): Promise<void> {
  if (!new URL(page.url(), 'http://none').pathname.startsWith('/sign-in')) await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill(who.signInName)
  await page.getByLabel('Password', { exact: true }).fill(who.password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
}

export const signOut = (page: Page): Promise<void> => page.getByRole('button', { name: 'Sign out', exact: true }).click()

/** The address of a class its instructor teaches. */
export async function classAddress(browser: Browser, teacher: Person = PEOPLE.selfShielded, name = CLASS): Promise<string> {
  const page = await as(browser, teacher, { viewport: TABLET })
  await page.goto('/teach')
  const address = await page.getByRole('link', { name, exact: true }).first().getAttribute('href')
  await page.context().close()
  return address ?? ''
}

/** The code with which students join a class now, as its instructor reads it out. */
export async function classCode(browser: Browser): Promise<string> {
  const address = await classAddress(browser)
  const page = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  await page.goto(address)
  const code = await readCode(page)
  await page.context().close()
  return code
}

/** The class code on the class page. */
export async function readCode(page: Page): Promise<string> {
  const text = await page.getByRole('heading', { name: 'Class code' }).locator('..').innerText()
  const [code] = /[2-9A-Z]{4}-[2-9A-Z]{4}/.exec(text) ?? []
  expect(code, 'a class code on the page').toBeTruthy()
  return code ?? ''
}

let newcomers = 0

/** Someone nobody has met: invented anew for each call. */
export function inventPerson(): Person & { readonly given: string; readonly family: string } {
  newcomers += 1
  const family = `Newcomer${Date.now().toString(36)}${newcomers}`
  return { given: 'Ada', family, name: `Ada ${family}`, signInName: `a.${family.toLowerCase()}`, password: 'barn-owl-over-nine-fields' }
}

/** Fills in the form of someone who joins a class. */
export async function fillJoinForm(page: Page, code: string, person: ReturnType<typeof inventPerson>): Promise<void> {
  await page.getByLabel('Class code').fill(code)
  await page.getByLabel('Given name').fill(person.given)
  await page.getByLabel('Family name').fill(person.family)
  await page.getByLabel('Sign-in name').fill(person.signInName)
  await page.getByLabel('Password', { exact: true }).fill(person.password)
}

/** A new student of the class, signed in on a device of their own: nothing another test did is in their way. */
export async function newcomer(browser: Browser, screen: Screen = {}): Promise<{ page: Page; person: Person }> {
  const code = await classCode(browser)
  const page = await stranger(browser, screen)
  const person = inventPerson()
  await page.goto('/join')
  await fillJoinForm(page, code, person)
  await page.getByRole('button', { name: 'Join the class' }).click()
  await page.waitForURL('**/learn')
  return { page, person }
}

// ---- the student's room

/** Opens the exercise that is next, or one by its title. */
export async function openExercise(page: Page, title: string | null = null): Promise<void> {
  await page.goto('/learn')
  if (title === null) await page.getByRole('link', { name: 'Open the booth card' }).click()
  else await page.getByRole('main').getByRole('link', { name: title, exact: true }).last().click()
  await page.waitForURL(/\/learn\/[^/]+\/[^/]+$/)
  await expect(page.getByRole('heading', { name: 'Booth card' })).toBeVisible()
}

export async function confirmCautions(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'I have read these and my booth is ready' }).click()
  await expect(page.getByRole('heading', { name: 'Log a coupon' })).toBeVisible()
}

/** The exercise of the standard tests: 2F lap joint, 6 in long, six stations. */
export const LAP_2F = '2F, lap joint, 3/8 in plate, 0.045 in E71T-11'

/** Opens the log form of an exercise nobody has confirmed the cautions of yet. */
export async function openLog(page: Page, title: string = LAP_2F): Promise<void> {
  await openExercise(page, title)
  const log = page.getByRole('link', { name: 'Log a coupon' })
  if (await log.isVisible()) await log.click()
  else await page.getByRole('button', { name: 'I have read these and my booth is ready' }).click()
  await page.waitForURL('**/log')
  await expect(page.getByRole('heading', { name: 'Log a coupon' })).toBeVisible()
  await expect(page.locator('form[inert]')).toHaveCount(0) // its scripts have taken over
  await showSettings(page)
}

export const group = (page: Page, name: string): Locator => page.getByRole('group', { name, exact: true })
/** A box of a station, pass or indication: box(page, 'Station 2', 'Width'). */
export const box = (page: Page, of: string, label: string): Locator => {
  const station = /^Station (\d+)$/.exec(of)
  return station ? page.getByRole('textbox', { name: `${label}, station ${station[1]}`, exact: true }) : group(page, of).getByLabel(label, { exact: true })
}

/** The settings filled in from the last coupon stand in a line; this opens their boxes. */
export async function showSettings(page: Page): Promise<void> {
  const change = page.getByRole('button', { name: 'Change the settings' })
  if (await change.isVisible()) await change.click()
}

export type TypedSizes = Readonly<Partial<Record<'Width' | 'Upper leg' | 'Lower leg' | 'Convexity' | 'From the start', string>>>
export type TypedIndication = { readonly what: string; readonly sizes: Readonly<Record<string, string>>; readonly toe?: 'Upper' | 'Lower' }
export type TypedLook = {
  /** The same at every station where there is one row, else one row a station. */
  readonly stations: readonly TypedSizes[]
  readonly indications?: readonly TypedIndication[]
  /** Whether everything was looked for. */
  readonly looked?: boolean
}

/** Sizes a structural fillet with a 1/4 in leg accepts, as people type them. */
export const CLEAN: TypedLook = { stations: [{ Width: '7/16', 'Upper leg': '5/16', 'Lower leg': '.312', Convexity: '1/32' }] }

/** Fills in sizes, indications and what was looked for; student's and instructor's forms are alike. */
export async function fillLook(page: Page, look: TypedLook): Promise<void> {
  await expect(group(page, 'Width').getByRole('textbox').first()).toBeEditable() // the form is there and awake before its stations are counted
  const count = await group(page, 'Width').getByRole('textbox').count()
  const rows = look.stations.length === 1 ? Array.from({ length: count }, () => look.stations[0] ?? {}) : look.stations
  for (const [index, sizes] of rows.entries()) {
    for (const [label, text] of Object.entries(sizes)) await box(page, `Station ${index + 1}`, label).fill(text)
  }
  for (const indication of look.indications ?? []) {
    await page.getByRole('button', { name: 'Place an indication' }).click()
    await group(page, 'What is it?').getByRole('button', { name: indication.what, exact: true }).click()
    const place = page.getByRole('group', { name: /^Indication \d+$/ }).last()
    for (const [label, text] of Object.entries(indication.sizes)) await place.getByLabel(label, { exact: true }).fill(text)
    if (indication.toe) await place.getByText(indication.toe, { exact: true }).click()
  }
  if (look.looked ?? true) await page.getByRole('button', { name: /^Looked for everything( else)?, none found$/ }).click()
}

export const sendButton = (page: Page): Locator => page.getByRole('button', { name: 'Send the coupon' })

/** On the scorecard of a coupon, its number. */
export async function couponNumber(page: Page): Promise<number> {
  await page.waitForURL(/\/learn\/coupons\//)
  const eyebrow = await page.getByText(/^No\. \d+ · /).innerText()
  return Number(/No\. (\d+)/i.exec(eyebrow)?.[1])
}

/** Logs a coupon from its open form and arrives at its scorecard; returns the coupon's id. */
export async function logCoupon(page: Page, look: TypedLook = CLEAN): Promise<string> {
  await fillLook(page, look)
  await sendButton(page).click()
  await couponNumber(page)
  return new URL(page.url()).pathname.split('/').at(-1) ?? ''
}

/** The verdict in large type, with its mark when there is one to expect. */
export async function expectVerdict(page: Page, word: 'Accept' | 'Reject' | 'Incomplete'): Promise<void> {
  await expect(page.getByRole('main').getByText(word, { exact: true }).first()).toBeVisible()
}

/** A rule's row on the scorecard. */
export const rule = (page: Page, name: string): Locator =>
  page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: new RegExp(`^${name}`), level: 3 }) })

// ---- the instructor's room

/** Fills in the grading form that is open and submits it. */
export async function gradeCoupon(page: Page, look: TypedLook, remark = ''): Promise<void> {
  await fillLook(page, look)
  if (remark) await page.getByLabel('Remark to the student').fill(remark)
  await submitButton(page).click()
}

export const submitButton = (page: Page): Locator => page.getByRole('button', { name: 'Submit the inspection' })

// ---- what every screen owes

const AXE_TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
/** What the dark can break that was whole in the light: nothing but colours changes. */
const AXE_COLOURS = ['color-contrast', 'link-in-text-block']

/** axe finds nothing against WCAG 2.2 AA, in the light and in the dark. */
export async function expectAccessible(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    // No page of ours holds another: the way of asking that looks into frames opens a second page each time.
    const axe = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'] }).exclude('nextjs-portal')
    const { violations } = await (colorScheme === 'light' ? axe.withTags(AXE_TAGS) : axe.withRules(AXE_COLOURS)).analyze()
    const found = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(' | ')}`)
    expect(found, `axe on ${page.url()}, ${colorScheme}`).toEqual([])
  }
  await page.emulateMedia({ colorScheme: null })
}

/** Nothing makes the page itself scroll sideways. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
  expect(over, `pixels ${page.url()} is too wide by`).toBeLessThanOrEqual(0)
}

/**
 * Every visible control is 48 px high, and buttons and boxes 48 px wide: for a gloved finger. Radio buttons and checkboxes are measured
 * by their label. A link inside a sentence is text, not a control.
 */
export async function expectTouchTargets(page: Page): Promise<void> {
  const small = await page.evaluate(() => {
    const LEAST = 47.5 // rounding of fractional layouts
    const controls = [...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary')]
    return controls.flatMap((control) => {
      if (!control.checkVisibility({ visibilityProperty: true }) || control.closest('nextjs-portal') || control.getAttribute('type') === 'hidden') return []
      const isLink = control.matches('a')
      if (isLink && (control.closest('p, svg') !== null || control.matches('.sr-only, [class*="focus:not-sr-only"]'))) return []
      const measured = control.matches('input[type="radio"], input[type="checkbox"]') ? (control.closest('label') ?? control) : control
      const { width, height } = measured.getBoundingClientRect()
      if (width < 2 && height < 2) return [] // hidden until it has the focus
      const enough = height >= LEAST && (isLink || width >= LEAST)
      return enough ? [] : [`${control.tagName.toLowerCase()} “${(control.innerText || control.getAttribute('aria-label') || control.id).slice(0, 40)}” ${Math.round(width)} × ${Math.round(height)}`]
    })
  })
  expect(small, `controls on ${page.url()} too small for gloves`).toEqual([])
}

/** All three at once; `gloves` for student and grading screens. */
export async function expectGoodScreen(page: Page, { gloves = false } = {}): Promise<void> {
  await expectNoSidewaysScroll(page)
  if (gloves) await expectTouchTargets(page)
  await expectAccessible(page)
}

/** Moves the focus with the Tab key alone until it is on the control. */
export async function tabTo(page: Page, control: Locator): Promise<void> {
  for (let presses = 0; presses < 120; presses += 1) {
    if (await control.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('The Tab key never reaches the control.')
}
