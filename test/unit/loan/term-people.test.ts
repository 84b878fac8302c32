/** Terms of people and those that a person is asked: held by the record and by a named person's word, never by silence. */
import { describe, expect, test } from 'vitest'
import { asksPerson } from '../../../src/loan/terms/asked.ts'
import { isOffSheet, termCode } from '../../../src/loan/terms/findings.ts'
import { namesIn } from '../../../src/loan/terms/people.ts'
import type { LentWork, LoanPeople } from '../../../src/loan/terms/planned.ts'
import { type Term, termChoices, termKinds } from '../../../src/loan/terms/term.ts'
import { on, state, term, text, work } from './lent.ts'

const nobody: LoanPeople = { contacts: [], moves: [], signed: [] }
const courier = { name: 'Edda Voss', role: 'Courier' }
const hung = { day: '2031-03-05', people: 'Tamsin Oake and Ivo Brandt', onWall: true }
const down = { day: '2031-07-02', people: 'Tamsin Oake', onWall: false }
const with_ = (people: Partial<LoanPeople>, of: LentWork = work): LentWork => ({
  ...of,
  people: { ...nobody, ...people },
})
const unhung = on({ hands: [], hungOn: [] })

describe('who may handle it', () => {
  const named = term('handling', { choice: 'Tamsin Oake, courier' })

  test('is held against who hung, moved and examined it, each told with the day', () => {
    expect(state(named, with_({}))).toBe('holds')
    const moved = with_({ moves: [hung, down] })
    expect(state(named, moved)).toBe('broken')
    expect(text(named, moved)).toBe('On 5 March 2031 it was moved by Ivo Brandt, whom the agreement does not name.')
    const signed = with_({ signed: [{ day: '2031-03-04', name: 'Bo Lind', role: 'registrar' }] })
    expect(text(named, signed)).toBe(
      'On 4 March 2031 its condition report was signed by Bo Lind, whom the agreement does not name.',
    )
  })

  test('names people by their role in the loan; whoever signs for the lender is the lender’s', () => {
    const byCourier = { ...hung, people: 'edda voss' }
    expect(state(named, with_({ moves: [byCourier], contacts: [courier] }))).toBe('holds')
    expect(state(named, with_({ moves: [byCourier], contacts: [] }))).toBe('broken')
    expect(state(named, with_({ signed: [{ day: '2031-03-04', name: 'A. Nother', role: 'lender' }] }))).toBe('holds')
  })

  test('is not known while nobody is on record', () => {
    expect(state(named, with_({}, unhung))).toBe('unknown')
    expect(state(named, with_({ moves: [{ ...hung, people: '' }] }, unhung))).toBe('unknown')
  })

  test('reads names as they are written one after the other', () => {
    expect(namesIn('Tamsin Oake, Ivo Brandt and  Edda Voss; Bo Lind')).toEqual([
      ...['Tamsin Oake', 'Ivo Brandt', 'Edda Voss', 'Bo Lind'],
    ])
    expect(namesIn('Alexander Andersson')).toEqual(['Alexander Andersson'])
    expect(namesIn(' ')).toEqual([])
  })
})

describe('the lender’s courier', () => {
  const atHanging = term('courier', { choice: 'hanging' })
  const atDown = term('courier', { choice: 'taking-down' })
  const contacts = [courier]

  test('that nobody named breaks the term before anything hangs', () => {
    expect(state(atHanging, with_({}, unhung))).toBe('broken')
    expect(state(atHanging, with_({ contacts: [{ name: 'Bo Lind', role: 'registrar' }] }, unhung))).toBe('broken')
    expect(state(atHanging, with_({ contacts }, unhung))).toBe('unknown')
  })

  test('is on record by a tick, a movement or a signature of the same day', () => {
    expect(state(atHanging, with_({ contacts }, on({ hands: ['Edda Voss'] })))).toBe('holds')
    expect(state(atHanging, with_({ contacts, moves: [{ ...hung, people: 'Edda Voss' }] }, unhung))).toBe('holds')
    const signed = { day: '2031-03-05', name: 'Edda Voss', role: 'courier' }
    expect(state(atHanging, with_({ contacts, signed: [signed] }))).toBe('holds')
    expect(state(atHanging, with_({ contacts, signed: [{ ...signed, day: '2031-03-06' }] }))).toBe('asked')
    expect(text(atHanging, with_({ contacts }))).toBe(
      'No record names Edda Voss when it was hung on 5 March 2031: who was there confirms it.',
    )
  })

  test('at taking down is looked for only once it went from its wall', () => {
    expect(state(atDown, with_({ contacts, moves: [hung] }))).toBe('unknown')
    expect(state(atDown, with_({ contacts, moves: [down] }))).toBe('unknown')
    expect(state(atDown, with_({ contacts, moves: [hung, down] }))).toBe('asked')
    expect(state(atDown, with_({ contacts, moves: [hung, { ...down, people: 'Edda Voss' }] }))).toBe('holds')
  })
})

describe('what a person is asked', () => {
  const word = { kept: true, by: 'Ines Farrow', on: '2031-03-02', note: 'Rota of the gallery' }
  const asked: readonly Term[] = termKinds.flatMap(kind =>
    (termChoices[kind] ?? []).map(choice => term(kind, { choice })).filter(asksPerson),
  )

  test('never holds and is never broken by silence', () => {
    const best = with_({ contacts: [courier], moves: [hung, down] })
    expect(asked).toHaveLength(7)
    for (const each of asked) expect(state(each, best), each.choice).toBe('asked')
  })

  test('holds or is broken by their word, told with name, day and how they know', () => {
    const watched = term('security', { choice: 'watched' })
    const yes = { ...watched, confirmed: word }
    expect(state(yes)).toBe('holds')
    expect(text(yes)).toBe('Ines Farrow confirmed it on 2 March 2031: “Rota of the gallery”.')
    const no = { ...watched, confirmed: { ...word, kept: false, note: '' } }
    expect(state(no)).toBe('broken')
    expect(text(no)).toBe('Ines Farrow said on 2 March 2031 that it is not so.')
  })

  test('what the plan itself tells, no word outweighs', () => {
    const stays = term('framing', { choice: 'frame-stays', confirmed: word })
    expect(state(stays)).toBe('holds')
    expect(state(stays, { ...work, part: 'sheet' })).toBe('broken')
    expect(state(term('light', { high: 40, confirmed: word }))).toBe('broken')
  })

  test('stands on no wall sheet before it is answered; what is not so does', () => {
    const finding = (code: string) =>
      ({ severity: 'settle', code, subject: { kind: 'work', id: 'w' }, text: '', figures: {} }) as const
    expect(isOffSheet(finding(termCode('security', 'asked')))).toBe(true)
    expect(isOffSheet(finding(termCode('security', 'broken')))).toBe(false)
    expect(isOffSheet(finding(termCode('humidity', 'broken')))).toBe(true)
  })
})
