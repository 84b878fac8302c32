/** The way through several doors: worked by hand, and against a reading of every way there is. */
import { expect, test } from 'vitest'
import { type CarryWay, carryWay, type Passage, passedBy, wayKnown } from '../../../src/record/carry-way.ts'
import { type Box, fitsDoorway, rankOf, spareOf } from '../../../src/record/fit.ts'
import { randomFrom } from '../database/random-edits.ts'

const door = (words: string, a: string, b: string, width: number, height = 2100): Passage => ({
  kind: 'door',
  words,
  ends: [a, b],
  width,
  height,
  depth: null,
})
const wordsOf = (way: CarryWay | null) => way?.through.map(({ passage }) => passage.words)

/**
 * Store – hall – room straight on, and round by the yard. A case 2 000 high, 1 500 across and 850 through: the straight
 * way's second door is 800 wide, 50 too little; round by the yard three doors of 900, 1 200 and 870 leave 20 at the last.
 */
const plan = [
  door('store to hall', 'store', 'hall', 1500),
  door('hall to room', 'hall', 'room', 800),
  door('store to yard', 'store', 'yard', 900),
  door('yard to annex', 'yard', 'annex', 1200),
  door('annex to room', 'annex', 'room', 870),
]
const box = { width: 1500, height: 2000, depth: 850 }

test('goes round where straight on is too narrow, and tells the tightest by how much', () => {
  const way = carryWay(box, plan, ['store'], ['room'])
  expect(wordsOf(way)).toEqual(['store to yard', 'yard to annex', 'annex to room'])
  expect(way?.tightest?.passage.words).toBe('annex to room')
  expect([way?.tightest?.fit, way?.tightest?.spare]).toEqual(['upright', 20])
  // 780 through passes straight on, by two doors, with 20 to spare; that it is roomier round about does not matter.
  expect(wordsOf(carryWay({ ...box, depth: 780 }, plan, ['store'], ['room']))).toEqual([
    'store to hall',
    'hall to room',
  ])
})

test('where none passes, the way that lacks least; where nothing joins, none', () => {
  const way = carryWay({ ...box, depth: 950 }, plan, ['store'], ['room'])
  // Straight on lacks 150, round about 80.
  expect([way?.tightest?.passage.words, way?.tightest?.fit, way?.tightest?.over]).toEqual(['annex to room', 'no', 80])
  expect(carryWay(box, plan.slice(0, 1), ['store'], ['room'])).toBeNull()
  expect(carryWay(box, plan, ['hall'], ['hall', 'room'])).toEqual({ through: [], tightest: null })
})

test('of doors side by side the roomier; laid on a side only where no way keeps it upright', () => {
  const low = door('low', 'a', 'b', 3000, 1600)
  expect(wordsOf(carryWay(box, [low], ['a'], ['b']))).toEqual(['low'])
  expect(carryWay(box, [low], ['a'], ['b'])?.tightest?.fit).toBe('tipped')
  const two = [low, door('narrow', 'a', 'b', 900), door('wide', 'a', 'b', 1000)]
  expect(wordsOf(carryWay(box, two, ['a'], ['b']))).toEqual(['wide'])
})

test('a lift between storeys is a passage by its cabin', () => {
  const lift: Passage = {
    kind: 'lift',
    words: 'lift',
    ends: ['below', 'above'],
    width: 1400,
    height: 2200,
    depth: 2600,
  }
  // On its floor 1 500 lies along 2 600 and 850 across 1 400; up, 2 000 of 2 200 is the tightest.
  expect(passedBy(box, lift)).toMatchObject({ fit: 'upright', over: 0, spare: 200 })
  const way = carryWay(box, [door('in', 'yard', 'below', 860), lift], ['yard'], ['above'])
  expect([wordsOf(way), way?.tightest?.passage.words, way?.tightest?.spare]).toEqual([['in', 'lift'], 'in', 10])
})

test('what is to spare can be added to every measure, and not a tenth of a millimetre more', () => {
  const random = randomFrom(31)
  const side = () => Math.round(200 + random() * 2400)
  let seen = 0
  for (let count = 0; count < 1000; count++) {
    const [of, through] = [
      { width: side(), height: side(), depth: side() },
      { width: side(), height: side() },
    ]
    const tell = (each: Box) => fitsDoorway(each, through)
    const now = tell(of)
    if (now === 'no') continue
    const spare = spareOf(of, tell)
    const larger = (by: number) => ({ width: of.width + by, height: of.height + by, depth: of.depth + by })
    expect(rankOf(tell(larger(Math.max(0, spare - 0.1))))).toBeLessThanOrEqual(rankOf(now))
    expect(rankOf(tell(larger(spare + 0.1)))).toBeGreaterThan(rankOf(now))
    seen++
  }
  expect(seen).toBeGreaterThan(200)
})

