/** Numbers that look random and come out the same for the same seed, everywhere. */
export type Dice = {
  /** At least 0, below 1. */
  readonly unit: () => number
  readonly normal: (mean?: number, sd?: number) => number
  /** A factor whose logarithm is normal about 0. */
  readonly factor: (sdOfLog: number) => number
  readonly between: (low: number, high: number) => number
  readonly whole: (low: number, high: number) => number
  readonly happens: (chance: number) => boolean
}

/** The mulberry32 generator (T. Ettinger's public-domain code, from memory), with Box–Muller for normals. */
export function diceOf(seed: number): Dice {
  let state = seed >>> 0
  const unit = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  let spare: number | null = null
  const standard = () => {
    if (spare !== null) {
      const kept = spare
      spare = null
      return kept
    }
    const radius = Math.sqrt(-2 * Math.log(1 - unit()))
    const angle = 2 * Math.PI * unit()
    spare = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
  return {
    unit,
    normal: (mean = 0, sd = 1) => mean + sd * standard(),
    factor: (sdOfLog) => Math.exp(sdOfLog * standard()),
    between: (low, high) => low + (high - low) * unit(),
    whole: (low, high) => low + Math.floor((high - low + 1) * unit()),
    happens: (chance) => unit() < chance,
  }
}
