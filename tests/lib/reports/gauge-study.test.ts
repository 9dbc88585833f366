import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { NARROW_CHART } from '@/lib/reports/chart-frame'
import { drawStudy } from '@/lib/reports/gauge-study-chart'
import { gaugeFigures, type GaugeFigures, type WidthReading } from '@/lib/reports/gauge-study-figures'
import { nextTurn, readingOrder, type StudyPlan, type Turn } from '@/lib/reports/gauge-study-order'
import { closingOf, isComplete, readingsEach, stillMissing, type StudyReader } from '@/lib/reports/gauge-study-progress'
import { biasText, gaugeWords, percentText, spreadRows, spreadText } from '@/lib/reports/gauge-study-words'
import { gaugeStudy } from '@/lib/statistics/gauge-study'

fc.configureGlobal({ seed: 61, numRuns: 100 })

const plan = (coupons: number, rounds = 2): StudyPlan => ({ id: 'study', rounds, couponIds: Array.from({ length: coupons }, (_, index) => `coupon ${index}`) })
const ANN = { id: 'ann', name: 'Ann Oak' }
const BO = { id: 'bo', name: 'Bo Elm' }
const CY = { id: 'cy', name: 'Cy Ash' }

/** cells[coupon][reader][round], in millimetres. */
const readingsOf = ({ couponIds }: StudyPlan, people: readonly { id: string }[], cells: readonly (readonly (readonly number[])[])[]): WidthReading[] =>
  cells.flatMap((byReader, coupon) => byReader.flatMap((byRound, reader) => byRound.map((widthMm, round) => ({
    couponId: couponIds[coupon] ?? '', readerId: people[reader]?.id ?? '', round: round + 1, widthMm,
  }))))
function figuresOf(figures: GaugeFigures): Extract<GaugeFigures, { kind: 'figures' }> {
  if (figures.kind !== 'figures') throw new Error(figures.why)
  return figures
}

describe('the order of reading', () => {
  test('holds every coupon once and is the same at every asking', () => {
    fc.assert(fc.property(fc.uuid(), fc.uuid(), fc.integer({ min: 1, max: 5 }), fc.uniqueArray(fc.uuid(), { minLength: 2, maxLength: 12 }), (id, reader, round, couponIds) => {
      const order = readingOrder({ id, rounds: 5, couponIds }, reader, round)
      expect([...order].sort()).toEqual([...couponIds].sort())
      expect(readingOrder({ id, rounds: 5, couponIds: [...couponIds].reverse() }, reader, round)).toEqual(order)
    }))
  })

  test('differs by reader and by round, and begins with each coupon about equally often', () => {
    const eight = plan(8)
    expect(readingOrder(eight, 'ann', 1)).not.toEqual(readingOrder(eight, 'ann', 2))
    expect(readingOrder(eight, 'ann', 1)).not.toEqual(readingOrder(eight, 'bo', 1))
    const first = new Map<string, number>()
    for (let reader = 0; reader < 4000; reader += 1) {
      const [coupon = ''] = readingOrder(eight, `reader ${reader}`, 1 + (reader % 2))
      first.set(coupon, (first.get(coupon) ?? 0) + 1)
    }
    // 500 expected each; five standard deviations of a binomial are 105
    expect(first.size).toBe(8)
    for (const count of first.values()) expect(Math.abs(count - 500)).toBeLessThan(105)
  })

  test('goes through the rounds one after the other and ends', () => {
    const three = plan(3)
    const done: Turn[] = []
    for (let turn = nextTurn(three, 'ann', done); turn; turn = nextTurn(three, 'ann', done)) done.push(turn)
    expect(done.map(({ round }) => round)).toEqual([1, 1, 1, 2, 2, 2])
    expect(done.slice(3).map(({ couponId }) => couponId)).toEqual(readingOrder(three, 'ann', 2))
    expect(done).toHaveLength(readingsEach(three))
  })
})

