// Measuring on a photo as verbs: a drawn coupon whose bead has a known width, and fingers that mark it.
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import { expect } from './app'

const PX_PER_MM = 8
export const WIDTH = 1600
export const HEIGHT = 900
/** A bank card, ISO/IEC 7810 ID-1. */
export const CARD = { left: 200, top: 400, width: 85.6 * PX_PER_MM, height: 53.98 * PX_PER_MM } as const
export const BEAD = { left: 150, right: 150 + 6 * 25.4 * PX_PER_MM, middle: 200, widthMm: 10 } as const
const PIECE = (BEAD.right - BEAD.left) / 6
export const TOE = (BEAD.widthMm / 2) * PX_PER_MM
export const px = (mm: number): number => mm * PX_PER_MM

/** The coupon from above, the bead in six pieces, each so wide, mm. */
function drawing(widthsMm: readonly number[], zoom: number): Buffer {
  const rect = (x: number, y: number, width: number, height: number, fill: string): string => `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>`
  const bead = (mm: number, piece: number): string => rect(BEAD.left + piece * PIECE, BEAD.middle - (mm / 2) * PX_PER_MM, PIECE, mm * PX_PER_MM, '#505050')
  return Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH * zoom}" height="${HEIGHT * zoom}" viewBox="0 0 ${WIDTH} ${HEIGHT}">${rect(0, 0, WIDTH, HEIGHT, '#a5a5a5')}
    ${rect(CARD.left, CARD.top, CARD.width, CARD.height, '#f0f0f0')}${widthsMm.map(bead).join('')}</svg>`)
}

const EVEN = Array.from({ length: 6 }, () => BEAD.widthMm)

/** The photo as a phone held on its side writes it: turned, with the note in its metadata that says so. */
export async function drawnPhoto(widthsMm: readonly number[] = EVEN): Promise<Buffer> {
  const upright = await sharp(drawing(widthsMm, 1)).blur(1.2).jpeg({ quality: 95 }).toBuffer()
  return sharp(await sharp(upright).rotate(-90).toBuffer()).withMetadata({ orientation: 6 }).jpeg({ quality: 92 }).toBuffer()
}

/** The same coupon as a camera of twelve megapixels and more takes it in poor light, a file of 12 MB and more. */
export async function writeLargePhoto(file: string): Promise<{ readonly bytes: number; readonly widthPx: number }> {
  const [width, height] = [WIDTH * 3, HEIGHT * 3]
  const grain = await sharp({ create: { width, height, channels: 3, background: '#808080', noise: { type: 'gaussian', mean: 128, sigma: 22 } } }).raw().toBuffer()
  const { size } = await sharp(drawing(EVEN, 3)).removeAlpha().composite([{ input: grain, raw: { width, height, channels: 3 }, blend: 'soft-light' }])
    .jpeg({ quality: 97, chromaSubsampling: '4:4:4' }).toFile(file)
  return { bytes: size, widthPx: width }
}

export const dialog = (page: Page, name = 'Measure on the photo') => page.getByRole('dialog', { name })
export const stage = (page: Page) => dialog(page).getByRole('application')

type Shown = { readonly marks: number; readonly view: readonly number[]; readonly place: { readonly x: number; readonly y: number; readonly width: number; readonly height: number } }

/** What the stage shows once the last tap is drawn: read or tapped earlier, the picture would still lie where it was. */
const shown = (page: Page): Promise<Shown> => stage(page).locator('svg').evaluate(async (svg) => {
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
  const { x, y, width, height } = svg.getBoundingClientRect()
  return { marks: svg.querySelectorAll(':scope > g:has(path)').length, view: (svg.getAttribute('viewBox') ?? '').split(' ').map(Number), place: { x, y, width, height } }
})

export const marked = async (page: Page): Promise<number> => (await shown(page)).marks

/** Sets one mark: the first tap of a finger may only come nearer. */
export async function tapMark(page: Page, x: number, y: number): Promise<void> {
  const tapHere = async ({ view: [left = 0, top = 0, width = 1, height = 1], place }: Shown): Promise<Shown> => {
    await page.touchscreen.tap(place.x + ((x + 0.5 - left) / width) * place.width, place.y + ((y + 0.5 - top) / height) * place.height)
    return shown(page)
  }
  const before = await shown(page)
  const after = await tapHere(before)
  const { marks } = after.marks === before.marks ? await tapHere(after) : after
  expect(marks).toBe(before.marks + 1)
}

export async function choosePhoto(page: Page): Promise<void> {
  await page.getByLabel('Photo', { exact: true }).setInputFiles({ name: 'coupon.jpg', mimeType: 'image/jpeg', buffer: await drawnPhoto() })
  await page.getByRole('button', { name: 'Measure on photo 1' }).tap()
  await expect(dialog(page)).toBeVisible()
}

/** The four corners of the card; `zoom` where the picture is not as large as the drawing. */
export async function tapCard(page: Page, zoom = 1): Promise<void> {
  const [right, bottom] = [CARD.left + CARD.width, CARD.top + CARD.height]
  for (const [x, y] of [[CARD.left, CARD.top], [right, CARD.top], [right, bottom], [CARD.left, bottom]] as const) await tapMark(page, x * zoom, y * zoom)
}

export async function tapEnds(page: Page, zoom = 1): Promise<void> {
  await tapMark(page, BEAD.left * zoom, BEAD.middle * zoom)
  await tapMark(page, BEAD.right * zoom, BEAD.middle * zoom)
}

/** Both toes of the station that comes next, each tapped so far beside it, pixels. */
export async function tapToes(page: Page, { zoom = 1, aside = 0 } = {}): Promise<void> {
  const line = await stage(page).locator('svg line').first().evaluate((element) => Number(element.getAttribute('x1')))
  await tapMark(page, line, (BEAD.middle - TOE) * zoom + aside)
  await tapMark(page, line, (BEAD.middle + TOE) * zoom - aside)
}

/** From the keyboard: moves the mark by so many pixels of the photo. Held down with Shift an arrow moves it by ten at a time. */
export async function walk(page: Page, right: number, down: number): Promise<void> {
  for (const [way, back, by] of [['ArrowRight', 'ArrowLeft', right], ['ArrowDown', 'ArrowUp', down]] as const) {
    const key = by > 0 ? way : back
    const far = Math.round(Math.abs(by))
    if (far >= 10) {
      await page.keyboard.down('Shift')
      for (let tens = 0; tens < Math.floor(far / 10); tens += 1) await page.keyboard.down(key)
      await page.keyboard.up(key)
      await page.keyboard.up('Shift')
    }
    for (let ones = 0; ones < far % 10; ones += 1) await page.keyboard.press(key)
  }
}

/** '25/64' or '.394' as a number. */
export function inchesOf(text: string): number {
  return text.split(' ').reduce((sum, part) => {
    const [over = NaN, under = 1] = part.split('/').map(Number)
    return sum + over / under
  }, 0)
}
