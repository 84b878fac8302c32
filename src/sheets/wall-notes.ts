/**
 * What stands under the table of a wall sheet: findings that stop or want settling, and the cautions of the works, each
 * with the numbers of the works it is about. Cautions that every sheet carries at its foot are not said twice.
 */
import type { MadeMark } from '../contract/areas/marks.ts'
import type { Finding } from '../contract/shared.ts'
import { print } from '../hang/printing.ts'
import { calledSlot } from '../hang/steps.ts'
import { placementOfKey } from '../model/parts-of-set.ts'
import { figure, type Units } from './figures.ts'
import { ink } from './ink.ts'
import { wrap } from './lines.ts'
import type { Shape } from './shapes.ts'
import { type Sketch, sign } from './sketch.ts'
import type { TableStyle } from './wall-columns.ts'
import type { WallSheetRow } from './wall-rows.ts'

export interface Note {
  readonly severity: 'settle' | 'stop' | 'caution' | 'down' | 'hole' | 'mark'
  readonly who: string
  readonly text: string
}

export const atFoot = [
  'Rated loads are the maker’s for a stated wall, and only as good as the installation; a fixing holds no more than the wall behind it.',
  'Look for pipes and cables before drilling; stop if a nail or screw resists oddly.',
  'Local codes and licensed practice decide; this is a help to planning, not a certificate.',
]

export function notesOf(
  rows: readonly WallSheetRow[],
  findings: readonly Finding[],
  dead: readonly MadeMark[],
  made: readonly MadeMark[],
  order: readonly string[],
  units: Units,
): readonly Note[] {
  // What is said of a set as a whole carries the number of its first part without its letter.
  const whole = rows.map(row => [placementOfKey(row.placement), row.called.replace(/ [a-z]+$/, '')] as const)
  const running = new Map([
    ...whole.reverse(),
    ...rows.flatMap(row => [[row.work, row.called] as const, [row.placement, row.called] as const]),
  ])
  const found = findings.filter(isToSettle).map(
    ({ severity, subject, text, works }): Note => ({
      severity: severity === 'stop' ? 'stop' : 'settle',
      who:
        works === undefined
          ? (running.get(subject.id) ?? '')
          : works.map(({ id, called }) => running.get(id) ?? called).join(', '),
      text,
    }),
  )
  const cautions = new Map<string, string[]>()
  for (const row of rows) {
    for (const caution of row.cautions) {
      if (!atFoot.includes(caution)) cautions.set(caution, [...(cautions.get(caution) ?? []), row.called])
    }
  }
  return [
    ...found.filter(note => note.severity === 'stop'),
    ...found.filter(note => note.severity === 'settle'),
    ...order.map((text): Note => ({ severity: 'caution', who: '', text })),
    ...[...cautions].map(
      ([text, who]): Note => ({
        severity: 'caution',
        who: who.length === rows.length && rows.length > 1 ? 'all' : listed(who),
        text,
      }),
    ),
    ...markNotes(made, running),
    ...holeNote(dead, units),
    ...downNotes(rows),
  ]
}

/** What somebody wrote at a mark, such as where the drill hit metal. */
function markNotes(made: readonly MadeMark[], running: ReadonlyMap<string, string>): readonly Note[] {
  return made
    .filter(mark => mark.note.trim() !== '' && mark.filled === null)
    .map(mark => {
      const who = running.get(mark.placement ?? '') ?? ''
      const text = `${calledSlot(mark.slot)}: ${mark.note.trim()}`
      return { severity: 'mark', who, text: who === '' ? `a hole left, ${text}` : text }
    })
}

/** Holes that stayed when their work left or moved: what to fill, and where. */
function holeNote(dead: readonly MadeMark[], units: Units): readonly Note[] {
  if (dead.length === 0) return []
  const say = (mm: number) => figure(print(mm, units.steps), units).main
  const places = dead.map(({ x, y }) => `${say(x)} along, ${say(y)} up`)
  const count = dead.length === 1 ? 'One hole' : `${dead.length} holes`
  return [
    {
      severity: 'hole',
      who: '',
      text: `${count} that nothing hangs on, to fill (${units.unit}, from the floor at the left end): ${places.join('; ')}.`,
    },
  ]
}

/** How the works come down on the last day, once a method. */
function downNotes(rows: readonly WallSheetRow[]): readonly Note[] {
  const methods = new Map<string, { who: string[]; steps: readonly string[] }>()
  for (const row of rows) {
    if (row.comesDown.length === 0) continue
    const known = methods.get(row.method) ?? { who: [], steps: row.comesDown }
    known.who.push(row.called)
    methods.set(row.method, known)
  }
  return [...methods].map(([method, { who, steps }]) => ({
    severity: 'down',
    who: who.length === rows.length && rows.length > 1 ? 'all' : listed(who),
    text: `${method}, to take down: ${steps.join(' ')}`,
  }))
}

