// What every student screen owes at 360 px, in both languages: room for a gloved finger, one language, every control by keyboard.
import type { Browser, Page } from '@playwright/test'
import { classLife } from '../lib/language/class-life'
import { drawings } from '../lib/language/drawings'
import { learn } from '../lib/language/learn'
import { myProgress } from '../lib/language/my-progress'
import { readiness } from '../lib/language/readiness'
import { readingsWords } from '../lib/language/readings'
import type { Messages } from '../lib/language/say'
import { scorecardWords } from '../lib/language/scorecard'
import { as, expect, expectGoodScreen, PEOPLE, test, type Person } from './app'

/** The screens a student comes by: home, progress, an exercise with its log and a coupon, the account, the older notes. */
async function studentScreens(page: Page): Promise<string[]> {
  const links = async (address: string, match: RegExp): Promise<string[]> => {
    await page.goto(address)
    const hrefs = await page.getByRole('main').locator('a').evaluateAll((found) => found.map((link) => link.getAttribute('href') ?? ''))
    return [...new Set(hrefs.filter((href) => match.test(href)))]
  }
  const exercises = await links('/learn', /^\/learn\/[0-9a-f-]{36}\/[0-9a-f-]{36}$/)
  const [notes = ''] = await links('/learn', /^\/learn\/notes\//)
  for (const exercise of exercises) {
    const progress = `/learn/progress/${exercise.split('/').at(-1) ?? ''}`
    const [coupon] = await links(progress, /^\/learn\/coupons\//)
    if (coupon) return ['/learn', '/learn/progress', progress, exercise, `${exercise}/log`, coupon, notes, '/learn/waiting', '/account']
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

async function everyScreen(browser: Browser, who: Person, check: (page: Page) => Promise<void>): Promise<void> {
  const page = await as(browser, who)
  for (const address of await studentScreens(page)) {
    await page.goto(address)
    await page.waitForLoadState('networkidle')
    await check(page)
  }
}

for (const [language, who] of [['English', PEOPLE.jimena], ['Spanish', PEOPLE.yolanda]] as const) {
  test(`every student screen in ${language} has room for a gloved finger and passes axe in the light and in the dark`, async ({ browser }) => {
    test.slow()
    await everyScreen(browser, who, async (page) => {
      await expectGoodScreen(page, { gloves: true })
      expect(await crowdedPairs(page), `controls closer than 8 px on ${page.url()}`).toEqual([])
      expect(await unreached(page), `controls without the keyboard on ${page.url()}`).toEqual([])
    })
  })
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

/** Words short enough to stand inside other words, or spelled alike in the trade on both sides, would cry wolf. */
const LEAST_LETTERS = 9

test('a Spanish student meets no English sentence of the catalogue', async ({ browser }) => {
  test.slow()
  const catalogues: readonly Messages<string>[] = [learn, myProgress, readiness, readingsWords, scorecardWords, drawings, classLife]
  const english = catalogues.flatMap(({ en, es }) =>
    Object.entries(en).flatMap(([key, text]) => {
      // The longest run of words without a place to fill in.
      const run = text.split(/\{\w+\}/).map((part) => part.trim()).sort((a, b) => b.length - a.length)[0] ?? ''
      return es[key] !== text && run.length >= LEAST_LETTERS ? [run] : []
    }))
  expect(english.length).toBeGreaterThan(150)
  await everyScreen(browser, PEOPLE.yolanda, async (page) => {
    const text = await wordsOf(page)
    const found = english.filter((run) => new RegExp(`(?<![\\p{L}])${run.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}])`, 'u').test(text))
    expect(found, `English on ${page.url()}`).toEqual([])
    expect(await page.locator('html').getAttribute('lang')).toMatch(/^es/)
  })
})