/** Every way that goes through no ground twice, judged by its worst passage, then how many it has, then what it leaves. */
function byReadingAll(of: Box, passages: readonly Passage[], from: string, to: string): readonly number[] | null {
  const found: (readonly number[])[] = []
  const go = (at: string, been: readonly string[], through: readonly Passage[]) => {
    if (at === to) {
      const passed = through.map(passage => passedBy(of, passage))
      const rank = Math.max(...passed.map(({ fit }) => rankOf(fit)))
      const over = Math.max(...passed.map(({ fit, over }) => (fit === 'no' ? over : 0)))
      found.push([rank, over, passed.length, -Math.min(...passed.map(({ spare }) => spare))])
      return
    }
    for (const passage of passages) {
      const behind = passage.ends[0] === at ? passage.ends[1] : passage.ends[1] === at ? passage.ends[0] : null
      if (behind !== null && !been.includes(behind)) go(behind, [...been, behind], [...through, passage])
    }
  }
  go(from, [from], [])
  const differ = (a: readonly number[], b: readonly number[]) =>
    a.map((each, at) => each - (b[at] ?? 0)).find(each => each !== 0)
  return found.sort((a, b) => differ(a, b) ?? 0)[0] ?? null
}

test('is the best of all ways on any plan', () => {
  const random = randomFrom(47)
  const rooms = ['a', 'b', 'c', 'd', 'e', 'f']
  const pick = () => rooms[Math.floor(random() * rooms.length)] ?? 'a'
  const seen = { none: 0, passes: 0, stuck: 0, long: 0 }
  for (let count = 0; count < 600; count++) {
    const passages = Array.from({ length: 9 }, (_, nth) =>
      door(String(nth), pick(), pick(), Math.round(700 + random() * 600), Math.round(1800 + random() * 800)),
    ).filter(({ ends }) => ends[0] !== ends[1])
    const of = {
      width: Math.round(500 + random() * 1500),
      height: Math.round(1000 + random() * 1500),
      depth: Math.round(200 + random() * 1000),
    }
    const way = carryWay(of, passages, ['a'], ['f'])
    const best = byReadingAll(of, passages, 'a', 'f')
    const figures =
      way === null || way.tightest === null
        ? null
        : [
            rankOf(way.tightest.fit),
            way.tightest.fit === 'no' ? way.tightest.over : 0,
            way.through.length,
            -Math.min(...way.through.map(({ spare }) => spare)),
          ]
    expect(figures, JSON.stringify({ of, passages })).toEqual(best)
    if (way === null) seen.none++
    else if (way.tightest?.fit === 'no') seen.stuck++
    else seen.passes++
    if ((way?.through.length ?? 0) > 2) seen.long++
  }
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(30)
})

test('what the plan says goes before what lies beyond, and doorways that it leaves unsaid come last', () => {
  const cube = { width: 1000, height: 1000, depth: 900 }
  const narrow = door('narrow', 'a', 'b', 700)
  const known = {
    inside: [narrow],
    out: [door('out of a', 'a', 'yard', 1500), door('out of b', 'b', 'yard', 1500)],
    unsaid: [door('unsaid', 'a', 'b', 1500)],
    outside: ['yard'],
  }
  const wide = { ...known, inside: [door('wide', 'a', 'b', 1500)] }
  expect(wayKnown(cube, wide, 'a', 'b')).toMatchObject({ by: 'plan', through: [{ passage: { words: 'wide' } }] })
  expect(wayKnown(cube, known, 'a', 'b')?.by).toBe('beyond')
  // Where nothing passes, the plan's own way is told, not a doorway that nobody joined.
  expect(wayKnown(cube, { ...known, out: [] }, 'a', 'b')).toMatchObject({ by: 'plan', tightest: { fit: 'no' } })
  expect(wayKnown(cube, { ...known, inside: [], out: [] }, 'a', 'b')?.by).toBe('unsaid')
  expect(wayKnown(cube, { inside: [], out: [], unsaid: [], outside: ['yard'] }, 'a', 'b')).toBeNull()
  expect(wayKnown(cube, known, 'a', null)?.through.map(({ passage }) => passage.words)).toEqual(['out of a'])
})
