/**
 * Which measure is the height, the width, the depth, the diameter. The rule it keeps: letters beat order; without
 * letters the order is height, width, depth; letters that mean two things and stand in doubtful company are asked.
 */
import type { Field, Language, QuestionCode } from './statement.ts'
import { type Axis, type AxisWord, LANGUAGE_NAMES } from './words.ts'

export interface FieldOption {
  readonly label: string
  readonly fields: readonly (Field | null)[]
}

export interface Assigned {
  /** The field of each measure in turn, or a question with its possible answers. */
  readonly fields?: readonly Field[]
  readonly question?: { readonly code: QuestionCode; readonly text: string; readonly options: readonly FieldOption[] }
  /** Letters or words said which is which. */
  readonly lettered: boolean
  readonly notes: readonly string[]
  readonly warnings: readonly { readonly code: string; readonly text: string }[]
}

const ORDER: readonly Field[] = ['height', 'width', 'depth']

/**
 * @param axes the letter of each measure; undefined where it has none
 * @param order letters given once for all measures, as in h x w x d
 * @param figures each measure as written, for the wording of questions
 */
export function assignFields(
  axes: readonly (AxisWord | undefined)[],
  order: readonly AxisWord[],
  figures: readonly string[],
  language: Language | undefined,
): Assigned {
  const lettered = axes.some(axis => axis !== undefined)
  const used = lettered ? axes : axes.map((_, index) => order[index])
  if (used.some(axis => axis !== undefined)) return byLetters(used, figures, language)
  const plain = { lettered: false, notes: [], warnings: [] } as const
  if (axes.length === 2 || axes.length === 3) return { ...plain, fields: ORDER.slice(0, axes.length) }
  if (axes.length === 1) return { ...plain, question: oneMeasure(figures) }
  const text = `There are ${axes.length} measures and no letters. Which are the height, the width and the depth?`
  return { ...plain, question: { code: 'too-many', text, options: [] } }
}

function oneMeasure(figures: readonly string[]) {
  const fields: readonly Field[] = ['height', 'width', 'diameter']
  const options = fields.map(field => ({ label: `${figures[0]} is the ${field}`, fields: [field] }))
  return { code: 'one-measure', text: `Only one measure is given, ${figures[0]}. Which is it?`, options } as const
}

function byLetters(
  axes: readonly (AxisWord | undefined)[],
  figures: readonly string[],
  language: Language | undefined,
): Assigned {
  const present = new Set<Axis>(axes.flatMap(axis => (axis ? [axis.axis] : [])))
  const votes = new Set(axes.flatMap(axis => (axis?.language ? [axis.language] : [])))
  const voted = votes.size === 1 ? [...votes][0] : undefined
  const spoken = voted ?? language
  const notes = voted !== undefined && voted !== 'en' ? [`read as ${LANGUAGE_NAMES[voted]}`] : []
  const warnings: { code: string; text: string }[] = []
  if (votes.size > 1) {
    warnings.push({
      code: 'mixed-languages',
      text: 'The letters come from more than one language. Check which is which.',
    })
  }
  const base = { lettered: true, notes, warnings } as const

  if ((present.has('l') || present.has('length')) && present.has('width'))
    return { ...base, question: lengthAndWidth(axes, figures) }
  if (
    present.has('d') &&
    !(present.has('height') && hasWidth(present)) &&
    !present.has('diameter') &&
    axes.length > 0
  ) {
    if (spoken !== 'fr' && spoken !== 'de') return { ...base, question: depthOrDiameter(axes, figures) }
  }
  if (present.has('l') && spoken !== 'fr') {
    warnings.push({ code: 'letter-l', text: 'L was read as the width.' })
  }
  if (present.has('length')) warnings.push({ code: 'length-as-width', text: 'The length was read as the width.' })
  const fields = axes.map(axis => (axis ? fieldOf(axis.axis, present, spoken) : undefined))
  return complete(fields, base, figures)
}

function complete(
  fields: readonly (Field | undefined)[],
  base: Omit<Assigned, 'fields' | 'question'>,
  figures: readonly string[],
): Assigned {
  const known = fields.filter(field => field !== undefined)
  const double = known.find((field, index) => known.indexOf(field) !== index)
  if (double !== undefined) {
    const text = `The letters name the ${double} twice. Which measure is which?`
    return { ...base, question: { code: 'letters', text, options: [] } }
  }
  if (known.length === fields.length) return { ...base, fields: known }
  // One without a letter keeps its place in the order, if the others stand in theirs.
  const inOrder = fields.length <= 3 && fields.every((field, index) => field === undefined || field === ORDER[index])
  if (!inOrder) {
    const missing = figures[fields.indexOf(undefined)] ?? ''
    const free = (['height', 'width', 'depth'] as const).filter(field => !known.includes(field))
    const options = free.map(field => ({
      label: `${missing} is the ${field}`,
      fields: fields.map(own => own ?? field),
    }))
    const text = `${missing} has no letter, while the others have one. Which measure is it?`
    const single = fields.filter(field => field === undefined).length === 1
    return { ...base, question: { code: 'letters', text, options: single ? options : [] } }
  }
  const warning = {
    code: 'letters-in-part',
    text: 'A measure without a letter was read by its place: height, width, depth.',
  }
  return { ...base, warnings: [...base.warnings, warning], fields: ORDER.slice(0, fields.length) }
}

function fieldOf(axis: Axis, present: ReadonlySet<Axis>, spoken: Language | undefined): Field {
  if (axis === 'l' || axis === 'length') return 'width'
  if (axis !== 'd') return axis
  const third = present.has('height') && hasWidth(present)
  return third || present.has('diameter') || (spoken !== 'fr' && spoken !== 'de') ? 'depth' : 'diameter'
}

function hasWidth(present: ReadonlySet<Axis>): boolean {
  return present.has('width') || present.has('l') || present.has('length')
}

function depthOrDiameter(axes: readonly (AxisWord | undefined)[], figures: readonly string[]) {
  const figure = figures[axes.findIndex(axis => axis?.axis === 'd')] ?? ''
  const options = (['depth', 'diameter'] as const).map(field => ({
    label: `${figure} is the ${field}`,
    fields: axes.map(axis =>
      axis === undefined ? null : axis.axis === 'd' ? field : fieldOf(axis.axis, new Set(), undefined),
    ),
  }))
  return {
    code: 'depth-or-diameter',
    text: `D may be the depth or the diameter. Which is ${figure}?`,
    options,
  } as const
}

/** L with W or B: what is the length of a thing that hangs? */
function lengthAndWidth(axes: readonly (AxisWord | undefined)[], figures: readonly string[]) {
  const upright = axes.some(axis => axis?.axis === 'height')
  const as = (length: Field, width: Field) =>
    axes.map(axis => {
      if (axis === undefined) return null
      if (axis.axis === 'l' || axis.axis === 'length') return length
      return axis.axis === 'width' ? width : fieldOf(axis.axis, new Set(), undefined)
    })
  const name = figures[axes.findIndex(axis => axis?.axis === 'l' || axis?.axis === 'length')] ?? ''
  const options = upright
    ? [
        { label: `${name} runs along the wall, the width is the depth`, fields: as('width', 'depth') },
        { label: `${name} stands out from the wall, the width runs along it`, fields: as('depth', 'width') },
      ]
    : [
        { label: `${name} is the height`, fields: as('height', 'width') },
        { label: `${name} is the width, and the other the height`, fields: as('width', 'height') },
      ]
  return {
    code: 'length',
    text: `A length (${name}) and a width are given. How does the work hang or stand?`,
    options,
  } as const
}
