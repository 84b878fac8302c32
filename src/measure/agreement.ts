/**
 * Holds the measures of a group against the same ones in another unit. The rule it keeps: within the larger of 0.06 cm
 * and 0.5 % they agree and the first one written counts; beyond it both are offered and neither is taken.
 */

import { isFaulty, unitAt } from './dim-units.ts'
import { formatLength } from './format.ts'
import { type Group, pieceOf } from './groups.ts'
import { agree, unitOf } from './same-size.ts'
import type { Field, Question } from './statement.ts'
import { type LengthUnit, toMillimetres } from './units.ts'

/** Compares each measure with the same one in other units; gives the fields that do not agree and asks about them. */
export function checkOthers(
  text: string,
  group: Group,
  fields: readonly Field[],
  mm: readonly (number | undefined)[],
  questions: Question[],
): readonly Field[] {
  const doubtful: Field[] = []
  for (const [index, dim] of group.dims.entries()) {
    const field = fields[index]
    const own = mm[index]
    if (field === undefined || own === undefined) continue
    const others = [...(dim.alt ? [[dim.alt]] : []), ...group.others]
    for (const dims of others) {
      const place = dims.length === 1 ? 0 : index
      const other = dims[place]
      const unit = unitAt(dims, place, unitOf(dims))
      const ownUnit = unitAt(group.dims, index, unitOf(group.dims))
      if (!other || unit === undefined || ownUnit === undefined || doubtful.includes(field)) continue
      const value = toMillimetres(other.value, unit)
      if (agree(own, value) && !isFaulty(other, unit)) continue
      doubtful.push(field)
      questions.push(mismatch(pieceOf(text, group), { unit: ownUnit, mm: own }, { unit, mm: value }, field))
    }
  }
  return doubtful
}

interface Said {
  readonly unit: LengthUnit
  readonly mm: number
}

function mismatch(piece: string, one: Said, two: Said, field: Field): Question {
  const printed = (mm: number, unit: LengthUnit) =>
    formatLength(mm, {
      unit: unit === 'ft' ? 'ft-in' : unit,
      decimals: unit === 'mm' ? 0 : unit === 'm' ? 3 : 1,
      fraction: 32,
    })
  const [mine, converted] = [printed(one.mm, one.unit), printed(one.mm, two.unit)]
  const listed = printed(two.mm, two.unit)
  const digits = (label: string) => [...label.replace(/\D/g, '')].sort().join('')
  const swapped = digits(converted) === digits(listed) ? ' Two digits may be swapped.' : ''
  const bare = listed.replace(/ \D+$/, '')
  return {
    code: 'mismatch',
    text: `The ${field} does not agree: ${mine} = ${converted}, list says ${bare}.${swapped} Which is right?`,
    piece,
    options: [one, two].map(said => ({
      label: `${printed(said.mm, said.unit)} (${formatLength(said.mm, { unit: 'mm' })})`,
      values: { [field]: said.mm },
      unit: said.unit,
    })),
  }
}
