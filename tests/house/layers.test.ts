// The arrows of the house are held by the linter. Here the linter itself is held: each forbidden import is fed to it and must be refused.
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { ESLint } from 'eslint'
import { beforeAll, describe, expect, it } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const PATIENCE = 120_000

let linter: ESLint
beforeAll(() => {
  linter = new ESLint({ cwd: root })
})

/** The rules that refuse a text in the place of a file that exists: the linter reads types, so it must know the file. */
async function refusals(file: string, text: string): Promise<string[]> {
  const [result] = await linter.lintText(`${text}\n`, { filePath: path.join(root, file) })
  const found = result?.messages ?? []
  expect(found.filter(({ fatal }) => fatal), 'the text was read').toEqual([])
  return found.map(({ ruleId }) => ruleId ?? '')
}

const LIB = 'lib/units/length.ts'
const SCHEMA = 'lib/schemas/field.ts'
const COMPONENT = 'app/_components/ui/button.tsx'
const PAGE = 'app/learn/page.tsx'
const ACTIONS = 'app/learn/actions.ts'
const VIEW = 'app/_server/views/student-home.ts'
const DATA = 'app/_server/data/coupons.ts'
const IMPORTS = 'no-restricted-imports'
const uses = (from: string): string => `import * as it from '${from}'\nexport const used = it`

describe('an import against the arrows', () => {
  it.each([
    [LIB, 'next'], [LIB, 'next/headers'], [LIB, 'react'], [LIB, 'node:fs'], [LIB, 'fs/promises'], [LIB, 'crypto'], [LIB, 'server-only'], [LIB, 'next-auth/jwt'], [LIB, 'sharp'], [LIB, 'pg'],
    [LIB, '../../app/_server/env'], [LIB, '@/app/_components/ui/button'], [LIB, '@/prisma/generated/client'], [LIB, '../../prisma/generated/client'], [LIB, '@/scripts/database.mjs'], [LIB, 'zod'],
    [SCHEMA, 'next'], [SCHEMA, '@/app/_server/env'], [SCHEMA, 'node:crypto'], [SCHEMA, '@/prisma/generated/client'],
    [COMPONENT, '../../_server/env'], [COMPONENT, '@/app/_server/auth/viewer'], [COMPONENT, '@/app/_server/data/coupons'], [COMPONENT, '@/prisma/generated/client'],
    [PAGE, '@/prisma/generated/client'], [PAGE, '@prisma/adapter-pg'], [PAGE, '@/app/_server/db'], [PAGE, '../_server/db'], [PAGE, 'pg'],
    [ACTIONS, '@/app/_server/db'], [ACTIONS, '@/prisma/generated/client'],
    [VIEW, '../db'], ['app/_server/photos.ts', './db'], [VIEW, '@/app/_server/db'], [VIEW, '@/prisma/generated/client'], [VIEW, '../../_components/ui/button'], [VIEW, '@/app/_components/ui/button'],
    [DATA, '../../_components/ui/button'], [DATA, '@/app/_components/ui/button'],
  ])('%s may not import %s', async (file, from) => {
    expect(await refusals(file, uses(from))).toContain(IMPORTS)
  }, PATIENCE)

  it('is refused for types too, and for what is only passed on', async () => {
    expect(await refusals(PAGE, `export type { Prisma } from '@/prisma/generated/client'`)).toContain(IMPORTS)
    expect(await refusals(LIB, `import type { Viewer } from '@/app/_server/auth/viewer'\nexport type V = Viewer`)).toContain(IMPORTS)
    expect(await refusals(COMPONENT, `export * from '@/app/_server/env'`)).toContain(IMPORTS)
  }, PATIENCE)
})

