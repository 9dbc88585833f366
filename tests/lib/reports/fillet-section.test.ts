import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawFilletSection, type FilletSection, type FilletSectionInput } from '@/lib/reports/fillet-section'

type Drawn = Extract<FilletSection, { kind: 'drawn' }>

/** A quarter-inch tee fillet on 3/8 in plate, in 2F, with equal legs and nothing else read, unless told otherwise. */
function aSection(over: Partial<FilletSectionInput> = {}): FilletSectionInput {
  return {
    station: { legAMm: 6.35, legBMm: 6.35 },
    position: '2F',
    joint: 'tee',
    thicknessMm: 9.525,
    nominalLegMm: 6.35,
    reader: { units: 'in', locale: 'en' },
    ...over,
  }
}

function drawn(over: Partial<FilletSectionInput> = {}): Drawn {
  const section = drawFilletSection(aSection(over))
  if (section.kind !== 'drawn') throw new Error('expected a drawing')
  return section
}

/** Toe A, the pull of the face, toe B and the root, read back from the paths. */
function corners({ face, legs }: Drawn) {
  const numbers = (d: string) => [...d.matchAll(/-?[\d.]+/g)].map((match) => Number(match[0]))
  const [ax = 0, ay = 0, cx = 0, cy = 0, bx = 0, by = 0] = numbers(face.d)
  const [, , rx = 0, ry = 0] = numbers(legs)
  return { a: { x: ax, y: ay }, c: { x: cx, y: cy }, b: { x: bx, y: by }, root: { x: rx, y: ry } }
}

/** How far the face lies beyond the line between its toes at the foot of the throat, as a share of leg A. */
function bulgeAtThroat(section: Drawn): number {
  const { a, b, c, root } = corners(section)
  const [legA, legB] = [root.y - a.y, b.x - root.x]
  const t = (legA * legA) / (legA * legA + legB * legB)
  const at = (p0: number, p1: number, p2: number) => (1 - t) ** 2 * p0 + 2 * t * (1 - t) * p1 + t ** 2 * p2
  const point = { x: at(a.x, c.x, b.x), y: at(a.y, c.y, b.y) }
  return (Math.hypot(point.x - root.x, point.y - root.y) - (legA * legB) / Math.hypot(legA, legB)) / legA
}

const leg = fc.double({ min: 2, max: 25, noNaN: true })

describe('the legs', () => {
  it('stand on the two plates to one scale, leg A upright', () => {
    fc.assert(fc.property(leg, leg, (legAMm, legBMm) => {
      const { a, b, root } = corners(drawn({ station: { legAMm, legBMm } }))
      expect(a.x).toBe(root.x)
      expect(b.y).toBe(root.y)
      expect((root.y - a.y) / (b.x - root.x)).toBeCloseTo(legAMm / legBMm, 1)
    }))
  })

  it('stay inside the drawing, whichever is the longest', () => {
    fc.assert(fc.property(leg, leg, fc.option(leg), (legAMm, legBMm, nominalLegMm) => {
      const section = drawn({ station: { legAMm, legBMm }, nominalLegMm })
      const { a, b, root } = corners(section)
      expect(a.y).toBeGreaterThanOrEqual(0)
      expect(b.x).toBeLessThanOrEqual(section.width)
      expect(root.y).toBeLessThan(section.height)
    }))
  })

  it('are named in the reader’s units', () => {
    const labels = (units: 'in' | 'mm', legAMm: number, legBMm: number) =>
      drawn({ station: { legAMm, legBMm }, reader: { units, locale: 'en' } }).dimensions.map((each) => each.label)
    expect(labels('in', 6.35, 7.14375)).toEqual(['1/4 in', '9/32 in'])
    expect(labels('mm', 6.4, 7.2)).toEqual(['6.4 mm', '7.2 mm'])
  })
})

