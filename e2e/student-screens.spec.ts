import type { Page } from '@playwright/test'
import { as, expect, expectGoodScreen, known, test } from './app'
import { classLife } from '../lib/language/class-life'
import { door } from '../lib/language/door'
import { findings } from '../lib/language/findings'
import { learn } from '../lib/language/learn'
import { logForm } from '../lib/language/log-form'
import { logPad } from '../lib/language/log-pad'
import { myProgress } from '../lib/language/my-progress'
import { offline } from '../lib/language/offline'
import { outboxLine } from '../lib/language/outbox-line'
import { readiness } from '../lib/language/readiness'
import { readingsWords } from '../lib/language/readings'
import { ruleNames } from '../lib/language/rules'
import { safety } from '../lib/language/safety'
import { scorecardWords } from '../lib/language/scorecard'
import { setup } from '../lib/language/setup'
import { symptoms } from '../lib/language/coaching'

const CATALOGUE = [classLife, door, findings, learn, logForm, logPad, myProgress, offline, outboxLine, readiness, readingsWords, ruleNames, safety, scorecardWords, setup, symptoms]

/** Every whole English sentence or label that Spanish says otherwise. */
const ENGLISH = new Set(CATALOGUE.flatMap(({ en, es }) => {
  const spanish = new Set<string>(Object.values(es))
  return Object.values<string>(en).filter((text) => !text.includes('{') && text.length > 3 && !spanish.has(text))
}))

/** Every screen of the student's room, each reached as a student reaches it, with a word for the report. */
async function* screens(page: Page): AsyncGenerator<string> {
  await page.goto('/learn')
  yield 'home'
  const hrefs = await page.getByRole('main').getByRole('link').evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
  const exercise = hrefs.find((href) => /^\/learn\/[0-9a-f-]{36}\/[0-9a-f-]{36}$/.test(href)) ?? ''
  const notes = hrefs.find((href) => href.startsWith('/learn/notes/')) ?? ''
  expect(exercise, 'an exercise on the first screen').not.toBe('')
  expect(notes, 'the class’s notes on the first screen').not.toBe('')
  await page.goto(notes)
  yield 'notes'
  await page.goto('/learn/progress')
  yield 'progress'
  const traced = await page.getByRole('main').locator('a[href^="/learn/progress/"]').first().getAttribute('href')
  expect(traced, 'an exercise on the skill map').not.toBeNull()
  await page.goto(traced!)
  yield 'progress of an exercise'
  const coupon = await page.getByRole('main').locator('a[href^="/learn/coupons/"]').first().getAttribute('href').catch(() => null)
  if (coupon) {
    await page.goto(coupon)
    yield 'result'
  }
  await page.goto(traced!.replace(/^\/learn\/progress\//, `${exercise.replace(/\/[^/]+$/, '')}/`))
  yield 'exercise'
  await page.goto(`${page.url()}/log`)
  if (page.url().endsWith('/log')) {
    await expect(page.locator('form[inert]')).toHaveCount(0)
    yield 'log'
  }
  await page.goto('/learn/waiting')
  yield 'waiting'
  await page.goto('/account')
  yield 'account'
}

for (const signInName of ['y.quispe', 'j.alvarez']) {
  test(`every screen of ${signInName} is wide enough, large enough and accessible, in their own language`, async ({ browser }) => {
    test.slow()
    const page = await as(browser, known(signInName))
    const spanish = signInName === 'y.quispe'
    const seen: string[] = []
    for await (const screen of screens(page)) {
      seen.push(screen)
      await expect(page.locator('html')).toHaveAttribute('lang', spanish ? 'es' : 'en')
      await expectGoodScreen(page, { gloves: true })
      const lines = (await page.locator('body').innerText()).split('\n').map((line) => line.trim())
      const english = lines.filter((line) => ENGLISH.has(line))
      if (spanish) expect(english, `English on the ${screen} screen`).toEqual([])
      else expect(english.length, `the ${screen} screen speaks from the catalogue`).toBeGreaterThan(0)
    }
    expect(seen).toEqual(expect.arrayContaining(['home', 'notes', 'progress', 'progress of an exercise', 'result', 'exercise', 'log', 'waiting', 'account']))
  })
}
