/**
 * Keys: 20 characters of 0-9a-z, nine of time and eleven of chance. They sort by the time they were made, and two
 * catalogues can meet without a clash (11 characters: 56 bits of chance in each millisecond).
 */
import { randomBytes } from 'node:crypto'

const figures = '0123456789abcdefghijklmnopqrstuvwxyz'
const pool = Buffer.alloc(4096)
let used = pool.length
let last = 0

function chance(): string {
  let text = ''
  while (text.length < 11) {
    if (used === pool.length) {
      randomBytes(pool.length).copy(pool)
      used = 0
    }
    const byte = pool[used++] ?? 0
    // 252 is the largest multiple of 36: without this, low figures would come more often.
    if (byte < 252) text += figures[byte % 36]
  }
  return text
}

/** A new key. Within this process each is greater than the one before by its time part, or of the same millisecond. */
export function newId(): string {
  last = Math.max(last, Date.now())
  return last.toString(36).padStart(9, '0') + chance()
}
