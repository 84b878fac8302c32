/**
 * Keys: 20 characters of 0-9a-z, nine of time and eleven of chance. They sort in the order they were made: within a
 * millisecond each is the next number after the one before, so that new rows lie side by side in every index. Two
 * catalogues can meet without a clash (11 characters: 56 bits of chance to begin each millisecond).
 */
import { randomFillSync } from 'node:crypto'

const figures = Buffer.from('0123456789abcdefghijklmnopqrstuvwxyz', 'latin1')
const [first = 0, z = 0] = [figures[0], figures[35]]
const timeLength = 9
const made = Buffer.alloc(20)
const pool = Buffer.alloc(4096)
let used = pool.length
let last = 0

function chance(): void {
  for (let at = timeLength; at < made.length; ) {
    if (used === pool.length) {
      randomFillSync(pool)
      used = 0
    }
    const byte = pool[used++] ?? 0
    // 252 is the largest multiple of 36: without this, low figures would come more often.
    if (byte < 252) made[at++] = figures[byte % 36] ?? first
  }
}

/** Steps to the next number; false where all eleven figures are at their end. */
function step(): boolean {
  for (let at = made.length - 1; at >= timeLength; at--) {
    const figure = made[at] ?? z
    if (figure !== z) {
      made[at] = figure === 57 ? 97 : figure + 1
      return true
    }
    made[at] = first
  }
  return false
}

/** A new key. Within this process each is greater than the one before. */
export function newId(): string {
  const now = Date.now()
  if (now > last || !step()) {
    last = Math.max(now, last + 1)
    made.write(last.toString(36).padStart(timeLength, '0'), 0, 'latin1')
    chance()
  }
  return made.toString('latin1')
}
