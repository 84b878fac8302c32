/**
 * From one group of a statement to millimetres: units, the check of two units against each other, height and width,
 * and what has to be asked. The rule it keeps: a value that is in doubt is left out of the part, and the question
 * holds each reading as a value.
 */
import { checkOthers } from './agreement.ts'
import { assignFields } from './axes.ts'
import { isFaulty, unitAt } from './dim-units.ts'
import { formatLength } from './format.ts'
import { type Group, pieceOf } from './groups.ts'
import type { Dim } from './measures.ts'
import { contradicts, orderDoubt } from './order-doubt.ts'
import { unitOf } from './same-size.ts'
import type { Field, Option, Question, ReadOptions, Remark, Sizes } from './statement.ts'
import { type LengthUnit, toMillimetres, UNIT_NAMES } from './units.ts'

export interface UnitFinding {
  readonly unit: LengthUnit
  readonly stated: boolean
  readonly remark?: Remark
}

export interface ReadSizes {
  readonly sizes: Sizes
  readonly unit: UnitFinding | undefined
  readonly questions: readonly Question[]
  readonly warnings: readonly Remark[]
  readonly notes: readonly string[]
}

const LONGEST_MM = 1e5
/** Larger works are rare enough to say so. */
const LARGE_MM = 10_000

/** The unit a group says or shows by itself. */
export function ownUnit(group: Group, hint: LengthUnit | undefined): UnitFinding | undefined {
  const unit = unitOf(group.dims)
  if (unit !== undefined) return { unit, stated: true }
  if (hint !== undefined) return { unit: hint, stated: true }
  if (!group.dims.some(dim => dim.vulgar)) return undefined
  return { unit: 'in', stated: false, remark: { code: 'unit-inferred', text: 'Inches, inferred from the fractions.' } }
}

export function readSizes(
  text: string,
  group: Group,
  unit: UnitFinding | undefined,
  order: Parameters<typeof assignFields>[1],
  options: ReadOptions,
): ReadSizes {
  const questions: Question[] = []
  const warnings: Remark[] = unit?.remark ? [unit.remark] : []
  const piece = pieceOf(text, group)
  const figures = group.dims.map(dim => figureOf(text, dim))
  const axes = group.dims.map((dim, index) => dim.axis ?? group.others.find(other => other[index]?.axis)?.[index]?.axis)
  const assigned = assignFields(axes, order, figures, options.language)
  warnings.push(...assigned.warnings)
  const done = (sizes: Sizes): ReadSizes => ({ sizes, unit, questions, warnings, notes: assigned.notes })

  const faulty = group.dims.find(dim => isFaulty(dim, unitAt(group.dims, group.dims.indexOf(dim), unit?.unit)))
  if (faulty) {
    questions.push(faultQuestion(text, faulty))
    return done({})
  }
  if (group.broken) {
    questions.push({
      code: 'number',
      text: `“${piece}” could not be read as a size. Write it again.`,
      piece,
      options: [],
    })
    return done({})
  }
  const inUnit = (guess: LengthUnit | undefined) =>
    group.dims.map((dim, index) => {
      const as = unitAt(group.dims, index, unit?.unit, guess)
      return as === undefined ? undefined : toMillimetres(dim.value, as)
    })
  const mm = inUnit(undefined)
  if (assigned.fields === undefined) {
    const asked = assigned.question
    if (asked === undefined) return done({})
    const unitToo = unit === undefined ? ' Its unit is missing too.' : ''
    const answers =
      unit === undefined ? [] : asked.options.map(option => ({ label: option.label, values: pick(option.fields, mm) }))
    questions.push({ code: asked.code, text: asked.text + unitToo, piece, options: answers })
    return done({})
  }
  const fields = assigned.fields
  const doubt =
    assigned.lettered || order.length > 0
      ? undefined
      : orderDoubt(group.dims, fields, unit !== undefined, options.imageAspect)
  const swapped = fields.map(field => (field === 'height' ? 'width' : field === 'width' ? 'height' : field))
  const orders = doubt === undefined ? [fields] : doubt.swappedFirst ? [swapped, fields] : [fields, swapped]
  if (mm.some(value => value === undefined)) {
    questions.push(unitQuestion(piece, inUnit, orders, doubt?.text, options.neighboursUnit))
    return done({})
  }
  const carried = group.dims.findIndex(
    (dim, index) => dim.unit === undefined && group.dims.slice(0, index).some(one => one.unit !== undefined),
  )
  const carriedUnit = unitAt(group.dims, carried, unit?.unit)
  if (carried > 0 && carriedUnit !== undefined && !group.dims.slice(carried).some(dim => dim.unit !== undefined)) {
    const sentence = `${figures[carried]} has no unit of its own: read in ${UNIT_NAMES[carriedUnit]}, as the figure before it.`
    warnings.push({ code: 'unit-inferred', text: sentence })
  }
  const values = pick(fields, mm)
  if (Object.values(values).some(value => value > LONGEST_MM || value <= 0)) {
    questions.push({
      code: 'out-of-range',
      text: `“${piece}” is no size a work can have: more than nothing, 100 m at most.`,
      piece,
      options: [],
    })
    return done({})
  }
  if (assigned.lettered && options.imageAspect !== undefined && contradicts(values, options.imageAspect)) {
    warnings.push({
      code: 'image-against-letters',
      text: 'The image is turned the other way than the letters say. The letters were kept.',
    })
  }
  if (doubt) {
    questions.push({ code: 'order', text: doubt.text, piece, options: orders.map(one => sizeOption(pick(one, mm))) })
    return done(omit(values, ['height', 'width']))
  }
  if ((values.height === undefined) !== (values.width === undefined) && values.diameter === undefined) {
    const missing = values.height === undefined ? 'height' : 'width'
    warnings.push({ code: 'incomplete', text: `The ${missing} is not given.` })
  }
  if (Object.values(values).some(value => value > LARGE_MM)) {
    warnings.push({ code: 'very-large', text: `“${piece}” is more than 10 m. Check the unit.` })
  }
  const several = countOrSize(group, mm)
  if (several) {
    questions.push({ ...several, piece })
    return done({})
  }
  const doubtful = checkOthers(text, group, fields, mm, questions)
  return done(omit(values, doubtful))
}

