// A test that passes is silent: anything written to console.error fails the test that wrote it.
import { afterEach, beforeEach, expect, vi } from 'vitest'

beforeEach(() => {
  vi.spyOn(console, 'error')
})
afterEach(() => {
  const spy = vi.mocked(console.error)
  if ('mock' in spy) {
    expect(spy.mock.calls, 'console.error was called').toEqual([])
    vi.restoreAllMocks()
  }
})
