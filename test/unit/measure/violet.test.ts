/** Ultraviolet as it is typed from a meter. */
import { expect, test } from 'vitest'
import { readViolet } from '../../../src/measure/violet.ts'

test.each([
  ['', {}],
  ['12', { uv: 12 }],
  ['7,5 µW/lm', { uv: 7.5 }],
  ['0 uW/lm', { uv: 0 }],
  ['10 μW per lumen', { uv: 10 }],
  ['0.6 mW/m²', { uvArea: 0.6 }],
  ['0.6 mW/m2', { uvArea: 0.6 }],
  // 1 µW/cm² = 10 mW/m², by the units.
  ['0.06 µW/cm²', { uvArea: 0.6 }],
])('%s is read', (text, of) => expect(readViolet(text)).toEqual({ ok: true, of }))

test.each(['none', '-3', '12 lx', '1,000'])('%s is asked about', text => {
  const read = readViolet(text)
  expect(read.ok ? '' : read.message).toMatch(/Write it/u)
})
