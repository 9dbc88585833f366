// A toe tapped near an edge of a picture made here: dark below row 50.5, light above, so the edge lies at y = 50.5 wherever it is tapped.
import { describe, expect, it } from 'vitest'
import { LEAST_SD_PX, placeOf } from '@/lib/measure/photo-marks'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import { snappedMark, type Pixels } from '@/lib/measure/snap-mark'

const SIDE = 120
/** Grey levels by row. */
function picture(levelOf: (row: number) => number): Pixels {
  const rgba = new Uint8ClampedArray(4 * SIDE * SIDE)
  for (let row = 0; row < SIDE; row += 1) {
    for (let column = 0; column < SIDE; column += 1) rgba.set([levelOf(row), levelOf(row), levelOf(row), 255], 4 * (row * SIDE + column))
  }
  return { rgba, widthPx: SIDE, heightPx: SIDE }
}
const edge = picture((row) => (row <= 50 ? 210 : 60))
const ALONG = { x: 1, y: 0 }
const usual = { reachPx: 10, tapSdPx: 3, other: null } as const

describe('a tapped toe', () => {
  it('snaps to the edge and keeps where it was tapped', () => {
    const mark = snappedMark(edge, { x: 60, y: 46 }, ALONG, usual)
    expect(mark.tap).toEqual({ x: 60, y: 46 })
    expect(placeOf(mark).x).toBeCloseTo(60, 6)
    expect(Math.abs(placeOf(mark).y - 50.5)).toBeLessThan(0.25)
    expect(mark.sdPx).toBeGreaterThanOrEqual(LEAST_SD_PX)
    expect(mark.sdPx).toBeLessThan(usual.tapSdPx)
  })

  it('stays where it was tapped, as unsure as the tap, where no edge stands out', () => {
    expect(snappedMark(picture(() => 128), { x: 60, y: 46 }, ALONG, usual)).toEqual({ tap: { x: 60, y: 46 }, snapped: null, sdPx: 3 })
  })

  it('does not reach for an edge farther off than the tap may be', () => {
    expect(snappedMark(edge, { x: 60, y: 30 }, ALONG, usual).snapped).toBeNull()
  })

  it('does not snap across the bead onto the toe that is marked already', () => {
    // The other toe lies 8 pixels away, past the only edge: a search of 10 would take that edge for this toe.
    expect(snappedMark(edge, { x: 60, y: 44 }, ALONG, { ...usual, other: { x: 60, y: 52 } }).snapped).toBeNull()
  })

  it('cannot be marked off the photo', () => {
    expect(() => snappedMark(edge, { x: -40, y: 46 }, ALONG, usual)).toThrow(PhotoProblem)
  })
})
