/** The words of balance: axes by their names, deviations as a person says them. */
import type { Axis } from '../../src/sequence/axes-of-face.ts'
import type { Balance } from '../../src/sequence/balance.ts'
import { desk } from '../host/desk.svelte.ts'

export function axisWords({ kind, label }: Pick<Axis, 'kind' | 'label'>): string {
  switch (kind) {
    case 'middle':
      return 'the middle of the wall'
    case 'stretch':
      return `the stretch from ${label}`
    case 'doorway':
      return `the axis of ${label}`
    case 'bench':
      return `the axis of ${label}`
  }
}

/** "217 mm right of the middle of the wall, 2.4 %", or that it is on it; without `of`, "217 mm right, 2.4 %". */
export function offWords({ off, offShare }: Pick<Balance, 'off' | 'offShare'>, of = ''): string {
  if (Math.abs(off) < 0.5) return of === '' ? 'on the axis' : `on ${of}`
  const share = Math.abs(offShare)
  const side = `${off > 0 ? 'right' : 'left'}${of === '' ? '' : ` of ${of}`}`
  return `${desk.lengthWithUnit(Math.abs(off))} ${side}, ${share < 10 ? share.toFixed(1) : Math.round(share)}\u202f%`
}

/** Square metres that something looks like, as read: two figures after the point. */
export function weightWords(squareMetres: number): string {
  return `${squareMetres.toFixed(2)} m²`
}
