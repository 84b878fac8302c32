/** Printed lengths as the sheet writes them: in its own unit, and the other unit small beside it. */
import { POUND } from '../hang/physics.ts'
import { type Printed, printedText, type Steps } from '../hang/printing.ts'
import { MINUS } from '../measure/format.ts'

export type LengthUnit = 'mm' | 'cm' | 'in'

export interface Units {
  readonly unit: LengthUnit
  readonly steps: Steps
}

/** A length on paper: the numbers, and the figures alone in the sheet's unit and in the other. */
export interface Figure extends Printed {
  readonly main: string
  readonly other: string
}

export function otherUnit(unit: LengthUnit): 'mm' | 'in' {
  return unit === 'in' ? 'mm' : 'in'
}

/** Between whole inches and their fraction no line breaks. */
function joined(text: string): string {
  return text.replace(/(\d) (\d+\/\d+)/, '$1\u00a0$2')
}

export function figure(printed: Printed, { unit, steps }: Units): Figure {
  return {
    mm: printed.mm,
    inches: printed.inches,
    main: joined(printedText(printed, unit, steps)),
    other: joined(printedText(printed, otherUnit(unit), steps)),
  }
}

/** With its sign: an offset from a line. */
export function offset(printed: Printed, units: Units): Figure {
  const plain = figure(printed, units)
  return { ...plain, main: signed(plain.main), other: signed(plain.other) }
}

function signed(text: string): string {
  return text.startsWith(MINUS) || text === '0' ? text : `+${text}`
}

/** Masses: pounds where lengths are inches. */
export function massText(kg: number, unit: LengthUnit, withUnit = true): string {
  const value = unit === 'in' ? kg / POUND : kg
  const text = value.toFixed(value < 1 ? 2 : 1).replace(/\.0+$/, '')
  return withUnit ? `${text}\u00a0${unit === 'in' ? 'lb' : 'kg'}` : text
}
