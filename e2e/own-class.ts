// A class of a test's own, made at the coordinator's screens: what happens to it, no other test meets.
import type { Browser, Page } from '@playwright/test'
import { INSTRUCTORS, PASSWORDS } from '../prisma/seed/people'
import { as, DESK, expect, fillJoinForm, inventPerson, PEOPLE, readCode, stranger, TABLET, type Person } from './app'

const { given, family, signInName } = INSTRUCTORS.GMAW
/** Whoever teaches classes of tests' own: nobody else's test signs in as her. */
export const TEACHER: Person = { signInName, password: PASSWORDS.instructor, name: `${given} ${family}` }

export type OwnClass = { readonly id: string; readonly name: string; /** The coordinator, on the list of classes. */ readonly office: Page }

/** A new class of the current term with TEACHER as its instructor, its list copied from another class where that is named. */
export async function ownClass(browser: Browser, copyFrom?: RegExp): Promise<OwnClass> {
  const name = `Own ${Date.now().toString(36)}${Math.random().toString(36).slice(2, 6)}`
  const office = await as(browser, PEOPLE.coordinator, { viewport: DESK })
  await office.goto('/program/classes')
  const form = office.getByRole('region', { name: 'A new class' })
  await form.getByLabel('Name of the class').fill(name)
  await form.getByLabel('Instructor').selectOption({ label: TEACHER.name })
  if (copyFrom) await form.getByLabel('Exercises').selectOption({ label: (await form.getByLabel('Exercises').getByRole('option').allInnerTexts()).find((text) => copyFrom.test(text)) ?? '' })
  await form.getByRole('button', { name: 'Make the class' }).click()
  const link = office.getByRole('link', { name: new RegExp(`^Exercises of ${name}, `) })
  await expect(link).toBeVisible()
  const id = /classes\/([^/]+)\//.exec((await link.getAttribute('href')) ?? '')?.[1] ?? ''
  expect(id).not.toBe('')
  return { id, name, office }
}

/** Puts exercises of the library on the list of a class whose course is open on the page. */
export async function addFromLibrary(page: Page, titles: readonly string[]): Promise<void> {
  for (const title of titles) {
    await page.getByLabel('From the library', { exact: true }).selectOption({ label: title })
    await page.getByRole('button', { name: 'Add from the library' }).click()
    await expect(page.getByRole('region', { name: 'The list' }).getByRole('heading', { name: title.replace(/^[^:]+: /, ''), level: 3 }).last()).toBeVisible()
  }
}

/** Someone new who joined the class with its code, on a device of their own. */
export async function joined(browser: Browser, { id }: OwnClass, teacher: Page): Promise<{ page: Page; person: Person }> {
  await teacher.goto(`/teach/classes/${id}`)
  await teacher.getByRole('button', { name: 'Make a code' }).click()
  await expect(teacher.getByRole('button', { name: 'Make a new code' })).toBeVisible()
  const page = await stranger(browser)
  const person = inventPerson()
  await page.goto('/join')
  await fillJoinForm(page, await readCode(teacher), person)
  await page.getByRole('button', { name: 'Join the class' }).click()
  await page.waitForURL('**/learn')
  return { page, person }
}

/** The instructor of the class, signed in. */
export const teacherOf = (browser: Browser): Promise<Page> => as(browser, TEACHER, { viewport: TABLET })

/** Archives the class, or takes it back, at the coordinator's list. */
export async function archive({ name, office }: OwnClass, how: 'Archive' | 'Take back' = 'Archive'): Promise<void> {
  await office.goto('/program/classes')
  await office.getByRole('button', { name: `${how} ${name}`, exact: true }).click()
  await expect(office.getByRole('button', { name: `${how === 'Archive' ? 'Take back' : 'Archive'} ${name}`, exact: true })).toBeVisible()
}