describe('what an open study waits for', () => {
  const two = plan(2)
  const everything: Turn[] = two.couponIds.flatMap((couponId) => [1, 2].map((round) => ({ couponId, round })))
  const reader = (person: { id: string; name: string }, readings: number, reads = true): StudyReader => ({ ...person, reads, done: everything.slice(0, readings) })

  test('is complete once everyone who reads has read everything, and two have', () => {
    expect(isComplete(two, [reader(ANN, 4), reader(BO, 4)])).toBe(true)
    expect(isComplete(two, [reader(ANN, 4), reader(BO, 3)])).toBe(false)
    expect(isComplete(two, [reader(ANN, 4)])).toBe(false)
    expect(isComplete(two, [reader(ANN, 4), reader(BO, 4), reader(CY, 0)])).toBe(false)
  })

  test('does not wait for somebody who reads here no more, whose finished readings count', () => {
    expect(isComplete(two, [reader(ANN, 4), reader(BO, 4), reader(CY, 1, false)])).toBe(true)
    expect(isComplete(two, [reader(ANN, 4), reader(BO, 4, false)])).toBe(true)
    expect(isComplete(two, [reader(ANN, 4), reader(BO, 3, false)])).toBe(false)
  })

  test('is closed early once two have read everything, and given up before', () => {
    expect(closingOf(two, [reader(ANN, 4), reader(BO, 4)])).toBe('complete')
    expect(closingOf(two, [reader(ANN, 4), reader(BO, 4), reader(CY, 3)])).toBe('early')
    expect(closingOf(two, [reader(ANN, 4), reader(BO, 3)])).toBe('given-up')
    expect(closingOf(two, [])).toBe('given-up')
  })

  test('names who is missing and by how much', () => {
    expect(stillMissing(two, [reader(ANN, 4), reader(BO, 3), reader(CY, 0)])).toEqual(['Bo Elm still reads: 3 of 4 readings are in.', 'Cy Ash has not begun: 4 readings.'])
    expect(stillMissing(two, [reader(ANN, 4), reader(BO, 4), reader(CY, 1, false)])).toEqual([
      'Cy Ash reads here no more and left 1 of 4 readings. Nobody waits for the rest.', 'Everyone has read everything. Close the study to see what came of it.',
    ])
    expect(stillMissing(two, [reader(ANN, 4)])).toEqual([expect.stringContaining('A study needs two readers.')])
  })
})

