/** Records of damage: open or closed, the owner's clock, what is missing, references. */
import { describe, expect, test } from 'vitest'
import {
  closedAt,
  type DamageWord,
  damageLacks,
  inForce,
  movedBeforePhotograph,
  ownerToldAt,
  turnedSince,
  type WordKind,
  waitOf,
  wordKinds,
} from '../../../../src/record/damage/damage.ts'
import { nextReference } from '../../../../src/record/damage/reference.ts'
import { clockSaid, waitSaid } from '../../../../src/record/damage/say.ts'
import { randomFrom } from '../../database/random-edits.ts'

const found = '2031-06-14T10:05:00.000Z'
let made = 0
function word(kind: WordKind, at = found, strikes: string | null = null): DamageWord {
  made += 1
  return { id: `w${made}`, kind, at, strikes }
}

describe('the state of a record', () => {
  test('follows from the last word that closes or opens it', () => {
    expect(closedAt([])).toBeNull()
    const closed = [word('action'), word('closed', '2031-06-15T08:00:00.000Z')]
    expect(closedAt(closed)).toBe('2031-06-15T08:00:00.000Z')
    expect(closedAt([...closed, word('reopened')])).toBeNull()
    expect(closedAt([...closed, word('reopened'), word('closed', '2031-06-16T08:00:00.000Z')])).toBe(
      '2031-06-16T08:00:00.000Z',
    )
  })

  test('whatever is said, in force is what nobody struck, in its order', () => {
    const chance = randomFrom(5)
    for (let round = 0; round < 300; round += 1) {
      const words: DamageWord[] = []
      const struck = new Set<string>()
      for (let at = 0; at < 12; at += 1) {
        const kind = wordKinds[Math.floor(chance() * wordKinds.length)] ?? 'note'
        const wrong = words[Math.floor(chance() * words.length)]
        if (kind !== 'struck') words.push(word(kind))
        else if (wrong !== undefined && wrong.kind !== 'struck' && !struck.has(wrong.id)) {
          struck.add(wrong.id)
          words.push(word('struck', found, wrong.id))
        }
      }
      const kept = words.filter(({ id, kind }) => kind !== 'struck' && !struck.has(id))
      expect(inForce(words)).toEqual(kept)
    }
  })
})

describe('the owner’s clock', () => {
  // By hand: 10:05 and 24 hours; told at 10:40, and a day and three hours later.
  const due = '2031-06-15T10:05:00.000Z'
  test('runs until its owner is told', () => {
    expect(waitOf(found, null, 24, '2031-06-14T12:05:00.000Z')).toEqual({ due, toldAt: null, waited: 2, late: 0 })
    expect(waitOf(found, null, 24, '2031-06-15T13:05:00.000Z')).toEqual({ due, toldAt: null, waited: 27, late: 3 })
    const told = '2031-06-14T10:35:00.000Z'
    expect(waitOf(found, told, 24, '2032-01-01T00:00:00.000Z')).toEqual({ due, toldAt: told, waited: 0.5, late: 0 })
    // A clock that goes behind another's does not run backwards.
    expect(waitOf(found, null, 24, '2031-06-14T10:00:00.000Z').waited).toBe(0)
  })

  test('stops at the first time that was not struck', () => {
    const wrong = word('owner told', '2031-06-14T10:20:00.000Z')
    const right = word('owner told', '2031-06-14T11:20:00.000Z')
    const again = word('owner told', '2031-06-14T18:00:00.000Z')
    expect(ownerToldAt([again, wrong, right])).toBe(wrong.at)
    expect(ownerToldAt([again, wrong, right, word('struck', found, wrong.id)])).toBe(right.at)
    expect(ownerToldAt([word('insurer told')])).toBeNull()
  })

  test('is said in words', () => {
    const said = (toldAt: string | null, now: string) => clockSaid(waitOf(found, toldAt, 24, now), 24)
    expect(said(null, '2031-06-14T12:10:00.000Z')).toBe('owner to be told within 21 h 55 min')
    expect(said(null, '2031-06-15T13:05:00.000Z')).toBe('owner not told, 3 h late')
    expect(said('2031-06-14T10:40:00.000Z', found)).toBe('owner told 35 min after it was found')
    expect(said('2031-06-17T12:05:00.000Z', found)).toBe('owner told 3 days 2 h after it was found, 2 days 2 h late')
    expect([0, 0.999, 1, 47.5, 48, 49].map(waitSaid)).toEqual([
      '0 min',
      '59 min',
      '1 h',
      '47 h 30 min',
      '2 days',
      '2 days 1 h',
    ])
  })
})

