// A roster that was written is taken back as it was: nothing to add, nothing to change.
import { randomUUID } from 'node:crypto'
import { beforeAll, expect, it, vi } from 'vitest'
import { testDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, viewerOf, type School } from '../support/school'
import { GET } from '@/app/api/exports/roster/route'
import type { Viewer } from '@/app/_server/auth/viewer'
import { setDisabled } from '@/app/_server/data/accounts'
import { dryRunRoster, importRoster } from '@/app/_server/data/roster'
import { rosterOf } from '@/app/_server/data/roster-export'
import { rosterText } from '@/lib/interchange/roster-text'

vi.mock('next/headers', async () => ({ ...(await import('../support/request')).headersModule }))
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let school: School
let coordinator: Viewer
beforeAll(async () => {
  await testDatabase()
  school = await buildSchool(randomUUID())
  coordinator = await viewerOf(school, 'coordinator')
  const roster = { classId: school.classId, text: [
    'username;givenName;familyName;booth',
    'a.quint;=HYPERLINK("https://x");Quint, Jr.;4',
    "b.ryder;'-Bo;@Ryder;",
    'c.lunde;Señada "Sen";+Lunde\u00f1;12',
    "d.tang;-1+1;'t Hooft;999",
  ].map((line) => line.replace('=HYPERLINK("https://x")', '"=HYPERLINK(""https://x"")"')).join('\n') }
  const { shown } = await dryRunRoster(coordinator, roster)
  expect(await importRoster(coordinator, { ...roster, shown })).toMatchObject({ imported: true })
})

const get = async (classId: string): Promise<Response> => GET(new Request(`http://localhost:3000/api/exports/roster?class=${classId}`))

it('comes back unchanged, whatever signs the names hold', async () => {
  await requestFrom({ school, who: 'coordinator' })
  const answer = await get(school.classId)
  expect(answer.headers.get('content-type')).toContain('text/csv')
  const text = rosterText(new Uint8Array(await answer.arrayBuffer()))
  const plan = await dryRunRoster(coordinator, { classId: school.classId, text })
  expect(plan.lines.map(({ line, outcome }) => [line, outcome])).toEqual([2, 3, 4, 5, 6, 7].map((line) => [line, 'unchanged']))
  expect(plan.ignoredColumns).toEqual([])
})

it('brings the class into another one, booths and all', async () => {
  await requestFrom({ school, who: 'coordinator' })
  const text = await (await get(school.classId)).text()
  const roster = { classId: school.otherClassId, text }
  const { shown } = await dryRunRoster(coordinator, roster)
  await importRoster(coordinator, { ...roster, shown })
  const from = await rosterOf(coordinator, school.classId)
  expect((await rosterOf(coordinator, school.otherClassId))?.students).toEqual(expect.arrayContaining([...(from?.students ?? [])]))
  expect(from?.students).toHaveLength(6)
})

it('holds no cell that a spreadsheet would run', async () => {
  await requestFrom({ school, who: 'coordinator' })
  const text = (await (await get(school.classId)).text()).replace(/^\uFEFF/, '')
  const cells = text.split('\r\n').flatMap((line) => line.match(/("([^"]|"")*"|[^,]*)(,|$)/g) ?? []).map((cell) => cell.replace(/^"|"?,?$/g, ''))
  expect(cells.length).toBeGreaterThan(20)
  expect(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([])
})

it('leaves out whom the import refuses, and counts them', async () => {
  await setDisabled(coordinator, { personId: school.people.classmate, disabled: true })
  const roster = await rosterOf(coordinator, school.classId)
  expect(roster?.students.map(({ signInName }) => signInName)).not.toContain('classmate')
  expect(roster?.leftOut).toBe(1)
})

it('is there for staff of the class alone', async () => {
  const statusFor = async (who: keyof School['people'] | null): Promise<number> => {
    await requestFrom(who && { school, who })
    return (await get(school.classId)).status
  }
  expect(await statusFor('instructor')).toBe(200)
  expect(await Promise.all([await statusFor('student'), await statusFor('otherInstructor'), await statusFor(null)])).toEqual([404, 404, 404])
  await requestFrom({ school, who: 'coordinator' })
  expect((await get('no id')).status).toBe(404)
})
