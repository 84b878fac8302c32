/** Terms of loans: each kind held, broken by a known amount, or not known; what no plan can be held against is refused. */
import { describe, expect, test } from 'vitest'
import type { DaySum } from '../../../src/insurance/held.ts'
import { barriersSeen } from '../../../src/loan/terms/barriers.ts'
import { withoutSaid } from '../../../src/loan/terms/findings.ts'
import { quoted, termHeld } from '../../../src/loan/terms/held.ts'
import type { Together } from '../../../src/loan/terms/money.ts'
import type { LentWork } from '../../../src/loan/terms/planned.ts'
import { termSaid } from '../../../src/loan/terms/said.ts'
import { type Term, type TermKind, termKinds, termProblem } from '../../../src/loan/terms/term.ts'
import { randomFrom } from '../database/random-edits.ts'
import { climate, on, room, say, state, term, text, work } from './lent.ts'

describe('a term', () => {
  test.each<[TermKind, Partial<Term>, string, LentWork?]>([
    ['light', { high: 50 }, 'holds'],
    ['light', { high: 49 }, 'broken'],
    ['light', { high: 49 }, 'broken', { ...work, hung: null, reading: { lux: 49.5, day: '2031-03-10' } }],
    ['light', { high: 50 }, 'unknown', { ...on({ plannedLux: null }), reading: null }],
    ['dose', { high: 11_200 }, 'holds'],
    ['dose', { high: 11_199 }, 'broken'],
    ['dose', { high: 15_000 }, 'unknown', { ...work, dose: { most: 11_200, unknownHours: 8 } }],
    // What is known is too much already, whatever else there was.
    ['dose', { high: 10_000 }, 'broken', { ...work, dose: { most: 11_200, unknownHours: 8 } }],
    ['dose', { high: 15_000 }, 'unknown', { ...work, dose: null }],
    ['uv', { high: 12 }, 'holds'],
    ['uv', { high: 10 }, 'broken'],
    ['uv', { high: 10 }, 'unknown', { ...work, violet: null }],
    ['humidity', { low: 40, high: 60 }, 'holds'],
    ['humidity', { low: 45, high: 55 }, 'broken'],
    ['humidity', { low: 45, high: 55 }, 'unknown', { ...work, climate: null }],
    ['humidity', { low: 45, high: 55 }, 'unknown', { ...work, climate: { ...climate, rooms: [] } }],
    [
      'humidity',
      { low: 45, high: 55 },
      'unknown',
      { ...work, climate: { ...climate, rooms: [{ ...room, loggers: [] }] } },
    ],
    ['temperature', { high: 21 }, 'holds'],
    ['temperature', { low: 19 }, 'broken'],
    ['glazing', { choice: 'any' }, 'holds'],
    ['glazing', { choice: 'laminated' }, 'broken'],
    ['glazing', { choice: 'any' }, 'broken', { ...work, glazing: 'none' }],
    ['glazing', { choice: 'any' }, 'unknown', { ...work, glazing: '' }],
    ['fixing', {}, 'broken'],
    ['fixing', {}, 'holds', on({ kept: true })],
    ['fixing', {}, 'holds', on({ method: 'security-hangers' })],
    ['fixing', {}, 'unknown', on({ method: null })],
    ['framing', {}, 'holds'],
    ['framing', {}, 'broken', { ...work, part: 'sheet' }],
    ['framing', {}, 'unknown', { ...work, part: null }],
    ['framing', { choice: 'frame-stays' }, 'asked'],
    ['framing', { choice: 'frame-stays' }, 'broken', { ...work, part: 'sheet' }],
    ['framing', { choice: 'glazing-stays' }, 'asked'],
    ['framing', { choice: 'glazing-stays' }, 'broken', { ...work, glazing: 'none' }],
    ['framing', { choice: 'glazing-stays' }, 'unknown', { ...work, glazing: '' }],
    ['hung-width', { high: 500 }, 'holds'],
    ['hung-width', { high: 499 }, 'broken'],
    ['hung-height', { high: 600 }, 'holds'],
    ['hung-height', { high: 599 }, 'broken'],
    ['hung-depth', { high: 60 }, 'holds'],
    ['hung-depth', { high: 59 }, 'broken'],
    ['hung-depth', { high: 60 }, 'unknown', { ...work, size: { ...work.size, depth: null } }],
    ['hung-mass', { high: 8 }, 'holds'],
    ['hung-mass', { high: 7.9 }, 'broken'],
    ['hung-mass', { high: 7.9 }, 'unknown', { ...work, mass: null }],
    ['security', { choice: 'locked' }, 'broken'],
    ['security', { choice: 'locked' }, 'holds', on({ kept: true })],
    ['security', { choice: 'locked' }, 'unknown', on({ method: null })],
    ['security', { choice: 'watched' }, 'asked'],
    ['security', { choice: 'alarm' }, 'asked', { ...work, hung: null }],
    ['security', { choice: 'locked-room' }, 'asked'],
    ['fixing', { choice: 'd-rings' }, 'holds'],
    ['fixing', { choice: 'cleat' }, 'broken'],
    ['framing', { choice: 'none' }, 'broken'],
    ['framing', { choice: 'none' }, 'holds', { ...work, part: 'sheet' }],
    ['security', { choice: 'case' }, 'broken'],
    ['security', { choice: 'case' }, 'holds', on({ method: 'case' })],
    ['security', { choice: 'case' }, 'unknown', on({ method: null })],
    ['security', { choice: 'out-of-reach' }, 'holds'],
    ['security', { choice: 'out-of-reach' }, 'holds', on({ barriers: [], method: 'case' })],
    ['security', { choice: 'out-of-reach' }, 'broken', on({ barriers: [] })],
    ['security', { choice: 'out-of-reach' }, 'unknown', { ...work, hung: null }],
    ['credit', { choice: 'Quay collection, tamble' }, 'holds'],
    ['credit', { choice: 'Quay Collection, gift of Bo Lind' }, 'broken'],
    ['credit', { choice: 'Quay Collection' }, 'broken', on({ label: 'Ada Ruel, Groyne' })],
    [
      'credit',
      { choice: 'Quay Collection' },
      'holds',
      { ...on({ label: 'Groyne. Quay Collection.' }), creditLine: '' },
    ],
    ['credit', { choice: 'Quay Collection' }, 'broken', { ...work, creditLine: '' }],
    ['height', { low: 1000, high: 1600 }, 'holds'],
    ['height', { low: 1044 }, 'broken'],
    ['height', { high: 1500 }, 'broken'],
    ['height', { low: 1000 }, 'unknown', { ...work, hung: null }],
    ['barrier', { low: 600 }, 'holds'],
    ['barrier', { low: 650 }, 'broken'],
    ['barrier', { low: 600 }, 'broken', on({ barriers: [] })],
    ['barrier', { low: 600 }, 'broken', on({ barriers: [{ from: 1500, to: 2300, away: 700 }] })],
    ['barrier', { low: 600 }, 'broken', on({ barriers: [{ from: 0, to: 9000, away: 7000 }] })],
    ['apart', { choice: 'Bo Lind' }, 'broken'],
    ['apart', { choice: 'no. 12' }, 'broken'],
    ['apart', { choice: 'Ada Ruel, no. 13' }, 'holds'],
    ['handling', { choice: 'Ines Farrow, tamsin oake' }, 'holds'],
    ['handling', { choice: 'Ines Farrow' }, 'broken'],
    ['handling', { choice: 'Ines Farrow' }, 'unknown', on({ hands: [] })],
  ])('of %s, %o: %s', (kind, more, expected, of = work) => {
    expect(termProblem(term(kind, more))).toBeNull()
    expect(state(term(kind, more), of)).toBe(expected)
  })

  test('says by how much it is broken, and where', () => {
    expect(text(term('height', { low: 1044 }))).toBe(
      'On Room 1, north its lower edge is 1000 mm above the floor, 44 mm too low.',
    )
    expect(text(term('barrier', { low: 650 }))).toBe('The barrier stands 600 mm before Room 1, north, 50 mm too near.')
    expect(text(term('barrier', { low: 600 }), on({ barriers: [{ from: 1500, to: 2300, away: 700 }] }))).toBe(
      'The barrier leaves 200 mm of its width open on Room 1, north.',
    )
    expect(text(term('hung-depth', { high: 40 }))).toBe('As hung it is 60 mm deep, 20 mm too much.')
    expect(text(term('hung-mass', { high: 7.5 }))).toBe('It weighs 8 kg (17.6 lb), 0.5 kg (1.1 lb) too much.')
    expect(text(term('uv', { high: 10 }))).toBe('The meter showed 12 µW/lm on 3 March 2031, 2 too much.')
  })

  test('of air says how far, when, for how long, in which room, and on how many days it was read', () => {
    expect(text(term('humidity', { low: 45, high: 55 }))).toBe(
      'Room 1 reached 56.0 % on 12:30, 1.0 % too much; beyond the term for 20 min. Read on 1 of 31 days from 1 March 2031 to 31 March 2031.',
    )
    expect(text(term('temperature', { low: 19 }))).toBe(
      'Room 1 fell to 18.5 °C (65.3 °F) on 12:00, 0.5 K too little; beyond the term for 10 min. Read on 1 of 31 days from 1 March 2031 to 31 March 2031.',
    )
    expect(text(term('humidity', { low: 40 }))).toBe(
      'Room 1 stayed between 44.0 % and 56.0 %. Read on 1 of 31 days from 1 March 2031 to 31 March 2031.',
    )
    const two = { ...work, climate: { ...climate, rooms: [room, { ...room, room: 'Store' }] } }
    expect(text(term('humidity', { high: 55 }), two)).toContain('for 20 min (Room 1 10 min, Store 10 min)')
    expect(text(term('humidity', { high: 55 }), { ...work, climate: { ...climate, rooms: [] } })).toContain(
      'Nothing says in which room it is from 1 March 2031',
    )
  })

  test('is quoted in the agreement’s words, in ours where there are none', () => {
    const bright = term('light', { high: 40, said: ' Forty lux at the most. ' })
    const told = termHeld(bright, work, say)
    expect(quoted(bright, '4', 'QC 7', told, say)).toBe(
      '4: loan QC 7 says “Forty lux at the most.”. The meter showed 48 lx on 10 March 2031, 8 lx too much.',
    )
    expect(termSaid(term('humidity', { low: 45, high: 55 }), say)).toBe('relative humidity 45 % to 55 %')
    expect(termSaid(term('height', { low: 900 }), say)).toBe('lower edge at least 900 mm above the floor')
  })

  test('without a figure, turned round or beyond all use is refused by name', () => {
    for (const kind of termKinds) {
      const wrong = termProblem(term(kind))
      // These two ask for something when nothing more is said: a lock, the frame.
      expect(wrong === null, kind).toBe(kind === 'fixing' || kind === 'framing')
    }
    expect(termProblem(term('vehicle', { high: 100.5, choice: 'EUR' }))?.field).toBe('high')
    expect(termProblem(term('indemnity', { high: 100, choice: 'XYZ' }))?.field).toBe('choice')
    expect(termProblem(term('fixing', { choice: 'glue' }))?.message).toContain('choose wire, d-rings')
    expect(termProblem(term('temperature', { low: 22, high: 18 }))?.code).toBe('reversed')
    expect(termProblem(term('humidity', { high: 550 }))?.code).toBe('out-of-range')
    expect(termProblem(term('glazing', { choice: 'paper' }))?.code).toBe('no-words')
  })

  test('a stricter one is broken wherever a looser one is', () => {
    const random = randomFrom(31)
    for (let n = 0; n < 500; n++) {
      const lux = Math.round(random() * 200)
      const [a = 0, b = 0] = [1 + Math.round(random() * 200), 1 + Math.round(random() * 200)].sort((x, y) => x - y)
      const planned = on({ plannedLux: lux })
      if (state(term('light', { high: b }), planned) === 'broken')
        expect(state(term('light', { high: a }), planned)).toBe('broken')
      const away = Math.round(random() * 1500)
      const barrier = on({ barriers: [{ from: 0, to: 5000, away }] })
      if (state(term('barrier', { low: Math.max(1, a) }), barrier) === 'broken' && away < 2000)
        expect(state(term('barrier', { low: b }), barrier)).toBe('broken')
    }
  })
})

