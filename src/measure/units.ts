/**
 * Units of length and mass as exact fractions of a millimetre and a kilogram, and their names in English, French and
 * German. The rule it keeps: a value is one division of two whole numbers, so that 24 1/2 in is 622.3 mm and nothing
 * beside it. 1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly (NIST SP 811, from memory).
 */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft'
export type MassUnit = 'kg' | 'g' | 'lb' | 'oz'

/** A number as it was written: a fraction of whole numbers. */
export interface Ratio {
  readonly num: number
  readonly den: number
}

/** The units as a sentence names them. */
export const UNIT_NAMES: Readonly<Record<LengthUnit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  in: 'inches',
  ft: 'feet',
}

const LENGTHS: Readonly<Record<LengthUnit, Ratio>> = {
  mm: { num: 1, den: 1 },
  cm: { num: 10, den: 1 },
  m: { num: 1000, den: 1 },
  in: { num: 127, den: 5 },
  ft: { num: 1524, den: 5 },
}

const MASSES: Readonly<Record<MassUnit, Ratio>> = {
  kg: { num: 1, den: 1 },
  g: { num: 1, den: 1000 },
  lb: { num: 45_359_237, den: 100_000_000 },
  oz: { num: 45_359_237, den: 1_600_000_000 },
}

/** Millimetres of `value` in `unit`. */
export function toMillimetres(value: Ratio, unit: LengthUnit): number {
  return scaled(value, LENGTHS[unit])
}

/** `mm` as a decimal number of `unit`. */
export function fromMillimetres(mm: number, unit: LengthUnit): number {
  return (mm * LENGTHS[unit].den) / LENGTHS[unit].num
}

/** Kilograms of `value` in `unit`. */
export function toKilograms(value: Ratio, unit: MassUnit): number {
  return scaled(value, MASSES[unit])
}

/** `kg` as a decimal number of `unit`. */
export function fromKilograms(kg: number, unit: MassUnit): number {
  return (kg * MASSES[unit].den) / MASSES[unit].num
}

/** The sum of two fractions. */
export function plus(a: Ratio, b: Ratio): Ratio {
  return a.den === b.den
    ? { num: a.num + b.num, den: a.den }
    : { num: a.num * b.den + b.num * a.den, den: a.den * b.den }
}

function scaled(value: Ratio, unit: Ratio): number {
  return (value.num * unit.num) / (value.den * unit.den)
}

const LENGTH_WORDS: ReadonlyMap<string, LengthUnit> = names<LengthUnit>({
  mm: 'mm millimeter millimeters millimetre millimetres millimètre millimètres millimetern',
  cm: 'cm cms centimeter centimeters centimetre centimetres centimètre centimètres zentimeter zentimetern',
  m: 'm meter meters metre metres mètre mètres metern mtr',
  in: 'in ins inch inches pouce pouces po zoll',
  ft: 'ft foot feet pied pieds fuß fuss',
})

const MASS_WORDS: ReadonlyMap<string, MassUnit> = names<MassUnit>({
  kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes kilogramm',
  g: 'g gr gram grams gramme grammes gramm',
  lb: 'lb lbs pound pounds',
  oz: 'oz ounce ounces',
})

/** The unit of length a word names, in small letters without a full stop; foot and inch marks count. */
export function lengthUnitOf(word: string): LengthUnit | undefined {
  return LENGTH_WORDS.get(word)
}

/** The unit of mass a word names, in small letters without a full stop. */
export function massUnitOf(word: string): MassUnit | undefined {
  return MASS_WORDS.get(word)
}

function names<U extends string>(table: Readonly<Record<U, string>>): ReadonlyMap<string, U> {
  const map = new Map<string, U>()
  // Object.entries widens the keys of a record to string.
  for (const [unit, words] of Object.entries(table) as [U, string][]) {
    for (const word of words.split(' ')) map.set(word, unit)
  }
  return map
}
