// The part of a photo on the screen. Expected values are worked out by hand from the picture's and the screen's sizes.
import { describe, expect, it } from 'vitest'
import { around, following, pictureAt, screenAt, viewBoxOf, wholePicture, within, zoomed } from '@/lib/measure/photo-view'

const PICTURE = { width: 2000, height: 1000 }
const SCREEN = { width: 400, height: 400 }

describe('a view of a photo', () => {
  it('holds the whole picture at first', () => {
    expect(wholePicture(PICTURE, SCREEN)).toEqual({ middle: { x: 1000, y: 500 }, perCss: 5 })
    expect(viewBoxOf(wholePicture(PICTURE, SCREEN), SCREEN)).toBe('0 -500 2000 2000')
  })

  it('keeps the point under the fingers where it is while it zooms', () => {
    const before = wholePicture(PICTURE, SCREEN)
    const under = pictureAt(before, SCREEN, { x: 300, y: 150 })
    expect(under).toEqual({ x: 1500, y: 250 })
    const after = zoomed(before, 4, under)
    expect(after.perCss).toBe(1.25)
    expect(pictureAt(after, SCREEN, { x: 300, y: 150 })).toEqual(under)
  })

  it('says where a point lies on the screen, and follows it just so far that it keeps a border', () => {
    const view = { middle: { x: 1000, y: 500 }, perCss: 2 }
    expect(screenAt(view, SCREEN, { x: 1100, y: 480 })).toEqual({ x: 250, y: 190 })
    expect(pictureAt(view, SCREEN, { x: 250, y: 190 })).toEqual({ x: 1100, y: 480 })
    expect(following(view, SCREEN, { x: 1100, y: 480 })).toBe(view)
    const after = following(view, SCREEN, { x: 1500, y: 120 })
    expect(screenAt(after, SCREEN, { x: 1500, y: 120 })).toEqual({ x: 360, y: 40 })
  })

  it('does not leave the picture, nor come nearer than 8 screen pixels to one of the picture', () => {
    expect(within({ middle: { x: -500, y: 5000 }, perCss: 1 }, PICTURE, SCREEN)).toEqual({ middle: { x: 200, y: 800 }, perCss: 1 })
    expect(within({ middle: { x: 900, y: 500 }, perCss: 0.01 }, PICTURE, SCREEN).perCss).toBe(1 / 8)
    expect(within({ middle: { x: 900, y: 500 }, perCss: 50 }, PICTURE, SCREEN)).toEqual(wholePicture(PICTURE, SCREEN))
  })

  it('shows a square around a point on the shorter side of the screen', () => {
    expect(around({ x: 700, y: 300 }, 200, { width: 800, height: 400 })).toEqual({ middle: { x: 700, y: 300 }, perCss: 0.5 })
  })
})