function listed(who: readonly string[]): string {
  return who.length > 6 ? `${who.slice(0, 5).join(', ')} and ${who.length - 5} more` : who.join(', ')
}

const noteLeading = 3.3
const noteSize = 2.5

function noteText(note: Note): string {
  const said = note.text.startsWith(`${note.who} `) || note.text.startsWith(`${note.who}: `)
  return note.who === '' || said ? note.text : `${note.who}: ${note.text}`
}

function noteLines(note: Note, width: number, { k, measure }: TableStyle): readonly string[] {
  return wrap(noteText(note), 'plain', noteSize * k, width - 5 * k, measure)
}

/** Notes stand in two columns under the table. */
export function notesHeight(notes: readonly Note[], width: number, style: TableStyle): number {
  if (notes.length === 0) return 0
  return Math.max(...columnsOfNotes(notes, width, style).map(column => column.height)) + 4 * style.k
}

function columnsOfNotes(notes: readonly Note[], width: number, style: TableStyle) {
  const half = (width - 6 * style.k) / 2
  const sized = notes.map(note => ({ note, lines: noteLines(note, half, style) }))
  const all = sized.reduce((sum, each) => sum + each.lines.length, 0)
  const columns: { entries: typeof sized; height: number }[] = [
    { entries: [], height: 0 },
    { entries: [], height: 0 },
  ]
  let before = 0
  for (const each of sized) {
    const column = columns[before * 2 >= all ? 1 : 0]
    column?.entries.push(each)
    if (column !== undefined) column.height += each.lines.length * noteLeading * style.k + 0.6 * style.k
    before += each.lines.length
  }
  return columns
}

export function drawNotes(
  sketch: Sketch,
  notes: readonly Note[],
  margin: number,
  y: number,
  width: number,
  style: TableStyle,
): void {
  const { k } = style
  let number = 0
  columnsOfNotes(notes, width, style).forEach((column, side) => {
    const x = margin + side * (width / 2 + 3 * k)
    let at = y
    for (const { note, lines } of column.entries) {
      number += 1
      const middle = at - 0.8 * k
      if (note.severity === 'caution') sketch.line(x, middle, x + 1.8 * k, middle, 0.3 * k)
      else if (note.severity === 'down') sketch.add(arrowDown(x + 0.9 * k, middle, k))
      else if (note.severity === 'mark') sketch.add(cross(x + 0.9 * k, middle, k))
      else if (note.severity === 'hole') sketch.add(...hole(x + 0.9 * k, middle, 0.8 * k, k))
      else sketch.add(sign(note.severity, x + 0.9 * k, middle, 1.8 * k))
      for (const [index, line] of lines.entries()) {
        sketch.text(`note ${number} ${index}`, x + 3.5 * k, at, noteSize * k, 'plain', line)
        at += noteLeading * k
      }
      at += 0.6 * k
    }
  })
}

function arrowDown(x: number, y: number, k: number): Shape {
  const d = `M ${x} ${y - 0.9 * k} L ${x} ${y + 0.9 * k} M ${x - 0.7 * k} ${y + 0.2 * k} L ${x} ${y + 0.9 * k} L ${x + 0.7 * k} ${y + 0.2 * k}`
  return { kind: 'path', d, stroke: ink.ink, width: 0.3 * k }
}

/** A mark on the wall: a small cross. */
function cross(x: number, y: number, k: number): Shape {
  const d = `M ${x - 0.8 * k} ${y} L ${x + 0.8 * k} ${y} M ${x} ${y - 0.8 * k} L ${x} ${y + 0.8 * k}`
  return { kind: 'path', d, stroke: ink.ink, width: 0.3 * k }
}

/** A hole that nothing hangs on: a ring struck through. */
export function hole(x: number, y: number, r: number, k: number): readonly Shape[] {
  const d = `M ${x - r} ${y} A ${r} ${r} 0 1 0 ${x + r} ${y} A ${r} ${r} 0 1 0 ${x - r} ${y} Z M ${x - r} ${y + r} L ${x + r} ${y - r}`
  return [{ kind: 'path', d, stroke: ink.settle, width: 0.3 * k }]
}

export function isToSettle({ severity }: Finding): boolean {
  return severity !== 'fits'
}
