import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dateOf, dayOf, daySaid } from '../../../src/light/day.ts'

test('a date is said as English writes it: by the Unicode CLDR data of the runtime', () => {
  const written = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' })
  fc.assert(
    fc.property(fc.integer({ min: dayOf('1900-01-01'), max: dayOf('2100-12-31') }), day => {
      expect(daySaid(dateOf(day))).toBe(written.format(day * 86_400_000))
    }),
  )
})
