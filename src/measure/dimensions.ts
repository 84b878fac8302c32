/**
 * Reads dimension statements as lenders write them, in English, French and German. The rule it keeps: what is not
 * understood becomes a question, nothing is guessed without saying so, and no text makes it throw or run long.
 */
import { readDate } from './dates.ts'
import { type Item, readItems } from './grammar.ts'
import { type Group, type Grouped, groupItems, pieceOf } from './groups.ts'
import { hangingPart } from './hanging.ts'
import { paperWords } from './paper.ts'
import { agree } from './same-size.ts'
import { ownUnit, readSizes, type UnitFinding } from './sizes.ts'
import { crossSlashes } from './slashes.ts'
import type { Part, Question, ReadMassPart, ReadOptions, ReadPart, Remark, Statement } from './statement.ts'
import { isAside, strayFigures } from './stray.ts'
import { tokenise } from './tokens.ts'
import { UNIT_NAMES } from './units.ts'
import { LANGUAGE_NAMES } from './words.ts'

const LONGEST = 2000

/**
 * Reads a statement into parts in millimetres, a mass in kilograms, and questions. Never throws.
 * Rules: practice of museum and dealers' lists; height × width × depth where no letters say otherwise (CCO 3.2.1.2.1).
 */
export function readDimensions(text: string, options: ReadOptions = {}): Statement {
  if (text.length > LONGEST) {
    return asked(
      'too-long',
      `This is ${text.length} characters long. A statement of sizes can have ${LONGEST}.`,
      text.slice(0, 60),
    )
  }
  const whole = text.trim()
  if (whole === '') return asked('empty', 'No size is given. Measure the work or ask the lender.', '')
  const tokens = tokenise(crossSlashes(text))
  const date = readDate(text, tokens)
  if (date) {
    const sentence = `“${date.piece}” looks like a size that a spreadsheet turned into a date. What was it?`
    return asked('date', sentence, date.piece, date.options)
  }
  const items = readItems(tokens)
  const range = items.find(item => item.kind === 'range')
  if (range) return askRange(text, range)
  return interpret(text, items, groupItems(items), options)
}

type RangeItem = Extract<Item, { readonly kind: 'range' }>

function asked(code: Question['code'], text: string, piece: string, options: Question['options'] = []): Statement {
  return { parts: [], questions: [{ code, text, piece, options }], warnings: [], hanging: null }
}

function askRange(text: string, range: RangeItem): Statement {
  const unit =
    range.to.unit === undefined || range.from.unit !== undefined || range.to.compound ? '' : ` ${range.to.unit}`
  const sides = [text.slice(range.from.at, range.from.end) + unit, text.slice(range.to.at, range.to.end)]
  const answers = sides.map(side => ({
    label: side.trim(),
    text: text.slice(0, range.at) + side + text.slice(range.end),
  }))
  const piece = text.slice(range.at, range.end)
  return asked('range', `“${piece}” gives a range. Which is the size?`, piece, answers)
}

interface Draft {
  readonly part: ReadPart
  readonly group: Group
  readonly questions: readonly Question[]
}

function interpret(text: string, items: readonly Item[], grouped: Grouped, options: ReadOptions): Statement {
  const questions: Question[] = []
  const warnings: Remark[] = unreadWords(text, items)
  const { groups, stray } = strayFigures(text, grouped.groups)
  for (const group of stray) {
    const piece = text.slice(group.at, group.end)
    if (isAside(text, group)) warnings.push({ code: 'not-read', text: `“${piece}” was not read as a size.` })
    else questions.push({ code: 'number', text: `“${piece}” stands alone. What does it measure?`, piece, options: [] })
  }
  const units = inheritUnits(
    groups.map(group => ownUnit(group, grouped.unit)),
    options,
  )
  const drafts = groups.map((group, index) => draftPart(text, group, units[index], grouped, options))
  const parts = settle(text, drafts, questions)
  if (grouped.count !== undefined && groups.length > 0) {
    warnings.push({
      code: 'count-not-used',
      text: `“${text.slice(grouped.count.at, grouped.count.end)}” was not joined to a size.`,
    })
  }
  const nothing = items.find(item => item.kind === 'nothing')
  if (nothing) {
    const piece = text.slice(nothing.at, nothing.end)
    const sentence = `“${piece}”: there is no size to plan with yet. Measure the work or ask the lender.`
    questions.push({ code: 'no-size', text: sentence, piece, options: [] })
  }
  const mass = readMasses(text, grouped, questions)
  if (parts.length === 0 && questions.length === 0 && mass === undefined) {
    return asked(
      'not-understood',
      `No size was understood in “${short(text)}”. Type the size, or ask the lender.`,
      short(text),
    )
  }
  if (parts.length === 0 && questions.length === 0) {
    const sentence = 'Only a weight was understood, no size. Measure the work or ask the lender.'
    questions.push({ code: 'no-size', text: sentence, piece: short(text), options: [] })
  }
  return { parts, ...(mass ? { mass } : {}), questions, warnings, hanging: hangingPart(parts, questions) }
}

