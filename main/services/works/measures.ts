/** Sizes, masses and backs: each a dated row with its source; what is in force follows by the model's rule. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { readBack } from '../../../src/hang/back.ts'
import { methodOf } from '../../../src/hang/methods.ts'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import { notFound } from '../change.ts'
import type { Writing } from '../service.ts'
import { insert, row, run, update } from '../sql.ts'
import { workName } from './facts.ts'
import { hangingSizeOf, refreshBack, refreshMass, refreshSize } from './figures.ts'
import { asHanging } from './get.ts'

export function hangingNow(writing: Writing, work: string) {
  const hanging = hangingSizeOf(writing.db, work)
  return hanging === undefined ? null : asHanging(hanging)
}

type Figures = Pick<Received<'work.addSize'>, 'height' | 'width' | 'depth' | 'diameter'>

/** The figures given, else what the statement as typed says; a statement that leaves a question is refused with it. */
function figuresOf(input: Received<'work.addSize'>): Figures {
  const given = [input.height, input.width, input.depth, input.diameter]
  if (given.some(figure => figure != null)) return input
  if (input.raw.trim() === '') throw new Refusal('bad-input', 'A size needs at least one figure.', { field: 'height' })
  const { parts, questions } = readDimensions(input.raw)
  const [question] = questions
  if (question !== undefined)
    throw new Refusal('not-clear', question.text, { field: 'raw', details: { piece: question.piece } })
  if (parts.length > 1) {
    throw new Refusal(
      'not-clear',
      'This says the sizes of several parts. Enter one part at a time, or all of it as a statement.',
      { field: 'raw' },
    )
  }
  return parts[0] ?? {}
}

export interface NewSize extends Required<Figures> {
  readonly work: string
  readonly part: string
  readonly label: string
  readonly count: number
  readonly raw: string
  readonly kind: 'listed' | 'measured'
  readonly source?: string | undefined
  readonly approximate?: boolean | undefined
}

/** One dated row; what hangs is to be refreshed after the last one. */
export function insertSize(writing: Writing, size: NewSize): string {
  const id = writing.newId()
  const { work, part, label, count, height, width, depth, diameter, raw, kind } = size
  insert(writing.db, 'work_size', {
    id,
    work,
    part,
    label,
    height: height ?? null,
    width: width ?? null,
    depth: depth ?? null,
    diameter: diameter ?? null,
    count,
    unit: 'mm',
    raw,
    kind,
    source: size.source ?? '',
    by: writing.person?.name ?? '',
    at: writing.now(),
    approximate: size.approximate === true ? 1 : 0,
    chosen: 0,
  })
  return id
}

export function addSize(writing: Writing, input: Received<'work.addSize'>): Output<'work.addSize'> {
  const { work, part, kind } = input
  const named = workName(writing.db, work)
  const { height = null, width = null, depth = null, diameter = null } = figuresOf(input)
  writing.label(`${kind === 'measured' ? 'Measure' : 'List'} ${part} of ${named}`)
  const id = insertSize(writing, { ...input, label: '', count: 1, height, width, depth, diameter })
  refreshSize(writing.db, work)
  return { id, hanging: hangingNow(writing, work) }
}

export function chooseSize(writing: Writing, { id, chosen }: Received<'work.chooseSize'>): Output<'work.chooseSize'> {
  const size = row<{ work: string; part: string }>(writing.db, 'SELECT work, part FROM work_size WHERE id = :id', {
    id,
  })
  if (size === undefined) throw notFound('size')
  const { work, part } = size
  writing.label(`${chosen ? 'Overrule' : 'Let the rule choose'} the ${part} size of ${workName(writing.db, work)}`)
  run(writing.db, 'UPDATE work_size SET chosen = 0 WHERE work = :work AND part = :part AND chosen = 1', { work, part })
  if (chosen) update(writing.db, 'work_size', id, { chosen: 1 })
  refreshSize(writing.db, work)
  return { hanging: hangingNow(writing, work) }
}

/** One dated row; which mass counts is to be refreshed after it. */
export function insertMass(writing: Writing, input: Received<'work.addMass'>): string {
  const { work, kg, raw, kind } = input
  const id = writing.newId()
  insert(writing.db, 'work_mass', {
    id,
    work,
    kg,
    raw,
    kind,
    source: input.source ?? '',
    by: writing.person?.name ?? '',
    at: writing.now(),
    approximate: input.approximate === true ? 1 : 0,
    chosen: 0,
  })
  return id
}

export function addMass(writing: Writing, input: Received<'work.addMass'>): Output<'work.addMass'> {
  writing.label(`${input.kind === 'measured' ? 'Weigh' : 'List the mass of'} ${workName(writing.db, input.work)}`)
  const id = insertMass(writing, input)
  refreshMass(writing.db, input.work)
  return { id }
}

export function chooseMass(writing: Writing, { id, chosen }: Received<'work.chooseMass'>): Output<'work.chooseMass'> {
  const mass = row<{ work: string }>(writing.db, 'SELECT work FROM work_mass WHERE id = :id', { id })
  if (mass === undefined) throw notFound('mass')
  const { work } = mass
  writing.label(`${chosen ? 'Overrule' : 'Let the rule choose'} the mass of ${workName(writing.db, work)}`)
  run(writing.db, 'UPDATE work_mass SET chosen = 0 WHERE work = :work AND chosen = 1', { work })
  if (chosen) update(writing.db, 'work_mass', id, { chosen: 1 })
  refreshMass(writing.db, work)
  return { done: true }
}

export function setBack(writing: Writing, input: Received<'work.setBack'>): Output<'work.setBack'> {
  const { work, method, data, seenFrom } = input
  const named = workName(writing.db, work)
  // The method's own schema decides what may stand here; its refusal names the field.
  const { schema, fields } = methodOf(method)
  readBack(schema, data, fields)
  writing.label(`Measure the back of ${named}`)
  const id = writing.newId()
  insert(writing.db, 'work_back', {
    id,
    work,
    method,
    data: JSON.stringify(data),
    seen_from: seenFrom,
    by: writing.person?.name ?? '',
    at: writing.now(),
    note: input.note ?? '',
  })
  refreshBack(writing.db, work)
  return { id }
}
