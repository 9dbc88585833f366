// What every student screen and the student's paper owe at 360 px, in both languages: room for a gloved finger, one language, every control by keyboard.
import type { Page } from '@playwright/test'
import { classLife } from '../lib/language/class-life'
import { causes, remedies, symptoms } from '../lib/language/coaching'
import { door } from '../lib/language/door'
import { drawings } from '../lib/language/drawings'
import { findings } from '../lib/language/findings'
import { indicationWords } from '../lib/language/indications'
import { kindNames } from '../lib/language/kind-names'
import { learn } from '../lib/language/learn'
import { logForm } from '../lib/language/log-form'
import { logPad } from '../lib/language/log-pad'
import { machineCheck } from '../lib/language/machine-check'
import { myProgress } from '../lib/language/my-progress'
import { offline } from '../lib/language/offline'
import { outboxLine } from '../lib/language/outbox-line'
import { passFigureWords } from '../lib/language/pass-figures'
import { photoGauge } from '../lib/language/photo-gauge'
import { print } from '../lib/language/print'
import { readiness } from '../lib/language/readiness'
import { readingsWords } from '../lib/language/readings'
import { refusals } from '../lib/language/refusals'
import { readingNames, ruleNames } from '../lib/language/rules'
import { safety } from '../lib/language/safety'
import { savedHere } from '../lib/language/saved-here'
import type { Messages } from '../lib/language/say'
import { scorecardWords } from '../lib/language/scorecard'
import { setup } from '../lib/language/setup'
import { setUpWhy } from '../lib/language/set-up-why'
import { studentEye } from '../lib/language/student-eye'
import { tabletIdle } from '../lib/language/tablet-idle'
import { testDay } from '../lib/language/test-day'
import { as, expect, expectAccessible, expectGoodScreen, expectNoSidewaysScroll, PEOPLE, test } from './app'

const CATALOGUE: readonly Messages<string>[] = [
  causes, classLife, door, drawings, findings, indicationWords, kindNames, learn, logForm, logPad, machineCheck, myProgress, offline, outboxLine, passFigureWords, photoGauge, print, readiness,
  readingNames, readingsWords, refusals, remedies, ruleNames, safety, savedHere, scorecardWords, setup, setUpWhy, studentEye, symptoms, tabletIdle, testDay,
]
const SPANISH = new Set(CATALOGUE.flatMap(({ es }) => Object.values(es)))
/** Whole English sentences and labels that Spanish says otherwise. */
const LINES = new Set(CATALOGUE.flatMap(({ en }) => Object.values(en)).filter((text) => !text.includes('{') && text.length > 3 && !SPANISH.has(text)))
/** Words short enough to stand inside other words, or spelled alike in the trade on both sides, would cry wolf. */
const LEAST_LETTERS = 9
/** The longest run of words without a place to fill in, of every English text that Spanish says otherwise. */
const RUNS = [...new Set(CATALOGUE.flatMap(({ en, es }) => Object.entries(en).flatMap(([key, text]) => {
  const run = text.split(/\{\w+\}/).map((part) => part.trim()).sort((a, b) => b.length - a.length)[0] ?? ''
  return es[key] !== text && run.length >= LEAST_LETTERS ? [run] : []
})))]

/** The addresses in the page's main part that look like this, each once. */
async function links(page: Page, address: string, match: RegExp): Promise<string[]> {
  await page.goto(address)
  const hrefs = await page.getByRole('main').locator('a').evaluateAll((found) => found.map((link) => link.getAttribute('href') ?? ''))
  return [...new Set(hrefs.filter((href) => match.test(href)))]
}

