/** Every hanging method there is. A new one is a file of its own and one line here. */
import { Refusal } from '../contract/refusal.ts'
import type { HangMethod } from './method.ts'
import { showcase } from './method-case.ts'
import { cleat } from './method-cleat.ts'
import { dRings } from './method-d-rings.ts'
import { keyholePlates } from './method-keyhole-plates.ts'
import { methodKeys } from './method-keys.ts'
import { pictureRail } from './method-picture-rail.ts'
import { plinth } from './method-plinth.ts'
import { securityHangers } from './method-security-hangers.ts'
import { sheet } from './method-sheet.ts'
import { shelf } from './method-shelf.ts'
import { strapPlates } from './method-strap-plates.ts'
import { stretcherBar } from './method-stretcher-bar.ts'
import { transitPlates } from './method-transit-plates.ts'
import { wire } from './method-wire.ts'

export const methods: readonly HangMethod[] = [
  wire,
  dRings,
  stretcherBar,
  cleat,
  keyholePlates,
  strapPlates,
  securityHangers,
  transitPlates,
  pictureRail,
  sheet,
  shelf,
  plinth,
  showcase,
]

export function findMethod(key: string): HangMethod | null {
  return methods.find(method => method.key === key) ?? null
}

/** The method of that key, or the refusal `method-unknown`. */
export function methodOf(key: string): HangMethod {
  const method = findMethod(key)
  if (method === null) {
    throw new Refusal('method-unknown', `No hanging method is called “${key}”. There are: ${methodKeys.join(', ')}.`, {
      field: 'back.method',
    })
  }
  return method
}
