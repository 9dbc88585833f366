// Every exported estimator says what it is for, and the example in its docstring is run and must be true.
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'

const folder = path.join(import.meta.dirname, '../../../lib/statistics')
// Door checks, shared shapes and the scattering of ids, not estimators.
const PLUMBING = new Set(['preconditions.ts', 'scattered.ts', 'interval.ts', 'outcome.ts', 'forecasts.ts', 'agreement-table.ts'])
const files = readdirSync(folder).filter(file => file.endsWith('.ts') && !PLUMBING.has(file))
const estimators = files.flatMap(file =>
  [...readFileSync(path.join(folder, file), 'utf8').matchAll(/(?:\/\*\*((?:(?!\*\/)[^])*)\*\/\n)?export function (\w+)/g)]
    .map(([, comment = '', name = '']) => ({ file, name, comment })))

/** Fields and entries the example shows must be there; numbers must agree to the last digit shown. */
function expectShown(actual: unknown, shown: unknown, digits: (value: number) => number): void {
  if (typeof shown === 'number') {
    expect(actual).toBeTypeOf('number')
    expect(Math.abs(Number(actual) - shown)).toBeLessThanOrEqual(0.500001 * 10 ** -digits(shown))
  } else if (Array.isArray(shown)) {
    expect(actual).toHaveLength(shown.length)
    shown.forEach((entry, i) => expectShown((actual as unknown[])[i], entry, digits))
  } else if (typeof shown === 'object' && shown !== null) {
    for (const [key, value] of Object.entries(shown)) expectShown((actual as Record<string, unknown>)[key], value, digits)
  } else {
    expect(actual).toBe(shown)
  }
}

const decimals = (value: number) => String(value).split('.')[1]?.length ?? 0

describe('docstrings of the statistics library', () => {
  test('there are estimators to check', () => {
    expect(estimators.length).toBeGreaterThan(35)
  })

  test.each(estimators)('$name', async ({ file, name, comment }) => {
    for (const part of ['Purpose:', 'Formula:', 'Source:', 'Units:', '@throws RangeError', '@example']) expect(comment, `${name} in ${file}`).toContain(part)
    const [, expression = '', shown = ''] = /@example (.+?) \/\/ (.+)/.exec(comment) ?? []
    expect(expression.startsWith(`${name}(`), `the example of ${name} calls it`).toBe(true)
    const exported = await import(path.join(folder, file)) as Record<string, unknown>
    const run = new Function(name, `return ${expression}`) as (f: unknown) => unknown
    const answer = new Function(`return (${shown})`) as () => unknown
    expectShown(run(exported[name]), answer(), decimals)
  })
})
