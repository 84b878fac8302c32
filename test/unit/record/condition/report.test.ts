/** When a condition report is complete, and the words it is made of. */
import { describe, expect, test } from 'vitest'
import {
  type ConditionFinding,
  lacksOf,
  lacksSignatures,
  overall,
  type Signature,
  signaturesInForce,
} from '../../../../src/record/condition/report.ts'
import { materials, materialsFor, vocabulary } from '../../../../src/record/condition/vocabulary.ts'

const report = { examiner: 'Tamsin Oake', note: '', width: 600, height: 400, depth: null }
const finding: ConditionFinding = {
  id: 'a',
  side: 'front',
  number: 1,
  term: 'painting.loss',
  word: 'loss',
  form: 'mark',
  points: [{ x: 10, y: 20 }],
  across: 4,
  age: 'old',
  severity: 'slight',
  stable: '',
  follows: null,
}
const codes = (findings: readonly ConditionFinding[], given = report) =>
  lacksOf(given, findings).map(({ code }) => code)

describe('what a report lacks', () => {
  test('nothing, when every finding is said', () => expect(codes([finding])).toEqual([]))
  test.each([
    ['no-word', { word: ' ' }],
    ['no-place', { points: [] }],
    ['no-place', { points: [{ x: 601, y: 20 }] }],
    [
      'no-place',
      {
        form: 'area' as const,
        points: [
          { x: 1, y: 1 },
          { x: 2, y: 2 },
        ],
      },
    ],
    ['no-age', { age: '' as const }],
    ['no-severity', { severity: '' as const }],
  ])('%s', (code, change) => {
    const [lack, ...more] = lacksOf(report, [{ ...finding, ...change }])
    expect([lack?.code, lack?.finding, more]).toEqual([code, 'a', []])
    expect(lack?.text).toMatch(/^1/)
  })
  test('a word for it, where nothing was found', () => {
    expect(codes([])).toEqual(['nothing-said'])
    expect(codes([], { ...report, note: 'no change' })).toEqual([])
  })
  test('an examiner', () => expect(codes([finding], { ...report, examiner: '' })).toEqual(['no-examiner']))
  test('one of two that go on from the same finding', () => {
    const on = { ...finding, follows: 'z' }
    expect(codes([on, { ...on, id: 'b', number: 2 }])).toEqual(['goes-on-twice'])
  })
})

describe('two signatures', () => {
  const oake: Signature = { role: 'registrar', name: 'Tamsin Oake', content: 'h' }
  const lind: Signature = { role: 'courier', name: 'Bo Lind', content: 'h' }
  const lack = (...signatures: Signature[]) => lacksSignatures(signatures, 'h')?.code ?? null
  test('of two people in two roles are enough', () => expect(lack(oake, lind)).toBeNull())
  test('one is not', () => expect([lack(), lack(oake)]).toEqual(['signatures', 'signatures']))
  test('of one person in two roles are one, however it is written', () =>
    expect(lack(oake, { ...oake, role: 'courier', name: ' tamsin  OAKE ' })).toBe('one-person'))
  test('in one role the last counts', () => {
    expect(signaturesInForce([oake, { ...lind, role: 'registrar' }], 'h').map(({ name }) => name)).toEqual(['Bo Lind'])
    expect(lack(oake, { ...lind, role: 'registrar' })).toBe('signatures')
  })
  test('of what was changed since do not count, and that is said', () => {
    const old = { ...lind, content: 'before' }
    expect(lack(oake, old)).toBe('signatures')
    expect(lacksSignatures([oake, old], 'h')?.text).toContain('changed since')
    expect(lacksSignatures([oake], 'h')?.text).not.toContain('changed since')
  })
  test('without a name is none', () => expect(lack(oake, { ...lind, name: ' ' })).toBe('signatures'))
})

test('the whole is as serious as the most serious of it', () => {
  expect(overall([{ severity: 'slight' }, { severity: 'severe' }, { severity: '' }])).toBe('severe')
  expect(overall([])).toBe('')
})

describe('the vocabulary', () => {
  test('has words for every material, each once, with a meaning and a key of its own', () => {
    for (const material of materials) {
      const own = vocabulary.filter(term => term.material === material)
      expect(own.length).toBeGreaterThanOrEqual(10)
      expect(new Set(own.map(({ word }) => word)).size).toBe(own.length)
    }
    expect(new Set(vocabulary.map(({ key }) => key)).size).toBe(vocabulary.length)
    for (const { key, meaning } of vocabulary) {
      expect(key).toMatch(/^[a-z]+\.[a-z-]+$/)
      expect(meaning.length).toBeGreaterThan(12)
    }
  })
  test('has the words that forms and glossaries of the trade use', () => {
    // Condition categories of loan forms, common practice, no source; painting terms as in museums' glossaries.
    const words = vocabulary.map(({ word }) => word)
    for (const word of [
      'abrasion',
      'accretion',
      'bloom',
      'cupping',
      'flaking',
      'loss',
      'tear',
      'foxing',
      'cockling',
      'open joint',
    ])
      expect(words).toContain(word)
  })
  test('begins with what the work is made of, then its frame', () => {
    expect(materialsFor('print').slice(0, 2)).toEqual(['paper', 'frame'])
    expect(materialsFor('').slice(0, 2)).toEqual(['object', 'frame'])
    expect([...materialsFor('painting')].sort()).toEqual([...materials].sort())
  })
})
