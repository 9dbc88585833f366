import type { OperatingPoint } from './operating-curve'

// Written by: npm run evidence -- --operating-curve. Do not edit.

/** Where the points come from: 2000 made-up students of up to 60 coupons (seed 252, base scenario of tests/simulator), shipped parameters, no calibration. */
export const OPERATING_SOURCE = { modelVersion: 'margin-state-space-1', students: 2000, seed: 252 } as const

export const OPERATING_POINTS: readonly OperatingPoint[] = [
  { threshold: 0.4, firstTimePass: 0.4264, coupons: 18.395, tests: 2.1225, failed: 1.147, passedBySixty: 0.9755, tooEarly: 0.734, tooLate: 0 },
  { threshold: 0.45, firstTimePass: 0.4764, coupons: 19.292, tests: 1.9405, failed: 0.973, passedBySixty: 0.9675, tooEarly: 0.6585, tooLate: 0 },
  { threshold: 0.5, firstTimePass: 0.5106, coupons: 20.681, tests: 1.802, failed: 0.842, passedBySixty: 0.96, tooEarly: 0.5865, tooLate: 0 },
  { threshold: 0.55, firstTimePass: 0.5646, coupons: 22.312, tests: 1.6495, failed: 0.7045, passedBySixty: 0.945, tooEarly: 0.507, tooLate: 0.001 },
  { threshold: 0.6, firstTimePass: 0.6164, coupons: 24.3675, tests: 1.4735, failed: 0.547, passedBySixty: 0.9265, tooEarly: 0.4, tooLate: 0.007 },
  { threshold: 0.65, firstTimePass: 0.6817, coupons: 26.8975, tests: 1.331, failed: 0.424, passedBySixty: 0.907, tooEarly: 0.305, tooLate: 0.0265 },
  { threshold: 0.7, firstTimePass: 0.7232, coupons: 30.454, tests: 1.1995, failed: 0.3285, passedBySixty: 0.871, tooEarly: 0.2105, tooLate: 0.091 },
  { threshold: 0.75, firstTimePass: 0.7793, coupons: 35.452, tests: 1.034, failed: 0.234, passedBySixty: 0.8, tooEarly: 0.1225, tooLate: 0.241 },
  { threshold: 0.8, firstTimePass: 0.8297, coupons: 42.064, tests: 0.832, failed: 0.142, passedBySixty: 0.69, tooEarly: 0.053, tooLate: 0.481 },
  { threshold: 0.85, firstTimePass: 0.892, coupons: 51.276, tests: 0.49, failed: 0.053, passedBySixty: 0.437, tooEarly: 0.0095, tooLate: 0.7195 },
  { threshold: 0.9, firstTimePass: 0.9286, coupons: 59.5445, tests: 0.0355, failed: 0.0025, passedBySixty: 0.033, tooEarly: 0, tooLate: 0.8125 },
]
