/** Keys of the hanging methods, as the catalogue stores them. `methods.ts` holds the methods themselves, in this order. */
export const methodKeys = [
  'wire',
  'd-rings',
  'stretcher-bar',
  'cleat',
  'keyhole-plates',
  'strap-plates',
  'security-hangers',
  'transit-plates',
  'picture-rail',
  'sheet',
  'shelf',
  'plinth',
  'case',
] as const

export type MethodKey = (typeof methodKeys)[number]
