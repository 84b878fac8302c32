/**
 * Reads the sheets of an .xlsx workbook. Every entry is inflated within limits and counted first; the spreadsheet
 * library then sees a lean copy of the one sheet that is wanted. Formulas are never computed: the result that the
 * spreadsheet kept is taken, and where it kept none the cell says so.
 */
import type { Cell, TableRow } from '../../../src/checklist/cell.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { type CellValue, newWorkbook, type Worksheet } from '../workbook/exceljs.ts'
import { type Cleaner, makeCleaner } from './cleaner.ts'
import { formatUnit, isDateFormat, shownDate, shownNumber } from './shown.ts'
import {
  cellTooLong,
  checkSignal,
  type Limits,
  someRows,
  type Table,
  tooManyColumns,
  tooManyRows,
  topRows,
  limits as usualLimits,
  type Watch,
} from './table.ts'
import { checkSheet, firstRows, leanSheet, leanWorkbook, planOf, type WorkbookPlan } from './workbook-parts.ts'
import { damaged, type OpenZip, openZip } from './zip.ts'

const batchRows = 1000
const mostSheets = 100

interface Parts {
  readonly plan: WorkbookPlan
  readonly strings: Buffer | undefined
  readonly styles: Buffer | undefined
}

/** Refuses `not-a-workbook`, `damaged-file`, `too-large-inside`, `too-many-cells`, `too-many-rows`, `too-many-columns`, `cell-too-long`, `cancelled`. */
export async function openXlsx(path: string, watch: Watch, limits: Limits = usualLimits): Promise<Table> {
  const { parts, tops } = await withZip(path, limits, async zip => {
    const found = await readParts(zip, watch)
    const lean: { name: string; xml: string }[] = []
    for (const sheet of found.plan.sheets) {
      const bytes = await zip.read(sheet.path, watch.signal)
      lean.push({
        name: sheet.name,
        xml:
          bytes === undefined ? leanSheet(Buffer.alloc(0), 0) : topSheet(bytes, found.plan.sheets.length === 1, limits),
      })
    }
    return { parts: found, tops: lean }
  })
  const sheets = await load(parts, tops)
  let remarks: readonly string[] = []

  async function* rows(index: number, watching: Watch): AsyncGenerator<readonly TableRow[]> {
    const place = parts.plan.sheets[index]
    if (place === undefined) return
    const xml = await withZip(path, limits, async zip => {
      const bytes = await zip.read(place.path, watching.signal)
      if (bytes === undefined) throw damaged()
      checkSheet(bytes, limits)
      return leanSheet(bytes, Number.POSITIVE_INFINITY)
    })
    checkSignal(watching.signal)
    const [sheet] = await load(parts, [{ name: place.name, xml }])
    if (sheet === undefined) throw damaged()
    checkSignal(watching.signal)
    const reading = makeReading(limits)
    const total = sheet.rowCount
    let batch: TableRow[] = []
    for (let number = 1; number <= total; number++) {
      const row = reading.row(sheet, number)
      if (row !== undefined) batch.push(row)
      if (batch.length >= batchRows) {
        yield batch
        batch = []
        watching.progress(number, total)
        // A breath between batches, so that a cancel can come in.
        await new Promise(resolve => setImmediate(resolve))
        checkSignal(watching.signal)
      }
    }
    if (batch.length > 0) yield batch
    remarks = reading.remarks()
  }

  return {
    kind: 'xlsx',
    encoding: '',
    separator: '',
    sheets: parts.plan.sheets.map((place, index) => {
      const sheet = sheets[index]
      return { name: place.name, hidden: place.hidden, top: sheet === undefined ? [] : topOf(sheet, limits) }
    }),
    rows,
    remarks: () => remarks,
  }
}

/** The first rows of a sheet. Beside others, a sheet that no list can be is passed over; alone, it is refused. */
function topSheet(bytes: Buffer, alone: boolean, limits: Limits): string {
  const first = firstRows(bytes, topRows)
  try {
    checkSheet(first, limits)
  } catch (error) {
    if (alone) throw error
    return leanSheet(Buffer.alloc(0), 0)
  }
  return leanSheet(first, topRows)
}

