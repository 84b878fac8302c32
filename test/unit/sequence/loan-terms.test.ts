/**
 * Loan terms read sentence by sentence. How lenders word them is common practice, no source; what is checked is that
 * what a sentence plainly asks is read, and that whatever is not plain is asked about, never guessed.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { loanTerms, type TermRead } from '../../../src/sequence/loan-terms.ts'
import { type TermWork, worksNamed } from '../../../src/sequence/terms-offered.ts'

const reads = (text: string) => loanTerms(text, 'loanTerms').map(({ read }) => read)
const apart = (named: string): TermRead => ({ asks: 'apart', how: 'not beside', named })
const away = (from: Extract<TermRead, { asks: 'away' }>['from']): TermRead => ({ asks: 'away', from })
const lux = (n: number): TermRead => ({ asks: 'light', lux: n })

describe('what a sentence plainly asks', () => {
  test.each<readonly [string, TermRead]>([
    ['Not above 50 lux at any point.', lux(50)],
    ['at most 50 lux', lux(50)],
    ['max. 50 lx', lux(50)],
    ['Maximum 150 lux', lux(150)],
    ['50 lux or less', lux(50)],
    ['Light level must not exceed 80 lux', lux(80)],
    ['No more than 50 lux.', lux(50)],
    ['Never brighter than 200 lx', lux(200)],
    ['light levels limited to 50 lux', lux(50)],
    ['≤ 50 lux', lux(50)],
    ['Not beside a lit painting.', apart('a lit painting')],
    ['May not be hung next to “Salt pans”', apart('Salt pans')],
    ['Must not hang alongside No. 12', apart('No. 12')],
    ['never adjacent to works by Ada Ruel', apart('works by Ada Ruel')],
    ['The work must not face No 4', { asks: 'apart', how: 'not facing', named: 'No 4' }],
    ['Not opposite Salt pans', { asks: 'apart', how: 'not facing', named: 'Salt pans' }],
    ['Not above a radiator', away('heat')],
    ['not to be hung over or near radiators or other sources of heat', away('heat')],
    ['Keep away from heaters', away('heat')],
    ['Must not hang in front of a ventilation grille', away('air')],
    ['Not near an air inlet', away('air')],
    ['No direct daylight', away('daylight')],
    ['not in direct sunlight', away('daylight')],
    ['Keep out of natural light', away('daylight')],
    ['Not facing a window', away('facing a window')],
    ['not opposite windows', away('facing a window')],
    ['must not be hung beside a window', away('window')],
    ['May not be hung on an outside wall', away('outside wall')],
    ['Not on exterior walls', away('outside wall')],
    ['Must be shown with Salt pans', { asks: 'with', how: 'one wall', named: 'Salt pans' }],
    ['To be hung together with No. 12', { asks: 'with', how: 'one wall', named: 'No. 12' }],
    ['Not to be separated from its pendant', { asks: 'with', how: 'one wall', named: 'its pendant' }],
    ['No. 12 must hang beside No. 13', { asks: 'with', how: 'side by side', named: 'No. 13' }],
    ['Shall always be displayed next to Causeway', { asks: 'with', how: 'side by side', named: 'Causeway' }],
    ['Only in Room 2', { asks: 'place', how: 'only on', named: 'Room 2' }],
    ['not in the Long room', { asks: 'place', how: 'not on', named: 'Long room' }],
    ['Insured for 40,000 from nail to nail', { asks: 'nothing' }],
    ['Courier on arrival and return', { asks: 'nothing' }],
    ['Credit: Private collection', { asks: 'nothing' }],
    ['Relative humidity 45 to 55 %', { asks: 'nothing' }],
  ])('%s', (text, read) => expect(reads(text)).toEqual([read]))
})

describe('what is not plain is a question', () => {
  test.each([
    '50 lux',
    '50–80 lux',
    'max. 50 lux, 80 lux for the opening night',
    'at least 50 lux',
    'Not less than 100 lux',
    'at most 5 foot-candles',
    'at most 15,000 lux hours a year',
    'max 1.000 lux',
    'Not beside anything red, unless the lender agrees',
    'Preferably not on an outside wall',
    'Not with Salt pans in one room',
    'Hang alone',
    'centre at 1500 mm',
    'at eye level near the entrance',
  ])('%s', text => {
    const read = reads(text)
    expect(read.length).toBeGreaterThan(0)
    expect(read.every(each => each.asks === 'unclear')).toBe(true)
  })

  test('five foot-candles are told in lux: 1 lm/ft² is 10.764 lux (the foot is 0.3048 m by definition)', () => {
    expect(reads('at most 5 fc')).toEqual([
      { asks: 'unclear', why: '5 foot-candles are 53.8 lux. How many lux are the most?' },
    ])
  })
})

describe('sentences', () => {
  test('each is read by itself and quoted as it was written; a full stop after “No” or “max” ends none', () => {
    const text =
      'Max. 50 lux. Must not hang beside No. 12.\nInsurance by the borrower; not above a radiator and not on an outside wall'
    expect(loanTerms(text, 'loanTerms').map(({ quoted, read }) => [quoted, read.asks])).toEqual([
      ['Max. 50 lux', 'light'],
      ['Must not hang beside No. 12', 'apart'],
      ['Insurance by the borrower', 'nothing'],
      ['not above a radiator', 'away'],
      ['not on an outside wall', 'away'],
    ])
  })

  test('a note of what it is not beside needs no verb', () => {
    expect(loanTerms('Salt pans', 'notBeside').map(({ read }) => read)).toEqual([apart('Salt pans')])
    expect(loanTerms('Not beside Salt pans.', 'notBeside').map(({ read }) => read)).toEqual([apart('Salt pans')])
  })

  test('an empty text has none', () => {
    for (const text of ['', '  \n ', '...', '—']) expect(loanTerms(text, 'loanTerms')).toEqual([])
  })

  test('whatever is written, each term is a piece of it, and nothing throws', () => {
    const words = fc.constantFrom(
      'not',
      'No. 12',
      'beside',
      'max.',
      '50',
      'lux',
      'unless',
      'wall',
      ',',
      '; ',
      '. ',
      '\n',
      'window',
      'with',
      'only in',
      '“',
      '²',
      'é',
    )
    const anything = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(words).map(list => list.join(' ')),
    )
    fc.assert(
      fc.property(anything, fc.constantFrom('loanTerms' as const, 'notBeside' as const), (text, of) => {
        for (const { quoted } of loanTerms(text, of)) {
          expect(text).toContain(quoted)
          expect(quoted).not.toBe('')
        }
      }),
      { numRuns: 2000 },
    )
  })

  test('a long text without an end is read in no time', () => {
    const start = process.cpuUsage().user
    loanTerms('not beside within near '.repeat(800), 'loanTerms')
    loanTerms('1 '.repeat(9000), 'loanTerms')
    expect((process.cpuUsage().user - start) / 1000).toBeLessThan(500)
  })
})

test('works are known by number, whole title or maker, and by nothing less', () => {
  const work = (id: string, running: string, title: string, maker: string): TermWork => ({
    work: id,
    running,
    title,
    maker,
    limit: null,
  })
  const works = [
    work('a', '12', 'Salt pans', 'Ada Ruel'),
    work('b', '13', 'Salt pans II', 'Ada Ruel'),
    work('c', '', 'Causeway', 'Jo Tern'),
    work('d', '', 'The ferry rope', ''),
  ]
  const ids = (named: string) => worksNamed(named, works).map(({ work: id }) => id)
  expect(ids('No. 12')).toEqual(['a'])
  expect(ids('Nos 12 and 13')).toEqual(['a', 'b'])
  expect(ids('12')).toEqual(['a'])
  expect(ids('No 99')).toEqual([])
  expect(ids('the salt pans')).toEqual(['a'])
  expect(ids('salt')).toEqual([])
  expect(ids('The ferry rope')).toEqual(['d'])
  expect(ids('Ferry rope')).toEqual(['d'])
  expect(ids('works by Ada Ruel')).toEqual(['a', 'b'])
  expect(ids('anything red')).toEqual([])
  expect(ids('')).toEqual([])
})
