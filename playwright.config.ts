import { defineConfig, devices } from '@playwright/test'
import { BROWSER_FLAGS, findBrowser } from './scripts/browser.mjs'
import { freePort } from './scripts/ports.mjs'

// Workers load this file again and must find the same answers: they inherit the environment.
process.env.TOELINE_E2E_PORT ??= String(await freePort())
process.env.CHROMIUM_PATH ??= await findBrowser()
// A server that is already running, while working on a test; otherwise the production build is started.
const running = process.env.TOELINE_E2E_URL
const address = running ?? `http://127.0.0.1:${process.env.TOELINE_E2E_PORT}`

export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results',
  workers: 1, // two cores: one browser beside the server
  forbidOnly: Boolean(process.env.CI),
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [['list']],
  use: {
    ...devices['Desktop Chrome'],
    baseURL: address,
    locale: 'en-US',
    timezoneId: 'UTC',
    serviceWorkers: 'block', // e2e/offline.spec.ts lets them in; elsewhere they would fetch pages behind a test's back
    screenshot: 'only-on-failure',
    trace: 'off',
    launchOptions: { executablePath: process.env.CHROMIUM_PATH, args: BROWSER_FLAGS },
  },
  ...(running ? {} : { webServer: {
    command: 'node scripts/e2e-server.mjs',
    url: `${address}/api/health/live`,
    timeout: 8 * 60_000,
    reuseExistingServer: false,
    stdout: 'pipe',
    stderr: 'pipe',
    gracefulShutdown: { signal: 'SIGTERM', timeout: 30_000 },
  } }),
})
