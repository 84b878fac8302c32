/** What stands in a cell and what is typed there: how each kind is shown, and read again, with the piece that failed. */
import { readCorner } from '../../src/model/corner.ts'
import { desk } from '../host/desk.svelte.ts'

export type Read<V> = { readonly ok: true; readonly to: V } | { readonly ok: false; readonly message: string }

export interface Kind<V> {
  readonly show: (value: V) => string
  readonly read: (text: string) => Read<V>
}

function readLength(text: string): Read<number> {
  const read = desk.parseLength(text)
  return read.ok ? { ok: true, to: read.mm } : { ok: false, message: read.message }
}

/** A length that must be there. */
export const length: Kind<number> = { show: mm => desk.length(mm), read: readLength }

/** A length that may be unknown: an empty cell. */
export const maybeLength: Kind<number | null> = {
  show: mm => (mm === null ? '' : desk.length(mm)),
  read: text => (text === '' ? { ok: true, to: null } : readLength(text)),
}

/** A weight that may be unknown, in the unit of the day. */
export const maybeMass: Kind<number | null> = {
  show: kg => (kg === null ? '' : desk.mass(kg).replace(/\s*(kg|lb)$/, '')),
  read(text) {
    if (text === '') return { ok: true, to: null }
    const read = desk.parseMass(text)
    if (!read.ok) return { ok: false, message: read.message }
    return read.kg > 0 ? { ok: true, to: read.kg } : { ok: false, message: 'A load is more than nothing.' }
  },
}

/** A corner's angle in degrees, empty where nobody measured it. */
export const angle: Kind<number | null> = {
  show: degrees => (degrees === null ? '' : `${degrees}°`),
  read(text) {
    if (text === '') return { ok: true, to: null }
    const read = readCorner(text)
    return read.ok ? { ok: true, to: read.degrees } : read
  },
}

export const words: Kind<string> = { show: text => text, read: text => ({ ok: true, to: text }) }

export const name: Kind<string> = {
  show: text => text,
  read: text => (text === '' ? { ok: false, message: 'It needs a name.' } : { ok: true, to: text }),
}