function short(text: string): string {
  const whole = text.trim()
  return whole.length > 60 ? `${whole.slice(0, 59)}…` : whole
}

function unreadWords(text: string, items: readonly Item[]): Remark[] {
  const pieces: { at: number; end: number }[] = []
  for (const item of items) {
    if (item.kind !== 'unread' && item.kind !== 'number') continue
    const last = pieces.at(-1)
    if (last && text.slice(last.end, item.at).trim() === '') last.end = item.end
    else pieces.push({ at: item.at, end: item.end })
  }
  return pieces.map(piece => ({ code: 'not-read', text: `“${short(text.slice(piece.at, piece.end))}” was not read.` }))
}

/** Fills units that are missing from the other sizes of the statement, or from the default. */
function inheritUnits(
  own: readonly (UnitFinding | undefined)[],
  options: ReadOptions,
): readonly (UnitFinding | undefined)[] {
  const said = new Set(own.flatMap(finding => (finding ? [finding.unit] : [])))
  const donor = own.find(finding => finding !== undefined)
  return own.map(finding => {
    if (finding) return finding
    if (said.size === 1 && donor) {
      const remark = donor.remark ?? {
        code: 'unit-inferred',
        text: `No unit of its own: read in ${UNIT_NAMES[donor.unit]}, as the other size.`,
      }
      return { unit: donor.unit, stated: false, remark }
    }
    if (options.defaultUnit === undefined || said.size > 0) return undefined
    const text = `No unit is written: read in ${UNIT_NAMES[options.defaultUnit]}, the unit that was set.`
    return { unit: options.defaultUnit, stated: false, remark: { code: 'unit-inferred', text } }
  })
}

function draftPart(
  text: string,
  group: Group,
  unit: UnitFinding | undefined,
  grouped: Grouped,
  options: ReadOptions,
): Draft {
  const read = readSizes(text, group, unit, grouped.order, options)
  const questions = [...read.questions]
  const named = nameOf(text, group)
  const notes = [...read.notes]
  if (named.language !== null && named.language !== 'en') notes.push(`read as ${LANGUAGE_NAMES[named.language]}`)
  const paper = group.paper && paperWords(group.paper)
  if (paper) notes.push(paper.note)
  const standing = paper?.warning ? [{ code: 'paper-way', text: paper.warning }] : []
  const raw = pieceOf(text, group)
  if (named.rivals.length > 0) {
    const answers = named.rivals.map(part => ({ label: PART_NAMES[part], part }))
    questions.push({ code: 'which-part', text: `Which size is “${raw}”?`, piece: raw, options: answers })
  }
  const counted = group.each || group.count !== undefined
  if (group.each && group.count === undefined) {
    questions.push({
      code: 'count',
      text: `“${raw}” is the size of each piece. How many are there?`,
      piece: raw,
      options: [],
    })
  }
  if (!group.each && group.count !== undefined && group.count.count > 1) {
    const { count } = group.count
    const answers = [
      { label: `Each of the ${count}`, part: 'part', count },
      { label: 'All together', part: 'overall', count: 1 },
    ] as const
    questions.push({
      code: 'count',
      text: `Is “${raw}” the size of each piece or of all together?`,
      piece: raw,
      options: answers,
    })
  }
  const unitAsked = questions.some(question => question.code === 'unit' || question.code === 'unit-and-order')
  const sure = counted && group.each
  const part: ReadPart = {
    part: counted && (named.part === 'unnamed' || named.weak) ? 'part' : named.part,
    label: named.label === '' && group.count ? text.slice(group.count.at, group.count.end) : named.label,
    count: sure ? (group.count?.count ?? 1) : 1,
    ...read.sizes,
    unit: unitAsked ? null : (read.unit?.unit ?? null),
    unitStated: !unitAsked && (read.unit?.stated ?? false),
    approximate: group.about,
    raw,
    warnings: [...read.warnings, ...standing],
    notes: [...new Set(notes)],
  }
  return { part, group, questions }
}

