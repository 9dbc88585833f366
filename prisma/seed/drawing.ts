import type { Indication, Inspection, Station } from '@/lib/scoring/types'
import type { Dice } from './dice'

/** What is drawn: a coupon as it was measured, with the booth and its number painted on. */
export type DrawnCoupon = Pick<Inspection, 'stations' | 'indications'> & { readonly lengthMm: number; readonly booth: number; readonly number: number }

const WIDTH = 1200
const HEIGHT = 675
const MARGIN = 110
const MIDDLE = 350

type Point = readonly [x: number, y: number]
const n = (value: number): string => value.toFixed(1)
const line = (points: readonly Point[]): string => points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join(' ')

/** Bead width anywhere along the weld, straight from station to station. */
function widthAt(stations: readonly Station[], atMm: number): number {
  const read = stations.flatMap(({ atMm: at, widthMm }) => (widthMm === undefined ? [] : [{ at, widthMm }])).sort((a, b) => a.at - b.at)
  const after = read.find(({ at }) => at >= atMm) ?? read.at(-1)
  const before = read.findLast(({ at }) => at <= atMm) ?? read[0]
  if (!after || !before) return 8
  if (after.at === before.at) return after.widthMm
  return before.widthMm + ((after.widthMm - before.widthMm) * (atMm - before.at)) / (after.at - before.at)
}

/** Digits as a paint marker makes them, in strokes on a grid of 2 by 4. No typeface: the picture is the same on every machine. */
const STROKES: Readonly<Record<string, string>> = {
  '0': 'M0 0H2V4H0Z', '1': 'M0 1L1 0V4', '2': 'M0 0H2V2H0V4H2', '3': 'M0 0H2V4H0M0 2H2', '4': 'M0 0V2H2M2 0V4', '5': 'M2 0H0V2H2V4H0',
  '6': 'M2 0H0V4H2V2H0', '7': 'M0 0H2L0.7 4', '8': 'M0 0H2V4H0ZM0 2H2', '9': 'M2 4V0H0V2H2', '-': 'M0 2H2',
}
const painted = (text: string, x: number, y: number): string =>
  [...text].map((digit, index) => `<path d="${STROKES[digit] ?? ''}" transform="translate(${x + index * 46} ${y}) scale(13)" stroke-width="0.55"/>`).join('')

function indicationMark({ kind, atMm, lengthMm, depthMm, diameterMm, toe }: Indication, scale: number, stations: readonly Station[]): string {
  const x = MARGIN + atMm * scale
  const half = (widthAt(stations, atMm) * scale) / 2
  switch (kind) {
    case 'undercut': {
      const y = MIDDLE + (toe === 'B' ? half : -half)
      return `<path d="M${n(x)} ${n(y)}h${n((lengthMm ?? 5) * scale)}" stroke="#16181b" stroke-width="${n(2 + (depthMm ?? 0.5) * scale)}" stroke-linecap="round"/>`
    }
    case 'pore': return `<circle cx="${n(x)}" cy="${n(MIDDLE - half / 3)}" r="${n(((diameterMm ?? 1.2) * scale) / 2)}" fill="#131517"/>`
    case 'crack': case 'crater-crack': return `<path d="M${n(x - 14)} ${n(MIDDLE - 8)}l10 7 -4 6 12 5" stroke="#0c0d0e" stroke-width="2.5" fill="none"/>`
    case 'crater-pipe': return `<circle cx="${n(x - 8)}" cy="${MIDDLE}" r="6" fill="#0f1113"/>`
    case 'overlap': return `<path d="M${n(x)} ${n(MIDDLE + half)}q22 20 50 0" fill="#7f8388" stroke="#33373c" stroke-width="2"/>`
    case 'poor-restart': return `<ellipse cx="${n(x)}" cy="${MIDDLE}" rx="20" ry="${n(half * 1.15)}" fill="#a4a8ac" stroke="#33373c" stroke-width="2.5"/>`
    case 'slag': return `<path d="M${n(x)} ${n(MIDDLE - half)}l34 6 -6 12 -30 -5z" fill="#4b4038"/>`
    case 'arc-strike': return `<path d="M${n(x)} ${n(MIDDLE - half - 60)}l20 9m-14 -16l7 22" stroke="#e8e4da" stroke-width="4" stroke-linecap="round"/>`
    case 'spatter': return [0, 1, 2, 3].map((i) => `<circle cx="${n(x + i * 23 - 40)}" cy="${n(MIDDLE + half + 22 + ((i * 37) % 45))}" r="${4 - (i % 3)}" fill="#8d9196"/>`).join('')
    case 'lack-of-fusion': return `<path d="M${n(x)} ${n(MIDDLE + half - 3)}h46" stroke="#0f1113" stroke-width="4" stroke-dasharray="9 4"/>`
    case 'burn-through': return `<ellipse cx="${n(x)}" cy="${MIDDLE}" rx="12" ry="9" fill="#000"/>`
  }
}

/** An SVG of the coupon from above, to scale along and across. Pen strokes and flat tones: nobody takes it for a photograph. */
export function drawCoupon(coupon: DrawnCoupon, dice: Dice): string {
  const scale = (WIDTH - 2 * MARGIN) / coupon.lengthMm
  const steps = 96
  const along = Array.from({ length: steps + 1 }, (_, index) => (index * coupon.lengthMm) / steps)
  const edge = (side: 1 | -1): Point[] => along.map((at) => {
    const end = Math.min(1, Math.sqrt(Math.min(at, coupon.lengthMm - at) / 4 + 0.02))
    return [MARGIN + at * scale, MIDDLE + side * (widthAt(coupon.stations, at) / 2) * scale * end + dice.normal(0, 1)]
  })
  const [top, bottom] = [edge(-1), edge(1)]
  const ripples = along.slice(2, -1).map((_, index) => {
    const [x, y1] = top[index + 2] ?? [0, 0]
    const [, y2] = bottom[index + 2] ?? [0, 0]
    return `M${n(x - 4)} ${n(y1 + 2)}Q${n(x + 15 + dice.normal(0, 2))} ${MIDDLE} ${n(x - 4)} ${n(y2 - 2)}`
  })
  const scratches = Array.from({ length: 46 }, () => {
    const [x, y] = [dice.between(40, WIDTH - 220), dice.between(70, HEIGHT - 70)]
    return `M${n(x)} ${n(y)}l${n(dice.between(40, 180))} ${n(dice.normal(0, 3))}`
  })
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}">
<rect width="${WIDTH}" height="${HEIGHT}" fill="#efece4"/>
<rect x="36" y="60" width="${WIDTH - 72}" height="${MIDDLE - 60}" fill="#6b7076" stroke="#202326" stroke-width="4"/>
<rect x="36" y="${MIDDLE}" width="${WIDTH - 72}" height="${HEIGHT - 60 - MIDDLE}" fill="#5c6167" stroke="#202326" stroke-width="4"/>
<path d="${scratches.join('')}" stroke="#7f858b" stroke-width="1.5" fill="none"/>
<path d="${line([...top, ...bottom.reverse()])}Z" fill="#989ca1" stroke="#202326" stroke-width="3.5" stroke-linejoin="round"/>
<path d="${ripples.join('')}" stroke="#54595f" stroke-width="2" fill="none"/>
<g>${coupon.indications.map((each) => indicationMark(each, scale, coupon.stations)).join('')}</g>
<g stroke="#f4e6ad" fill="none" stroke-linecap="round" stroke-linejoin="round">${painted(`${coupon.booth}-${coupon.number}`, 84, HEIGHT - 150)}</g>
</svg>`
}
