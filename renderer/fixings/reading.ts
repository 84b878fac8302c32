/** What stands in the cells of the library: small measures to a hundredth of a millimetre or a thousandth of an inch, ratings, counts. */
import { desk } from '../host/desk.svelte.ts'
import type { Kind, Read } from '../rooms/reading.ts'

function shown(mm: number): string {
  return String(desk.imperial ? Math.round(mm / 0.0254) / 1000 : Math.round(mm * 100) / 100)
}

function readSmall(text: string): Read<number> {
  const read = desk.parseLength(text)
  return read.ok ? { ok: true, to: read.mm } : { ok: false, message: read.message }
}

/** From bearing point to hole: up is more, down is less than nothing. */
export const offset: Kind<number> = {
  show: mm => shown(mm).replace('-', '−'),
  read: text => readSmall(text.replace('−', '-')),
}

export const maybeSmall: Kind<number | null> = {
  show: mm => (mm === null ? '' : shown(mm)),
  read: text => (text === '' ? { ok: true, to: null } : readSmall(text)),
}

function readMass(text: string): Read<number> {
  const read = desk.parseMass(text)
  if (!read.ok) return { ok: false, message: read.message }
  return read.kg > 0
    ? { ok: true, to: read.kg }
    : { ok: false, message: 'A rating is more than nothing. Leave it empty where there is none.' }
}

const bare = (kg: number) => desk.mass(kg).replace(/\s*(kg|lb)$/, '')

/** Empty: nobody has said. */
export const maybeRating: Kind<number | null> = {
  show: kg => (kg === null ? '' : bare(kg)),
  read: text => (text === '' ? { ok: true, to: null } : readMass(text)),
}

/** For one type of wall. Empty: the packet says that it is not for this wall. */
export const ratingInWall: Kind<number | null> = {
  show: kg => (kg === null ? 'not in it' : bare(kg)),
  read: text => (text === '' || text === 'not in it' ? { ok: true, to: null } : readMass(text)),
}

export const maybeCount: Kind<number | null> = {
  show: count => (count === null ? '' : String(count)),
  read(text) {
    if (text === '') return { ok: true, to: null }
    return /^\d{1,6}$/.test(text)
      ? { ok: true, to: Number(text) }
      : { ok: false, message: `“${text}” is no count. Type a whole number.` }
  },
}

/** A rating without a source is nobody’s. */
export const source: Kind<string> = {
  show: text => text,
  read: text =>
    text === ''
      ? { ok: false, message: 'Say where the figure stands: a packet, a data sheet, a trial of your own.' }
      : { ok: true, to: text },
}
