import path from 'node:path'
import { defineConfig } from 'vitest/config'

const root = import.meta.dirname
process.env.TZ = 'Asia/Kathmandu' // a zone with an odd offset: a forgotten time zone shows

export default defineConfig({
  resolve: { alias: { '@': root, 'server-only': path.join(root, 'tests/support/empty.ts') } },
  test: {
    globals: false,
    setupFiles: ['tests/support/strict.ts'],
    maxWorkers: 2,
    projects: [
      { extends: true, test: { name: 'unit', include: ['tests/lib/**/*.test.ts', 'tests/golden/**/*.test.ts', 'tests/house/**/*.test.ts'] } },
      { extends: true, test: { name: 'server', include: ['tests/_server/**/*.test.ts'], globalSetup: ['tests/support/database-server.ts'], testTimeout: 30_000, hookTimeout: 60_000 } },
    ],
  },
})
