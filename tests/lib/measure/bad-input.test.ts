// What cannot be measured is refused in a sentence that says what to do, and with the reason for screens in other languages.
import { expect, it } from 'vitest'
import { beadWidths, type PickedBead } from '@/lib/measure/bead-widths'
import { snapToEdge } from '@/lib/measure/edge-snap'
import { greyWindow, type GreyWindow } from '@/lib/measure/grey-window'
import type { FourPoints } from '@/lib/measure/homography'
import { measuredStations } from '@/lib/measure/measured-stations'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import { photoPlane, toMillimetres, toPixels, type TwoPointReference } from '@/lib/measure/photo-plane'
import type { Point } from '@/lib/measure/point'
import { twoPointScale } from '@/lib/measure/two-point-scale'

const at = (x: number, y: number): Point => ({ x, y })
const corners: FourPoints = [at(0, 0), at(400, 0), at(400, 250), at(0, 250)]
const card = (changed: FourPoints, sidesMm: readonly [number, number] = [80, 50]): (() => unknown) => () => photoPlane({ kind: 'rectangle', corners: changed, sidesMm })
const ruler: TwoPointReference = { kind: 'two-points', points: [at(0, 0), at(500, 0)], distanceMm: 100 }
const bead: PickedBead = {
  reference: ruler, axis: { kind: 'ends', start: at(0, 100), end: at(900, 100) }, pickSdPx: 1,
  pairs: [{ a: at(100, 80), b: at(100, 120) }, { a: at(500, 80), b: at(500, 120) }],
}
const widths = (changed: Partial<PickedBead>): (() => unknown) => () => beadWidths({ ...bead, ...changed })
const flat: GreyWindow = { data: new Uint8Array(441).fill(90), width: 21, height: 21 }
// A card whose far side is half as long as its near side: the horizon is at y = -500.
const leaning: FourPoints = [at(-100, 0), at(100, 0), at(200, 500), at(-200, 500)]
const plate = photoPlane({ kind: 'rectangle', corners: leaning, sidesMm: [50, 50] })