async function withZip<T>(path: string, limits: Limits, use: (zip: OpenZip) => Promise<T>): Promise<T> {
  const zip = await openZip(path, limits)
  try {
    return await use(zip)
  } finally {
    zip.close()
  }
}

async function readParts(zip: OpenZip, watch: Watch): Promise<Parts> {
  const text = async (name: string) => (await zip.read(name, watch.signal))?.toString('utf8') ?? ''
  const types = await text('[Content_Types].xml')
  if (
    !/spreadsheetml\.sheet\.main\+xml|ms-excel\.sheet\.macroEnabled\.main\+xml|spreadsheetml\.template\.main\+xml/.test(
      types,
    )
  ) {
    throw notAWorkbook(zip.names)
  }
  const main = /\sTarget="\/?([^"]+)"/.exec(officePart(await text('_rels/.rels')))?.[1] ?? 'xl/workbook.xml'
  const folder = main.includes('/') ? main.slice(0, main.lastIndexOf('/')) : ''
  const file = main.slice(main.lastIndexOf('/') + 1)
  const inFolder = (name: string) => (folder === '' ? name : `${folder}/${name}`)
  const plan = planOf(await text(main), await text(inFolder(`_rels/${file}.rels`)), folder)
  if (plan.sheets.length === 0) throw damaged()
  if (plan.sheets.length > mostSheets) {
    throw new Refusal(
      'too-many-sheets',
      `The workbook has more than ${mostSheets} sheets. Copy the list into a workbook of its own.`,
      {
        field: 'handle',
      },
    )
  }
  return {
    plan,
    strings: plain(await zip.read(inFolder('sharedStrings.xml'), watch.signal), 'sst'),
    styles: plain(await zip.read(inFolder('styles.xml'), watch.signal), 'styleSheet'),
  }
}

