import { describe, expect, it } from 'vitest'
import { costInCoupons, operatingCurve } from '@/lib/readiness/operating-curve'
import { drawOperatingCurve, operatingCurveView, pointAt } from '@/lib/reports/operating-curve'

const points = operatingCurve()

describe('the operating curve of the threshold', () => {
  it('gives the simulated point itself where the threshold is one of them', () => {
    expect(pointAt(0.65)).toBe(points.find(({ threshold }) => threshold === 0.65))
  })

  it('lies half-way between its neighbours half-way between them', () => {
    const [low, high] = [pointAt(0.65), pointAt(0.7)]
    expect(pointAt(0.675)?.coupons).toBeCloseTo(((low?.coupons ?? 0) + (high?.coupons ?? 0)) / 2, 9)
    expect(pointAt(0.675)?.firstTimePass).toBeCloseTo(((low?.firstTimePass ?? 0) + (high?.firstTimePass ?? 0)) / 2, 9)
  })

  it.each([0.3, 0.95])('is not known at %d, outside what was simulated', (threshold) => {
    expect(operatingCurveView(threshold, 15).own).toBeNull()
  })

  it('names the threshold that costs least, whatever a failed test costs', () => {
    for (const cost of [0, 5, 15, 40, 200]) {
      const { rows, cheapest } = operatingCurveView(0.65, cost)
      expect(rows.find(({ threshold }) => threshold === cheapest)?.cost).toBe(Math.min(...rows.map((row) => row.cost)))
    }
  })

  it('costs more to test early the more a failed test costs', () => {
    const cheapestAt = (cost: number): number => operatingCurveView(0.65, cost).cheapest
    expect([cheapestAt(0), cheapestAt(15), cheapestAt(200)]).toEqual([...new Set([cheapestAt(0), cheapestAt(15), cheapestAt(200)])].sort())
  })

  it('says what the own threshold costs by the same sum', () => {
    const own = pointAt(0.65)
    expect(own && operatingCurveView(0.65, 15).own?.cost).toBe(own && costInCoupons(own, 15))
  })

  it('refuses a cost below nothing', () => {
    expect(() => operatingCurveView(0.65, -1)).toThrow(RangeError)
  })

  it('is drawn to the right with more coupons and up with more first tests passed', () => {
    const frame = { width: 220, height: 120, left: 10, right: 210, top: 10, bottom: 110 }
    const drawn = drawOperatingCurve(operatingCurveView(0.65, 15), frame)
    expect(drawn.points).toHaveLength(points.length)
    drawn.points.slice(1).forEach((point, i) => {
      expect(point.x).toBeGreaterThan(drawn.points[i]?.x ?? Infinity)
      expect(point.y).toBeLessThan(drawn.points[i]?.y ?? -Infinity)
    })
    expect(drawn.own).toEqual({ x: drawn.points[5]?.x, y: drawn.points[5]?.y })
    expect(drawOperatingCurve(operatingCurveView(0.3, 15), frame).own).toBeNull()
  })
})
