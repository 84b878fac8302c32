/** Chance from a seed, the same on every machine: mulberry32 (Tommy Ettinger, public domain). */

export type Chance = () => number

/** Numbers from 0 up to 1. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** A whole number from 0 up to `below`. */
export function pickBelow(chance: Chance, below: number): number {
  return Math.floor(chance() * below)
}
