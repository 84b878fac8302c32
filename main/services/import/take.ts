/** The two long procedures: a preview that writes nothing, and accepting the same input as one edit. */
import { columnLetters, type TableRow, textOf } from '../../../src/checklist/cell.ts'
import { type Field, fieldNames, fields, isField } from '../../../src/checklist/fields.ts'
import type { KeptField } from '../../../src/checklist/merge.ts'
import { tidy } from '../../../src/checklist/plain-text.ts'
import type { RowOutcome, RowQuestion } from '../../../src/checklist/reading.ts'
import { toRemember } from '../../../src/checklist/recognise.ts'
import { fieldLabel, makeUnderstanding } from '../../../src/checklist/understand.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import type { LengthUnit } from '../../../src/measure/units.ts'
import { writeAmount } from '../../../src/money/write.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { dateAt } from '../days.ts'
import type { Job, Writing } from '../service.ts'
import { insert, update, value } from '../sql.ts'
import { type Head, keepPreview, keyOf, pageOf } from './kept.ts'
import { type Answers, type ListPlan, type PlannedRow, type PlannedWork, planRows } from './plan.ts'
import {
  checkColumns,
  columnsTold,
  type Lender,
  type ListInput,
  lenderNamed,
  lenderOf,
  noColumns,
  openSource,
  rememberedFor,
  type Show,
  type Source,
  showOf,
  watchOf,
} from './source.ts'
import { writePlan } from './write.ts'

interface Read {
  readonly source: Source
  readonly lender: Lender | null
  readonly show: Show | null
  readonly outcomes: readonly RowOutcome[]
  /** The cells of the rows wanted, as read. */
  readonly cells: ReadonlyMap<number, readonly string[]>
  readonly answers: Answers
}

async function readList(job: Job, input: ListInput, keepCells: boolean): Promise<Read> {
  const show = showOf(job.db, input)
  const lender = lenderOf(job.db, input)
  const source = await openSource(job, input, lender)
  const top = source.table.sheets[source.sheet]?.top ?? []
  const neighboursUnit = neighbours(top, source)
  const understand = makeUnderstanding({
    headingRow: source.shape.headingRow,
    columns: source.shape.columns,
    language: source.shape.language,
    ...(input.unit === undefined ? {} : { unit: input.unit }),
    ...(neighboursUnit === undefined ? {} : { neighboursUnit }),
  })
  const outcomes: RowOutcome[] = []
  const cells = new Map<number, readonly string[]>()
  for await (const batch of source.table.rows(source.sheet, watchOf(job))) {
    for (const row of batch) {
      if (row.row <= source.shape.headingRow) continue
      const outcome = understand(row)
      if (outcome.kind === 'skip') continue
      outcomes.push(outcome)
      if (keepCells)
        cells.set(
          row.row,
          row.cells.map(cell => tidy(textOf(cell))),
        )
    }
  }
  return { source, lender, show, outcomes, cells, answers: answersOf(input) }
}

/** The one unit that the sizes of the first rows state; offered first where another states none. */
function neighbours(top: readonly TableRow[], source: Source): LengthUnit | undefined {
  const stated = new Set<LengthUnit>()
  for (const use of source.shape.columns) {
    if (use.field !== 'size') continue
    for (const row of top) {
      if (row.row <= source.shape.headingRow) continue
      const text = textOf(row.cells[use.column])
      if (text === '') continue
      for (const part of readDimensions(text).parts) if (part.unitStated && part.unit !== null) stated.add(part.unit)
    }
  }
  const [only] = stated
  return stated.size === 1 ? only : undefined
}

function answersOf(input: ListInput): Answers {
  const keyOf = (row: number, field: string, question = '') => JSON.stringify([row, field, question])
  const given = new Map(input.answers?.map(one => [keyOf(one.row, one.field, one.question), one.answer]))
  return { of: (row, field, question) => given.get(keyOf(row, field, question)) ?? given.get(keyOf(row, field)) }
}

function plan(job: Job, db: ReadHandle, read: Read): ListPlan {
  const { lender, show, answers, outcomes } = read
  const choices = { lender, show, answers, language: read.source.shape.language, today: dateAt(job.now()) }
  return planRows(db, outcomes, choices, done => job.progress(done, outcomes.length, 'Comparing with the catalogue'))
}

function count(rows: readonly PlannedRow[]) {
  const works = rows.filter(row => row.kind === 'work')
  const of = (outcome: PlannedWork['outcome']) => works.filter(row => row.outcome === outcome).length
  return {
    rows: rows.filter(row => row.kind !== 'section').length,
    add: of('add'),
    update: of('update'),
    unchanged: of('unchanged'),
    kept: works.reduce((sum, row) => sum + (row.merge?.kept.length ?? 0), 0),
    questions: works.reduce((sum, row) => sum + row.questions.length, 0),
    refused: rows.length - works.length - rows.filter(row => row.kind === 'section').length,
  }
}

