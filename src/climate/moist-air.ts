/**
 * Dew point and absolute humidity from temperature and relative humidity, by the Magnus formula with the coefficients
 * of WMO-No. 8, Guide to Meteorological Instruments and Methods of Observation, annex 4.B, over water, −45 to 60 °C.
 */
const [pressureAtZero, steepness, shift] = [6.112, 17.62, 243.12]
/** g K / (m³ hPa): the molar mass of water by the gas constant, 18.015 g/mol / 8.3145 J/(mol K). */
const gramsByGas = 216.67

/** Saturation vapour pressure over water in hPa at °C. */
export function saturation(celsius: number): number {
  return pressureAtZero * Math.exp((steepness * celsius) / (shift + celsius))
}

/** °C at which air of `celsius` and `humidity` (per cent) is saturated; null in air without any water. */
export function dewPoint(celsius: number, humidity: number): number | null {
  if (humidity <= 0) return null
  const wet = Math.log(humidity / 100) + (steepness * celsius) / (shift + celsius)
  return (shift * wet) / (steepness - wet)
}

/** Water in the air, g/m³. */
export function absoluteHumidity(celsius: number, humidity: number): number {
  return (gramsByGas * saturation(celsius) * (humidity / 100)) / (celsius + 273.15)
}
