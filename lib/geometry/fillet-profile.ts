import { faceWidthOfLegs, throatOfLegs } from './fillet'
import { arcRadius, segmentArea } from './segment'

/** The cross-section of a fillet in a square corner, from what a gauge reads. Millimetres and mm². */
export type FilletProfile = {
  /** Toe to toe, straight. */
  readonly faceWidthMm: number
  /** Farthest the face stands out over the toe-to-toe line; 0 for a flat or hollow face. */
  readonly convexityMm: number
  readonly concavityMm: number
  /** Legs of the largest right triangle that fits inside: the size of the weld. */
  readonly sizeMm: { readonly a: number; readonly b: number }
  /** Height of that triangle. */
  readonly theoreticalThroatMm: number
  /** Shortest way from root to face. */
  readonly actualThroatMm: number
  /** Shortest way from root to face, convexity left out: what strength counts. */
  readonly effectiveThroatMm: number
  readonly areaMm2: number
}

/**
 * Cross-section of a fillet with straight toes and a face that is flat or an arc through both toes (terms of AWS A3.0; joint
 * penetration and root opening taken as none).
 *
 * @param faceMm how far the middle of the face stands off the toe-to-toe line: above zero convex, below zero concave
 * @throws RangeError when a leg is not above zero, or the face is so round or so hollow that an arc would leave the corner
 */
export function filletProfile(legAMm: number, legBMm: number, faceMm: number): FilletProfile {
  const faceWidthMm = faceWidthOfLegs(legAMm, legBMm)
  const flatThroatMm = throatOfLegs(legAMm, legBMm)
  const flatArea = (legAMm * legBMm) / 2
  if (!Number.isFinite(faceMm)) throw new RangeError(`A face ${faceMm} mm off the toe-to-toe line is not possible.`)
  if (Math.abs(faceMm) < FLAT_MM) {
    return { faceWidthMm, convexityMm: 0, concavityMm: 0, sizeMm: { a: legAMm, b: legBMm }, theoreticalThroatMm: flatThroatMm, actualThroatMm: flatThroatMm, effectiveThroatMm: flatThroatMm, areaMm2: flatArea }
  }
  const arc = faceArc(legAMm, legBMm, faceMm)
  const segment = segmentArea(faceWidthMm, Math.abs(faceMm))
  if (faceMm > 0) {
    return {
      faceWidthMm, convexityMm: faceMm, concavityMm: 0, sizeMm: { a: legAMm, b: legBMm }, theoreticalThroatMm: flatThroatMm,
      actualThroatMm: rootToArc(arc, legAMm, legBMm), effectiveThroatMm: flatThroatMm, areaMm2: flatArea + segment,
    }
  }
  const size = largestTriangle(arc)
  const actualThroatMm = rootToArc(arc, legAMm, legBMm)
  return { faceWidthMm, convexityMm: 0, concavityMm: -faceMm, sizeMm: size, theoreticalThroatMm: throatOfLegs(size.a, size.b), actualThroatMm, effectiveThroatMm: actualThroatMm, areaMm2: flatArea - segment }
}

/** A face nearer to flat than this is flat. */
const FLAT_MM = 1e-6

/** The face: part of a circle about (x, y), root at the origin, legs along the axes; it bulges away from the root or toward it. */
type FaceArc = { readonly x: number; readonly y: number; readonly radius: number; readonly bulge: 'out' | 'in'; readonly fromAngle: number; readonly toAngle: number }

function faceArc(a: number, b: number, face: number): FaceArc {
  const width = Math.hypot(a, b)
  const radius = arcRadius(width, Math.abs(face))
  // Unit vector off the toe-to-toe line, away from the root; the centre lies beyond the face of a hollow weld, behind that of a round one.
  const [outX, outY] = [b / width, a / width]
  const offset = face > 0 ? face - radius : radius + face
  const [x, y] = [a / 2 + outX * offset, b / 2 + outY * offset]
  if (face < 0 && (x < a || y < b)) throw new RangeError(`A face ${-face} mm hollow does not fit legs of ${a} and ${b} mm: the arc would cut under a toe.`)
  if (face > 0 && offset > 0) throw new RangeError(`A face ${face} mm high on legs of ${a} and ${b} mm is more than a half circle.`)
  // Angles from which a circle point faces the root side (hollow) or the air side (round), toe to toe.
  const angleOf = (px: number, py: number): number => (face > 0 ? Math.atan2(py - y, px - x) : Math.atan2(y - py, x - px))
  const toes = [angleOf(a, 0), angleOf(0, b)]
  return { x, y, radius, bulge: face > 0 ? 'out' : 'in', fromAngle: Math.min(...toes), toAngle: Math.max(...toes) }
}

/** Shortest way from the root to the face: along the line through the circle's centre where the arc crosses it, else to the nearer toe. */
function rootToArc(arc: FaceArc, a: number, b: number): number {
  const toCentre = Math.hypot(arc.x, arc.y)
  const angle = arc.bulge === 'in' ? Math.atan2(arc.y, arc.x) : Math.atan2(-arc.y, -arc.x)
  const crosses = angle >= arc.fromAngle && angle <= arc.toAngle
  const along = arc.bulge === 'in' ? toCentre - arc.radius : arc.radius - toCentre
  return crosses ? along : Math.min(a, b)
}

/**
 * Largest right triangle, by area, between the corner and a hollow face: its long side touches the arc. Touching at angle t it
 * stands d(t) from the root and cuts legs d / cos t and d / sin t. The area d² / sin 2t has one peak or falls to the ends; the
 * range is searched by thirds after the ends are looked at.
 */
function largestTriangle(arc: FaceArc): { readonly a: number; readonly b: number } {
  const reach = (t: number): number => arc.x * Math.cos(t) + arc.y * Math.sin(t) - arc.radius
  const area = (t: number): number => reach(t) ** 2 / Math.sin(2 * t)
  let [low, high] = [Math.max(arc.fromAngle, EDGE), Math.min(arc.toAngle, Math.PI / 2 - EDGE)]
  const ends = [low, high]
  for (let round = 0; round < 100; round += 1) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3]
    if (area(left) < area(right)) low = left
    else high = right
  }
  const best = [...ends, (low + high) / 2].reduce((most, t) => (area(t) > area(most) ? t : most))
  return { a: reach(best) / Math.cos(best), b: reach(best) / Math.sin(best) }
}

/** A touching line along a plate cuts no triangle. */
const EDGE = 1e-9
