/** When the demo's show is lit, and what a meter showed at works that hang already. All of it is invented. */
import type { Input } from '../../../src/contract/contract.ts'
import { exhibition } from './house.ts'

const { opensIn, openFor } = exhibition
/** A bit a weekday, Monday the lowest. */
const [monToFri, tueToSun] = [0b0011111, 0b1111110]

export interface DemoLit extends Pick<Input<'light.addHours'>, 'kind' | 'weekdays' | 'hours' | 'lux' | 'note'> {
  /** Days from today. */
  readonly from: number
  readonly until: number
}

export const lit: readonly DemoLit[] = [
  { kind: 'installing', from: -4, until: 9, weekdays: monToFri, hours: 6, lux: 50, note: 'Work lights, dimmed.' },
  { kind: 'event', from: opensIn - 1, until: opensIn - 1, hours: 4, note: 'Opening.' },
  { kind: 'open', from: opensIn, until: opensIn + openFor, weekdays: tueToSun, hours: 8 },
  { kind: 'cleaning', from: opensIn, until: opensIn + openFor, weekdays: tueToSun, hours: 1 },
  { kind: 'closed', from: opensIn + 40, until: opensIn + 41, note: 'Works of the second half come in.' },
]

/** One lamp stands too near, one has lost its filter, one meter shows ultraviolet on the surface. */
export const readings: readonly (Omit<Input<'light.addReading'>, 'work'> & { readonly work: string })[] = [
  { work: 'valley', points: [188, 204, 197], uv: 9, meter: 'meter 2' },
  { work: 'after-rain', points: [142, 151, 148], uv: 11, meter: 'meter 2' },
  { work: 'ferry-etching', points: [47, 61, 50], uv: 14, meter: 'meter 2' },
  { work: 'orchard-bank', points: [44, 48, 46], uv: 82, meter: 'meter 2' },
  { work: 'shallows', points: [46, 49], uvArea: 0.5, meter: 'meter 3' },
]