function columnOf(source: Source, field: string): string {
  const [name = '', part] = field.split(' ')
  const use = source.shape.columns.find(one => one.field === name && (part === undefined || one.part === part))
  return use === undefined || use.heading === '' ? fieldLabel(field) : use.heading
}

/** A row that brings nothing new writes nothing at all, so that a second import of a list leaves no trace. */
function writesNothing(rows: readonly PlannedRow[], read: Read): boolean {
  return (
    read.show?.id !== null &&
    rows.every(row => row.kind !== 'work' || (row.outcome === 'unchanged' && row.merge !== null && !row.merge.says))
  )
}

export async function accept(job: Job, input: Received<'import.accept'>): Promise<Output<'import.accept'>> {
  const read = await readList(job, input, false)
  checkColumns(read.source.shape)
  const before = newestEntry(job.db)
  let planned = plan(job, job.db, read)
  let written: { run: string; exhibition: string | null } | null = null
  if (!writesNothing(planned.rows, read)) {
    job.progress(0, planned.rows.length, 'Waiting to write')
    written = await job.write(writing => {
      // Somebody may have changed something while the list was read.
      if (newestEntry(writing.db) !== before)
        planned = plan(job, writing.db, {
          ...read,
          lender: lenderOf(writing.db, input),
          show: showOf(writing.db, input),
        })
      return write(job, writing, read, planned)
    })
  }
  const { rows } = planned
  const counts = count(rows)
  const works = rows.filter(row => row.kind === 'work')
  return {
    run: written?.run ?? null,
    exhibition: written?.exhibition ?? read.show?.id ?? null,
    rows: counts.rows,
    added: counts.add,
    updated: counts.update,
    unchanged: counts.unchanged,
    questions: works.flatMap(row =>
      row.questions.map(({ column, raw, question }) => ({ row: row.reading.row, column, text: raw, question })),
    ),
    refused: rows.flatMap(row =>
      row.kind === 'refused' ? [{ row: row.row, column: row.column, reason: row.reason }] : [],
    ),
    kept: works.flatMap(row =>
      (row.merge?.kept ?? []).map(kept => ({
        row: row.reading.row,
        column: columnOf(read.source, kept.field),
        list: kept.list,
        yours: kept.yours,
      })),
    ),
    remarks: [...read.source.table.remarks()],
  }
}

function newestEntry(db: ReadHandle): number {
  return value<number>(db, 'SELECT max(seq) FROM journal') ?? 0
}

function write(job: Job, writing: Writing, read: Read, { rows }: ListPlan) {
  const counts = count(rows)
  const { source } = read
  const says =
    counts.add > 0 ? `${counts.add} ${counts.add === 1 ? 'work' : 'works'} added` : `${counts.update} updated`
  writing.label(`Import ${source.name}: ${says}`)
  const written = writePlan(
    writing,
    rows,
    {
      name: source.name,
      hash: source.hash,
      mapping: JSON.stringify(toRemember(source.shape.columns)),
      lender: read.lender,
      show: read.show,
      counts: { added: counts.add, updated: counts.update, unchanged: counts.unchanged },
    },
    done => job.progress(done, rows.length, 'Writing'),
  )
  // A lender that this list brought in has its id only now.
  const lender = read.lender === null ? null : lenderNamed(writing.db, read.lender.name).id
  remember(writing, read.lender?.id ?? lender ?? '', source.shape.columns)
  return written
}

function remember(writing: Writing, id: string, columns: Source['shape']['columns']): void {
  const there = value<string>(writing.db, 'SELECT mapping FROM import_mapping WHERE id = :id', { id })
  const mapping = JSON.stringify(toRemember(columns, rememberedFor(writing.db, id)))
  if (there === mapping) return
  if (there === undefined) insert(writing.db, 'import_mapping', { id, mapping, at: writing.now() })
  else update(writing.db, 'import_mapping', id, { mapping, at: writing.now() })
}

type Preview = Output<'import.preview'>

