// The title of a page that students or paper show is in its reader's language: it is said from the catalogue, never written into the page.
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'

const root = path.resolve(import.meta.dirname, '../../app')
/** Nobody reads these in a language of their own: the first visit, before anybody is there, and the page that stands in both. */
const BOTH = new Set(['(door)/set-up/page.tsx', 'offline/page.tsx'])

const pages = ['(door)', 'account', 'learn', 'offline', 'print'].flatMap((room) =>
  readdirSync(path.join(root, room), { recursive: true, encoding: 'utf8' }).filter((file) => path.basename(file) === 'page.tsx').map((file) => `${room}/${file}`))

it.each(pages.filter((page) => !BOTH.has(page)))('%s has a title of the catalogue', (page) => {
  const text = readFileSync(path.join(root, page), 'utf8')
  expect(text).toMatch(/export (const generateMetadata =|async function generateMetadata\()/)
  expect(text, 'a title written into the page').not.toMatch(/\btitle: '/)
})

it('finds the pages there are', () => expect(pages.length).toBeGreaterThan(18))
