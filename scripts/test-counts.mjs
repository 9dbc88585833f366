// What the runners report, as counts. A runner that ran nothing, or that failed without a failed test, counts as a failure:
// a green run must mean that something was tested.

/**
 * notes: lines for the reader, such as the tests that were skipped.
 * @typedef {{ passed: number, failed: number, notes: string[] }} Counts
 */

/** A tool that checks as a whole: one test. @param {number} code @returns {Counts} */
export function fromExitCode(code) {
  return code === 0 ? { passed: 1, failed: 0, notes: [] } : { passed: 0, failed: 1, notes: [] }
}

/** @param {any} report vitest's JSON report, null when it wrote none @param {number} code its exit code @returns {Counts} */
export function fromVitest(report, code) {
  const files = report?.testResults ?? []
  const tests = files.flatMap((file) => file.assertionResults)
  const passed = tests.filter(({ status }) => status === 'passed').length
  // A file that does not load, or whose hooks fail, has no failed test of its own.
  const brokenFiles = files.filter(({ status, assertionResults }) => status === 'failed' && !assertionResults.some((test) => test.status === 'failed'))
  const failed = tests.filter(({ status }) => status === 'failed').length + brokenFiles.length
  const skipped = tests.filter(({ status }) => status !== 'passed' && status !== 'failed').map(({ fullName }) => `not run: ${fullName}`)
  return honest('vitest', { passed, failed, notes: skipped }, code)
}

/** @param {any} report Playwright's JSON report, null when it wrote none @param {number} code its exit code @returns {Counts} */
export function fromPlaywright(report, code) {
  const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = report?.stats ?? {}
  const notes = [...(flaky > 0 ? [`passed only at a second try: ${flaky}`] : []), ...(skipped > 0 ? [`not run: ${skipped} end-to-end tests`] : [])]
  return honest('Playwright', { passed: expected, failed: unexpected + flaky, notes }, code)
}

function honest(runner, counts, code) {
  if (counts.failed > 0) return counts
  if (counts.passed === 0) return { ...counts, failed: 1, notes: [...counts.notes, `${runner} ran no test.`] }
  if (code !== 0) return { ...counts, failed: 1, notes: [...counts.notes, `${runner} failed outside its tests (exit code ${code}).`] }
  return counts
}
