/**
 * Shapes of fixing that the library and the methods speak of, by what the trade calls them. What is drilled or nailed
 * carries a hole offset; what hooks over a rail or stands on the floor makes no hole.
 */
export const fixingShapes = [
  'hook',
  'nail',
  'screw',
  'cleat',
  'plate',
  'lock',
  'rail-hook',
  'steel-point',
  'bracket',
] as const

export type FixingShape = (typeof fixingShapes)[number]