function officePart(relations: string): string {
  return relations.match(/<(?:\w+:)?Relationship\s[^>]*>/g)?.find(tag => /\/officeDocument"/.test(tag)) ?? ''
}

/** Some programs write every element with a prefix; the spreadsheet library knows them without. */
function plain(bytes: Buffer | undefined, root: string): Buffer | undefined {
  if (bytes === undefined) return undefined
  const prefix = new RegExp(`<(\\w+:)${root}`).exec(bytes.toString('latin1', 0, 1000))?.[1]
  if (prefix === undefined) return bytes
  return Buffer.from(bytes.toString('utf8').replaceAll(`<${prefix}`, '<').replaceAll(`</${prefix}`, '</'))
}

function notAWorkbook(names: readonly string[]): Refusal {
  const binary = names.some(name => name.endsWith('workbook.bin'))
  const open = names.includes('content.xml') && names.includes('mimetype')
  const words = binary
    ? 'This is a binary workbook (.xlsb). Open it in a spreadsheet program and save it as .xlsx.'
    : open
      ? 'This is an OpenDocument file. Open it in a spreadsheet program and save it as .xlsx.'
      : 'This is a packed file, but there is no workbook in it. If it is an archive, unpack it and choose the list itself.'
  return new Refusal('not-a-workbook', words, { field: 'handle' })
}

async function load(
  parts: Parts,
  sheets: readonly { readonly name: string; readonly xml: string }[],
): Promise<readonly Worksheet[]> {
  const bytes = leanWorkbook(sheets, parts.plan.date1904, parts)
  const workbook = newWorkbook()
  try {
    // The library's own type of a buffer is an older one than Node's.
    await workbook.xlsx.load(bytes as unknown as ArrayBuffer)
  } catch {
    throw damaged()
  }
  return workbook.worksheets
}

function topOf(sheet: Worksheet, limits: Limits): readonly TableRow[] {
  const reading = makeReading(limits)
  const top: TableRow[] = []
  for (let number = 1; number <= sheet.rowCount && top.length < topRows; number++) {
    const row = reading.row(sheet, number)
    if (row !== undefined) top.push(row)
  }
  return top
}

interface Reading {
  readonly row: (sheet: Worksheet, number: number) => TableRow | undefined
  readonly remarks: () => readonly string[]
}

function makeReading(limits: Limits): Reading {
  const cleaner = makeCleaner()
  const formulaRows: number[] = []
  let formulas = 0
  let rows = 0
  return {
    row(sheet, number) {
      const row = sheet.findRow(number)
      if (row?.hasValues !== true) return undefined
      const cells: Cell[] = []
      const merged: [number, number][] = []
      row.eachCell({ includeEmpty: false }, (cell, column) => {
        let source = cell
        if (cell.isMerged && cell.master !== cell) {
          // A cell merged downwards stands for each of its rows; one merged sideways is said once.
          if (cell.fullAddress.col !== cell.master.fullAddress.col) {
            const last = merged.at(-1)
            if (last !== undefined) last[1] = column - 1
            return
          }
          source = cell.master
        }
        if (cell.isMerged) merged.push([column - 1, column - 1])
        if (source.formula !== undefined && source === cell) {
          formulas++
          if (formulaRows.at(-1) !== number && formulaRows.length < 5) formulaRows.push(number)
        }
        const read = readCell(source.value, source.numFmt ?? 'General', cleaner, number)
        if (read === '') return
        if (column > limits.columns) throw tooManyColumns(limits, number)
        if ((typeof read === 'string' ? read : read.text).length > limits.cellLength) throw cellTooLong(limits, number)
        while (cells.length < column - 1) cells.push('')
        cells[column - 1] = read
      })
      if (cells.length === 0) return undefined
      rows++
      if (rows > limits.rows) throw tooManyRows(limits)
      const wide = merged.filter(([first, last]) => last > first)
      return wide.length === 0 ? { row: number, cells } : { row: number, cells, merged: wide }
    },
    remarks() {
      const says = [...cleaner.remarks()]
      if (formulas > 0) {
        says.push(
          `${formulas} cells hold formulas (${someRows(formulaRows, formulaRows.length)}${formulas > formulaRows.length ? ' and others' : ''}); the results that the spreadsheet kept were taken.`,
        )
      }
      return says
    },
  }
}

function readCell(value: CellValue, format: string, cleaner: Cleaner, row: number): Cell {
  if (value === null || value === undefined) return ''
  if (typeof value === 'string') return cleaner.clean(value, row)
  if (typeof value === 'number') return numberCell(value, format)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (value instanceof Date) return dateCell(value, format)
  if ('richText' in value) return cleaner.clean(value.richText.map(piece => piece.text).join(''), row)
  if ('error' in value) return { kind: 'fault', text: value.error }
  if ('hyperlink' in value) return cleaner.clean(String(value.text ?? ''), row)
  if ('formula' in value || 'sharedFormula' in value) {
    if (value.result === undefined || value.result === null) {
      const formula = 'formula' in value ? value.formula : value.sharedFormula
      return { kind: 'fault', text: `=${cleaner.clean(formula, row)}` }
    }
    // A kept result is a plain value, never a formula again.
    return readCell(value.result as CellValue, format, cleaner, row)
  }
  return ''
}

function numberCell(value: number, format: string): Cell {
  if (!Number.isFinite(value)) return { kind: 'fault', text: String(value) }
  const unit = formatUnit(format)
  const text = shownNumber(value)
  return { kind: 'number', text: unit === '' ? text : `${text} ${unit}`, number: value }
}

/** Days from the epoch of spreadsheets (30 December 1899, which makes 1 March 1900 day 61) to that of JavaScript. */
const epochDays = 25_569

function dateCell(value: Date, format: string): Cell {
  const time = value.getTime()
  if (Number.isNaN(time)) return { kind: 'fault', text: 'a date that can’t be read' }
  // The library takes any d, m, y, h, s or b in a format for a date; a number with its unit is none.
  if (!isDateFormat(format)) return numberCell(Number((time / 86_400_000 + epochDays).toFixed(9)), format)
  return { kind: 'date', text: shownDate(value, format), day: value.toISOString().slice(0, 10) }
}
