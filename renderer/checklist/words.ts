/** How the checklist says sizes, their source and their differences. */
import type { WorkLine } from '../../src/contract/areas/works-list.ts'
import { desk } from '../host/desk.svelte.ts'

type Size = NonNullable<WorkLine['size']>

const dayMonth = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' })
const dayMonthYear = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })

/** A day as said in a list: without its year where that is this year's. */
export function dayWords(at: string, now: Date = new Date()): string {
  const day = new Date(at)
  if (at === '' || Number.isNaN(day.getTime())) return ''
  // A day is never parted from its month at the end of a line.
  return (day.getFullYear() === now.getFullYear() ? dayMonth : dayMonthYear).format(day).replaceAll(' ', '\u00a0')
}

export function sizeWords(size: Pick<Size, 'height' | 'width' | 'depth'>): string {
  const parts = [size.height, size.width, ...(size.depth === null ? [] : [size.depth])]
  return parts.map(part => desk.length(part)).join(' × ')
}

export function sizeFrom(size: Size | null): string {
  if (size === null) return 'no size yet'
  const part = size.part === 'framed' ? '' : `${size.part}, `
  return size.kind === 'measured' ? `${part}measured ${dayWords(size.at)}` : `${part}listed`
}

/** "52 wider than listed": what a measured size adds to the listed one, the larger difference first. */
export function differsWords(differs: { readonly height: number; readonly width: number }): string {
  const say = (mm: number, more: string, less: string) =>
    mm === 0 ? '' : `${desk.length(Math.abs(mm))} ${mm > 0 ? more : less}`
  const height = say(differs.height, 'taller', 'lower')
  const width = say(differs.width, 'wider', 'narrower')
  const order = Math.abs(differs.width) >= Math.abs(differs.height) ? [width, height] : [height, width]
  return `${order.filter(part => part !== '').join(', ')} than listed`
}

/** A count with its thousands apart. */
export function countFigure(n: number): string {
  return n.toLocaleString('en-GB').replaceAll(',', '\u2009')
}

export function countWords(n: number, one: string, many: string): string {
  return `${countFigure(n)} ${n === 1 ? one : many}`
}

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']

/** A count in words as far as words are shorter to read, with a capital. */
export function countInWords(n: number): string {
  const word = small[n] ?? String(n)
  return word.charAt(0).toUpperCase() + word.slice(1)
}
