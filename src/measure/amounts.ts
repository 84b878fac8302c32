/** Small volumes and areas in the units of the United States, for papers and screens that say them in inches. */

/** US fluid ounce and square foot: NIST SP 811, from memory. */
const FLUID_OUNCE_ML = 29.5735295625
const SQUARE_FOOT_M2 = 0.09290304

/** US fluid ounces in millilitres. */
export function fluidOunces(ml: number): number {
  return ml / FLUID_OUNCE_ML
}

/** Square feet in square metres. */
export function squareFeet(m2: number): number {
  return m2 / SQUARE_FOOT_M2
}