it.each<[string, () => unknown, string, RegExp]>([
  ['a corner tapped twice', card([at(0, 0), at(400, 0), at(400, 0), at(0, 250)]), 'corner-repeated', /tap each corner of the rectangle once/],
  ['four corners at one place', card([at(7, 7), at(7, 7), at(7, 7), at(7, 7)]), 'corner-repeated', /same place/],
  ['three corners on a line', card([at(0, 0), at(200, 0), at(400, 1), at(0, 250)]), 'corners-on-a-line', /Three of the four corners lie on one line: tap the four outer corners/],
  ['four corners on a line', card([at(0, 0), at(100, 100), at(200, 200), at(300, 300)]), 'corners-on-a-line', /one line/],
  ['a card seen edge on', card([at(0, 0), at(400, 0), at(400, 5), at(0, 5)]), 'corner-repeated', /tap each corner/],
  ['a corner inside the other three', card([at(0, 0), at(400, 0), at(200, 400), at(200, 150)]), 'corners-not-a-rectangle', /inside the triangle of the other three/],
  ['a corner that is not finite', card([at(NaN, 0), at(400, 0), at(400, 250), at(0, 250)]), 'point-not-finite', /Corner 1 has no place in the photo \(NaN, 0\): tap it again/],
  ['a corner out of this world', card([at(0, 0), at(400, 0), at(1e300, 250), at(0, 250)]), 'point-not-finite', /Corner 3/],
  ['a side of zero', card(corners, [80, 0]), 'size-not-possible', /A side of the rectangle cannot be 0 mm: enter its real size, from 0.1 mm to 10000 mm/],
  ['a negative side', card(corners, [-80, 50]), 'size-not-possible', /-80 mm/],
  ['a side that is not a number', card(corners, [80, NaN]), 'size-not-possible', /NaN mm/],
  ['an endless side', card(corners, [Infinity, 50]), 'size-not-possible', /Infinity mm/],
  ['sides that look alike', card([at(0, 0), at(400, 0), at(400, 398), at(0, 398)]), 'sides-look-alike', /look equally long.*more from above/],
  ['an uncertainty below zero', () => photoPlane({ kind: 'rectangle', corners, sidesMm: [80, 50], sideSdMm: -1 }), 'picking-error-not-possible', /-1: give a number of 0 or more/],
  ['a scale of zero', () => photoPlane({ ...ruler, distanceMm: 0 }), 'size-not-possible', /The known distance cannot be 0 mm/],
  ['a scale that is not finite', () => twoPointScale({ ...ruler, distanceMm: Infinity }, 1), 'size-not-possible', /Infinity mm/],
  ['a scale from one point', () => photoPlane({ ...ruler, points: [at(5, 5), at(5, 5)] }), 'points-too-close', /tap two points a known distance apart/],
  ['a scale point that is nowhere', () => photoPlane({ ...ruler, points: [at(5, 5), at(5, NaN)] }), 'point-not-finite', /The second point of the scale/],
  ['a scale hardly longer than the picking error', () => twoPointScale({ ...ruler, points: [at(0, 0), at(12, 0)] }, 2), 'reference-too-small', /only 12 pixels apart, each tapped to within about 2 pixels: zoom in/],
  ['a picking error that is not a number', () => twoPointScale(ruler, NaN), 'picking-error-not-possible', /The picking error cannot be NaN/],
  ['a pixel in the sky', () => toMillimetres(plate, at(0, -600)), 'beyond-horizon', /beyond the horizon of the plate: tap on the plate itself/],
  ['a pixel on the horizon', () => toMillimetres(plate, at(0, -500 - 1e-9)), 'beyond-horizon', /beyond the horizon/],
  ['a place behind the camera', () => toPixels(plate, at(25, 500)), 'beyond-horizon', /behind the camera/],
  ['a bead that ends where it starts', widths({ axis: { kind: 'ends', start: at(9, 9), end: at(10, 9) } }), 'axis-too-short', /tap where the bead starts and where it ends/],
  ['a bead whose start is nowhere', widths({ axis: { kind: 'fitted', start: at(NaN, 9) } }), 'point-not-finite', /The start of the bead/],
  ['a toe that is nowhere', widths({ pairs: [{ a: at(1, 1), b: at(Infinity, 2) }] }), 'point-not-finite', /A toe of pair 1/],
  ['a toe with a picking error that is not a number', widths({ pairs: [{ a: at(1, 1), b: { ...at(1, 9), sdPx: NaN } }] }), 'picking-error-not-possible', /a toe of pair 1 cannot be NaN/],
  ['a picking error below zero', widths({ pickSdPx: -1 }), 'picking-error-not-possible', /-1/],
  ['a reference picked too roughly', widths({ referencePickSdPx: 60 }), 'reference-too-small', /only 500 pixels apart/],
  ['a line through one pair', widths({ axis: { kind: 'fitted', start: at(0, 100) }, pairs: bead.pairs.slice(1) }), 'too-few-pairs', /two places or more/],
  ['a line through pairs at one place', widths({ axis: { kind: 'fitted', start: at(0, 100) }, pairs: [bead.pairs[0] ?? never(), bead.pairs[0] ?? never()] }), 'axis-unclear', /do not lie along a line/],
  ['a line through pairs in a heap', widths({ axis: { kind: 'fitted', start: at(0, 100) }, pairs: [at(0, 0), at(200, 0), at(0, 200), at(200, 200)].map((p) => ({ a: p, b: p })) }), 'axis-unclear', /do not lie along a line/],
  ['a start in the middle of the pairs', widths({ axis: { kind: 'fitted', start: at(300, 100) } }), 'axis-unclear', /tap where the bead starts/],
  ['a weld of no length', () => measuredStations([], 0), 'length-not-possible', /A weld 0 mm long/],
  ['a weld whose length is not a number', () => measuredStations([], NaN), 'length-not-possible', /enter the length of the weld/],
  ['an edge without a direction', () => snapToEdge(flat, at(10, 10), at(0, 0)), 'direction-not-possible', /tap the start and the end of the bead first/],
  ['an edge in a direction that is not a number', () => snapToEdge(flat, at(10, 10), at(NaN, 1)), 'direction-not-possible', /no direction/],
  ['a tap beside the window', () => snapToEdge(flat, at(30, 10), at(1, 0)), 'window-not-possible', /tap inside it/],
  ['a window with too few numbers', () => snapToEdge({ ...flat, height: 22 }, at(10, 10), at(1, 0)), 'window-not-possible', /21 by 22 pixels with 441 grey levels/],
  ['a window of nothing', () => snapToEdge({ data: new Uint8Array(0), width: 0, height: 0 }, at(0, 0), at(1, 0)), 'window-not-possible', /choose the photo again/],
  ['a search of no reach', () => snapToEdge(flat, at(10, 10), at(1, 0), { reachPx: 0 }), 'window-not-possible', /choose 1 to 100/],
  ['a tap outside the photo', () => greyWindow(new Uint8Array(400), { width: 10, height: 10 }, at(10, 4), 5), 'window-not-possible', /tap inside it/],
  ['a photo smaller than it says', () => greyWindow(new Uint8Array(399), { width: 10, height: 10 }, at(4, 4), 5), 'window-not-possible', /tap inside it/],
])('refuses %s', (_, measure, reason, sentence) => {
  let problem: unknown = null
  try {
    measure()
  } catch (error) {
    problem = error
  }
  expect(problem).toBeInstanceOf(RangeError)
  expect(problem).toBeInstanceOf(PhotoProblem)
  expect(problem).toMatchObject({ reason, message: expect.stringMatching(sentence) as string })
})

function never(): never {
  throw new Error('the bead of this test has two pairs')
}
