// WCAG 2.2, success criteria 1.4.3 and 1.4.11, with the relative luminance defined there; our own floor for text is 7:1.
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

const css = readFileSync(path.join(import.meta.dirname, '../../app/global.css'), 'utf8')

/** The custom properties of the first block of a selector, from some place in the sheet on. */
function tokens(selector: string, after = ''): Record<string, string> {
  const start = css.indexOf(`${selector} {`, css.indexOf(after))
  expect(start, `${selector} is in global.css`).toBeGreaterThan(-1)
  const body = css.slice(start, css.indexOf('}', start))
  return Object.fromEntries([...body.matchAll(/--([\w-]+):\s*([^;]+);/g)].map(([, name, value]) => [name ?? '', value ?? '']))
}

const light = tokens(':root')
const system = tokens(":root:not([data-theme='light'])")
const chosen = tokens(":root[data-theme='dark']")
const themes = { light, dark: { ...light, ...system }, paper: { ...light, ...tokens('.on-paper') } }

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4))
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (high + 0.05) / (low + 0.05)
}

it('measures black on white as 21:1, as the standard does', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6)
})

it('prints a page in the values it shows it in', () => {
  const shown = tokens('.on-paper')
  expect(Object.keys(shown).length).toBeGreaterThan(10)
  expect(tokens(':root:root', '@media print')).toEqual(shown)
})

it('holds the same dark values for the system setting and for the chosen one', () => {
  expect(Object.keys(system).length).toBeGreaterThan(10)
  expect(chosen).toEqual(system)
})

const GROUNDS = ['paper', 'plate', 'plate-2']
const TEXT = [
  ...GROUNDS.flatMap((ground) => [['ink', ground], ['ink-2', ground]]),
  ['paper', 'ink'], ['ink', 'band'], ['ink', 'bead'], ['heat-0-ink', 'heat-0'],
  ...[1, 2, 3].map((step) => ['heat-pale-ink', `heat-${step}`]),
  ...[4, 5].map((step) => ['heat-deep-ink', `heat-${step}`]),
]
const SHAPES = ['accept', 'reject', 'open', 'focus'].flatMap((shape) => GROUNDS.map((ground) => [shape, ground]))

describe.each(Object.entries(themes))('%s', (_, theme) => {
  const value = (name: string | undefined) => theme[name ?? ''] ?? 'missing'

  it.each(TEXT)('sets %s on %s at 7:1 or more', (text, ground) => {
    expect(contrast(value(text), value(ground))).toBeGreaterThanOrEqual(7)
  })

  it.each(SHAPES)('draws %s on %s at 3:1 or more', (shape, ground) => {
    expect(contrast(value(shape), value(ground))).toBeGreaterThanOrEqual(3)
  })
})