const PART_NAMES: Readonly<Record<Part, string>> = {
  framed: 'With frame',
  overall: 'Overall',
  mount: 'Mount',
  support: 'Without frame',
  sheet: 'Sheet',
  plate: 'Plate mark',
  image: 'Image',
  sight: 'Sight size',
  base: 'Base',
  part: 'One piece',
  unnamed: 'The work',
}

/** The part a group's words name: the outright ones beat supports and media; two outright ones are rivals. */
function nameOf(text: string, group: Group) {
  const outright = group.labels.filter(label => !label.weak)
  const label = outright[0] ?? group.labels.at(-1)
  const parts = [...new Set(outright.map(one => one.part))]
  const rivals: readonly Part[] =
    parts.length > 1 ? parts : group.unclear ? ['framed', 'support', 'sheet', 'image', 'sight'] : []
  if (label === undefined || rivals.length > 0) {
    return { part: 'unnamed' as const, label: '', language: null, weak: false, rivals }
  }
  const written = text.slice(label.at, label.end).replace(/\s+/g, ' ')
  return { part: label.part, label: written, language: label.language, weak: label.weak, rivals }
}

/** Numbers the parts, joins those that say the same twice, and asks about those that say two things. */
function settle(text: string, drafts: readonly Draft[], questions: Question[]): readonly ReadPart[] {
  const kept: Draft[] = []
  for (const draft of drafts) {
    const twin = draft.part.part === 'part' ? undefined : kept.find(one => one.part.part === draft.part.part)
    if (twin && draft.questions.length === 0 && isSame(twin.part, draft.part)) continue
    const index = kept.length
    kept.push(draft)
    for (const question of draft.questions) questions.push({ ...question, index })
    const asking = draft.questions.some(question => question.code === 'which-part')
    if (!twin || asking) continue
    const piece = text.slice(twin.group.at, draft.group.end)
    questions.push(twice(draft.part, piece, index))
  }
  return kept.map(draft => draft.part)
}

function twice(part: ReadPart, piece: string, index: number): Question {
  const answers = (['framed', 'support', 'sheet', 'image', 'sight'] as const).map(one => ({
    label: PART_NAMES[one],
    part: one,
  }))
  const sentence =
    part.part === 'unnamed'
      ? `Two sizes and no word that tells them apart. Which is “${part.raw}”?`
      : `Two different sizes are given for “${PART_NAMES[part.part]}”. Which is “${part.raw}”?`
  return { code: part.part === 'unnamed' ? 'which-part' : 'twice', text: sentence, piece, index, options: answers }
}

function isSame(a: ReadPart, b: ReadPart): boolean {
  return (['height', 'width', 'depth', 'diameter'] as const).every(field => {
    const [x, y] = [a[field], b[field]]
    return x === undefined || y === undefined ? x === y : agree(x, y)
  })
}

function readMasses(text: string, grouped: Grouped, questions: Question[]): ReadMassPart | undefined {
  const [first, ...rest] = grouped.masses
  if (!first) return undefined
  const other = rest.find(mass => Math.abs(mass.kg - first.kg) > 0.02 * Math.max(mass.kg, first.kg) + 0.05)
  if (other) {
    const piece = text.slice(first.at, other.end)
    const answers = [first, other].map(mass => ({ label: text.slice(mass.at, mass.end), kg: mass.kg }))
    questions.push({
      code: 'mass',
      text: 'Two weights are given that do not agree. Which is right?',
      piece,
      options: answers,
    })
    return undefined
  }
  const raw = text.slice(first.at, first.end)
  if (first.kg > 0 && first.kg <= 1e5) return { kg: first.kg, raw, approximate: first.about }
  questions.push({ code: 'mass', text: `“${raw}” is no weight a work can have.`, piece: raw, options: [] })
  return undefined
}
