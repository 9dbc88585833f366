import { describe, expect, it } from 'vitest'
import { FIRE_WATCH_REASONS, FIRE_WATCH_RULES, fireWatchNeed, strictestFireWatch, type FireWatchReason } from '@/lib/safety/fire-watch'
import { ventilationNeed } from '@/lib/safety/ventilation'

const open = { volumeM3: 2840, ceilingM: 5, obstructed: false, welders: 10 }

describe('ventilation', () => {
  it('is left to nature at the thresholds, and not a step below them', () => {
    expect(ventilationNeed(open)).toEqual({ kind: 'natural' })
    expect(ventilationNeed({ ...open, volumeM3: 2839 })).toEqual({ kind: 'mechanical', because: ['small-space'], airM3PerMin: 570 })
    expect(ventilationNeed({ ...open, ceilingM: 4.99 })).toMatchObject({ because: ['low-ceiling'] })
    expect(ventilationNeed({ ...open, obstructed: true })).toMatchObject({ because: ['obstructed'] })
    expect(ventilationNeed({ ...open, welders: 11, ceilingM: 3 })).toEqual({ kind: 'mechanical', because: ['small-space', 'low-ceiling'], airM3PerMin: 627 })
  })
  it('is unknown while something was not looked at, unless one reason is enough', () => {
    expect(ventilationNeed({ ...open, ceilingM: null })).toEqual({ kind: 'unknown', missing: ['low-ceiling'] })
    expect(ventilationNeed({ ...open, volumeM3: null, ceilingM: null, obstructed: true })).toMatchObject({ kind: 'mechanical', because: ['obstructed'] })
  })
  it.each([{ welders: 0 }, { welders: 1.5 }, { volumeM3: 0 }, { ceilingM: Number.NaN }])('refuses %j', (wrong) => {
    expect(() => ventilationNeed({ ...open, ...wrong })).toThrow(RangeError)
  })
})

describe('fire watch', () => {
  const clear = Object.fromEntries(FIRE_WATCH_REASONS.map((reason) => [reason, false])) as Record<FireWatchReason, boolean | null>
  it.each(FIRE_WATCH_REASONS)('is needed for %s alone', (reason) => {
    expect(fireWatchNeed({ ...clear, [reason]: true })).toEqual({ kind: 'watch', because: [reason], minutesAfter: 60 })
    expect(fireWatchNeed({ ...clear, [reason]: null })).toEqual({ kind: 'unknown', missing: [reason] })
  })
  it('is not needed when everything was looked at and nothing found', () => {
    expect(fireWatchNeed(clear)).toEqual({ kind: 'none' })
  })
  it('lasts as long as the strictest rule asks', () => {
    expect(strictestFireWatch().minutes).toBe(Math.max(...FIRE_WATCH_RULES.map((rule) => rule.minutes)))
  })
})