describe('an import along the arrows', () => {
  it.each([
    [LIB, './quantity'], [LIB, '../source'], [SCHEMA, 'zod'], [COMPONENT, 'react'], [COMPONENT, '@/lib/units/length'], [PAGE, '@/app/_server/views/student-home'], [PAGE, '@/app/_components/ui/button'],
    [VIEW, '../data/coupons'], [VIEW, '@/lib/units/length'], [DATA, '../db'], [DATA, '@/prisma/generated/client'], ['app/_server/auth/sessions.ts', '../db'],
  ])('%s may import %s', async (file, from) => {
    expect(await refusals(file, uses(from))).toEqual([])
  }, PATIENCE)
})

describe('lib', () => {
  it.each([
    ['the clock', 'export const now = Date.now()', 'no-restricted-properties'],
    ['the clock as a date', 'export const now = new Date()', 'no-restricted-syntax'],
    ['the clock as a date without brackets', 'export const now = new Date', 'no-restricted-syntax'],
    ['the clock as text', 'export const now = Date()', 'no-restricted-syntax'],
    ['the clock of the browser', 'export const now = performance.now()', 'no-restricted-globals'],
    ['dice', 'export const roll = Math.random()', 'no-restricted-properties'],
    ['dice of the browser', 'export const id = crypto.randomUUID()', 'no-restricted-globals'],
    ['the environment', 'export const url = process.env.DATABASE_URL', 'no-restricted-globals'],
    ['the network', `export const page = fetch('/')`, 'no-restricted-globals'],
    ['the page', 'export const title = document.title', 'no-restricted-globals'],
    ['the browser’s storage', `export const draft = localStorage.getItem('x')`, 'no-restricted-globals'],
    ['a way around the arrows', `export const later = import('next/headers')`, 'no-restricted-syntax'],
    ['any', 'export const anything = (value: any) => value', '@typescript-eslint/no-explicit-any'],
    ['a promise nobody waits for', 'async function work() {}\nexport const run = () => { work() }', '@typescript-eslint/no-floating-promises'],
  ])('may not use %s', async (_what, text, rule) => {
    expect(await refusals(LIB, text)).toContain(rule)
  }, PATIENCE)

  it('may use a moment it was given', async () => {
    expect(await refusals(LIB, `export const year = (asOf: Date) => new Date(asOf.getTime()).getUTCFullYear()`)).toEqual([])
  }, PATIENCE)

  it('takes zod whole, because its named import bundles far more', async () => {
    expect(await refusals(SCHEMA, `import { z } from 'zod'\nexport const text = z.string()`)).toContain('no-restricted-syntax')
    expect(await refusals(SCHEMA, `import * as z from 'zod'\nexport const text = z.string()`)).toEqual([])
  }, PATIENCE)
})

/** Every source file under a folder, by its path in the project. */
function sources(folder: string): string[] {
  return readdirSync(path.join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name)).map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)))
}
const textOf = (file: string): string => readFileSync(path.join(root, file), 'utf8')
const ours = [...sources('app'), ...sources('lib')]

describe('files', () => {
  it('under _server begin by saying that no browser may have them', () => {
    const server = sources('app/_server')
    expect(server.length).toBeGreaterThan(40)
    expect(server.filter((file) => !textOf(file).startsWith(`import 'server-only'\n`))).toEqual([])
  })

  it('are named in kebab case after the one thing they hold', () => {
    const name = /^(?:[a-z0-9]+(?:-[a-z0-9]+)*|route|page|layout)\.tsx?$/
    expect(ours.length).toBeGreaterThan(250)
    expect(ours.filter((file) => !name.test(path.basename(file)))).toEqual([])
    expect(ours.filter((file) => /^(?:utils?|helpers?|common|misc|index|types?-?utils?)\.tsx?$/.test(path.basename(file)))).toEqual([])
  })

  it('hold no more than 300 lines', () => {
    expect(ours.filter((file) => textOf(file).split('\n').length > 301).map((file) => `${file} has ${textOf(file).split('\n').length - 1}`)).toEqual([])
  })

  it('switch off no rule and hide no type error', () => {
    expect(ours.filter((file) => /eslint-disable|@ts-ignore|@ts-expect-error|@ts-nocheck/.test(textOf(file)))).toEqual([])
  })
})
