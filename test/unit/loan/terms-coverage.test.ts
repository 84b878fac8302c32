/**
 * What loan agreements ask of how works are shown, phrase by phrase, and the terms that answer each; every one holds for
 * some work and is broken for another, by figures or by a person's word (common practice, no source).
 */
import { expect, test } from 'vitest'
import { termHeld } from '../../../src/loan/terms/held.ts'
import type { Together } from '../../../src/loan/terms/money.ts'
import type { LentWork } from '../../../src/loan/terms/planned.ts'
import { type Term, termChoices, termKinds, termProblem } from '../../../src/loan/terms/term.ts'
import { on, say, term, work } from './lent.ts'

const money = { high: 100_000, choice: 'EUR' }
const sum = { day: '2031-03-10', minor: 1, apart: [], works: 1, without: 0, at: 0 }
const together = (verdict: 'within' | 'over'): LentWork => ({
  ...work,
  together: [
    { words: 'Van 1', day: '2031-03-10', against: { verdict, over: 0 }, sum: { ...sum, day: 0 } } satisfies Together,
  ],
})
const framed = { ...work, part: 'sheet' }
const courier = { name: 'Edda Voss', role: 'courier' }
const seen = { day: '2031-03-05', people: 'Edda Voss', onWall: true }
const people = (moves: readonly (typeof seen)[], contacts = [courier]): LentWork => ({
  ...work,
  people: { contacts, moves, signed: [] },
})
const word = (kept: boolean) => ({ confirmed: { kept, by: 'Ines Farrow', on: '2031-03-02', note: '' } })
type Case = readonly [holds: Term, good: LentWork, bad: LentWork, broken?: Term]
const byWord = (asked: Term): Case => [{ ...asked, ...word(true) }, work, work, { ...asked, ...word(false) }]

/** By phrase: a term, a work for which it holds, one for which it is broken; last the term that is, where it is another. */
const phrases: Readonly<Record<string, readonly Case[]>> = {
  indemnity: [[term('indemnity', money), together('within'), together('over')]],
  'transit limits': [
    [term('vehicle', money), together('within'), together('over')],
    [term('journey', money), together('within'), together('over')],
  ],
  light: [
    [term('light', { high: 50 }), work, on({ plannedLux: 60 })],
    [term('dose', { high: 11_200 }), work, { ...work, dose: { most: 11_201, unknownHours: 0 } }],
  ],
  UV: [[term('uv', { high: 12 }), work, { ...work, violet: { uv: 13, day: '2031-03-03' } }]],
  climate: [
    [term('humidity', { low: 44, high: 56 }), work, work, term('humidity', { low: 45 })],
    [term('temperature', { low: 18.5 }), work, work, term('temperature', { low: 19 })],
  ],
  glazing: [[term('glazing', { choice: 'acrylic' }), work, { ...work, glazing: 'glass' }]],
  fixing: [
    [term('fixing'), on({ kept: true }), work],
    [term('fixing', { choice: 'd-rings' }), work, on({ method: 'cleat' })],
  ],
  security: [
    [term('security', { choice: 'case' }), on({ method: 'case' }), work],
    [term('security', { choice: 'out-of-reach' }), work, on({ barriers: [] })],
    [term('security', { choice: 'locked' }), on({ kept: true }), work],
    [term('height', { low: 1000 }), work, on({ lower: 900 })],
    [term('apart', { choice: 'Bo Lind' }), on({ beside: [] }), work],
    byWord(term('security', { choice: 'watched' })),
    byWord(term('security', { choice: 'alarm' })),
    byWord(term('security', { choice: 'locked-room' })),
  ],
  'barrier distance': [[term('barrier', { low: 600 }), work, on({ barriers: [{ from: 0, to: 5000, away: 550 }] })]],
  'framing limits': [
    [term('framing'), work, framed],
    [term('framing', { choice: 'none' }), framed, work],
    [term('framing', { choice: 'frame-stays', ...word(true) }), work, framed],
    [term('framing', { choice: 'glazing-stays', ...word(true) }), work, { ...work, glazing: 'none' }],
    [term('hung-width', { high: 500 }), work, { ...work, size: { ...work.size, width: 501 } }],
    [term('hung-height', { high: 600 }), work, { ...work, size: { ...work.size, height: 601 } }],
    [term('hung-depth', { high: 60 }), work, { ...work, size: { ...work.size, depth: 61 } }],
    [term('hung-mass', { high: 8 }), work, { ...work, mass: 8.1 }],
  ],
  'people allowed to handle': [
    [term('handling', { choice: 'Tamsin Oake, courier' }), people([seen]), people([seen], [])],
    [term('courier', { choice: 'hanging' }), people([seen]), people([seen], [])],
    [
      term('courier', { choice: 'taking-down' }),
      people([seen, { ...seen, day: '2031-07-02', onWall: false }]),
      people([seen], []),
    ],
  ],
  'credit line': [[term('credit', { choice: 'Quay Collection' }), work, { ...work, creditLine: '' }]],
}

test.each(Object.entries(phrases))('%s: each term holds for one work and is broken for another', (_, cases) => {
  for (const [asked, good, bad, broken = asked] of cases) {
    const about = `${asked.kind} ${asked.choice}`
    expect(termProblem(asked), about).toBeNull()
    expect(termHeld(asked, good, say).state, about).toBe('holds')
    expect(termHeld(broken, bad, say).state, about).toBe('broken')
  }
})

test('no kind and no choice is without its case', () => {
  const tried = Object.values(phrases).flatMap(cases => cases.map(([{ kind, choice }]) => `${kind} ${choice}`))
  for (const kind of termKinds) {
    const choices = termChoices[kind]
    if (choices === undefined || kind === 'fixing' || kind === 'glazing')
      expect(
        tried.some(each => each.startsWith(`${kind} `)),
        kind,
      ).toBe(true)
    else for (const choice of choices) expect(tried, kind).toContain(`${kind} ${choice}`)
  }
})
