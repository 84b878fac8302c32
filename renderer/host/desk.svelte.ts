/**
 * The person at the desk and how they like their figures: unit, fraction, paper, light or dark. Figures are printed
 * here and nowhere else in the screens, so that one switch turns them all.
 */
import type { Output } from '../../src/contract/contract.ts'
import { formatArea } from '../../src/measure/area.ts'
import { formatBoth, formatLength, type LengthFormat } from '../../src/measure/format.ts'
import { parseLength } from '../../src/measure/length.ts'
import { formatMass, parseMass } from '../../src/measure/mass.ts'
import { ask, call, listen } from './client.svelte.ts'

type State = Output<'desk.state'>
type Person = NonNullable<State['person']>
export type ThemeChoice = 'as the machine' | 'light' | 'dark'
export type LengthUnit = Person['lengthUnit']

const themeKey = 'hangwright-theme'

class Desk {
  state = $state.raw<State | undefined>(undefined)
  theme = $state<ThemeChoice>('as the machine')
  /** The unit before anyone has sat down. */
  private guest = $state<LengthUnit>('mm')

  person = $derived(this.state?.person ?? null)
  unit = $derived<LengthUnit>(this.person?.lengthUnit ?? this.guest)
  fraction = $derived(this.person?.fraction ?? 16)
  paper = $derived(this.person?.paper ?? 'A4')
  imperial = $derived(this.unit === 'in')
  massUnit = $derived<'kg' | 'lb'>(this.unit === 'in' ? 'lb' : 'kg')
  format = $derived<LengthFormat>({
    unit: this.unit,
    fraction: this.fraction,
    decimals: this.unit === 'cm' ? 1 : 0,
  })

  constructor() {
    const kept = localStorage.getItem(themeKey)
    this.setTheme(kept === 'light' || kept === 'dark' ? kept : 'as the machine')
    listen(event => {
      if (
        event.kind === 'opened' ||
        (event.kind === 'changed' && (event.tables.length === 0 || event.tables.includes('person')))
      ) {
        void this.load()
      }
    })
  }

  async load(): Promise<void> {
    this.state = await ask('desk.state', {})
  }

  setTheme(theme: ThemeChoice): void {
    this.theme = theme
    if (theme === 'as the machine') {
      localStorage.removeItem(themeKey)
      delete document.documentElement.dataset.theme
    } else {
      localStorage.setItem(themeKey, theme)
      document.documentElement.dataset.theme = theme
    }
  }

  async setUnit(unit: LengthUnit): Promise<void> {
    this.guest = unit
    if (this.person === null || this.person.lengthUnit === unit) return
    await call('person.update', { id: this.person.id, lengthUnit: unit })
    await this.load()
  }

  /** A length in the unit of the day, without the unit: units are said once. */
  length(mm: number): string {
    return formatLength(mm, { ...this.format, bare: true })
  }

  /** With its unit. */
  lengthWithUnit(mm: number): string {
    return formatLength(mm, this.format)
  }

  /** The figure in the unit of the day and, small beside it, in the other system, both without units. */
  both(mm: number): { readonly main: string; readonly other: string } {
    const { main, other } = formatBoth(mm, { ...this.format, bare: true })
    return { main, other: other.replace(/ (mm|in)$/, '') }
  }

  /** Metres or feet, for long things. */
  long(mm: number): string {
    return this.imperial
      ? formatLength(mm, { unit: 'ft-in', fraction: 8 })
      : formatLength(mm, { unit: 'm', decimals: 1 })
  }

  /** A floor's area, with its unit. */
  area(squareMetres: number): string {
    return formatArea(squareMetres, this.imperial ? 'imperial' : 'metric')
  }

  mass(kg: number): string {
    return formatMass(kg, { unit: this.massUnit })
  }

  parseLength(text: string) {
    return parseLength(text, this.unit)
  }

  parseMass(text: string) {
    return parseMass(text, this.massUnit)
  }
}

export const desk = new Desk()