describe('the figures', () => {
  // By hand: readers 1 mm apart on coupons 10 mm apart, repeats alike. The grader variance is 1/2, the part variance 50, repeatability 0.
  const apart = [[[10, 10], [11, 11]], [[20, 20], [21, 21]]]

  test('divide the spread as the library does, with each reader’s bias against the mean of all', () => {
    const figures = figuresOf(gaugeFigures(plan(2), [ANN, BO], readingsOf(plan(2), [ANN, BO], apart), { minMm: 9, maxMm: 15 }))
    expect(figures.study).toEqual(gaugeStudy(apart))
    expect(figures.study.variances.gauge).toBeCloseTo(0.5, 12)
    expect(figures.readers.map(({ name, meanMm, bias }) => [name, meanMm, bias.mean])).toEqual([['Ann Oak', 15, -0.5], ['Bo Elm', 16, 0.5]])
    // 6 · √0.5 = 4.243 over 6 mm
    expect(figures.percentOfBand).toBeCloseTo(70.71, 2)
    expect(figures).toMatchObject({ coupons: 2, rounds: 2, leftOut: [], roundsLeftOut: 0 })
  })

  test('do not turn on the order in which readings were written', () => {
    const readings = readingsOf(plan(2), [ANN, BO], apart)
    expect(gaugeFigures(plan(2), [ANN, BO], [...readings].reverse(), null)).toEqual(gaugeFigures(plan(2), [ANN, BO], readings, null))
  })

  test('have an interval of the bias: t with n − 1 on the coupons’ differences', () => {
    const cells = [[[10, 10], [11, 11]], [[20, 20], [21.4, 21.4]], [[15, 15], [15.6, 15.6]]]
    const { readers: [ann] } = figuresOf(gaugeFigures(plan(3), [ANN, BO], readingsOf(plan(3), [ANN, BO], cells), null))
    // Differences −0.5, −0.7, −0.3: mean −0.5, s 0.2, t(2, 0.975) = 4.3027 (any table of t), half-width 4.3027 · 0.2/√3 = 0.4968
    expect(ann?.bias.mean).toBeCloseTo(-0.5, 9)
    expect(ann?.bias.low).toBeCloseTo(-0.9968, 3)
    expect(ann?.bias.high).toBeCloseTo(-0.0032, 3)
  })

  test('leave out who read too few whole rounds, and say so', () => {
    const readings = [...readingsOf(plan(2), [ANN, BO], apart), { couponId: 'coupon 0', readerId: 'cy', round: 1, widthMm: 90 }]
    const figures = figuresOf(gaugeFigures(plan(2), [ANN, BO, CY], readings, null))
    expect(figures.leftOut).toEqual([CY])
    expect(figures.study).toEqual(gaugeStudy(apart))
    expect(gaugeWords(figures, 'mm')).toContain('Cy Ash did not read enough whole rounds and is left out of the figures.')
  })

  test('take the block with most readings: three readers’ two rounds before two readers’ three, unless a whole round more is worth it', () => {
    const three = plan(2, 3)
    const cell = (base: number) => [[base, base + 0.1, base + 0.2], [base + 1, base + 1.1, base + 1], [base + 0.4, base + 0.6]]
    const tied = figuresOf(gaugeFigures(three, [ANN, BO, CY], readingsOf(three, [ANN, BO, CY], [cell(10), cell(14)]), null))
    expect(tied).toMatchObject({ rounds: 2, roundsLeftOut: 1, leftOut: [] })
    expect(tied.readers).toHaveLength(3)
    expect(gaugeWords(tied, 'mm')).toContain('One round is left out, because too few readers read it whole.')
    const four = plan(2, 4)
    const long = (base: number) => [[base, base + 0.1, base + 0.2, base], [base + 1, base + 1.1, base + 1, base + 1], [base + 0.4, base + 0.6]]
    const more = figuresOf(gaugeFigures(four, [ANN, BO, CY], readingsOf(four, [ANN, BO, CY], [long(10), long(14)]), null))
    expect(more).toMatchObject({ rounds: 4, leftOut: [CY], roundsLeftOut: 0 })
  })

  test('are none where two readers did not read two rounds, or every reading is the same', () => {
    const readings = readingsOf(plan(2), [ANN, BO], [[[10, 10], [11]], [[20, 20], [21]]])
    expect(gaugeFigures(plan(2), [ANN, BO], readings, null)).toMatchObject({ kind: 'none', why: expect.stringContaining('two readers must each have read') as string })
    const same = readingsOf(plan(2), [ANN, BO], [[[10, 10], [10, 10]], [[10, 10], [10, 10]]])
    expect(gaugeFigures(plan(2), [ANN, BO], same, null)).toMatchObject({ kind: 'none', why: expect.stringContaining('Every reading is the same') as string })
    expect(gaugeFigures(plan(2), [], [], null)).toMatchObject({ kind: 'none' })
  })
})