describe('the face', () => {
  it('is drawn flat, and said to be unknown, where neither convexity nor throat was read', () => {
    const section = drawn()
    expect(section.face.measured).toBe(false)
    expect(bulgeAtThroat(section)).toBeCloseTo(0, 2)
    expect(section.words.sentences).toContain('The shape of the face was not measured: it is drawn flat, in dots.')
  })

  it('stands out by the convexity read', () => {
    const section = drawn({ station: { legAMm: 6.35, legBMm: 6.35, convexityMm: 1.5875 } })
    expect(section.face.measured).toBe(true)
    expect(bulgeAtThroat(section)).toBeCloseTo(0.25, 2)
    expect(section.words.sentences).toContain('Convexity 1/16 in.')
  })

  it('is hollow by what the throat lacks of the flat triangle, for any legs', () => {
    fc.assert(fc.property(leg, fc.double({ min: 0.5, max: 2, noNaN: true }), fc.double({ min: 0.6, max: 0.95, noNaN: true }), (legAMm, ratio, share) => {
      const legBMm = legAMm * ratio
      const flat = (legAMm * legBMm) / Math.hypot(legAMm, legBMm)
      const section = drawn({ station: { legAMm, legBMm, throatMm: flat * share } })
      expect(bulgeAtThroat(section)).toBeCloseTo((-flat * (1 - share)) / legAMm, 1)
    }))
  })

  it('is flat at a convexity of 0, which is a reading and not a gap', () => {
    const section = drawn({ station: { legAMm: 6.35, legBMm: 6.35, convexityMm: 0 } })
    expect(section.face.measured).toBe(true)
    expect(section.words.sentences).toContain('The face is flat.')
  })

  it('is hollow, not bulging, where the convexity is 0 and the throat is short', () => {
    const section = drawn({ station: { legAMm: 6.35, legBMm: 6.35, convexityMm: 0, throatMm: 3.9 } })
    expect(bulgeAtThroat(section)).toBeLessThan(0)
    expect(section.words.sentences.join(' ')).toContain('hollow by')
  })
})

it('draws the throat only when it was read, from the root at right angles to the face', () => {
  expect(drawn().throat).toBeNull()
  const section = drawn({ station: { legAMm: 6.35, legBMm: 6.35, throatMm: 4.49 } })
  const { throat } = section
  expect(throat?.x1).toBe(corners(section).root.x)
  expect((throat?.x2 ?? 0) - (throat?.x1 ?? 0)).toBeCloseTo((throat?.y1 ?? 0) - (throat?.y2 ?? 0), 1)
})

it('lays the nominal size over it, or nothing where the exercise names none', () => {
  const { nominal, ...section } = drawn({ station: { legAMm: 5, legBMm: 8 }, nominalLegMm: 6.35 })
  expect(nominal).toMatch(/^M/)
  expect(section.words.scale).toContain('Dashed: the nominal size')
  expect(drawn({ nominalLegMm: null }).nominal).toBeNull()
})

it('stands one plate on the other in a tee and lays one on the other in a lap', () => {
  const standing = drawn({ joint: 'tee', thicknessMm: 3 }).plates[1]
  const lying = drawn({ joint: 'lap', thicknessMm: 3 }).plates[1]
  expect(standing?.height).toBeGreaterThan(standing?.width ?? Infinity)
  expect(lying?.width).toBeGreaterThan(lying?.height ?? Infinity)
})

it('says which leg is missing instead of drawing one as 0', () => {
  const section = drawFilletSection(aSection({ station: { legAMm: 6.35, throatMm: 4 } }))
  expect(section).toMatchObject({ kind: 'not-measured', missing: ['legBMm'] })
  expect(section.words.sentences).toEqual(['Both legs are needed to draw the section. Not measured: leg on the lower toe side.'])
  expect(drawFilletSection(aSection({ station: {}, reader: { units: 'mm', locale: 'es' } })).words.description).toContain('cateto del lado del pie superior y cateto del lado del pie inferior')
})

it.each([
  ['a leg of 0', { station: { legAMm: 0, legBMm: 6 } }],
  ['a leg without end', { station: { legAMm: 6, legBMm: Infinity } }],
  ['a negative convexity', { station: { legAMm: 6, legBMm: 6, convexityMm: -1 } }],
  ['a throat that is no number', { station: { legAMm: 6, legBMm: 6, throatMm: Number.NaN } }],
  ['a nominal leg of 0', { nominalLegMm: 0 }],
  ['a plate without thickness', { thicknessMm: 0 }],
])('refuses %s', (_, over) => {
  expect(() => drawFilletSection(aSection(over))).toThrow(RangeError)
})
