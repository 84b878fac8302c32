/**
 * The printed tables of the 1991 lifting equation: Waters, Putz-Anderson and Garg, "Applications Manual for the Revised
 * NIOSH Lifting Equation", DHHS (NIOSH) 94-110, tables 1 to 5 and 7. As printed, two decimals, also where they differ
 * from the formulas (table 1 at 22 and 23 in, table 3 at 130 cm). Past its last row every multiplier is 0.
 */

/** `[measure, multiplier]`, rising. */
export type Rows = readonly (readonly [number, number])[]

export type MeasureSystem = 'metric' | 'us'

/** Table 1, H in centimetres or inches. */
export const horizontalRows: Readonly<Record<MeasureSystem, Rows>> = {
  metric: [
    [25, 1],
    [28, 0.89],
    [30, 0.83],
    [32, 0.78],
    [34, 0.74],
    [36, 0.69],
    [38, 0.66],
    [40, 0.63],
    [42, 0.6],
    [44, 0.57],
    [46, 0.54],
    [48, 0.52],
    [50, 0.5],
    [52, 0.48],
    [54, 0.46],
    [56, 0.45],
    [58, 0.43],
    [60, 0.42],
    [63, 0.4],
  ],
  us: [
    [10, 1],
    [11, 0.91],
    [12, 0.83],
    [13, 0.77],
    [14, 0.71],
    [15, 0.67],
    [16, 0.63],
    [17, 0.59],
    [18, 0.56],
    [19, 0.53],
    [20, 0.5],
    [21, 0.48],
    [22, 0.46],
    [23, 0.44],
    [24, 0.42],
    [25, 0.4],
  ],
}

/** Table 2, V in centimetres or inches. */
export const verticalRows: Readonly<Record<MeasureSystem, Rows>> = {
  metric: [
    [0, 0.78],
    [10, 0.81],
    [20, 0.84],
    [30, 0.87],
    [40, 0.9],
    [50, 0.93],
    [60, 0.96],
    [70, 0.99],
    [80, 0.99],
    [90, 0.96],
    [100, 0.93],
    [110, 0.9],
    [120, 0.87],
    [130, 0.84],
    [140, 0.81],
    [150, 0.78],
    [160, 0.75],
    [170, 0.72],
    [175, 0.7],
  ],
  us: [
    [0, 0.78],
    [5, 0.81],
    [10, 0.85],
    [15, 0.89],
    [20, 0.93],
    [25, 0.96],
    [30, 1],
    [35, 0.96],
    [40, 0.93],
    [45, 0.89],
    [50, 0.85],
    [55, 0.81],
    [60, 0.78],
    [65, 0.74],
    [70, 0.7],
  ],
}

/** Table 3, D in centimetres or inches. */
export const distanceRows: Readonly<Record<MeasureSystem, Rows>> = {
  metric: [
    [25, 1],
    [40, 0.93],
    [55, 0.9],
    [70, 0.88],
    [85, 0.87],
    [100, 0.87],
    [115, 0.86],
    [130, 0.86],
    [145, 0.85],
    [160, 0.85],
    [175, 0.85],
  ],
  us: [
    [10, 1],
    [15, 0.94],
    [20, 0.91],
    [25, 0.89],
    [30, 0.88],
    [35, 0.87],
    [40, 0.87],
    [45, 0.86],
    [50, 0.86],
    [55, 0.85],
    [60, 0.85],
    [70, 0.85],
  ],
}

/** Table 4, A in degrees. */
export const asymmetryRows: Rows = [
  [0, 1],
  [15, 0.95],
  [30, 0.9],
  [45, 0.86],
  [60, 0.81],
  [75, 0.76],
  [90, 0.71],
  [105, 0.66],
  [120, 0.62],
  [135, 0.57],
]

export type LiftingDuration = 'short' | 'moderate' | 'long'

/**
 * Table 5, lifts a minute: for each duration below and from 75 cm (30 in) of V at the origin. Short is up to 1 h with
 * as much rest again 1.0 times the work, moderate up to 2 h with 0.3 times, long up to 8 h.
 */
export const frequencyRows: readonly {
  readonly perMinute: number
  readonly short: readonly [low: number, high: number]
  readonly moderate: readonly [low: number, high: number]
  readonly long: readonly [low: number, high: number]
}[] = [
  { perMinute: 0.2, short: [1, 1], moderate: [0.95, 0.95], long: [0.85, 0.85] },
  { perMinute: 0.5, short: [0.97, 0.97], moderate: [0.92, 0.92], long: [0.81, 0.81] },
  { perMinute: 1, short: [0.94, 0.94], moderate: [0.88, 0.88], long: [0.75, 0.75] },
  { perMinute: 2, short: [0.91, 0.91], moderate: [0.84, 0.84], long: [0.65, 0.65] },
  { perMinute: 3, short: [0.88, 0.88], moderate: [0.79, 0.79], long: [0.55, 0.55] },
  { perMinute: 4, short: [0.84, 0.84], moderate: [0.72, 0.72], long: [0.45, 0.45] },
  { perMinute: 5, short: [0.8, 0.8], moderate: [0.6, 0.6], long: [0.35, 0.35] },
  { perMinute: 6, short: [0.75, 0.75], moderate: [0.5, 0.5], long: [0.27, 0.27] },
  { perMinute: 7, short: [0.7, 0.7], moderate: [0.42, 0.42], long: [0.22, 0.22] },
  { perMinute: 8, short: [0.6, 0.6], moderate: [0.35, 0.35], long: [0.18, 0.18] },
  { perMinute: 9, short: [0.52, 0.52], moderate: [0.3, 0.3], long: [0, 0.15] },
  { perMinute: 10, short: [0.45, 0.45], moderate: [0.26, 0.26], long: [0, 0.13] },
  { perMinute: 11, short: [0.41, 0.41], moderate: [0, 0.23], long: [0, 0] },
  { perMinute: 12, short: [0.37, 0.37], moderate: [0, 0.21], long: [0, 0] },
  { perMinute: 13, short: [0, 0.34], moderate: [0, 0], long: [0, 0] },
  { perMinute: 14, short: [0, 0.31], moderate: [0, 0], long: [0, 0] },
  { perMinute: 15, short: [0, 0.28], moderate: [0, 0], long: [0, 0] },
]

export type Coupling = 'good' | 'fair' | 'poor'

/** Table 7, below and from 75 cm (30 in) of V at the point that is looked at. */
export const couplings: Readonly<Record<Coupling, readonly [low: number, high: number]>> = {
  good: [1, 1],
  fair: [0.95, 1],
  poor: [0.9, 0.9],
}
