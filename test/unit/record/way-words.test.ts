/** What is said of a way: the sentence, why none is told, and the few words of a sheet. */
import { expect, test } from 'vitest'
import { carryWay, type Passage } from '../../../src/record/carry-way.ts'
import { marginSaid, shortWay, untoldSaid, waySaid } from '../../../src/record/way-words.ts'

const length = (mm: number) => `${mm} mm`
const door = (words: string, a: string, b: string, width: number): Passage => ({
  kind: 'door',
  words,
  ends: [a, b],
  width,
  height: 2100,
  depth: null,
})
const lift: Passage = { ...door('the goods lift', 'hall', 'loft', 1400), kind: 'lift', depth: 2600 }
const two = [door('the wide door', 'store', 'hall', 1500), door('the narrow door', 'hall', 'room', 800)]

function told(box: { width: number; height: number; depth: number }, passages: readonly Passage[], to: string) {
  const way = carryWay(box, passages, ['store'], [to])
  if (way?.tightest == null) throw new Error('there is a way')
  const { through, tightest } = way
  const short = shortWay(
    {
      told: 'way',
      fit: tightest.fit,
      through: through.map(({ passage, ...rest }) => ({ ...rest, words: passage.words })),
      tightest: through.indexOf(tightest),
    },
    length,
  )
  return { long: waySaid({ name: 'Crate 5', box }, { through, by: 'plan' }, tightest, length), short }
}

test('one doorway is told with its own figures, of several the tightest', () => {
  expect(told({ width: 1500, height: 2000, depth: 700 }, two, 'hall')).toEqual({
    long: 'Crate 5, 2000 mm × 1500 mm × 700 mm, passes upright through the wide door, 2100 mm high and 1500 mm wide: 100 mm to spare.',
    short: 'upright: by the wide door, 100 mm to spare',
  })
  expect(told({ width: 1500, height: 2000, depth: 800 }, two, 'room')).toEqual({
    long: 'Crate 5, 2000 mm × 1500 mm × 800 mm, passes upright through the wide door and the narrow door. The tightest is the narrow door, 2100 mm high and 800 mm wide: nothing to spare.',
    short: 'upright: by 2 doorways or lifts, the tightest the narrow door, nothing to spare',
  })
})

test('what does not pass is told by the best of all ways, a lift with its depth, a flat work without', () => {
  const large = told({ width: 2400, height: 2300, depth: 1000 }, two, 'room')
  expect(large.long).toContain(', does not pass by any way that is known; the best is through the wide door and')
  expect(large.short.startsWith('does not pass by the plan: by 2 doorways or lifts, ')).toBe(true)
  const up = told({ width: 900, height: 900, depth: 0 }, [...two, lift], 'loft')
  expect(up.long).toContain('Crate 5, 900 mm × 900 mm, passes upright through the wide door and the goods lift.')
  expect(up.long).toContain('The tightest is the goods lift, 2100 mm × 1400 mm × 2600 mm: ')
})

test('why nothing is told is a sentence, on a sheet only that no way is known', () => {
  const ends = { from: 'Hall', to: 'Loft' }
  expect(untoldSaid('none', 'Crate 5', 'crate', ends)).toBe(
    'The plan knows no way for Crate 5 from Hall to Loft: no doorways or lifts join them.',
  )
  expect(untoldSaid('no-size', 'Crate 5', 'crate', ends)).toContain('its outer height, width and depth are not said')
  expect(untoldSaid('no-size', 'Salt pans', 'work', ends)).toContain('its height and width are not said')
  expect(untoldSaid('outside', 'Salt pans', 'work', ends)).toContain('in no room of the plan')
  const none = { fit: null, through: [], tightest: null }
  const says = (['none', 'no-size', 'outside', 'same'] as const).map(why => shortWay({ told: why, ...none }, length))
  expect(says).toEqual(['no way known to the plan', '', '', ''])
  expect(marginSaid({ fit: 'no', over: 50, spare: 0 }, length)).toBe('50 mm too large')
})
