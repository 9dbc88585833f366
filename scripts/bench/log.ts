import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { pathToFileURL } from 'node:url'
import { gzipSync } from 'node:zlib'
import { chromium, type Locator, type Page } from '@playwright/test'
import pg from 'pg'
import { PASSWORDS, students } from '../../prisma/seed/people'
import type { BenchRow } from '../bench-row'
import { BROWSER_FLAGS, findBrowser } from '../browser.mjs'
import { startThrowawayDatabase } from '../database.mjs'
import { freePort } from '../ports.mjs'
import { build } from '../prepare.mjs'
import { migrateAndSeed } from '../seed.mjs'
import { startWeb } from '../web.mjs'

/** The structural fillet of the standard course: width, both legs and convexity at every station. */
const EXERCISE = '2F, lap joint, 3/8 in plate, 0.045 in E71T-11'
const STATIONS = 5
const SLOWED_CPU = 4
/** What a person with the gauge in hand would tap on a sound 1/4 in fillet, station by station; no two rows alike. */
const SIZES: Readonly<Record<string, readonly string[]>> = {
  Width: ['7/16', '13/32', '7/16', '15/32', '7/16'],
  'Upper leg': ['5/16', '5/16', '9/32', '5/16', '11/32'],
  'Lower leg': ['5/16', '9/32', '5/16', '5/16', '5/16'],
  Convexity: ['1/32', '1/32', '1/16', '1/32', '1/32'],
}

/**
 * Logs a clean coupon of five stations in Chromium at 360 px, every size its own tap, from the open log page to the accepted coupon.
 * Counts every tap, the gzipped JavaScript the page loads before the first, and the slowest answer to a tap on a slowed CPU.
 */
export default async function benchLog(): Promise<readonly BenchRow[]> {
  await build()
  const database = await startThrowawayDatabase()
  const folder = path.dirname(database.cluster)
  const port = await freePort()
  const address = `http://127.0.0.1:${port}`
  const env = {
    TZ: 'UTC', DATABASE_URL: database.url, TOELINE_DATA: folder, LOG_LEVEL: 'warn', NEXTAUTH_URL: address,
    NEXTAUTH_SECRET: 'only for the benchmarks of this machine',
  }
  let web: Awaited<ReturnType<typeof startWeb>> | null = null
  try {
    await migrateAndSeed(database, { folder, env, small: true, say: () => undefined })
    await fiveStations(database.url)
    web = await startWeb({ mode: 'start', host: '127.0.0.1', port, env })
    return await logOnce(address)
  } finally {
    await web?.stop()
    await database.stop()
  }
}

/** The seed has no exercise of five stations: the one of the standard course gets a version with five. */
async function fiveStations(url: string): Promise<void> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    const { rows } = await client.query<{ row: Record<string, unknown> }>(
      'select to_jsonb(v) as row from "ExerciseVersion" v join "Exercise" e on e."programId" = v."programId" and e.id = v."exerciseId" and e."currentVersion" = v.version where v.title = $1', [EXERCISE])
    if (rows.length === 0) throw new Error(`The invented school has no exercise ${EXERCISE}.`)
    for (const { row } of rows) {
      const version = Number(row['version']) + 1
      await client.query('insert into "ExerciseVersion" select * from jsonb_populate_record(null::"ExerciseVersion", $1)', [{ ...row, version, stationCount: STATIONS }])
      await client.query('update "Exercise" set "currentVersion" = $1 where "programId" = $2 and id = $3', [version, row['programId'], row['exerciseId']])
    }
  } finally {
    await client.end()
  }
}

