import type { Point } from './point'

type Size = { readonly width: number; readonly height: number }
/** The part of a picture that is shown: its middle, and how many pixels of the picture one pixel of the screen covers. */
export type PhotoView = { readonly middle: Point; readonly perCss: number }

/** One pixel of the picture fills at most this many of the screen. */
const MOST_ZOOM = 8

/** The whole picture in a place on the screen. */
export const wholePicture = (picture: Size, place: Size): PhotoView => ({
  middle: { x: picture.width / 2, y: picture.height / 2 }, perCss: Math.max(picture.width / place.width, picture.height / place.height),
})

/** A square part of the picture around a point. */
export const around = (middle: Point, sidePx: number, place: Size): PhotoView => ({ middle, perCss: sidePx / Math.min(place.width, place.height) })

/** A view that shows no less than it can and does not leave the picture. */
export function within(view: PhotoView, picture: Size, place: Size): PhotoView {
  const whole = wholePicture(picture, place)
  const perCss = Math.min(whole.perCss, Math.max(1 / MOST_ZOOM, view.perCss))
  const held = (value: number, side: number, shown: number): number => (shown >= side ? side / 2 : Math.min(side - shown / 2, Math.max(shown / 2, value)))
  return { perCss, middle: { x: held(view.middle.x, picture.width, perCss * place.width), y: held(view.middle.y, picture.height, perCss * place.height) } }
}

/** The same view nearer (factor over 1) or farther, with one point of the picture staying where it is on the screen. */
export function zoomed({ middle, perCss }: PhotoView, factor: number, about: Point = middle): PhotoView {
  return { perCss: perCss / factor, middle: { x: about.x + (middle.x - about.x) / factor, y: about.y + (middle.y - about.y) / factor } }
}

/** The point of the picture under a place on the screen, counted from the upper left of the view's own place. */
export const pictureAt = ({ middle, perCss }: PhotoView, place: Size, at: Point): Point => ({
  x: middle.x + (at.x - place.width / 2) * perCss, y: middle.y + (at.y - place.height / 2) * perCss,
})

/** Where a point of the picture lies on the screen, counted from the upper left of the view's own place. */
export const screenAt = ({ middle, perCss }: PhotoView, place: Size, at: Point): Point => ({
  x: (at.x - middle.x) / perCss + place.width / 2, y: (at.y - middle.y) / perCss + place.height / 2,
})

/** The view moved just so far that a point keeps a border of the place around it, CSS pixels. */
export function following(view: PhotoView, place: Size, at: Point, border = 40): PhotoView {
  const { x, y } = screenAt(view, place, at)
  const over = (value: number, side: number): number => Math.min(0, value - Math.min(border, side / 2)) + Math.max(0, value - Math.max(side - border, side / 2))
  const [dx, dy] = [over(x, place.width), over(y, place.height)]
  return dx === 0 && dy === 0 ? view : { ...view, middle: { x: view.middle.x + dx * view.perCss, y: view.middle.y + dy * view.perCss } }
}

/** The view as an SVG viewBox. Pixel (0, 0) of the picture is the middle of its first pixel, the drawing's origin its corner. */
export const viewBoxOf = ({ middle, perCss }: PhotoView, place: Size): string =>
  [middle.x - (place.width / 2) * perCss, middle.y - (place.height / 2) * perCss, place.width * perCss, place.height * perCss].join(' ')
