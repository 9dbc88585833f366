import { describe, expect, it } from 'vitest'
import { testView, type TestViewInput } from '@/lib/reports/test-view'
import { LOCALES } from '@/lib/language/say'

const nothing = { visual: null, bends: null, filletBreak: null, macroetch: null }
const input: TestViewInput = {
  passed: true, testedOn: new Date('2026-03-10'), forecast: 0.72, system: 'us', uses: [], asOf: new Date('2026-04-01'),
  parts: { ...nothing, visual: 'accept', filletBreak: { foldedFlat: false, rootFused: true, inclusionsMm: [1] } },
  weld: { weldType: 'fillet', process: 'FCAW-G', position: '3F', progression: 'up', plateThicknessMm: 9.525, nominalLegMm: 6.35 },
}
const reader = { locale: 'en', units: 'in' } as const
const failed = (parts: TestViewInput['parts'], over: Partial<TestViewInput> = {}) => testView({ ...input, passed: false, parts, ...over }, reader)

describe('a passed test', () => {
  // AWS D1.1 table of plate tests (positions; read in its summaries): a 3F fillet test covers fillets F, H and V, and no groove.
  it('says what it covers under both systems, vertical only the way it was run', () => {
    const { covers, practise, word } = testView(input, reader)
    expect(word).toBe('Passed')
    expect(practise).toEqual([])
    expect(covers[0]!.lines).toEqual(expect.arrayContaining(['Groove welds: none', 'Fillet welds: flat, horizontal, vertical', 'Vertical only in the direction tested: up.']))
    expect(covers[1]!.lines[0]).toBe('Fillet welds: PA, PB, PF') // ISO 9606-1 table 10, from memory
    expect(covers[1]!.source).toContain('from memory')
  })

  it('holds six months from the last use, and no longer once a gap has broken it', () => {
    expect(testView(input, reader).until).toMatchObject({ holds: true, text: expect.stringContaining('Sep 10, 2026') })
    expect(testView({ ...input, uses: [{ process: 'FCAW-G', on: new Date('2026-03-30') }] }, reader).until!.text).toContain('Sep 30, 2026')
    expect(testView({ ...input, uses: [{ process: 'SMAW', on: new Date('2026-03-30') }] }, reader).until!.text).toContain('Sep 10, 2026')
    expect(testView({ ...input, asOf: new Date('2026-09-10') }, reader).until!.holds).toBe(true)
    expect(testView({ ...input, asOf: new Date('2026-09-11') }, reader).until).toMatchObject({ holds: false, text: expect.stringContaining('new test') })
    const late = [{ process: 'FCAW-G', on: new Date('2026-11-01') }]
    expect(testView({ ...input, uses: late, asOf: new Date('2026-11-02') }, reader).until!.holds).toBe(false)
  })

  it('of a position outside the plate tables claims nothing', () => {
    const { covers } = testView({ ...input, weld: { ...input.weld, position: '6G', progression: null } }, reader)
    expect(covers).toHaveLength(1)
    expect(covers[0]!.lines).toEqual(['This position is not in the plate tables: look it up in the code.'])
  })

  it('does not open the ISO thickness range for layers nobody counted', () => {
    const parts = { ...nothing, visual: 'accept' as const, bends: [{ face: 'side' as const, indications: [] }, { face: 'side' as const, indications: [] }] }
    const { covers } = testView({ ...input, parts, weld: { ...input.weld, weldType: 'groove', position: '3G', plateThicknessMm: 25.4, nominalLegMm: null } }, reader)
    expect(covers[1]!.lines[1]).toContain('three layers')
  })
})

describe('a failed test', () => {
  it('names what failed and what to practise, by the reason', () => {
    const view = failed({ ...nothing, visual: 'accept', filletBreak: { foldedFlat: false, rootFused: false, inclusionsMm: [] } })
    expect(view.word).toBe('Did not pass')
    expect(view.reasons).toContain('The weld is not fused to the root of the joint.')
    expect(view.covers).toEqual([])
    expect(view.until).toBeNull()
    expect(view.practise.length).toBeGreaterThan(0)
    expect(view.practise.every((text) => text.startsWith('Root not penetrated'))).toBe(true)
  })

  it('sends a visual rejection back to the findings of practice', () => {
    expect(failed({ ...nothing, visual: 'reject' }).practise[0]).toContain('findings')
  })

  it('offers stick causes to stick and wire causes to wire', () => {
    const parts = { ...nothing, visual: 'accept' as const, filletBreak: { foldedFlat: false, rootFused: false, inclusionsMm: [] } }
    expect(failed(parts).practise.join(' ')).toContain('wire feed')
    expect(failed(parts, { weld: { ...input.weld, process: 'SMAW' } }).practise.join(' ')).not.toContain('wire feed')
  })

  it('shows each specimen with its own answer and sizes in the reader’s units', () => {
    const bend = { face: 'root' as const, indications: [{ sizeMm: 5, corner: false, fromSlagOrFusion: true }] }
    const view = testView({ ...input, passed: false, parts: { ...nothing, visual: 'accept', bends: [bend, { face: 'face', indications: [] }] } }, { locale: 'en', units: 'mm' })
    expect(view.examined).toMatchObject([
      { verdict: 'accept' }, { name: 'Guided bend 1, root bend', verdict: 'reject', details: ['Largest 5.0 mm, sum 5.0 mm.', expect.stringContaining('over 1/8 in')] },
      { name: 'Guided bend 2, face bend', verdict: 'accept', details: ['Nothing found.'] },
    ])
  })
})

it('speaks both languages', () => {
  const [en, es] = LOCALES.map((locale) => testView(input, { locale, units: 'mm' }))
  expect(es!.word).not.toBe(en!.word)
  expect(es!.covers.flatMap(({ lines }) => lines)).not.toEqual(en!.covers.flatMap(({ lines }) => lines))
})
