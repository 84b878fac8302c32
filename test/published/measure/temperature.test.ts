/** Degrees Fahrenheit of a term as degrees Celsius. */
import { expect, test } from 'vitest'
import { readTermFigure, termFigure } from '../../../src/loan/terms/read.ts'
import { parseLength } from '../../../src/measure/length.ts'
import { celsius, fahrenheit } from '../../../src/measure/temperature.ts'

const length = (text: string) => parseLength(text, 'in')

/** NIST SP 811 (2008), B.8: t/°C = (t/°F − 32)/1.8; freezing and boiling water, and where both scales meet. */
test.each([
  [32, 0],
  [212, 100],
  [-40, -40],
  [68, 20],
  [77, 25],
])('%d °F are %d °C', (f, c) => {
  expect(celsius(f)).toBeCloseTo(c, 12)
  expect(fahrenheit(c)).toBeCloseTo(f, 12)
  expect(readTermFigure('temperature', `${f} °F`, length, '°C')).toEqual({ ok: true, value: c })
  expect(readTermFigure('temperature', `${f}`, length, '°F')).toEqual({ ok: true, value: c })
  expect(readTermFigure('temperature', `${c} C`, length, '°F')).toEqual({ ok: true, value: c })
})

test('what is shown reads back, in either unit', () => {
  for (const imperial of [false, true]) {
    for (const [kind, value] of [
      ['temperature', 21],
      ['dose', 15_000],
      ['uv', 75],
      ['humidity', 45.5],
      ['light', 50],
    ] as const) {
      const shown = termFigure(kind, value, String, imperial)
      const read = readTermFigure(kind, shown, length, imperial ? '°F' : '°C')
      // A tenth of a footcandle is about a lux.
      expect(read.ok && Math.abs(read.value - value), `${kind} ${shown}`).toBeLessThan(
        imperial && kind === 'light' ? 0.6 : 0.06,
      )
    }
  }
})

test('what does not belong to a figure is told', () => {
  expect(readTermFigure('humidity', '50 lx', length, '°C')).toMatchObject({ ok: false })
  expect(readTermFigure('uv', 'low', length, '°C')).toMatchObject({ ok: false })
  expect(readTermFigure('dose', '15,000', length, '°C')).toMatchObject({ ok: false })
  expect(readTermFigure('dose', '15 klx h', length, '°C')).toEqual({ ok: true, value: 15_000 })
})
