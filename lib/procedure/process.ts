/** Arc welding processes the program teaches, by their AWS abbreviations (FCAW split by shielding: -S self-shielded, -G gas-shielded). */
export const PROCESSES = ['SMAW', 'FCAW-S', 'FCAW-G', 'GMAW'] as const
export type Process = (typeof PROCESSES)[number]

/** Welding current types: electrode positive, electrode negative, alternating. */
export const POLARITIES = ['DCEP', 'DCEN', 'AC'] as const
export type Polarity = (typeof POLARITIES)[number]
