import { expect, test } from 'vitest'
import { seenAt, takePhoto, type Camera } from '../../support/synthetic-photo'

const above: Camera = { width: 101, height: 81, focalPx: 1000, at: { x: 30, y: 20 }, distanceMm: 250, tiltDeg: 0, leanDeg: 90, rollDeg: 0 }

test('a camera straight above sees four pixels to the millimetre', () => {
  const [middle, right, down] = [seenAt(above, { x: 30, y: 20 }), seenAt(above, { x: 31, y: 20 }), seenAt(above, { x: 30, y: 21 })]
  expect(middle).toEqual({ x: 50, y: 40 })
  expect(Math.hypot(right.x - 50, right.y - 40)).toBeCloseTo(4, 9)
  expect((right.x - 50) * (down.y - 40) - (right.y - 40) * (down.x - 50)).toBeCloseTo(16, 9) // not mirrored
})

test('a tilted camera sees what is farther off smaller, and a square no longer as one', () => {
  const camera = { ...above, tiltDeg: 40 }
  const side = (x: number, y: number, dx: number, dy: number): number => {
    const [a, b] = [seenAt(camera, { x, y }), seenAt(camera, { x: x + dx, y: y + dy })]
    return Math.hypot(b.x - a.x, b.y - a.y)
  }
  expect(side(25, 10, 10, 0)).toBeLessThan(0.97 * side(25, 30, 10, 0)) // it leans toward +y and stands there
  expect(side(30, 19.5, 0, 1)).toBeCloseTo(4 * Math.cos((40 * Math.PI) / 180), 2)
})

test('the drawn picture and the camera agree on where things are', () => {
  const camera = { ...above, tiltDeg: 25, leanDeg: 70, rollDeg: 12 }
  const photo = takePhoto(camera, ({ x, y }) => (Math.hypot(x - 26, y - 17) < 1.5 ? 250 : 0), { blurPx: 1, lightFall: 0, noise: 0, seed: 1 })
  let [sum, sumX, sumY] = [0, 0, 0]
  photo.data.forEach((level, index) => {
    sum += level
    sumX += level * (index % photo.width)
    sumY += level * Math.floor(index / photo.width)
  })
  const dot = seenAt(camera, { x: 26, y: 17 })
  expect(sum).toBeGreaterThan(10_000)
  expect(Math.hypot(sumX / sum - dot.x, sumY / sum - dot.y)).toBeLessThan(0.1)
})
