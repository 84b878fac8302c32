/** What is typed about places on the plan: positions, turns, north, storeys. */
import { desk } from '../host/desk.svelte.ts'
import type { Kind, Read } from '../rooms/reading.ts'

function readDegrees(text: string): Read<number> {
  const plain = text
    .replace(/\s*(°|deg|degrees)$/i, '')
    .replace(',', '.')
    .replace('−', '-')
  const degrees = Number(plain)
  return plain.trim() === '' || !Number.isFinite(degrees) || Math.abs(degrees) > 360
    ? { ok: false, message: `“${text}” is no angle in degrees.` }
    : { ok: true, to: degrees }
}

/** A direction on the page; empty where nobody said. */
export const bearing: Kind<number | null> = {
  show: degrees => (degrees === null ? '' : `${degrees}°`),
  read: text => (text === '' ? { ok: true, to: null } : readDegrees(text)),
}

export const turn: Kind<number> = { show: degrees => `${degrees}°`, read: readDegrees }

/** A position, which may lie on either side of 0. */
export const position: Kind<number> = {
  show: mm => desk.length(mm),
  read(text) {
    const below = /^\s*[-−]/.test(text)
    const read = desk.parseLength(below ? text.replace(/^\s*[-−]\s*/, '') : text)
    return read.ok ? { ok: true, to: below ? -read.mm : read.mm } : { ok: false, message: read.message }
  },
}

/** A level, which nobody may know. */
export const maybePosition: Kind<number | null> = {
  show: mm => (mm === null ? '' : position.show(mm)),
  read: text => (text === '' ? { ok: true, to: null } : position.read(text)),
}