export async function preview(job: Job, input: Received<'import.preview'>): Promise<Preview> {
  const key = keyOf(job, input)
  const read = await readList(job, input, true)
  const { rows, known } = plan(job, job.db, read)
  const { source } = read
  const top = (source.table.sheets[source.sheet]?.top ?? []).filter(row => row.row > source.shape.headingRow)
  const head: Head = {
    name: source.name,
    kind: source.table.kind,
    encoding: source.table.encoding,
    separator: source.table.separator,
    sheets: source.table.sheets.map((sheet, i) => ({
      name: sheet.name,
      hidden: sheet.hidden,
      recognised: source.sheetScores[i] ?? 0,
    })),
    sheet: source.table.sheets[source.sheet]?.name ?? '',
    headingRow: source.shape.headingRow,
    language: source.shape.language,
    columns: source.shape.columns.map(use => ({
      ...use,
      column: use.column + 1,
      letters: columnLetters(use.column),
      sample: top
        .map(row => tidy(textOf(row.cells[use.column])))
        .filter(text => text !== '')
        .slice(0, 5),
    })),
    // Nothing can be taken in so, but a preview is where a person says what the columns are.
    remarks: [...(columnsTold(source.shape) ? [] : [noColumns]), ...source.table.remarks()],
    counts: count(rows),
  }
  const shown = (row: PlannedRow) => previewRow(row, read, id => known.work(id))
  const { limit } = input
  const wanted = rows.filter(row => shows(row, input.show))
  const page = pageOf(wanted, input)
  // What fits one page is shown at once; the rest is scrolled through.
  if (limit !== undefined && limit < rows.length) {
    keepPreview(job, key, head, rows.length, index => {
      if (index % 500 === 0) job.progress(index, rows.length, 'Keeping the rows')
      const row = rows[index]
      if (row === undefined) throw new Error('A row of the plan is missing')
      return { row: shown(row), shows: choices.filter(choice => shows(row, choice)) }
    })
  }
  return { ...head, total: wanted.length, offset: page.offset, rows: page.some.map(shown) }
}

const choices = ['questions', 'add', 'update', 'unchanged', 'kept', 'refused'] as const

function shows(row: PlannedRow, show: Received<'import.preview'>['show']): boolean {
  if (show === undefined) return true
  if (show === 'refused') return row.kind === 'refused'
  if (row.kind !== 'work') return false
  if (show === 'questions') return row.questions.length > 0
  return show === 'kept' ? (row.merge?.kept.length ?? 0) > 0 : row.outcome === show
}

type KnownTitle = (id: string) => { readonly id: string; readonly title: string; readonly maker: string } | undefined

function previewRow(row: PlannedRow, read: Read, known: KnownTitle): Preview['rows'][number] {
  const empty = { changes: [], kept: [], questions: [], remarks: [], reason: '', work: null }
  const nothing = { facts: [], sizes: [], masses: [] }
  if (row.kind !== 'work') {
    const reason = row.kind === 'refused' ? row.reason : ''
    const outcome = row.kind === 'refused' ? 'refused' : 'section'
    return { ...empty, row: row.row, outcome, cells: [...(read.cells.get(row.row) ?? [])], understood: nothing, reason }
  }
  const { reading, merge } = row
  const found = row.work === null ? undefined : known(row.work)
  return {
    row: reading.row,
    outcome: row.outcome,
    work:
      found === undefined || row.work?.includes(' ') ? null : { id: found.id, title: found.title, maker: found.maker },
    cells: [...(read.cells.get(reading.row) ?? [])],
    understood: {
      facts: understoodFacts(row),
      sizes: reading.sizes.map(({ unit: _unit, ...size }) => ({ ...size, remarks: [...size.remarks] })),
      masses: [...reading.masses],
    },
    changes: [
      ...(merge?.facts ?? []).map(change => ({
        field: change.field,
        label: fieldLabel(change.field),
        list: String(change.to ?? ''),
        yours: String(change.from ?? ''),
      })),
      ...(merge?.value == null
        ? []
        : [
            {
              field: 'value',
              label: fields.value,
              list: writeAmount(merge.value),
              yours: merge.valued === null ? '' : writeAmount(merge.valued),
            },
          ]),
    ],
    kept: (merge?.kept ?? []).map(differenceOf),
    questions: row.questions.map(question =>
      shownQuestion(question, read.answers.of(reading.row, question.field, question.question)),
    ),
    remarks: [...new Set(reading.remarks)],
    reason: '',
  }
}

function differenceOf(kept: KeptField) {
  return { field: kept.field, label: fieldLabel(kept.field), list: kept.list, yours: kept.yours }
}

export function shownQuestion(question: RowQuestion, answer: string | undefined) {
  const { field, column, kind, raw, question: words, options } = question
  return {
    field,
    column,
    kind,
    text: raw,
    question: words,
    options: options.map(option => ({ answer: option.answer, label: option.label })),
    answer: answer ?? null,
  }
}

function understoodFacts({ reading, section, status, lender }: PlannedWork) {
  const said: Record<string, string | number | undefined> = {
    ...reading.facts,
    running: reading.running,
    lender: lender?.name ?? '',
    section,
    status,
    value: reading.value === null ? '' : writeAmount(reading.value),
  }
  for (const number of reading.numbers) said[number.field] = number.text
  return fieldNames.flatMap((field: Field) => {
    const text = said[field]
    return text === undefined || text === '' || !isField(field)
      ? []
      : [{ field, label: fields[field], text: String(text) }]
  })
}
