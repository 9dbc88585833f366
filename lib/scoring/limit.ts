import type { Limit, Quantity } from '../criteria/types'
import { quantityOf, type Facts, type Widths } from './facts'
import { TOLERANCE } from './tolerance'

function row(steps: Extract<Limit, { form: 'table' }>['steps'], value: number): number {
  for (const { upTo = Infinity, below = Infinity, mm } of steps) {
    if (value <= upTo + TOLERANCE && value < below - TOLERANCE) return mm
  }
  throw new RangeError('A limit table must end with a row for every size that is left.')
}

/** The limit in millimetres (of an angle in degrees), or null when a quantity it depends on is not known. */
export function limitFor(limit: Limit, weld: Facts, at: Widths | null): number | null {
  switch (limit.form) {
    case 'fixed': return limit.mm
    case 'angle': return limit.degrees
    case 'linear': {
      const of = quantityOf(limit.of, weld, at)
      const plus = limit.plus === undefined ? 0 : quantityOf(limit.plus, weld, at)
      if (of === null || plus === null) return null
      const value = limit.k * of + limit.c
      return plus + (limit.cap === null ? value : Math.min(value, limit.cap))
    }
    case 'table': {
      const by = quantityOf(limit.by, weld, at)
      return by === null ? null : row(limit.steps, by)
    }
  }
}

/** The most the limit could be, whatever is not known: a size beyond this rejects even so. */
export function mostAllowed(limit: Limit): number {
  switch (limit.form) {
    case 'fixed': return limit.mm
    case 'angle': return limit.degrees
    case 'linear': return limit.cap === null || limit.plus !== undefined ? Infinity : limit.cap
    case 'table': return Math.max(...limit.steps.map((step) => step.mm))
  }
}

/** The quantity that keeps a limit from being known. */
export function unknownIn(limit: Limit, weld: Facts, at: Widths | null): Quantity {
  if (limit.form === 'table') return limit.by
  if (limit.form === 'linear' && limit.plus !== undefined && quantityOf(limit.plus, weld, at) === null) return limit.plus
  if (limit.form === 'linear') return limit.of
  throw new RangeError('A fixed limit is always known.')
}

/** True when a limit differs from place to place, with the bead or its root. */
export function variesAlong(limit: Limit | null): boolean {
  if (limit === null || limit.form === 'fixed' || limit.form === 'angle') return false
  const of = limit.form === 'table' ? limit.by : limit.of
  return isWidth(of) || (limit.form === 'linear' && limit.plus !== undefined && isWidth(limit.plus))
}

/** A width is read along the weld; every other quantity is a fact of the weld. */
export const isWidth = (quantity: Quantity): boolean => quantity === 'width' || quantity === 'root-width'
