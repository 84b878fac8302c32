/**
 * All that one statement says, written as one edit: each part a dated row, its weight another. The rule it keeps: what
 * is still a question is refused, and then nothing of the statement is written.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import type { Writing } from '../service.ts'
import { workName } from './facts.ts'
import { refreshMass, refreshSize } from './figures.ts'
import { hangingNow, insertMass, insertSize } from './measures.ts'

type Given = Received<'work.addStatement'>

interface Stated {
  readonly sizes: NonNullable<Given['sizes']>
  readonly mass: Given['mass']
}

function stated({ raw, part, sizes, mass }: Given): Stated {
  if (sizes !== undefined || mass !== undefined) return { sizes: sizes ?? [], mass }
  const read = readDimensions(raw)
  // Without a size a weight may stand alone.
  const question = read.questions.find(({ code }) => code !== 'no-size' || read.mass === undefined)
  if (question !== undefined) {
    throw new Refusal('not-clear', question.text, { field: 'raw', details: { piece: question.piece } })
  }
  return {
    sizes: read.parts.map(({ part: named, label, count, height, width, depth, diameter, approximate }) => ({
      part: named === 'unnamed' ? part : named,
      label,
      count,
      height,
      width,
      depth,
      diameter,
      approximate,
    })),
    mass: read.mass,
  }
}

export function addStatement(writing: Writing, input: Given): Output<'work.addStatement'> {
  const { work, raw, kind, source } = input
  const named = workName(writing.db, work)
  const { sizes, mass } = stated(input)
  for (const [at, { height, width, depth, diameter }] of sizes.entries()) {
    if ([height, width, depth, diameter].every(figure => figure == null)) {
      throw new Refusal('bad-input', 'A size needs at least one figure.', { field: `sizes.${at}.height` })
    }
  }
  if (sizes.length === 0 && mass === undefined) {
    throw new Refusal('bad-input', 'The statement holds no size and no weight.', { field: 'sizes' })
  }
  const parts = [...sizes.map(size => size.part), ...(mass === undefined ? [] : ['weight'])]
  writing.label(`${kind === 'measured' ? 'Measure' : 'List'} ${new Intl.ListFormat('en').format(parts)} of ${named}`)
  const common = { work, kind, ...(source === undefined ? {} : { source }) }
  const ids = sizes.map(size =>
    insertSize(writing, {
      ...common,
      part: size.part,
      label: size.label ?? '',
      count: size.count ?? 1,
      height: size.height ?? null,
      width: size.width ?? null,
      depth: size.depth ?? null,
      diameter: size.diameter ?? null,
      raw,
      approximate: input.approximate === true || size.approximate === true,
    }),
  )
  if (ids.length > 0) refreshSize(writing.db, work)
  const weighed =
    mass === undefined
      ? null
      : insertMass(writing, {
          ...common,
          kg: mass.kg,
          raw: mass.raw,
          approximate: input.approximate === true || mass.approximate === true,
        })
  if (weighed !== null) refreshMass(writing.db, work)
  return { sizes: ids, mass: weighed, hanging: hangingNow(writing, work) }
}
