/** Cells of what stands in a room: places may lie on either side of where they are measured from, turns are in degrees. */
import { wholeTurn } from '../../src/plan/place.ts'
import { desk } from '../host/desk.svelte.ts'
import { type Kind, length } from '../rooms/reading.ts'

export const position: Kind<number> = {
  show: mm => (mm < 0 ? `−${desk.length(-mm)}` : desk.length(mm)),
  read(text) {
    const negative = /^[-−]/.test(text)
    const read = length.read(negative ? text.slice(1).trim() : text)
    return read.ok && negative ? { ok: true, to: -read.to } : read
  },
}

export const degrees: Kind<number> = {
  show: turn => `${Number(turn.toFixed(2))}°`,
  read(text) {
    const turn = Number(text.replace('°', '').replace(',', '.').replace('−', '-').trim())
    if (text.trim() === '' || !Number.isFinite(turn) || Math.abs(turn) > 360) {
      return { ok: false, message: 'Give degrees from −360 to 360, clockwise on the plan.' }
    }
    return { ok: true, to: wholeTurn(turn) }
  },
}
