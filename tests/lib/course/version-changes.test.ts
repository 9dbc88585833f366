import { describe, expect, it } from 'vitest'
import { LIBRARY } from '@/lib/course/library'
import { versionChanges } from '@/lib/course/version-changes'
import type { ExerciseFacts } from '@/lib/procedure/exercise'

const facts: ExerciseFacts = LIBRARY[0]!.facts
const changes = (over: Partial<ExerciseFacts>, units: 'in' | 'mm' = 'in') => versionChanges(facts, { ...facts, ...over }, units)

describe('what changed between two versions', () => {
  it('is nothing for the same exercise, whichever the units', () => {
    for (const { facts: each } of LIBRARY) for (const units of ['in', 'mm'] as const) expect(versionChanges(each, { ...each }, units)).toEqual([])
  })

  it('is a sentence for each thing, in the reader’s units', () => {
    expect(changes({ plateThicknessMm: 12.7, passCount: facts.passCount + 1 })).toEqual([expect.stringMatching(/^Plate: .+ became 1\/2( in)?\.$/), expect.stringMatching(/^Passes: \d+ became \d+\.$/)])
    expect(changes({ plateThicknessMm: 12.7 }, 'mm')).toEqual([expect.stringMatching(/^Plate: .+ became 12\.7( mm)?\.$/)])
  })

  it('names a range by both its ends, and what was not given as not given', () => {
    const { volts: _volts, ...without } = facts.boothCard
    const gone = changes({ boothCard: { ...without, volts: null } })
    const given = versionChanges({ ...facts, boothCard: { ...without, volts: null } }, { ...facts, boothCard: { ...facts.boothCard, volts: { min: 21, max: 24 } } }, 'in')
    expect(given).toEqual([expect.stringMatching(/: not given became 21.* to 24.*\.$/)])
    if (facts.boothCard.volts !== null) expect(gone).toEqual([expect.stringMatching(/became not given\.$/)])
  })

  it('tells a fact of the joint that was never said from one that was', () => {
    const [sentence] = changes({ completePenetration: true })
    expect(sentence).toMatch(/^Complete penetration: .+ became .+\.$/)
  })
})
