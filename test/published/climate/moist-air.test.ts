/**
 * Moist air against tables. Saturation pressure of water and water in saturated air: steam tables (IAPWS-IF97 at the
 * saturation line), from memory; a Magnus formula stays within 0.4 % of them from −40 to 50 °C. Dew point: the psychrometric chart of the ASHRAE handbook of fundamentals, from memory.
 */
import { describe, expect, test } from 'vitest'
import { absoluteHumidity, dewPoint, saturation } from '../../../src/climate/moist-air.ts'

describe('saturation pressure over water (steam tables: hPa)', () => {
  test.each([
    [5, 8.726],
    [10, 12.282],
    [20, 23.393],
    [25, 31.699],
    [30, 42.47],
  ])('%d °C', (celsius, hectopascals) => {
    expect(Math.abs(saturation(celsius) / hectopascals - 1)).toBeLessThan(0.004)
  })
})

describe('water in saturated air (steam tables: g/m³)', () => {
  test.each([
    [10, 9.4],
    [20, 17.3],
    [30, 30.4],
  ])('%d °C', (celsius, grams) => {
    // The table gives three figures.
    expect(Math.abs(absoluteHumidity(celsius, 100) / grams - 1)).toBeLessThan(0.005)
  })
})

describe('dew point', () => {
  // 20 °C at 50 % has its dew point at 9.3 °C, 25 °C at 60 % at 16.7 °C: the chart, read to a tenth.
  test.each([
    [20, 50, 9.3],
    [25, 60, 16.7],
    [21, 100, 21],
  ])('%d °C at %d %%', (celsius, humidity, dew) => {
    expect(dewPoint(celsius, humidity)).toBeCloseTo(dew, 1)
  })

  test('air of any dampness is saturated at its dew point, and air without water has none', () => {
    for (let celsius = -20; celsius <= 45; celsius += 5) {
      for (const humidity of [1, 20, 55, 99]) {
        const dew = dewPoint(celsius, humidity) ?? Number.NaN
        expect(saturation(dew)).toBeCloseTo((saturation(celsius) * humidity) / 100, 9)
      }
    }
    expect(dewPoint(20, 0)).toBeNull()
  })
})
