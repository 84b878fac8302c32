/** Lengths and masses as typed, and how they are printed. Conversions by hand: 1 in = 25.4 mm. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decimal, formatBoth, formatLength } from '../../../src/measure/format.ts'
import { parseLength } from '../../../src/measure/length.ts'
import { formatMass, parseMass } from '../../../src/measure/mass.ts'
import { roundTo, SIXTEENTH, toCount } from '../../../src/measure/rounding.ts'

describe('a length as typed', () => {
  test.each([
    ['24 1/2', 622.3, 'in', true],
    ['24-1/2 in', 622.3, 'in', false],
    ['24½"', 622.3, 'in', false],
    ['24 ½ ”', 622.3, 'in', false],
    ['24 1⁄2 in.', 622.3, 'in', false],
    ['2\' 0 1/2"', 622.3, 'ft', false],
    ['2′ 0½″', 622.3, 'ft', false],
    ["2' 0 1/2''", 622.3, 'ft', false],
    ['5’-4 1/2”', 1638.3, 'ft', false],
    ['5 ft 4', 1625.6, 'ft', false],
    ['3 feet', 914.4, 'ft', false],
    ['62,2 cm', 622, 'cm', false],
    ['62.2cm', 622, 'cm', false],
    ['622 mm', 622, 'mm', false],
    ['1 220 mm', 1220, 'mm', false],
    ['1\u00a0220 mm', 1220, 'mm', false],
    ['1\u2009220 mm', 1220, 'mm', false],
    ['1\u202f220,5 mm', 1220.5, 'mm', false],
    ['1.220,5 mm', 1220.5, 'mm', false],
    ['1,20 m', 1200, 'm', false],
    ['3 pouces', 76.2, 'in', false],
    ['10 Zoll', 254, 'in', false],
    ['3/4', 19.05, 'in', true],
    ['.5 in', 12.7, 'in', false],
    ['62', 620, 'cm', true],
    ['-12 mm', -12, 'mm', false],
    ['−1/2 in', -12.7, 'in', false],
    ['+3 mm', 3, 'mm', false],
    ['-0 mm', 0, 'mm', false],
    ['  622  mm ', 622, 'mm', false],
  ])('%j', (text, mm, unit, inferred) => {
    const read = parseLength(text, 'cm')
    expect(read).toEqual({ ok: true, mm, unit, inferred })
  })

  test.each([
    ['', 'empty', '', 0],
    ['   ', 'empty', '', 0],
    ['wide', 'not-a-number', 'wide', 0],
    ['12 yards', 'unknown-unit', 'yards', 3],
    ['12 cm wide', 'left-over', 'wide', 6],
    ['24/36', 'bad-fraction', '24/36', 0],
    ['1/0 in', 'bad-fraction', '1/0', 0],
    ['24 7/5 in', 'bad-fraction', '24 7/5', 0],
    ['1,220 mm', 'ambiguous-number', '1,220', 0],
    ['1.220 mm', 'ambiguous-number', '1.220', 0],
    ['5 ft 14 in', 'left-over', '14', 5],
    ['622 mm 4', 'left-over', '4', 7],
    ['24 x 36', 'unknown-unit', 'x', 3],
    ['12,345,678.5 mm', 'out-of-range', '12,345,678.5 mm', 0],
    ['2 km', 'unknown-unit', 'km', 2],
    ['1001 m', 'out-of-range', '1001 m', 0],
    ['1'.repeat(500), 'too-long', '1'.repeat(40), 0],
  ])('%j is a problem', (text, problem, piece, at) => {
    const read = parseLength(text, 'cm')
    expect(read).toMatchObject({ ok: false, problem, piece, at })
    expect(read.ok ? '' : read.message).toMatch(/\.$/)
  })

  test('without a unit and without a default it is asked for', () => {
    expect(parseLength('622')).toMatchObject({ ok: false, problem: 'no-unit', piece: '622' })
    expect(parseLength('24 1/2')).toEqual({ ok: true, mm: 622.3, unit: 'in', inferred: true })
  })

  test('no text makes it throw', () => {
    const piece = fc.constantFrom(
      '24',
      '1/2',
      '½',
      "'",
      '"',
      ' ',
      '.',
      ',',
      '-',
      'cm',
      'in',
      'ft',
      '⁄',
      '\u00a0',
      '0',
      '\ud800',
    )
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(piece, { maxLength: 30 }).map(all => all.join('')),
    )
    fc.assert(
      fc.property(text, typed => {
        const read = parseLength(typed, 'mm')
        if (read.ok) expect(Number.isFinite(read.mm)).toBe(true)
        else expect(typed).toContain(read.piece)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('a length as printed', () => {
  test.each([
    [1795.4625, { unit: 'in' }, '70 11/16 in'],
    [1795, { unit: 'in' }, '70 11/16 in'],
    [2667, { unit: 'in' }, '105 in'],
    [12.7, { unit: 'in' }, '1/2 in'],
    [0, { unit: 'in' }, '0 in'],
    [-12.7, { unit: 'in' }, '−1/2 in'],
    [0.79375, { unit: 'in', fraction: 32 }, '1/32 in'],
    [1638.3, { unit: 'ft-in' }, '5 ft 4 1/2 in'],
    [304.8, { unit: 'ft-in' }, '1 ft'],
    [203.2, { unit: 'ft-in' }, '8 in'],
    [1220, { unit: 'mm' }, '1\u2009220 mm'],
    [1220, { unit: 'mm', thousands: ' ' }, '1 220 mm'],
    [622.34, { unit: 'mm' }, '622.3 mm'],
    [622, { unit: 'cm' }, '62.2 cm'],
    [622, { unit: 'cm', bare: true }, '62.2'],
    [-0.04, { unit: 'mm' }, '0 mm'],
    [Number.NaN, { unit: 'mm' }, ''],
  ] as const)('%d as %j', (mm, format, text) => {
    expect(formatLength(mm, format)).toBe(text)
  })

  test('both systems, the unit of the sheet first', () => {
    expect(formatBoth(1795, { unit: 'mm' }).text).toBe('1\u2009795 mm (70 11/16 in)')
    expect(formatBoth(1795.4625, { unit: 'in' }).text).toBe('70 11/16 in (1\u2009795 mm)')
  })

  test('every 1/32 in reads back as the same millimetres, in inches and in feet', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.constantFrom('in', 'ft-in'), (count, unit) => {
        const mm = (count * 127) / 160
        expect(parseLength(formatLength(mm, { unit, fraction: 32 }))).toMatchObject({ ok: true, mm: mm === 0 ? 0 : mm })
      }),
      { numRuns: 2000 },
    )
  })

  test('every tenth of a millimetre reads back the same in mm, cm and m', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9_000_000, max: 9_000_000 }), fc.constantFrom('mm', 'cm', 'm'), (tenths, unit) => {
        const mm = tenths / 10
        const read = parseLength(formatLength(mm, { unit, decimals: unit === 'm' ? 4 : 2 }))
        expect(read).toMatchObject({ ok: true, unit, inferred: false })
        expect(read.ok ? read.mm : Number.NaN).toBeCloseTo(mm, 9)
      }),
      { numRuns: 2000 },
    )
  })

  test('reads back within half a step whatever the length is', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), fc.constantFrom(8, 16, 32), (mm, fraction) => {
        const read = parseLength(formatLength(mm, { unit: 'in', fraction }))
        expect(Math.abs((read.ok ? read.mm : Number.NaN) - mm)).toBeLessThanOrEqual(12.7 / fraction + 1e-6)
      }),
    )
  })

  test('halves go away from zero, on both sides', () => {
    expect(roundTo(0.5, { unit: 'mm', size: 1 })).toBe(1)
    expect(roundTo(-0.5, { unit: 'mm', size: 1 })).toBe(-1)
    expect(toCount(25.4 / 32, SIXTEENTH)).toBe(1)
    expect(decimal(1.005, 2, '')).toBe('1.01')
  })

  // Against the formatter of ECMA-402 that the machine has (Intl, from the CLDR data).
  test('digits, thousands and dropped zeros are those of the platform’s own formatter', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 6 }), (count, decimals) => {
        const value = count / 10 ** decimals
        const other = new Intl.NumberFormat('en', { maximumFractionDigits: decimals, signDisplay: 'negative' })
        expect(decimal(value, decimals, ',')).toBe(other.format(value).replace('-', '\u2212'))
      }),
      { numRuns: 2000 },
    )
  })

  test.each([
    [1e21, '1e+21'],
    [2 ** 53 * 4, '36,028,797,018,963,968'],
    [-(2 ** 53) * 4, '\u221236,028,797,018,963,968'],
    [Number.POSITIVE_INFINITY, 'Infinity'],
  ])('what is too large to round is written as it is: %d', (value, text) => {
    expect(decimal(value, 2, ',')).toBe(text)
  })
})

describe('a mass', () => {
  test.each([
    ['14 kg', 14],
    ['14kg', 14],
    ['8,5 kg', 8.5],
    ['500 g', 0.5],
    ['1 lb', 0.45359237],
    ['30 lbs.', 13.6077711],
    ['22 lbs 8 oz', 10.205828325],
    ['8 oz', 0.226796185],
    ['2½ Kilo', 2.5],
  ])('%j', (text, kg) => {
    expect(parseMass(text)).toMatchObject({ ok: true, kg, inferred: false })
  })

  test.each([
    ['', 'empty'],
    ['heavy', 'not-a-number'],
    ['14', 'no-unit'],
    ['14 stone', 'unknown-unit'],
    ['14 kg net', 'left-over'],
    ['1,500 kg', 'ambiguous-number'],
    ['200000 kg', 'out-of-range'],
  ])('%j is a problem', (text, problem) => {
    expect(parseMass(text)).toMatchObject({ ok: false, problem })
  })

  test('prints and reads back', () => {
    expect(formatMass(13.6077711, { unit: 'lb' })).toBe('30 lb')
    expect(formatMass(14, { unit: 'kg' })).toBe('14 kg')
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), fc.constantFrom('kg', 'lb'), (count, unit) => {
        const kg = (count / 100) * (unit === 'kg' ? 1 : 0.45359237)
        const read = parseMass(formatMass(kg, { unit }))
        expect(read.ok ? read.kg : Number.NaN).toBeCloseTo(kg, 9)
      }),
    )
  })
})