describe('what is missing before it can be closed', () => {
  const codes = (facts: Parameters<typeof damageLacks>[0]) => damageLacks(facts).map(({ code }) => code)
  const bare = { lent: true, reports: 0, drafts: 0, photographs: 0, words: [] }
  test('in the order in which it is done', () => {
    expect(codes(bare)).toEqual(['no-report', 'owner-not-told', 'no-action'])
    expect(codes({ ...bare, reports: 1 })).toEqual(['no-photograph', 'owner-not-told', 'no-action'])
    expect(codes({ ...bare, reports: 1, photographs: 1 })).toEqual(['owner-not-told', 'no-action'])
  })
  test('a draft, once it has its photographs: until two have signed it they can be taken off', () => {
    expect(codes({ ...bare, reports: 1, drafts: 1 })).toEqual(['no-photograph', 'owner-not-told', 'no-action'])
    expect(codes({ ...bare, reports: 1, drafts: 1, photographs: 1 })[0]).toBe('report-draft')
    const [two] = damageLacks({ ...bare, reports: 3, drafts: 2, photographs: 4 })
    expect(two?.text).toMatch(/^2 of its condition reports are still a draft/)
  })
  test('nobody outside is told of a work of the house; what was struck counts for nothing', () => {
    const done = { ...bare, reports: 1, photographs: 2 }
    const action = word('action')
    expect(codes({ ...done, lent: false, words: [action] })).toEqual([])
    const told = word('owner told')
    expect(codes({ ...done, words: [told, action] })).toEqual([])
    expect(codes({ ...done, words: [told, action, word('struck', found, action.id)] })).toEqual(['no-action'])
  })
})

test('it is closed after the last thing that was done, and opened again after it was closed', () => {
  const at = (kind: DamageWord['kind'], moment: string): DamageWord => ({ ...word(kind), id: moment, at: moment })
  const [told, done, closed] = ['2031-06-14T10:10:00.000Z', '2031-06-14T10:30:00.000Z', '2031-06-14T11:00:00.000Z']
  const words = [at('action', done), at('owner told', told), at('note', closed)]
  expect(turnedSince([], 'closed')).toBeNull()
  expect(turnedSince(words, 'closed')?.at).toBe(done)
  expect(turnedSince([...words, { ...at('struck', closed), strikes: done }], 'closed')?.at).toBe(told)
  expect(turnedSince(words, 'reopened')).toBeNull()
  expect(turnedSince([...words, at('closed', closed)], 'reopened')?.at).toBe(closed)
})

test('moved before it was photographed: told with the first movement, of photographs whose time somebody says', () => {
  const [before, first, later] = ['2031-06-14T10:10:00.000Z', '2031-06-14T10:30:00.000Z', '2031-06-14T11:00:00.000Z']
  const moved = [later, first]
  expect(movedBeforePhotograph(found, [{ takenAt: before }, { takenAt: later }], moved)).toBeNull()
  expect(movedBeforePhotograph(found, [{ takenAt: later }], moved)).toBe(first)
  expect(movedBeforePhotograph(found, [{ takenAt: null }], moved)).toBe(first)
  expect(movedBeforePhotograph(found, [], moved)).toBe(first)
  expect(movedBeforePhotograph(found, [], ['2031-06-01T00:00:00.000Z'])).toBeNull()
})

describe('the next reference', () => {
  test('goes on from the last by its pattern', () => {
    expect(nextReference([])).toBe('D-0001')
    expect(nextReference(['D-0006'])).toBe('D-0007')
    expect(nextReference(['D-0999', 'D-9999'])).toBe('D-10000')
    expect(nextReference(['2031/17 dmg'])).toBe('2031/18 dmg')
    expect(nextReference(['Chipped frame'])).toBe('Chipped frame-2')
    expect(nextReference(['99999999999999999999'])).toBe('100000000000000000000')
  })
  test('is never one that was used, in whatever letters', () => {
    expect(nextReference(['d-0008', 'D-0009', 'D-0007'])).toBe('D-0010')
    const used: string[] = ['X-08']
    for (let at = 0; at < 200; at += 1) used.push(nextReference(used))
    expect(new Set(used.map(each => each.toLowerCase())).size).toBe(used.length)
  })
})
