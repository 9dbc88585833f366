import type { Limit, LimitStep, Quantity } from './types'

// Words for writing sets. What they return is plain data.

/** In millimetres. Through 254: a binary fraction of an inch then comes out as the decimal it is. */
export const inches = (value: number): number => (value * 254) / 10

export const fixed = (mm: number): Limit => ({ form: 'fixed', mm })

export const degrees = (value: number): Limit => ({ form: 'angle', degrees: value })

/** `k · of`. */
export const times = (k: number, of: Quantity): Limit => ({ form: 'linear', of, k, c: 0, cap: null })

/** `min(k · of + c, cap)`. */
export const linear = (of: Quantity, k: number, c: number, cap: number | null): Limit => ({ form: 'linear', of, k, c, cap })

/** A quantity and `min(k · of + c, cap)` on top of it. */
export const onTopOf = (plus: Quantity, of: Quantity, k: number, c: number, cap: number | null): Limit => ({ form: 'linear', plus, of, k, c, cap })

export const table = (by: Quantity, ...steps: LimitStep[]): Limit => ({ form: 'table', by, steps })
export const upTo = (end: number, mm: number): LimitStep => ({ upTo: end, mm })
export const below = (end: number, mm: number): LimitStep => ({ below: end, mm })
export const otherwise = (mm: number): LimitStep => ({ mm })
