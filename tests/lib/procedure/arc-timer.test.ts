import fc from 'fast-check'
import { expect, it } from 'vitest'
import { arcSeconds, burningArc, dropArc, RESTING_TIMER, stopArc, strikeArc } from '@/lib/procedure/arc-timer'

const T = Date.UTC(2026, 10, 25, 13)
const after = (seconds: number): number => T + seconds * 1000

it('counts one arc from strike to stop', () => {
  const burning = strikeArc(RESTING_TIMER, T)
  expect(burningArc(burning, after(36))).toEqual({ kind: 'burning', seconds: 36 })
  expect(arcSeconds(burning)).toBeNull()
  expect(stopArc(burning, after(36))).toEqual({ struckAt: null, arcs: [36] })
})

it('adds several arcs of one pass up, without the time between them', () => {
  const first = stopArc(strikeArc(RESTING_TIMER, T), after(20))
  const second = stopArc(strikeArc(first, after(300)), after(315))
  expect(second.arcs).toEqual([20, 15])
  expect(arcSeconds(second)).toBe(35)
})

it('goes on burning when struck twice, and stays at rest when stopped twice', () => {
  expect(strikeArc(strikeArc(RESTING_TIMER, T), after(5))).toEqual({ struckAt: T, arcs: [] })
  expect(stopArc(RESTING_TIMER, T)).toEqual(RESTING_TIMER)
  expect(burningArc(RESTING_TIMER, T)).toBeNull()
})

it('survives being written down and read again', () => {
  const kept = JSON.parse(JSON.stringify(strikeArc(RESTING_TIMER, T))) as typeof RESTING_TIMER
  expect(burningArc(kept, after(90))).toEqual({ kind: 'burning', seconds: 90 })
})

it('doubts an arc of more than ten minutes, or of many times what the weld takes', () => {
  const burning = strikeArc(RESTING_TIMER, T)
  expect(burningArc(burning, after(600))?.kind).toBe('burning')
  expect(burningArc(burning, after(601))?.kind).toBe('doubtful')
  expect(burningArc(burning, after(239), 40)?.kind).toBe('burning')
  expect(burningArc(burning, after(241), 40)?.kind).toBe('doubtful')
  expect(burningArc(burning, after(119), 5)?.kind).toBe('burning')
  expect(burningArc(burning, after(86_400))?.kind).toBe('doubtful')
})

it('leaves a doubtful arc out when told it was left running, and counts it when told it burned', () => {
  const burning = { struckAt: T, arcs: [20] }
  expect(dropArc(burning)).toEqual({ struckAt: null, arcs: [20] })
  expect(stopArc(burning, after(700))).toEqual({ struckAt: null, arcs: [20, 700] })
})

it('knows no time for an arc over which the clock was set back', () => {
  const burning = { struckAt: T, arcs: [20] }
  expect(burningArc(burning, after(-86_400))).toEqual({ kind: 'clock-set-back' })
  expect(stopArc(burning, after(-1))).toEqual({ struckAt: null, arcs: [20] })
})

it('refuses a clock that gives no moment', () => {
  expect(() => strikeArc(RESTING_TIMER, NaN)).toThrow(/not a moment/)
  expect(() => burningArc(strikeArc(RESTING_TIMER, T), Infinity)).toThrow(RangeError)
})

it('never holds a time below zero or that is no number, however it is pressed', () => {
  const press = fc.record({ key: fc.constantFrom('strike', 'stop', 'drop'), at: fc.integer({ min: -1e9, max: 1e9 }) })
  fc.assert(fc.property(fc.array(press), (presses) => {
    const timer = presses.reduce((now, { key, at }) => (key === 'strike' ? strikeArc(now, T + at) : key === 'stop' ? stopArc(now, T + at) : dropArc(now)), RESTING_TIMER)
    expect(timer.arcs.every((each) => each >= 0 && Number.isFinite(each))).toBe(true)
    expect(timer.arcs.length).toBeLessThanOrEqual(presses.filter(({ key }) => key === 'stop').length)
  }))
})