describe('the words', () => {
  const wordsOf = (cells: readonly (readonly (readonly number[])[])[]) => gaugeWords(figuresOf(gaugeFigures(plan(cells.length), [ANN, BO], readingsOf(plan(cells.length), [ANN, BO], cells), null)), 'mm')

  test('name the largest part of the spread first', () => {
    expect(wordsOf([[[10, 10.1], [13, 13.1]], [[10.5, 10.4], [13.5, 13.6]]])[0]).toBe('Most of the spread is one reader against another: agree on where the toe is, then repeat.')
    expect(wordsOf([[[10, 13], [13, 10]], [[10.2, 13], [12.9, 10]]])[0]).toBe('Most of the spread is a reader against their own other rounds: set the gauge down the same way each time, then repeat.')
    expect(wordsOf([[[10, 10.1], [13, 13.1]], [[13, 13.1], [10, 10.1]]])[0]).toBe('Most of the spread is readers who part on some coupons and not on others: look at those coupons together, then repeat.')
    expect(wordsOf([[[10, 10], [11, 11]], [[20, 20], [21, 21]]])[0]).toMatch(/^Most of the spread is the coupons themselves\. Of what the measuring adds, most is one reader against another/)
    expect(wordsOf([[[10, 10], [10, 10]], [[20, 20], [20, 20]]])[0]).toMatch(/^Readers and rounds do not differ at all/)
  })

  test('name a reader whose bias is clear of nothing, and none whose interval holds it', () => {
    expect(wordsOf([[[10, 10], [11, 11]], [[20, 20], [21, 21]], [[30, 30], [31, 31]]])).toContain('Ann Oak reads 0.50 mm narrower than the mean of all.')
    expect(wordsOf([[[10, 10], [11, 11]], [[21, 21], [20, 20]], [[30, 30], [30.1, 30.1]]]).join(' ')).not.toContain('than the mean of all')
  })

  test('say that few coupons and readers make rough figures', () => {
    expect(wordsOf([[[10, 10], [11, 11]], [[20, 20], [21, 21]]])).toContain('With 2 coupons and 2 readers these figures are rough.')
  })

  test('show a spread in the reader’s units and never as a fraction', () => {
    expect(spreadText(0.79375, 'in')).toBe('0.031 in')
    expect(spreadText(0.79375, 'mm')).toBe('0.79 mm')
    expect(biasText({ mean: 0.5, low: -0.1, high: 1.1 }, 'mm')).toBe('+0.50 mm (−0.10 to +1.10)')
    expect(biasText({ mean: 0, low: 0, high: 0 }, 'mm')).toBe('0.00 mm (0.00 to 0.00)')
    expect([percentText(0), percentText(0.4), percentText(24.4), percentText(170)]).toEqual(['0 %', '<1 %', '24 %', '170 %'])
  })

  test('divide the variance in rows that add up', () => {
    const cells = [[[10, 10.4], [11.3, 11]], [[14, 13.6], [14.9, 15.2]], [[12, 12.2], [12.7, 13]]]
    const figures = figuresOf(gaugeFigures(plan(3), [ANN, BO], readingsOf(plan(3), [ANN, BO], cells), { minMm: 10, maxMm: 14 }))
    const rows = spreadRows(figures, 'mm')
    const percent = (key: string) => Number.parseFloat(rows.find((row) => row.key === key)?.variance ?? '')
    expect(percent('measuring') + percent('coupons')).toBeCloseTo(100, -0.5)
    expect(rows.find(({ key }) => key === 'measuring')?.ofBand).toBe(percentText(figures.percentOfBand ?? Number.NaN))
    expect(rows.find(({ key }) => key === 'coupons')?.ofBand).toBeNull()
  })
})

describe('the chart', () => {
  test('puts every reading inside its frame, wider ones higher, each over its coupon', () => {
    const cells = [[[10, 10.4], [11.3, 11]], [[14, 13.6], [14.9, 15.2]]]
    const readings = readingsOf(plan(2), [ANN, BO], cells)
    for (const units of ['in', 'mm'] as const) {
      const { points, xTicks, yTicks, bandY } = drawStudy(plan(2), ['ann', 'bo'], readings, { minMm: 11, maxMm: 16 }, units, NARROW_CHART)
      expect(points).toHaveLength(8)
      for (const { x, y } of points) {
        expect(x).toBeGreaterThan(NARROW_CHART.left)
        expect(x).toBeLessThan(NARROW_CHART.right)
        expect(y).toBeGreaterThanOrEqual(NARROW_CHART.top)
        expect(y).toBeLessThanOrEqual(NARROW_CHART.bottom)
      }
      const at = (key: string) => points.find((point) => point.key === key) ?? { x: Number.NaN, y: Number.NaN }
      expect(at('coupon 1/bo/2').y).toBeLessThan(at('coupon 1/ann/2').y)
      expect(at('coupon 0/ann/1').x).toBeLessThan(at('coupon 0/bo/1').x)
      expect(xTicks.map(({ label }) => label)).toEqual(['1', '2'])
      expect(yTicks.length).toBeGreaterThanOrEqual(2)
      expect(yTicks.length).toBeLessThanOrEqual(8)
      expect(bandY[0]).toBeGreaterThan(bandY[1] ?? Number.NaN)
    }
    expect(drawStudy(plan(2), [], [], null, 'mm', NARROW_CHART).points).toEqual([])
  })
})
