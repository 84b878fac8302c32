/**
 * The reference of a record of damage: by the house's pattern, which is that of the last one (`D-0007` after `D-0006`).
 * The rule it keeps: none is ever used twice, in whatever letters it is written.
 */

const first = 'D-0001'

/** As references are compared: without blanks around, capitals and small letters alike. */
const compared = (reference: string) => reference.trim().toLowerCase()

/** The one that goes on from the last of `used`, in the order in which they were given; none of `used`. */
export function nextReference(used: readonly string[]): string {
  const taken = new Set(used.map(compared))
  let next = used.at(-1) ?? ''
  do next = next === '' ? first : following(next)
  while (taken.has(compared(next)))
  return next
}

/** Its last figures counted on by one, as wide as they were; without figures it gets a 2. */
function following(reference: string): string {
  const [, before = '', figures, after = ''] = /^(.*?)(\d+)(\D*)$/su.exec(reference) ?? []
  if (figures === undefined) return `${reference}-2`
  return `${before}${String(BigInt(figures) + 1n).padStart(figures.length, '0')}${after}`
}
