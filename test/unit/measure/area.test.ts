import { expect, test } from 'vitest'
import { formatArea } from '../../../src/measure/area.ts'

test('a room of 30 by 17 ft is 510 square feet, and 47.4 square metres', () => {
  const squareMetres = 30 * 0.3048 * 17 * 0.3048
  expect(formatArea(squareMetres, 'imperial')).toBe('510 ft²')
  expect(formatArea(squareMetres, 'metric')).toBe('47.4 m²')
})
