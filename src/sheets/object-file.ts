/**
 * The whole file of one work: all that is on record of it, as tables for a workbook and as pages of paper with its
 * picture before them. One model for both: what the paper says, the workbook says.
 */
import { numberKindWords } from '../checklist/number-kinds.ts'
import type { Report } from '../contract/areas/condition-shape.ts'
import type { Output } from '../contract/contract.ts'
import { type TableSheet, withoutEmptyColumns } from './columns.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import {
  backsTable,
  conditionTable,
  type FiledWork,
  type FileStyle,
  factsTable,
  filesTable,
  historyTable,
  lightTables,
  movementsTable,
  numbersTable,
  showsTable,
  sizesTable,
} from './object-tables.ts'
import { type Page, type Paper, papers, type TextMeasure } from './shapes.ts'
import { newSketch, type Sketch } from './sketch.ts'
import { tablePages } from './table-pages.ts'

export interface ObjectQuestion {
  readonly work: FiledWork
  /** The hash of its picture; null where there is none to show. */
  readonly picture: string | null
  readonly movements: Output<'movement.history'>['movements']
  /** The first one first. */
  readonly reports: readonly Report[]
  readonly light: Output<'light.ledger'>
  readonly history: Output<'edit.history'>
  readonly style: FileStyle
  /** When it was made, by whom. */
  readonly made: string
}

export interface ObjectFile {
  /** The number that people know it by, or its title. */
  readonly called: string
  readonly tables: readonly TableSheet[]
}

export function objectFile(question: ObjectQuestion): ObjectFile {
  const { work, movements, reports, light, history, style, made } = question
  const called = work.numbers[0]?.text ?? (work.facts.title === '' ? 'work without a number' : work.facts.title)
  const all = [
    factsTable(work),
    numbersTable(work),
    ...sizesTable(work, style),
    backsTable(work, style),
    ...showsTable(work, style),
    movementsTable(movements, style),
    conditionTable(reports, style),
    ...lightTables(light, style),
    filesTable(work, style),
    historyTable(history, style),
  ].map(withoutEmptyColumns)
  // What has neither rows nor a word about having none is nothing to show.
  const tables = all.filter(({ rows, lines }) => rows.length > 0 || lines.length > 0)
  const [first, ...rest] = tables
  return {
    called,
    tables: first === undefined ? [] : [{ ...first, lines: [`${called} · ${made}`, ...first.lines] }, ...rest],
  }
}

const margin = 10

/** The file on paper: its picture, what it is, what stands on which sheet; then the tables under one another. */
export function objectPages(question: ObjectQuestion, paper: Paper, measure: TextMeasure): readonly Page[] {
  const { called, tables } = objectFile(question)
  const plain = tables.map((table, at) => (at === 0 ? { ...table, lines: table.lines.slice(1) } : table))
  const { pages, starts } = tablePages(plain, paper, measure, { flowing: true, running: called, before: 1 })
  const size = papers[paper]
  const sketch = newSketch(measure)
  const right = size.width - margin
  const taken = sketch.text('page', right, margin + 4, 3, 'plain', `${called} · sheet 1 of ${pages.length + 1}`, {
    anchor: 'end',
  })
  const heading = `The file of ${called}`
  const room = right - margin - taken - 6
  sketch.text('title', margin, margin + 5, sizeWithin(heading, 'strong', 5.5, room, measure), 'strong', heading)
  sketch.text('made', margin, margin + 10.5, 3, 'plain', question.made, { colour: ink.ink2 })
  sketch.line(margin, margin + 14, right, margin + 14, 0.4)
  const top = margin + 20
  const side = Math.min((right - margin) * 0.46, size.height - top - margin)
  const hash = question.picture
  const left = hash === null ? margin : margin + side + 8
  if (hash !== null) sketch.add({ kind: 'image', x: margin, y: top, w: side, h: size.height - top - margin, hash })
  drawCover(
    sketch,
    question.work,
    { left, right, top: top + 5 },
    plain.map((table, at) => ({ table, on: (starts[at] ?? 0) + 2 })),
  )
  return [{ ...size, shapes: sketch.shapes }, ...pages]
}

function drawCover(
  sketch: Sketch,
  { facts, lenderName, numbers }: FiledWork,
  { left, right, top }: { readonly left: number; readonly right: number; readonly top: number },
  contents: readonly { readonly table: TableSheet; readonly on: number }[],
): void {
  let y = top
  const say = (name: string, words: string, face: 'title' | 'plain' | 'strong', size: number) => {
    wrap(words, face, size, right - left, sketch.measure).forEach((line, at) => {
      sketch.text(`${name} ${at}`, left, y, size, face, line)
      y += size * 1.3
    })
  }
  say('called', facts.title === '' ? 'untitled' : facts.title, 'title', 7)
  say('maker', [facts.maker, facts.dateText].filter(each => each !== '').join(', '), 'plain', 4)
  say('medium', facts.medium, 'plain', 4)
  say('credit', facts.creditLine, 'plain', 4)
  say('lender', lenderName === '' ? '' : `lent by ${lenderName}`, 'plain', 4)
  say('numbers', numbers.map(({ kind, text }) => `${numberKindWords[kind]} ${text}`).join(' · '), 'plain', 3.3)
  y += 5
  sketch.text('contents', left, y, 3.6, 'strong', 'What is in it')
  sketch.text('sheet', right, y, 3, 'plain', 'sheet', { anchor: 'end', colour: ink.ink2 })
  y += 1.8
  for (const { table, on } of contents) {
    sketch.line(left, y, right, y, 0.12, ink.line)
    y += 4.6
    const count = table.rows.length
    const said = count === 0 ? 'nothing' : count === 1 ? '1 line' : `${count} lines`
    const wide = sketch.text(`in ${table.name}`, left, y, 3.3, 'plain', table.name)
    sketch.text(`count ${table.name}`, left + wide + 3, y, 3, 'plain', said, { colour: ink.ink2 })
    sketch.text(`on ${table.name}`, right, y, 3.3, 'figure', String(on), { anchor: 'end' })
    y += 1.6
  }
}