/** The screens a student comes by, and what they print from there. */
async function studentPages(page: Page): Promise<{ readonly screens: readonly string[]; readonly paper: readonly string[] }> {
  const exercises = await links(page, '/learn', /^\/learn\/[0-9a-f-]{36}\/[0-9a-f-]{36}$/)
  const [notes] = await links(page, '/learn', /^\/learn\/notes\//)
  const [summary] = await links(page, '/learn', /^\/print\/progress\//)
  const [onMap] = await links(page, '/learn/progress', /^\/learn\/progress\//)
  expect([notes, summary, onMap].every((address) => address !== undefined), 'notes, summary and skill map are on the first screens').toBe(true)
  for (const exercise of exercises) {
    const progress = `/learn/progress/${exercise.split('/').at(-1) ?? ''}`
    const [coupon] = await links(page, progress, /^\/learn\/coupons\//)
    if (!coupon) continue
    const [report] = await links(page, progress, /^\/print\/readiness\//)
    const [card] = await links(page, exercise, /^\/print\/booth-card\//)
    expect(card, 'the booth card to print').toBeDefined()
    return { screens: ['/learn', notes!, '/learn/progress', progress, coupon, exercise, `${exercise}/log`, '/learn/waiting', '/account'], paper: [summary!, card!, ...(report ? [report] : [])] }
  }
  throw new Error('This student has logged no coupon yet.')
}

/**
 * Pairs of controls closer than 8 px. Exempt, as WCAG 2.5.8 exempts them: links inside a sentence or a drawing ("inline"), and what is
 * not there until it has the focus. A docked panel lies over the page that scrolls under it, so its controls are compared among themselves.
 */
async function crowdedPairs(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const GAP = 7.5 // rounding of fractional layouts
    const name = (element: HTMLElement): string => `${element.tagName.toLowerCase()} “${(element.innerText || element.getAttribute('aria-label') || element.id).slice(0, 30)}”`
    const dock = (element: HTMLElement): HTMLElement | null => {
      if (element === document.body || !element.parentElement) return null
      return ['fixed', 'sticky'].includes(getComputedStyle(element).position) ? element : dock(element.parentElement)
    }
    const boxes = [...document.querySelectorAll<HTMLElement>('main button, main input, main select, main textarea, main summary, main a[href]')].flatMap((control) => {
      if (!control.checkVisibility({ visibilityProperty: true }) || control.closest('nextjs-portal') || (control.matches('a') && control.closest('p, svg'))) return []
      const measured = control.matches('input[type="radio"], input[type="checkbox"]') ? (control.closest('label') ?? control) : control
      const box = measured.getBoundingClientRect()
      return box.width < 2 || box.height < 2 ? [] : [{ control, measured, box, dock: dock(control) }]
    })
    return boxes.flatMap((one, i) => boxes.slice(i + 1).flatMap((other) => {
      if (one.dock !== other.dock || one.measured === other.measured || one.measured.contains(other.measured) || other.measured.contains(one.measured)) return []
      const across = Math.max(other.box.left - one.box.right, one.box.left - other.box.right)
      const down = Math.max(other.box.top - one.box.bottom, one.box.top - other.box.bottom)
      return Math.max(across, down) < GAP ? [`${name(one.control)} and ${name(other.control)}: ${Math.round(Math.max(across, down))} px`] : []
    }))
  })
}

/** Controls the Tab key never reaches; one radio button stands for its group. */
async function unreached(page: Page): Promise<string[]> {
  return page.evaluate(() => [...document.querySelectorAll<HTMLElement>('a[href], button:not(:disabled), input:not(:disabled):not([type="hidden"]), select, textarea, summary')]
    .filter((control) => control.checkVisibility({ visibilityProperty: true }) && !control.closest('[inert], nextjs-portal') && control.tabIndex < 0)
    .map((control) => `${control.tagName.toLowerCase()} “${control.innerText.slice(0, 30)}”`))
}

/**
 * Every text of the page, folded away or read out only, as it was written: styles may set it in capitals. Compared letter for letter,
 * for what people typed (a card's note, an exercise's title) stays in the language they wrote it in.
 */
async function wordsOf(page: Page): Promise<string> {
  return page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    const texts: string[] = [...document.querySelectorAll('[aria-label]')].map((element) => element.getAttribute('aria-label') ?? '')
    while (walker.nextNode()) {
      if (!walker.currentNode.parentElement?.closest('script, style, template, nextjs-portal')) texts.push(walker.currentNode.textContent ?? '')
    }
    return texts.join('\n')
  })
}

/** English of the catalogue that stands on the page or in its title, whole or within a longer text. */
async function englishOn(page: Page): Promise<{ readonly lines: readonly string[]; readonly within: readonly string[] }> {
  const lines = (await page.locator('body').innerText()).split('\n').map((line) => line.trim()).filter((line) => LINES.has(line))
  const text = `${await page.title()}\n${await wordsOf(page)}`
  return { lines, within: RUNS.filter((run) => new RegExp(`(?<![\\p{L}])${run.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}])`, 'u').test(text)) }
}

for (const [locale, who] of [['en', PEOPLE.jimena], ['es', PEOPLE.yolanda]] as const) {
  test(`every screen of ${who.name} has room for a gloved finger, is accessible, and speaks ${locale} alone, on paper too`, async ({ browser }) => {
    test.slow()
    expect(RUNS.length).toBeGreaterThan(600)
    const page = await as(browser, who)
    const { screens, paper } = await studentPages(page)
    for (const address of [...screens, ...paper]) {
      await page.goto(address)
      expect(new URL(page.url()).pathname, 'the page itself').toBe(new URL(address, page.url()).pathname)
      await page.waitForLoadState('networkidle')
      await expect(page.locator('html')).toHaveAttribute('lang', locale)
      const english = await englishOn(page)
      if (locale === 'es') expect(english, `English on ${page.url()}`).toEqual({ lines: [], within: [] })
      else expect(Math.min(english.lines.length, english.within.length), `${page.url()} speaks from the catalogue`).toBeGreaterThan(0)
      if (paper.includes(address)) {
        const title = print[locale][address.includes('/progress/') ? 'summary' : address.includes('/booth-card/') ? 'boothCard' : 'report']
        expect(await page.title()).toBe(`${title} · Toeline`)
        await expectNoSidewaysScroll(page)
        await expectAccessible(page)
        continue
      }
      await expectGoodScreen(page, { gloves: true })
      expect(await crowdedPairs(page), `controls closer than 8 px on ${page.url()}`).toEqual([])
      expect(await unreached(page), `controls without the keyboard on ${page.url()}`).toEqual([])
    }
  })
}
