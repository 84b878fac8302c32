/** How a person wants the sheets: as they say, else as they like their figures, else A4, millimetres, sixteenths. */

import type { Steps } from '../../../src/hang/printing.ts'
import { daySaid } from '../../../src/light/day.ts'
import type { InchParts } from '../../../src/measure/rounding.ts'
import type { SheetUnit } from '../../../src/sheets/checklist-columns.ts'
import type { LengthUnit } from '../../../src/sheets/figures.ts'
import type { Paper } from '../../../src/sheets/shapes.ts'
import { savedName } from '../../files/names.ts'
import { dateAt } from '../days.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'

export interface Wishes {
  readonly paper?: Paper | undefined
  readonly unit?: LengthUnit | undefined
  readonly fraction?: InchParts | undefined
}

export interface Style {
  readonly paper: Paper
  readonly unit: LengthUnit
  readonly steps: Steps
}

export function styleOf({ db, person }: Pick<Reading, 'db' | 'person'>, wishes: Wishes): Style {
  return {
    paper: wishes.paper ?? person?.paper ?? 'A4',
    unit: wishes.unit ?? person?.lengthUnit ?? 'mm',
    steps: { mm: ruleNumber(db, 'sheetStepMm'), fraction: wishes.fraction ?? person?.fraction ?? 16 },
  }
}

/** Tables are in millimetres or inches. */
export function tableUnit(unit: LengthUnit): SheetUnit {
  return unit === 'in' ? 'in' : 'mm'
}

/** A moment as it stands on a sheet, by the clock of this machine: `14 March 2031, 16:20`. */
export function sheetTime(at: string): string {
  const date = new Date(at)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${daySaid(dateAt(at))}, ${two(date.getHours())}:${two(date.getMinutes())}`
}

/** A name for a file, made of names of the show, as it can be saved. */
export function fileName(parts: readonly string[], ending: string): string {
  return savedName(`${parts.filter(part => part !== '').join(' ')}.${ending}`)
}
