import { describe, expect, it } from 'vitest'
import { fromExitCode, fromPlaywright, fromVitest } from '../../scripts/test-counts.mjs'

const file = (status: string, ...tests: string[]): object => ({ status, assertionResults: tests.map((one) => ({ status: one, fullName: `a ${one} test` })) })
const vitest = (...testResults: object[]): object => ({ testResults })

describe('the count of a test run', () => {
  it('adds up passed and failed tests', () => {
    expect(fromVitest(vitest(file('passed', 'passed', 'passed'), file('failed', 'passed', 'failed')), 1)).toEqual({ passed: 3, failed: 1, notes: [] })
    expect(fromPlaywright({ stats: { expected: 5, unexpected: 2, flaky: 0, skipped: 0 } }, 1)).toEqual({ passed: 5, failed: 2, notes: [] })
  })

  it('counts a file that did not load as a failure', () => {
    expect(fromVitest(vitest(file('passed', 'passed'), file('failed')), 1)).toEqual({ passed: 1, failed: 1, notes: [] })
  })

  it('counts a runner that ran nothing as a failure, even when it was content', () => {
    expect(fromVitest(vitest(), 0)).toMatchObject({ passed: 0, failed: 1 })
    expect(fromVitest(null, 0)).toMatchObject({ passed: 0, failed: 1 })
    expect(fromVitest(vitest(file('passed', 'skipped')), 0)).toMatchObject({ passed: 0, failed: 1 })
    expect(fromPlaywright({ stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 3 } }, 0)).toMatchObject({ passed: 0, failed: 1 })
    expect(fromPlaywright(null, 1)).toMatchObject({ passed: 0, failed: 1 })
  })

  it('counts a failure outside the tests, such as an unhandled error', () => {
    expect(fromVitest(vitest(file('passed', 'passed')), 1)).toEqual({ passed: 1, failed: 1, notes: ['vitest failed outside its tests (exit code 1).'] })
  })

  it('counts an end-to-end test that passed only at a second try as a failure', () => {
    expect(fromPlaywright({ stats: { expected: 5, unexpected: 0, flaky: 1, skipped: 0 } }, 0)).toMatchObject({ passed: 5, failed: 1 })
  })

  it('names what was skipped', () => {
    expect(fromVitest(vitest(file('passed', 'passed', 'skipped', 'todo')), 0)).toEqual({ passed: 1, failed: 0, notes: ['not run: a skipped test', 'not run: a todo test'] })
    expect(fromPlaywright({ stats: { expected: 5, unexpected: 0, flaky: 0, skipped: 2 } }, 0).notes).toEqual(['not run: 2 end-to-end tests'])
  })

  it('takes a tool that checks as a whole for one test', () => {
    expect(fromExitCode(0)).toMatchObject({ passed: 1, failed: 0 })
    expect(fromExitCode(2)).toMatchObject({ passed: 0, failed: 1 })
  })
})