describe('a term of money', () => {
  const euros = term('vehicle', { high: 200_000_000, choice: 'EUR' })
  const seen = (minor: number, against: Together['against'], more: Partial<DaySum> = {}): Together => ({
    ...{ words: 'Van 1', day: '2031-03-10', against },
    sum: { day: 0, minor, apart: [], works: 2, without: 0, at: 0, ...more },
  })
  const within = { verdict: 'within', over: 0 } as const
  const held = (together: LentWork['together']) => termHeld(euros, { ...work, together }, say)

  test('holds by its greatest sum, is broken by the one most over it', () => {
    expect(held([seen(1_000, within), seen(150_000_000, within)])).toMatchObject({
      state: 'holds',
      text: 'Van 1: EUR\u00a01\u2009500\u2009000 on 10 March 2031 is the most.',
    })
    const over = [seen(210_000_000, { verdict: 'over', over: 10_000_000 }), seen(500_000_000, within)]
    expect(held(over)).toMatchObject({ state: 'broken', figures: { over: 10_000_000 } })
    expect(termSaid(euros, say)).toBe('at most EUR\u00a02\u2009000\u2009000 together in one vehicle')
  })

  test('is never told to hold while a value or a rate is missing, or where nobody summed', () => {
    const open = seen(5, { verdict: 'unsure', over: 0 }, { without: 1, apart: [{ minor: 700, currency: 'JPY' }] })
    expect(held([seen(9, within), open])).toMatchObject({
      state: 'unknown',
      text: 'Van 1: EUR\u00a00.05 on 10 March 2031, but 1 work has no value, and JPY\u00a0700 without a rate is not in it.',
    })
    expect([held(null).state, held([]).state]).toEqual(['unknown', 'unknown'])
  })
})

