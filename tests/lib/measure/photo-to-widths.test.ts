// From the drawn photo to the log: corners and toes tapped roughly, toes snapped, widths compared with what was drawn.
import { describe, expect, it } from 'vitest'
import { beadWidths, type ToePick, type WidthReading } from '@/lib/measure/bead-widths'
import { snapToEdge } from '@/lib/measure/edge-snap'
import { greyWindow } from '@/lib/measure/grey-window'
import type { FourPoints } from '@/lib/measure/homography'
import { measuredStations } from '@/lib/measure/measured-stations'
import type { PhotoReference } from '@/lib/measure/photo-plane'
import type { Point } from '@/lib/measure/point'
import { normalNoise } from '../../support/seeded-noise'
import { asRgba, seenAt, takePhoto, type Camera, type Photo, type Scene, type Spoiling } from '../../support/synthetic-photo'

const at = (x: number, y: number): Point => ({ x, y })

// The plate: a light card (ISO/IEC 7810, ID-1: 85.60 × 53.98 mm) and a dark bead 100 mm long, its width waving between 7 and 9 mm.
const CARD = [85.6, 53.98] as const
const CORNERS: FourPoints = [at(20, 40), at(105.6, 40), at(105.6, 93.98), at(20, 93.98)]
const START = at(12, 15)
const along = at(Math.cos(0.08), Math.sin(0.08))
const onBead = (atMm: number, asideMm: number): Point => at(START.x + atMm * along.x - asideMm * along.y, START.y + atMm * along.y + asideMm * along.x)
const widthAt = (atMm: number): number => 8 + Math.sin(atMm / 9)
const STATIONS = [10, 30, 50, 70, 90]

const scene: Scene = ({ x, y }) => {
  const [dx, dy] = [x - START.x, y - START.y]
  const [atMm, asideMm] = [dx * along.x + dy * along.y, dy * along.x - dx * along.y]
  if (atMm > 0 && atMm < 100 && Math.abs(asideMm) < widthAt(atMm) / 2) return 85 + 8 * Math.cos(4 * atMm) // ripples
  if (x > 20 && x < 105.6 && y > 40 && y < 93.98) return 235
  return 165
}

const straight: Camera = { width: 900, height: 700, focalPx: 1500, at: at(62, 52), distanceMm: 225, tiltDeg: 0, leanDeg: 90, rollDeg: 3 }
const usual: Spoiling = { blurPx: 1.2, lightFall: 0.3, noise: 4, seed: 21 }
const TAP_SD = 2
const CAREFUL_SD = 0.7

/** Taps every toe of the photo a little off, snaps, and measures. Returns the readings and how many toes snapped. */
function measure(photo: Photo, camera: Camera, kind: PhotoReference['kind'], seed: number): { readonly readings: readonly WidthReading[]; readonly snapped: number } {
  const rgba = asRgba(photo)
  const random = normalNoise(seed)
  const tapped = (place: Point, sd: number): Point => {
    const { x, y } = seenAt(camera, place)
    return at(x + sd * random(), y + sd * random())
  }
  const [start, end] = [tapped(onBead(0, 0), TAP_SD), tapped(onBead(100, 0), TAP_SD)]
  let snapped = 0
  const toe = (place: Point): ToePick => {
    const tap = tapped(place, TAP_SD)
    const { window, origin } = greyWindow(rgba, photo, tap, 20)
    const edge = snapToEdge(window, at(tap.x - origin.x, tap.y - origin.y), at(end.x - start.x, end.y - start.y))
    if (edge === null) return { ...tap, sdPx: TAP_SD }
    snapped += 1
    return { ...at(edge.point.x + origin.x, edge.point.y + origin.y), sdPx: Math.max(0.5, edge.sdPx) }
  }
  const pairs = STATIONS.map((atMm) => ({ a: toe(onBead(atMm, -widthAt(atMm) / 2)), b: toe(onBead(atMm, widthAt(atMm) / 2)) }))
  const [a, b, c, d] = CORNERS
  const corner = (place: Point): Point => tapped(place, CAREFUL_SD)
  const reference: PhotoReference = kind === 'rectangle'
    ? { kind, corners: [corner(c), corner(a), corner(d), corner(b)], sidesMm: CARD }
    : { kind, points: [corner(a), corner(b)], distanceMm: CARD[0] }
  return { readings: beadWidths({ reference, axis: { kind: 'ends', start, end }, pairs, pickSdPx: TAP_SD, referencePickSdPx: CAREFUL_SD }).readings, snapped }
}

describe('widths read off a drawn photo are within 2 % or 0.3 mm of what was drawn', () => {
  it.each<[string, Camera, Spoiling, PhotoReference['kind']]>([
    ['from straight above, by two points', straight, usual, 'two-points'],
    ['from straight above, by a card', straight, usual, 'rectangle'],
    ['aslant from the side', { ...straight, tiltDeg: 30, leanDeg: 80 }, usual, 'rectangle'],
    ['aslant from the end of the bead, turned', { ...straight, distanceMm: 260, tiltDeg: 30, leanDeg: 10, rollDeg: 80 }, usual, 'rectangle'],
    ['aslant, soft and grainy, in bad light', { ...straight, tiltDeg: 25, leanDeg: 130 }, { blurPx: 2, lightFall: 0.5, noise: 6, seed: 5 }, 'rectangle'],
  ])('%s', (_, camera, spoiling, kind) => {
    const { readings, snapped } = measure(takePhoto(camera, scene, spoiling), camera, kind, 31)
    expect(snapped).toBeGreaterThanOrEqual(9)
    expect(readings).toHaveLength(STATIONS.length)
    const { stations, dropped } = measuredStations(readings, 100)
    expect(dropped).toEqual([])
    stations.forEach(({ atMm, widthMm }, index) => {
      const drawnAt = STATIONS[index] ?? NaN
      expect(Math.abs(widthMm - widthAt(drawnAt)), `width at ${drawnAt} mm: ${widthMm}`).toBeLessThan(Math.max(0.3, 0.02 * widthAt(drawnAt)))
      expect(Math.abs(atMm - drawnAt), `place of ${drawnAt} mm: ${atMm}`).toBeLessThan(1.5)
    })
  })

  const aslant = { ...straight, tiltDeg: 30, leanDeg: 80 }
  const photo = takePhoto(aslant, scene, usual)

  it('and would not be without removing the perspective', () => {
    const { readings } = measure(photo, aslant, 'two-points', 31)
    expect(readings.filter(({ widthMm }, index) => Math.abs(widthMm - widthAt(STATIONS[index] ?? NaN)) > 0.3).length).toBeGreaterThanOrEqual(3)
  })

  it('and their stated errors cover most of the misses, twice over nearly all', () => {
    const misses = Array.from({ length: 20 }, (_, seed) => measure(photo, aslant, 'rectangle', seed).readings)
      .flatMap((readings) => readings.map(({ widthMm, widthSdMm }, index) => Math.abs(widthMm - widthAt(STATIONS[index] ?? NaN)) / widthSdMm))
    expect(misses).toHaveLength(100)
    expect(misses.filter((miss) => miss < 1).length).toBeGreaterThanOrEqual(60)
    expect(misses.filter((miss) => miss < 2).length).toBeGreaterThanOrEqual(90)
  })
})
