/**
 * Keys: 20 characters of 0-9a-z, nine of time and eleven of chance. They sort by the time they were made, and two
 * catalogues can meet without a clash (11 characters: 56 bits of chance in each millisecond).
 */
import { randomFillSync } from 'node:crypto'

const figures = Buffer.from('0123456789abcdefghijklmnopqrstuvwxyz', 'latin1')
const pool = Buffer.alloc(4096)
let used = pool.length
let last = 0
let time = ''
const made = Buffer.alloc(11)

function chance(): string {
  let at = 0
  while (at < made.length) {
    if (used === pool.length) {
      randomFillSync(pool)
      used = 0
    }
    const byte = pool[used++] ?? 0
    // 252 is the largest multiple of 36: without this, low figures would come more often.
    if (byte < 252) made[at++] = figures[byte % 36] ?? 0
  }
  return made.toString('latin1')
}

/** A new key. Within this process each is greater than the one before by its time part, or of the same millisecond. */
export function newId(): string {
  const now = Date.now()
  if (now > last) {
    last = now
    time = last.toString(36).padStart(9, '0')
  }
  return time + chance()
}