function figureOf(text: string, dim: Dim): string {
  return text.slice(dim.at, dim.end).replace(/\s+/g, ' ').trim()
}

function pick(fields: readonly (Field | null)[], mm: readonly (number | undefined)[]): Sizes {
  const values: { [F in Field]?: number } = {}
  for (const [index, field] of fields.entries()) {
    const value = mm[index]
    if (field !== null && value !== undefined) values[field] = value
  }
  return values
}

function omit(values: Sizes, fields: readonly Field[]): Sizes {
  const kept: { [F in Field]?: number } = { ...values }
  for (const field of fields) delete kept[field]
  return kept
}

function sizeOption(values: Sizes, prefix = ''): Option {
  const words = { height: 'high', width: 'wide', depth: 'deep', diameter: 'across' }
  const said = (['height', 'width', 'depth', 'diameter'] as const).flatMap(field => {
    const value = values[field]
    return value === undefined ? [] : [`${formatLength(value, { unit: 'mm' })} ${words[field]}`]
  })
  return { label: prefix + said.join(', '), values }
}

function unitQuestion(
  piece: string,
  inUnit: (unit: LengthUnit | undefined) => readonly (number | undefined)[],
  orders: readonly (readonly Field[])[],
  doubt: string | undefined,
  neighbours: LengthUnit | undefined,
): Question {
  const units = [...new Set<LengthUnit>([...(neighbours === undefined ? [] : [neighbours]), 'cm', 'in', 'mm', 'ft'])]
  const bare = inUnit(undefined).every(value => value === undefined)
  const plausible = units.filter(unit => {
    const largest = Math.max(...inUnit(unit).map(value => value ?? 0))
    return unit === neighbours || (unit === 'ft' ? !bare && largest <= 10_000 : largest >= 20 && largest <= 10_000)
  })
  const options = plausible.flatMap(unit => {
    const mm = inUnit(unit)
    if (mm.some(value => value === undefined)) return []
    return orders.map(fields => ({ ...sizeOption(pick(fields, mm), `${UNIT_NAMES[unit]}: `), unit }))
  })
  const near = neighbours === undefined ? '' : ` This lender's other sizes are in ${UNIT_NAMES[neighbours]}.`
  const asked = bare ? `“${piece}” has no unit.` : `“${piece}” has a figure without a unit.`
  return {
    code: doubt === undefined ? 'unit' : 'unit-and-order',
    text: `${asked}${near}${doubt === undefined ? '' : ` ${doubt}`}`,
    piece,
    options,
  }
}

function faultQuestion(text: string, dim: Dim): Question {
  const piece = text.slice(dim.at, dim.end)
  const swap = (by: string) => text.slice(0, dim.at) + by + text.slice(dim.end)
  if (dim.fault === 'fraction') {
    const sides = /(\d+)\s*[/⁄∕]\s*(\d+)/.exec(piece)
    const options = sides ? [{ label: `${sides[1]} × ${sides[2]}`, text: swap(piece.replace(/[/⁄∕]/, ' x ')) }] : []
    return { code: 'fraction', text: `“${piece}” is no fraction of a ruler. What does it mean?`, piece, options }
  }
  const mark = /(\d)[.,](?=\d{3})/
  const [whole, decimal] = [piece.replace(mark, '$1'), piece.replace(mark, '$1.').replace(/0+(?=\D*$)/, '')]
  return {
    code: 'number',
    text: `“${piece}” may have thousands or decimals. Which is it?`,
    piece,
    options: [whole, decimal].map(one => ({ label: one, text: swap(one) })),
  }
}

/** 2 x 60 x 40 cm: two of 60 × 40, or 2 high, 60 wide, 40 deep. */
function countOrSize(group: Group, mm: readonly (number | undefined)[]): Omit<Question, 'piece'> | undefined {
  const [first, second, third] = group.dims
  const [a = 0, b = 0, c = 0] = mm
  if (!first || !second || !third || group.dims.length > 3 || group.dims.some(dim => dim.axis)) return undefined
  const count = first.value.num / first.value.den
  if (first.unit !== undefined || !Number.isInteger(count) || count < 2 || count > 12 || Math.min(b, c) < 5 * a)
    return undefined
  return {
    code: 'count',
    text: `Is the first figure, ${count}, the number of pieces or the height?`,
    options: [
      { ...sizeOption({ height: b, width: c }, `${count} pieces, each `), count, part: 'part' },
      sizeOption({ height: a, width: b, depth: c }),
    ],
  }
}
