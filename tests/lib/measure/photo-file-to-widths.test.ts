// From the file a phone writes to widths: a plate drawn aslant with noise, compressed, turned by its metadata, decoded by sharp, then
// tapped two pixels off and snapped. What was drawn is known; nothing here comes from the code under test.
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { KNOWN_OBJECTS } from '@/lib/measure/known-objects'
import type { Mark } from '@/lib/measure/photo-marks'
import { measurePhoto } from '@/lib/measure/photo-measurement'
import type { Point } from '@/lib/measure/point'
import { snappedMark, type Pixels } from '@/lib/measure/snap-mark'
import { stationGuide } from '@/lib/measure/station-guide'
import { normalNoise } from '../../support/seeded-noise'
import { asRgba, seenAt, takePhoto, type Camera, type Scene } from '../../support/synthetic-photo'

const WIDTH_MM = 8.5
const LENGTH_MM = 100
const at = (x: number, y: number): Point => ({ x, y })
const CARD = [at(20, 40), at(105.6, 40), at(105.6, 93.98), at(20, 93.98)] as const
const BEAD = at(12, 15)
const scene: Scene = ({ x, y }) => {
  if (x > BEAD.x && x < BEAD.x + LENGTH_MM && Math.abs(y - BEAD.y) < WIDTH_MM / 2) return 85
  return x > 20 && x < 105.6 && y > 40 && y < 93.98 ? 235 : 165
}
const camera: Camera = { width: 900, height: 700, focalPx: 1500, at: at(62, 52), distanceMm: 240, tiltDeg: 25, leanDeg: 80, rollDeg: 3 }
const photo = takePhoto(camera, scene, { blurPx: 1.2, lightFall: 0.3, noise: 4, seed: 21 })

/** The photo as a file whose pixels lie turned a quarter, with the note (EXIF orientation 6: turn it clockwise) that says so. */
async function turnedFile(format: 'jpeg' | 'webp'): Promise<Buffer> {
  const raw = { raw: { width: photo.width, height: photo.height, channels: 4 as const } }
  const turned = await sharp(asRgba(photo), raw).removeAlpha().rotate(-90).png().toBuffer()
  return sharp(turned).withMetadata({ orientation: 6 }).toFormat(format, { quality: 85 }).toBuffer()
}

async function decoded(file: Buffer): Promise<Pixels> {
  const { data, info } = await sharp(file).autoOrient().ensureAlpha().raw().toBuffer({ resolveWithObject: true })
  return { rgba: data, widthPx: info.width, heightPx: info.height }
}

describe.each(['jpeg', 'webp'] as const)('a turned %s', (format) => {
  it('gives widths within 2 % or 0.3 mm of what was drawn', async () => {
    const file = await turnedFile(format)
    expect((await sharp(file).metadata()).width).toBe(photo.height) // lies on its side until its note is heeded
    const picture = await decoded(file)
    expect([picture.widthPx, picture.heightPx]).toEqual([photo.width, photo.height])
    const random = normalNoise(7)
    const tapped = (place: Point, sdPx: number): Mark => {
      const seen = seenAt(camera, place)
      return { tap: at(seen.x + sdPx * random(), seen.y + sdPx * random()), snapped: null, sdPx }
    }
    const [a, b, c, d] = CARD
    const scale = { kind: 'rectangle' as const, ...KNOWN_OBJECTS.card, marks: [tapped(c, 0.7), tapped(a, 0.7), tapped(d, 0.7), tapped(b, 0.7)] as const }
    const ends = [tapped(BEAD, 2), tapped(at(BEAD.x + LENGTH_MM, BEAD.y), 2)] as const
    const pairs = [10, 30, 50, 70, 90].map((atMm) => {
      const { along } = stationGuide(scale, ends, atMm / LENGTH_MM)
      const toe = (side: number, other: Point | null): Mark => snappedMark(picture, tapped(at(BEAD.x + atMm, BEAD.y + (side * WIDTH_MM) / 2), 2).tap, along, { reachPx: 8, tapSdPx: 2, other })
      const first = toe(-1, null)
      return { a: first, b: toe(1, first.snapped ?? first.tap) }
    })
    expect(pairs.flatMap(({ a: one, b: two }) => [one, two]).filter(({ snapped }) => snapped !== null).length).toBeGreaterThanOrEqual(9)
    const { widths } = measurePhoto({ picture: { widthPx: picture.widthPx, heightPx: picture.heightPx }, scale, ends, pairs })
    expect(widths).toHaveLength(5)
    for (const { widthMm } of widths) expect(Math.abs(widthMm - WIDTH_MM), `measured ${widthMm} mm`).toBeLessThan(Math.max(0.3, 0.02 * WIDTH_MM))
  })
})
