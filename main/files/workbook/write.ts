/**
 * Table sheets as a workbook. The rule it keeps: a number is a number cell with a format, a text is a text whatever it
 * begins with, and what no cell may hold (control characters, halves of letters) is left out.
 */
import { rename, rm, writeFile } from 'node:fs/promises'
import type { Cell as Content, SheetColumn, TableSheet } from '../../../src/sheets/columns.ts'
import { ink } from '../../../src/sheets/ink.ts'
import type { Paper } from '../../../src/sheets/shapes.ts'
import type { Thumbnail } from '../thumbnail.ts'
import { newWorkbook, type PaperSize, type Workbook, type Worksheet } from './exceljs.ts'

export interface WorkbookQuestion {
  readonly sheets: readonly TableSheet[]
  /** ISO 8601. */
  readonly at: string
  readonly by: string
  readonly paper: Paper
  readonly thumbnail: (hash: string) => Thumbnail | null
}

/** Heights of rows in points; pictures are as high as their row, with a little air. */
const PICTURE_ROW = 54
const HEAD_ROW = 52
/** A row of one line, and how much each further line of ten points takes. */
const LEAST_ROW = 15
const LINE = 13
/** Characters that the indent of a text takes; letters to a figure of the workbook's face, by which columns are wide. */
const INDENT = 2
const LETTERS = 1.2
/** Pixels in a point, as spreadsheets count them: 96 to 72. */
const PIXELS = 96 / 72
/** Paper codes of ECMA-376 part 1, 18.3.1.63. */
const paperCodes: Readonly<Record<Paper, number>> = { Letter: 1, Tabloid: 3, A3: 8, A4: 9 }

const argb = (colour: string) => ({ argb: `FF${colour.slice(1)}` })

/** Writes the file whole or not at all. */
export async function writeWorkbook(file: string, question: WorkbookQuestion, signal?: AbortSignal): Promise<void> {
  const workbook = newWorkbook()
  workbook.creator = question.by === '' ? 'Hangwright' : question.by
  workbook.created = new Date(question.at)
  workbook.modified = new Date(question.at)
  const names = new Set<string>()
  for (const sheet of question.sheets) {
    signal?.throwIfAborted()
    addSheet(workbook, sheet, uniqueName(sheet.name, names), question)
  }
  const bytes = await workbook.xlsx.writeBuffer()
  signal?.throwIfAborted()
  const beside = `${file}.part`
  try {
    await writeFile(beside, Buffer.from(bytes))
    await rename(beside, file)
  } catch (error) {
    await rm(beside, { force: true })
    throw error
  }
}

/** Text that a cell may hold: XML 1.0 characters, at most as many as a cell takes. */
export function cellText(text: string): string {
  return (
    text
      .toWellFormed()
      // Control characters are just what is looked for here.
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are removed
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]/g, '')
      .slice(0, 32_767)
  )
}