async function logOnce(address: string): Promise<readonly BenchRow[]> {
  const browser = await chromium.launch({ executablePath: await findBrowser(), args: BROWSER_FLAGS })
  try {
    const context = await browser.newContext({ baseURL: address, viewport: { width: 360, height: 780 }, hasTouch: true, locale: 'en-US', timezoneId: 'UTC' })
    const logAddress = await findLog(await context.newPage())
    const page = await context.newPage() // a page nobody used: what it loads is the first load
    const bytes = countScripts(page)
    await page.goto(logAddress)
    await page.locator('form[novalidate]:not([inert])').waitFor()
    await page.waitForLoadState('networkidle')
    const firstLoad = await bytes()

    const devtools = await context.newCDPSession(page)
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWED_CPU })
    const taps = new Taps()
    for (const [size, texts] of Object.entries(SIZES)) {
      for (const [index, text] of texts.entries()) {
        await page.getByText(`${size}, station ${index + 1}`, { exact: true }).and(page.locator('[role=status] *')).waitFor()
        const pad = page.getByRole('group', { name: `Gauge steps for: ${size}, station ${index + 1}` })
        await taps.tap(pad.getByRole('button', { name: new RegExp(`^${text}(?! ?[/\\d])`) }))
      }
    }
    await taps.tap(page.getByRole('button', { name: 'Looked for everything, none found' }))
    await taps.tap(page.getByRole('button', { name: 'Send the coupon' }))
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 })
    await page.waitForURL(/\/learn\/coupons\//, { timeout: 60_000 })
    await page.getByRole('main').getByText('Accept', { exact: true }).first().waitFor()
    return [
      { name: 'log-taps', value: taps.count, unit: 'taps' },
      { name: 'log-first-load-kb', value: Math.round(firstLoad / 100) / 10, unit: 'kB' },
      { name: 'log-slowest-tap', value: Math.round(taps.slowestMs), unit: 'ms' },
    ]
  } finally {
    await browser.close()
  }
}

/** Signs a student in and opens the way to the log page; none of this is part of the log. */
async function findLog(page: Page): Promise<string> {
  const student = students(true)[0]
  if (!student) throw new Error('The invented school has no students.')
  await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill(student.signInName)
  await page.getByLabel('Password', { exact: true }).fill(PASSWORDS.student)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await page.waitForURL('**/learn')
  await page.getByRole('main').getByRole('link', { name: EXERCISE, exact: true }).last().click()
  await page.getByRole('heading', { name: 'Booth card' }).waitFor()
  const confirm = page.getByRole('button', { name: 'I have read these and my booth is ready' })
  if (await confirm.isVisible()) await confirm.click()
  else await page.getByRole('link', { name: 'Log a coupon' }).click()
  await page.waitForURL('**/log')
  const address = new URL(page.url()).pathname
  await page.close()
  return address
}

/** Gzipped size of every script a page has fetched, each counted once. */
function countScripts(page: Page): () => Promise<number> {
  const found = new Map<string, Promise<number>>()
  page.on('response', (response) => {
    if (response.request().resourceType() !== 'script' || found.has(response.url())) return
    found.set(response.url(), response.body().then((body) => gzipSync(body).length, () => 0))
  })
  return async () => (await Promise.all(found.values())).reduce((sum, each) => sum + each, 0)
}

/** Taps like a finger, and times each from the touch's own moment to the frame after the one it changed. */
class Taps {
  count = 0
  slowestMs = 0

  async tap(key: Locator): Promise<void> {
    await key.scrollIntoViewIfNeeded()
    await key.evaluate((element) => {
      const timed = window as typeof window & { answered?: number }
      timed.answered = -1
      element.addEventListener('click', (event) => {
        requestAnimationFrame(() => { // the frame that shows the change is drawn after this; the message comes after the drawing
          const channel = new MessageChannel()
          channel.port1.onmessage = () => { timed.answered = performance.now() - event.timeStamp }
          channel.port2.postMessage(null)
        })
      }, { once: true, capture: true })
    })
    await key.tap()
    this.count += 1
    for (let tries = 0; tries < 200; tries += 1) {
      const answered = await key.page().evaluate(() => (window as typeof window & { answered?: number }).answered ?? -1)
      if (answered >= 0) {
        this.slowestMs = Math.max(this.slowestMs, answered)
        return
      }
      await sleep(10)
    }
    throw new Error('A tap was never answered.')
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const { name, value, unit } of await benchLog()) console.log(`${name}: ${value} ${unit}`)
}
