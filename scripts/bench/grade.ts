// How many keys an instructor presses to grade a clean coupon on the keyboard grid: twenty coupons at a time, in Chromium, on the production
// build with the small invented school. Every key counts, also those that lead from the top of the page into the grid and from row to row.
import { randomUUID } from 'node:crypto'
import path from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { acknowledgeCautions } from '../../app/_server/data/safety'
import { viewerForPerson, type Viewer } from '../../app/_server/auth/viewer'
import { couponFrame, logCoupon } from '../../app/_server/data/coupons'
import { db } from '../../app/_server/db'
import { CAUTIONS_VERSION } from '../../lib/safety/cautions'
import { couponSchema } from '../../lib/schemas/coupon'
import { blankPass } from '../../lib/schemas/passes'
import { blankReadings, readStoredReadings } from '../../lib/schemas/readings'
import { INSTRUCTORS, PASSWORDS } from '../../prisma/seed/people'
import type { BenchRow } from '../bench-row'
import { BROWSER_FLAGS, findBrowser } from '../browser.mjs'
import { startThrowawayDatabase } from '../database.mjs'
import { Failure } from '../failure.mjs'
import { freePort } from '../ports.mjs'
import { build } from '../prepare.mjs'
import { migrateAndSeed } from '../seed.mjs'
import { startWeb } from '../web.mjs'

const TWENTY = 20

/** One way of grading. `sizes` are the stations' as they must be stored, by the name of the box. */
type Way = {
  readonly row: string
  /** Begins the title of the exercise. Each has six stations. */
  readonly exercise: string
  /** What is pressed for one coupon, key by key, from its first cell until the coupon is graded. */
  readonly keys: readonly string[]
  readonly stations: readonly Readonly<Record<string, string>>[]
}

const typed = (text: string): string[] => [...text]
/** From the size just typed to the next cell. */
const size = (text: string): string[] => [...typed(text), 'Tab']
const times = <T>(count: number, what: readonly T[]): T[] => Array.from({ length: count }, () => what).flat()
/** Looked for everything, none found; then the coupon is graded. */
const NONE_FOUND = ['l', 'Enter']
const SHOP = '1F, lap joint'
const WIDTHS = ['.34', '.33', '.35', '.34', '.36', '.33']

const WAYS: readonly Way[] = [
  {
    // The shop rule asks three sizes a station: one station typed, "=" for the other leg and once for each station more.
    row: 'grade-keys-per-coupon', exercise: SHOP,
    keys: [...size('.34'), ...size('3/16'), '=', ...times(5, ['=']), ...NONE_FOUND],
    stations: times(6, [{ width: '.34', legA: '3/16', legB: '3/16' }]),
  },
  {
    // The structural criteria ask for the convexity too.
    row: 'grade-keys-per-coupon-structural', exercise: '2F, lap joint',
    keys: [...size('.44'), ...size('.31'), '=', ...size('0'), ...times(5, ['=']), ...NONE_FOUND],
    stations: times(6, [{ width: '.44', legA: '.31', legB: '.31', convexity: '0' }]),
  },
  {
    // Every width typed by itself; only the legs are repeated.
    row: 'grade-keys-per-coupon-each-width', exercise: SHOP,
    keys: [...size(WIDTHS[0]!), ...size('3/16'), '=', ...WIDTHS.slice(1).flatMap((width) => [...size(width), '=']), ...NONE_FOUND],
    stations: WIDTHS.map((width) => ({ width, legA: '3/16', legB: '3/16' })),
  },
]

type Place = { readonly programId: string; readonly classId: string; readonly exerciseId: string }

async function placeOf(exercise: string): Promise<Place> {
  const row = await db().classExercise.findFirst({
    where: { exercise: { versions: { some: { title: { startsWith: exercise }, process: 'FCAW-S' } } }, class: { instructors: { some: { person: { signInName: INSTRUCTORS['FCAW-S'].signInName } } }, enrolments: { some: { withdrawnAt: null } } } },
    orderBy: { class: { term: { startsOn: 'desc' } } },
    select: { programId: true, classId: true, exerciseId: true },
  })
  if (!row) throw new Failure(`The invented school has no class that practises ${exercise}.`)
  return row
}

/** Students of the class log coupons, as the log form would, until twenty of the exercise wait. */
async function twentyWait({ programId, classId, exerciseId }: Place): Promise<string[]> {
  const enrolled = await db().enrolment.findMany({ where: { programId, classId, withdrawnAt: null }, select: { personId: true } })
  const students = (await Promise.all(enrolled.map(({ personId }) => viewerForPerson(programId, personId)))).filter((viewer): viewer is Viewer => viewer !== null)
  const where = { programId, classId, exerciseId, waitingSince: { not: null } }
  for (let waiting = await db().coupon.count({ where }); waiting < TWENTY; waiting += 1) {
    const student = students[waiting % students.length]
    if (!student) throw new Failure('The class has no students.')
    await acknowledgeCautions(student, { classId, exerciseId, cautionsVersion: CAUTIONS_VERSION })
    const form = { id: randomUUID(), classId, exerciseId, weldedAt: new Date().toISOString(), booth: null, note: '', passes: [blankPass()], readings: blankReadings([]) }
    await logCoupon(student, couponSchema(await couponFrame(student, form), new Date()).parse(form))
  }
  return (await db().coupon.findMany({ where, select: { id: true } })).map(({ id }) => id)
}