/** Names of worksheets: at most 31 characters, none of []:*?/\, no two alike. */
function uniqueName(wanted: string, taken: Set<string>): string {
  const plain =
    cellText(wanted)
      .replace(/[[\]:*?/\\]/g, ' ')
      .replace(/^'+|'+$/g, '')
      .trim()
      .slice(0, 28) || 'Sheet'
  let name = plain
  for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${plain.slice(0, 27)} ${n}`
  taken.add(name.toLowerCase())
  return name
}

function addSheet(workbook: Workbook, sheet: TableSheet, name: string, question: WorkbookQuestion): void {
  const heading = sheet.lines.length + 2
  const worksheet = workbook.addWorksheet(name, {
    views: [
      { state: 'frozen', xSplit: 0, ySplit: heading, topLeftCell: `A${heading + 1}`, activeCell: `A${heading + 1}` },
    ],
    pageSetup: {
      orientation: 'landscape',
      // exceljs names a few of the codes; the standard has them all.
      paperSize: paperCodes[question.paper] as PaperSize,
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printTitlesRow: `${heading}:${heading}`,
      margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
    },
    headerFooter: {
      oddFooter: `&L${footer(sheet.foot === undefined ? sheet.title : `${sheet.title} · ${sheet.foot}`)}&R&P / &N`,
    },
  })
  worksheet.columns = sheet.columns.map(column => ({ width: column.width + 1 }))
  writeHead(worksheet, sheet, heading)
  const pictures = sheet.columns.findIndex(column => column.key === 'picture')
  sheet.rows.forEach((row, index) => {
    const at = heading + 1 + index
    row.forEach((content, column) => {
      writeCell(worksheet, at, column + 1, content, sheet.columns[column])
    })
    // Said in the file: not every program looks by itself how high a broken text is.
    const lines = Math.max(1, ...row.map((content, column) => linesOf(content, sheet.columns[column])))
    worksheet.getRow(at).height = LEAST_ROW + (lines - 1) * LINE
    const picture = pictures === -1 ? undefined : row[pictures]
    if (picture?.kind === 'picture') addPicture(workbook, worksheet, question.thumbnail(picture.hash), at, pictures)
  })
}

/** An ampersand begins a code in a footer; doubled it is itself. */
function footer(text: string): string {
  return cellText(text).replace(/&/g, '&&').slice(0, 200)
}

function writeHead(worksheet: Worksheet, sheet: TableSheet, heading: number): void {
  const title = worksheet.getCell(1, 1)
  title.value = cellText(sheet.title)
  title.font = { name: 'Arial', size: 15, bold: true, color: argb(ink.ink) }
  worksheet.getRow(1).height = 24
  sheet.lines.forEach((line, index) => {
    const cell = worksheet.getCell(index + 2, 1)
    cell.value = cellText(line)
    cell.font = { name: 'Arial', size: 10, color: argb(ink.ink2) }
  })
  const row = worksheet.getRow(heading)
  row.height = HEAD_ROW
  sheet.columns.forEach((column, index) => {
    const cell = row.getCell(index + 1)
    cell.value = column.heading
    cell.font = { name: 'Arial', size: 10, bold: true, color: argb(ink.ink) }
    cell.alignment = {
      wrapText: true,
      vertical: 'bottom',
      ...(column.format === null ? { horizontal: 'left', indent: 1 } : { horizontal: 'right' }),
    }
    cell.border = { bottom: { style: 'medium', color: argb(ink.ink) } }
  })
}

function writeCell(
  worksheet: Worksheet,
  row: number,
  column: number,
  content: Content,
  head: SheetColumn | undefined,
): void {
  const cell = worksheet.getCell(row, column)
  cell.font = { name: 'Arial', size: 10, italic: content.kind === 'title' }
  cell.alignment = {
    vertical: 'top',
    wrapText: true,
    ...(content.kind === 'number' ? { horizontal: 'right' } : { horizontal: 'left', indent: 1 }),
  }
  cell.border = { bottom: { style: 'hair', color: argb(ink.line) } }
  switch (content.kind) {
    case 'number':
      cell.value = content.value
      cell.numFmt = head?.format ?? 'General'
      return
    case 'text':
    case 'title':
      // As text: otherwise a program that edits the cell takes “1/2” for a date and “=A1” for a sum.
      cell.value = cellText(content.text)
      cell.numFmt = '@'
  }
}

/** Lines that a text takes in its column, broken at spaces; about, since columns are as wide as so many figures. */
function linesOf(content: Content, column: SheetColumn | undefined): number {
  if (column === undefined || (content.kind !== 'text' && content.kind !== 'title')) return 1
  const most = Math.max(1, Math.floor((column.width + 1 - INDENT) * LETTERS))
  return content.text.split('\n').reduce((sum, paragraph) => {
    let lines = 1
    let taken = 0
    for (const word of paragraph.split(' ')) {
      const wanted = taken === 0 ? word.length : taken + 1 + word.length
      if (wanted <= most) taken = wanted
      else {
        // A word that is longer than the column is broken where it ends.
        lines += (taken === 0 ? 0 : 1) + Math.max(0, Math.ceil(word.length / most) - 1)
        taken = word.length % most || most
      }
    }
    return sum + lines
  }, 0)
}

function addPicture(
  workbook: Workbook,
  worksheet: Worksheet,
  picture: Thumbnail | null,
  row: number,
  column: number,
): void {
  if (picture === null) return
  worksheet.getRow(row).height = Math.max(PICTURE_ROW, worksheet.getRow(row).height ?? 0)
  const most = { width: 84, height: (PICTURE_ROW - 6) * PIXELS }
  const scale = Math.min(most.width / picture.width, most.height / picture.height)
  // exceljs declares a buffer type of its own; Node's is one.
  const buffer = picture.bytes as unknown as NonNullable<Parameters<Workbook['addImage']>[0]['buffer']>
  const id = workbook.addImage({ buffer, extension: picture.extension })
  worksheet.addImage(id, {
    tl: { col: column + 0.06, row: row - 1 + 0.06 },
    ext: { width: Math.round(picture.width * scale), height: Math.round(picture.height * scale) },
    editAs: 'oneCell',
  })
}
