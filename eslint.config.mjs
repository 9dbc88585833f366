// The arrows of the house, held by a machine: app -> lib, lib -> lib, Prisma behind _server/data, _server/auth and _server/db;
// _server/listen alone speaks to the database's notifications.
import next from 'eslint-config-next'
import tseslint from 'typescript-eslint'

const deny = (message, ...group) => ({ group, message })
const layer = (files, ...patterns) => ({
  files,
  rules: { 'no-restricted-imports': ['error', { patterns }] },
})

const PRISMA = deny(
  'Prisma is called from app/_server/data, app/_server/auth and app/_server/db only.',
  '**/prisma/generated/**', '@prisma/*', '**/db', 'pg',
)
const FRAMEWORK = deny('lib is pure: no framework, no I/O.', 'next', 'next/*', 'next-auth', 'next-auth/*', 'react', 'react/*',
  'react-dom', 'react-dom/*', 'recharts', 'server-only', 'node:*', 'fs', 'path', 'crypto', 'os', 'sharp', 'pino')
const APP = deny('Imports point downward: app -> lib, never back.', '@/app/**', '**/app/**', '**/_server/**', '**/_components/**', '@/scripts/**', '@/prisma/**')
const SERVER = deny('_components take values and callbacks; they never reach for the server.', '**/_server/**', '@/app/_server/**')
const ZOD = deny('zod stays in lib/schemas, lib/criteria and lib/interchange.', 'zod', 'zod/*')
const BARE_ZOD = { name: 'zod', importNames: ['z', 'default'], message: "Write import * as z from 'zod': the named import bundles three times as much." }

const config = [
  { ignores: ['.next/**', '.data/**', 'node_modules/**', 'prisma/generated/**', 'next-env.d.ts', 'test-results/**', 'playwright-report/**'] },
  ...next,
  {
    rules: {
      'no-console': ['error', { allow: ['error', 'warn'] }],
      'import/no-anonymous-default-export': 'off',
      '@next/next/no-img-element': 'off', // photos are private and sized on arrival: they never go through the optimizer
    },
  },
  // A draft kept on the device can only be read after the page that the server drew is on the screen.
  { files: ['app/_components/use-draft.ts'], rules: { 'react-hooks/set-state-in-effect': 'off' } },
  { files: ['scripts/**', 'prisma/seed/**', 'tests/**', 'e2e/**'], rules: { 'no-console': 'off' } },
  {
    files: ['app/**/*.{ts,tsx}', 'lib/**/*.ts', 'prisma/seed/**/*.ts', 'tests/**/*.ts', 'e2e/**/*.ts'],
    plugins: { '@typescript-eslint': tseslint.plugin },
    languageOptions: { parser: tseslint.parser, parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    },
  },
  {
    files: ['lib/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', 'process', 'window', 'document', 'fetch', 'localStorage', 'performance', 'crypto'],
      'no-restricted-properties': ['error',
        { object: 'Date', property: 'now', message: 'No clock in lib: pass asOf.' },
        { object: 'Math', property: 'random', message: 'No dice in lib: pass random.' }],
    },
  },
  // Later blocks replace earlier ones for the files they match: the order is the meaning.
  layer(['lib/**/*.ts'], FRAMEWORK, PRISMA, APP, ZOD),
  layer(['lib/schemas/**/*.ts', 'lib/criteria/**/*.ts', 'lib/interchange/**/*.ts'], FRAMEWORK, PRISMA, APP),
  layer(['app/**/*.{ts,tsx}'], PRISMA),
  layer(['app/_components/**/*.{ts,tsx}'], PRISMA, SERVER),
  layer(['app/_server/**/*.{ts,tsx}'], PRISMA, deny('The server never imports components or pages.', '**/_components/**', '@/app/_components/**')),
  {
    files: ['app/_server/data/**/*.ts', 'app/_server/auth/**/*.ts', 'app/_server/db.ts'],
    rules: { 'no-restricted-imports': ['error', { patterns: [deny('The server never imports components or pages.', '**/_components/**')] }] },
  },
  {
    files: ['app/_server/listen.ts'],
    rules: { 'no-restricted-imports': ['error', { patterns: [deny('The server never imports components or pages.', '**/_components/**')] }] },
  },
  { files: ['app/**/*.{ts,tsx}', 'lib/**/*.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['lib/**/*.ts'], rules: { 'no-restricted-syntax': ['error',
    { selector: "NewExpression[callee.name='Date'][arguments.length=0], CallExpression[callee.name='Date']", message: 'No clock in lib: pass asOf.' },
    { selector: 'ImportExpression', message: 'lib imports at the top, where the arrows are checked.' },
    { selector: "ImportDeclaration[source.value='zod'] > ImportSpecifier", message: BARE_ZOD.message }] } },
]
export default config