async function signIn(page: Page): Promise<void> {
  await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill(INSTRUCTORS['FCAW-S'].signInName)
  await page.getByLabel('Password', { exact: true }).fill(PASSWORDS.instructor)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await page.waitForURL('**/teach')
}

/** Grades every row of the grid; returns how many keys that took. */
async function gradeByKeyboard(page: Page, place: Place, way: Way, rows: number): Promise<number> {
  let pressed = 0
  const press = async (key: string): Promise<void> => {
    await page.keyboard.press(key)
    pressed += 1
  }
  const cell = () => page.evaluate(() => ({ name: document.activeElement?.getAttribute('data-cell') ?? null, coupon: document.activeElement?.getAttribute('data-coupon') ?? null }))
  await page.goto(`/teach/classes/${place.classId}/grid/${place.exerciseId}`)
  await page.locator('[inert]').waitFor({ state: 'detached' })
  while ((await cell()).name === null) {
    if (pressed > 40) throw new Failure('The Tab key does not lead into the grid.')
    await press('Tab')
  }
  for (let row = 0; row < rows; row += 1) {
    const at = await cell()
    if (at.name !== '0.width') throw new Failure(`Row ${row + 1} begins at ${at.name ?? 'no cell'}, not at the first width.`)
    for (const key of way.keys) await press(key)
    if (row < rows - 1) await page.waitForFunction((before) => document.activeElement?.getAttribute('data-coupon') !== before, at.coupon, { timeout: 10_000 })
  }
  await page.waitForFunction((all) => document.querySelectorAll('[role="grid"] a[href^="/teach/coupons/"]').length === all, rows, { timeout: 60_000 })
  return pressed
}

/** What the database holds of the coupons is what was pressed: each graded once, accepted, with every size as typed. */
async function checkGraded(couponIds: readonly string[], way: Way): Promise<void> {
  const graded = await db().inspection.findMany({ where: { couponId: { in: [...couponIds] }, kind: 'instructor' }, select: { readings: true, coupon: { select: { verdict: true, waitingSince: true } } } })
  if (graded.length !== couponIds.length) throw new Failure(`${graded.length} of ${couponIds.length} coupons were graded.`)
  for (const { readings, coupon } of graded) {
    if (coupon.verdict !== 'accept' || coupon.waitingSince !== null) throw new Failure(`A clean coupon came to ${coupon.verdict ?? 'no verdict'}.`)
    const { stations } = readStoredReadings(readings).typed
    if (stations.length !== way.stations.length) throw new Failure(`A coupon has ${stations.length} stations, not ${way.stations.length}.`)
    way.stations.forEach((wanted, index) => {
      for (const [box, text] of Object.entries(wanted)) {
        const found = Object.entries(stations[index] ?? {}).find(([name]) => name === box)?.[1]
        if (found !== text) throw new Failure(`Station ${index + 1} has ${box} “${found ?? ''}”, and “${text}” was typed.`)
      }
    })
  }
}

/** Keys pressed for a clean coupon of six stations, on average over twenty. */
export default async function* benchGrade(): AsyncGenerator<BenchRow> {
  await build()
  const database = await startThrowawayDatabase()
  const folder = path.dirname(database.cluster)
  const port = await freePort()
  const env = {
    TZ: 'UTC', DATABASE_URL: database.url, TOELINE_DATA: folder, LOG_LEVEL: 'error',
    NEXTAUTH_URL: `http://127.0.0.1:${port}`, NEXTAUTH_SECRET: 'only for the benchmarks of this machine',
  }
  Object.assign(process.env, env)
  await migrateAndSeed(database, { folder, env, small: true })
  const web = await startWeb({ mode: 'start', host: '127.0.0.1', port, env })
  const browser = await chromium.launch({ executablePath: await findBrowser(), args: BROWSER_FLAGS })
  try {
    const page = await browser.newPage({ baseURL: env.NEXTAUTH_URL, locale: 'en-US', viewport: { width: 1440, height: 900 } })
    await signIn(page)
    for (const way of WAYS) {
      const place = await placeOf(way.exercise)
      const couponIds = await twentyWait(place)
      const pressed = await gradeByKeyboard(page, place, way, couponIds.length)
      await checkGraded(couponIds, way)
      yield { name: way.row, value: pressed / couponIds.length, unit: 'keys' }
    }
  } finally {
    await browser.close()
    await db().$disconnect()
    await web.stop()
    await database.stop()
  }
}
