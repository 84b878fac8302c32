/**
 * Takes a workbook apart before the spreadsheet library sees it: which sheets there are, how many filled cells, rows
 * and columns each has, and a lean copy of a sheet with its cells and small merged ranges alone. Pictures, rules,
 * links, styled empty cells and ranges merged over a million cells never reach the library.
 */
import { Refusal } from '../../../src/contract/refusal.ts'
import { type Limits, tooManyColumns, tooManyRows } from './table.ts'
import { damaged, packStored } from './zip.ts'

export interface SheetPlace {
  readonly name: string
  readonly hidden: boolean
  readonly path: string
}

export interface WorkbookPlan {
  readonly sheets: readonly SheetPlace[]
  readonly date1904: boolean
}

function attribute(tag: string, name: string): string | undefined {
  const found = new RegExp(`(?:^|\\s)(?:\\w+:)?${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(tag)
  const value = found?.[1] ?? found?.[2]
  return value === undefined ? undefined : unescaped(value)
}

function unescaped(text: string): string {
  return text
    .replace(/&#(x?)([0-9a-f]+);/gi, (whole, hex: string, digits: string) => {
      const code = Number.parseInt(digits, hex === '' ? 10 : 16)
      return code <= 0x10ffff ? String.fromCodePoint(code) : whole
    })
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, '&')
}

/** Reads which sheets a workbook has. `folder` is where the workbook's own part lies. */
export function planOf(workbook: string, relations: string, folder: string): WorkbookPlan {
  const targets = new Map<string, string>()
  for (const tag of relations.match(/<(?:\w+:)?Relationship\s[^>]*>/g) ?? []) {
    const id = attribute(tag, 'Id')
    const target = attribute(tag, 'Target')
    const type = attribute(tag, 'Type') ?? ''
    if (id !== undefined && target !== undefined && type.endsWith('/worksheet')) {
      targets.set(id, target.startsWith('/') ? target.slice(1) : resolved(folder, target))
    }
  }
  const sheets: SheetPlace[] = []
  for (const tag of workbook.match(/<(?:\w+:)?sheet\s[^>]*>/g) ?? []) {
    const path = targets.get(/\s(?:\w+:)id\s*=\s*["']([^"']*)["']/.exec(tag)?.[1] ?? '')
    if (path === undefined) continue
    const state = attribute(tag, 'state')
    sheets.push({ name: attribute(tag, 'name') ?? '', hidden: state === 'hidden' || state === 'veryHidden', path })
  }
  const properties = /<(?:\w+:)?workbookPr\s[^>]*>/.exec(workbook)?.[0] ?? ''
  return { sheets, date1904: ['1', 'true'].includes(attribute(properties, 'date1904') ?? '') }
}

function resolved(folder: string, target: string): string {
  const steps = folder === '' ? [] : folder.split('/')
  for (const step of target.split('/')) {
    if (step === '..') steps.pop()
    else if (step !== '.') steps.push(step)
  }
  return steps.join('/')
}

/** Counts filled cells of a sheet and refuses what is beyond the limits, from the bytes, before any text is made. */
export function checkSheet(bytes: Buffer, limits: Limits): void {
  let cells = 0
  let at = bytes.indexOf('sheetData')
  if (at < 0) return
  const prefix = /<(\w+:)sheetData/.exec(bytes.toString('latin1', Math.max(0, at - 20), at + 9))?.[1] ?? ''
  const mark = Buffer.from(`<${prefix}c `)
  for (at = bytes.indexOf(mark, at); at >= 0; at = bytes.indexOf(mark, at)) {
    at += mark.length
    const end = bytes.indexOf(0x3e, at)
    if (end < 0) throw damaged()
    if (bytes[end - 1] !== 0x2f) {
      cells++
      if (cells > limits.cells) {
        throw new Refusal(
          'too-many-cells',
          `The sheet has more than ${limits.cells.toLocaleString('en')} filled cells. Save it as CSV, or split it into several files.`,
          { field: 'handle' },
        )
      }
      checkPlace(bytes.toString('latin1', at, Math.min(end, at + 60)), limits)
    }
    at = end
  }
}

function checkPlace(attributes: string, limits: Limits): void {
  const place = /(?:^|\s)r="([A-Z]{2,3})(\d+)"/.exec(attributes)
  if (place === null) return
  let column = 0
  for (const letter of place[1] ?? '') column = column * 26 + letter.charCodeAt(0) - 64
  const row = Number(place[2])
  if (column > limits.columns) throw tooManyColumns(limits, row)
  if (row > limits.rows * 4) throw tooManyRows(limits)
}

/** The beginning of a sheet, up to the end of a row, with what comes behind its cells; from the bytes alone. */
export function firstRows(bytes: Buffer, rows: number): Buffer {
  let end = 0
  for (let row = 0; row < rows; row++) {
    const close = Math.min(...['</row>', ':row>'].map(mark => at(bytes, mark, end)))
    if (close === Number.POSITIVE_INFINITY) return bytes
    end = bytes.indexOf(0x3e, close) + 1
  }
  const close = bytes.lastIndexOf('sheetData>')
  const start = close < 0 ? -1 : bytes.lastIndexOf(0x3c, close)
  if (start < end) return bytes
  return Buffer.concat([bytes.subarray(0, end), bytes.subarray(start)])
}

function at(bytes: Buffer, mark: string, from: number): number {
  const found = bytes.indexOf(mark, from)
  return found < 0 ? Number.POSITIVE_INFINITY : found
}

/** A lean copy of a sheet: its cells up to a row, without the empty ones, and its small merged ranges. */
export function leanSheet(bytes: Buffer, rows: number): string {
  let text = bytes.toString('utf8')
  const prefix = /<(\w+:)sheetData/.exec(text)?.[1]
  if (prefix !== undefined) text = text.replaceAll(`<${prefix}`, '<').replaceAll(`</${prefix}`, '</')
  const start = /<sheetData\s*>/.exec(text)
  if (start === null) return sheetOf('', [])
  const from = start.index + start[0].length
  const close = text.indexOf('</sheetData>', from)
  if (close < 0) throw damaged()
  let to = close
  if (Number.isFinite(rows)) {
    let end = from
    for (let row = 0; row < rows; row++) {
      const next = text.indexOf('</row>', end)
      if (next < 0 || next > close) break
      end = next + '</row>'.length
    }
    if (end > from) to = end
  }
  const merges: string[] = []
  let area = 0
  for (const found of text
    .slice(close)
    .matchAll(/<mergeCell\s[^>]*ref="([A-Z]{1,3})(\d{1,7}):([A-Z]{1,3})(\d{1,7})"[^>]*>/g)) {
    const [, left = 'A', top = '1', right = 'A', bottom = '1'] = found
    const size = (columnOf(right) - columnOf(left) + 1) * (Number(bottom) - Number(top) + 1)
    // A merged title spans some columns, a merged maker some rows; a range beyond that is no help in reading.
    if (size > 5000 || area + size > 200_000 || Number(bottom) > rows) continue
    area += size
    merges.push(`<mergeCell ref="${left}${top}:${right}${bottom}"/>`)
  }
  return sheetOf(text.slice(from, to).replace(/<c\s[^>]*\/>/g, ''), merges)
}

function columnOf(letters: string): number {
  let column = 0
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64
  return column
}

const mainSpace = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const relationSpace = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const packageSpace = 'http://schemas.openxmlformats.org/package/2006/relationships'

function sheetOf(cells: string, merges: readonly string[]): string {
  const merged = merges.length === 0 ? '' : `<mergeCells count="${merges.length}">${merges.join('')}</mergeCells>`
  return `<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="${mainSpace}"><sheetData>${cells}</sheetData>${merged}</worksheet>`
}

/** A lean workbook of some sheets, as the spreadsheet library expects it. */
export function leanWorkbook(
  sheets: readonly { readonly name: string; readonly xml: string }[],
  date1904: boolean,
  shared: { readonly strings: Buffer | undefined; readonly styles: Buffer | undefined },
): Buffer {
  const list = sheets.map((_sheet, i) => `<sheet name="s${i + 1}" sheetId="${i + 1}" r:id="r${i + 1}"/>`).join('')
  const relations = sheets
    .map(
      (_sheet, i) =>
        `<Relationship Id="r${i + 1}" Type="${relationSpace}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
    )
    .join('')
  const entries: (readonly [string, Buffer])[] = [
    [
      'xl/workbook.xml',
      Buffer.from(
        `<?xml version="1.0" encoding="UTF-8"?><workbook xmlns="${mainSpace}" xmlns:r="${relationSpace}"><workbookPr${date1904 ? ' date1904="1"' : ''}/><sheets>${list}</sheets></workbook>`,
      ),
    ],
    [
      'xl/_rels/workbook.xml.rels',
      Buffer.from(
        `<?xml version="1.0" encoding="UTF-8"?><Relationships xmlns="${packageSpace}">${relations}</Relationships>`,
      ),
    ],
  ]
  if (shared.styles !== undefined) entries.push(['xl/styles.xml', shared.styles])
  if (shared.strings !== undefined) entries.push(['xl/sharedStrings.xml', shared.strings])
  for (const [i, sheet] of sheets.entries()) entries.push([`xl/worksheets/sheet${i + 1}.xml`, Buffer.from(sheet.xml)])
  return packStored(entries)
}