describe('barriers of a room', () => {
  // The north wall runs to the right along y = 0; the room lies below it on the page.
  const north = { from: [0, 0], to: [9000, 0], face: 0 } as const
  test('are seen along the wall and before it', () => {
    expect(barriersSeen(north, [{ at: [2000, 700], turn: 0, width: 1000, depth: 100 }])).toEqual([
      { from: 1500, to: 2500, away: 650 },
    ])
    const [turned] = barriersSeen(north, [{ at: [2000, 700], turn: 90, width: 1000, depth: 100 }])
    expect(turned?.from).toBeCloseTo(1950, 6)
    expect(turned?.away).toBeCloseTo(200, 6)
    expect(barriersSeen(north, [{ at: [2000, -700], turn: 0, width: 1000, depth: 100 }])).toEqual([])
  })

  test('are the same however room and barrier are turned together', () => {
    const random = randomFrom(7)
    for (let n = 0; n < 200; n++) {
      const angle = random() * 360
      const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
      const put = (x: number, y: number) => [x * cos - y * sin + 500, x * sin + y * cos - 800] as const
      const thing = {
        at: [random() * 9000, 300 + random() * 3000] as const,
        turn: random() * 360,
        width: 1200,
        depth: 80,
      }
      const [plain] = barriersSeen(north, [thing])
      const [carried] = barriersSeen({ from: put(0, 0), to: put(9000, 0), face: 0 }, [
        { ...thing, at: put(thing.at[0], thing.at[1]), turn: thing.turn + angle },
      ])
      for (const key of ['from', 'to', 'away'] as const)
        expect(carried?.[key]).toBeCloseTo(plain?.[key] ?? Number.NaN, 5)
    }
  })
})

test('light is told once: in the lender’s words where they are as strict', () => {
  const wall = [
    {
      severity: 'stop' as const,
      code: 'light-over-limit',
      subject: { kind: 'placement', id: 'p1' },
      text: '',
      figures: { limit: 50, planned: 80 },
    },
    { severity: 'stop' as const, code: 'gap', subject: { kind: 'placement', id: 'p1' }, text: '', figures: {} },
  ]
  const said = (most: number, id = 'w1') => [
    {
      severity: 'stop' as const,
      code: 'term-light',
      subject: { kind: 'work', id },
      text: '',
      figures: { most, planned: 80 },
    },
  ]
  const works = [{ placement: 'p1', work: 'w1' }]
  expect(withoutSaid(wall, works, said(50)).map(({ code }) => code)).toEqual(['gap'])
  expect(withoutSaid(wall, works, said(75))).toHaveLength(2)
  expect(withoutSaid(wall, works, said(50, 'w9'))).toHaveLength(2)
  expect(withoutSaid(wall, works, [])).toEqual(wall)
})
