/** Labels of a show: their words, size, side and stage. Where each stands follows from its wall and is never stored. */
import type { LabelRow } from '../../src/contract/areas/labels.ts'
import type { Elevation, PlacedWork } from '../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../src/contract/contract.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { labelSize, suggestLabel } from '../../src/layout/label-size.ts'
import type { LabelRules } from '../../src/layout/labels-shape.ts'
import { labelsOfFace } from '../../src/model/labels-of-face.ts'
import { marksOfFace } from '../../src/model/marks-of-face.ts'
import type { Reader } from '../../src/model/work-findings.ts'
import type { ReadHandle } from '../database/handles.ts'
import { changeFields, notFound } from './change.ts'
import { openExhibition } from './exhibitions/open.ts'
import { labelRulesOf, rulesOf } from './rules.ts'
import type { Reading, ServicesOf, Writing } from './service.ts'
import { row, rows, update } from './sql.ts'
import { elevationOf } from './walls/elevation.ts'
import { firstNumber } from './works/figures.ts'
import { readerOf } from './works/findings.ts'

interface Stored {
  readonly entry: string
  readonly work: string
  readonly running: string
  readonly number: string | null
  readonly title: string
  readonly maker: string
  readonly dateText: string
  readonly medium: string
  readonly credit: string
  readonly text: string
  readonly width: number | null
  readonly height: number | null
  readonly gap: number | null
  readonly proofed: string
  readonly face: string | null
}

interface Stage {
  readonly stage: LabelRow['stage']
  readonly stageAt: string
  readonly stageBy: string
}

/** Stored as JSON; nothing is no stage. */
function stageOf(stored: string): Stage {
  return stored === '' ? { stage: '', stageAt: '', stageBy: '' } : JSON.parse(stored)
}

interface OnWall {
  readonly elevation: Elevation
  readonly work: PlacedWork
  readonly centreY: number | null
  readonly troubles: readonly string[]
}

/** Labels that stand on one face, by entry. */
function onFace(db: ReadHandle, exhibition: string, face: string, reader: Reader): ReadonlyMap<string, OnWall> {
  const elevation = elevationOf(db, exhibition, face)
  const laid = labelsOfFace(elevation, marksOfFace(elevation, reader), reader)
  return new Map(
    elevation.works.map(work => {
      const label = laid.labels.find(each => each.id === work.placement)
      const troubles = laid.findings.filter(each => each.subject.id === work.placement).map(each => each.text)
      const centreY = label === undefined ? null : label.y + label.height / 2
      return [work.entry, { elevation, work, centreY, troubles }]
    }),
  )
}

/** Every label of a show in the order of the show. */
export function labelsOf(db: ReadHandle, exhibition: string, reader: Reader): LabelRow[] {
  const stored = rows<Stored>(
    db,
    `SELECT entry.id AS entry, work.id AS work, entry.running, ${firstNumber} AS number, work.title, work.maker,
      work.date_text AS dateText, work.medium, work.credit_line AS credit, entry.label_text AS text,
      entry.label_width AS width, entry.label_height AS height, entry.label_gap AS gap,
      entry.label_proofed AS proofed, placement.face
     FROM entry JOIN work ON work.id = entry.work LEFT JOIN section ON section.id = entry.section
     LEFT JOIN placement ON placement.entry = entry.id
     WHERE entry.exhibition = :exhibition
     ORDER BY section.position IS NULL, section.position, entry.position, entry.id`,
    { exhibition },
  )
  const faces = new Map<string, ReadonlyMap<string, OnWall>>()
  for (const { face } of stored) {
    if (face !== null && !faces.has(face)) faces.set(face, onFace(db, exhibition, face, reader))
  }
  const rules = labelRulesOf(rulesOf(db))
  return stored.map(one => labelRow(one, rules, one.face === null ? undefined : faces.get(one.face)?.get(one.entry)))
}

function labelRow(one: Stored, rules: LabelRules, there: OnWall | undefined): LabelRow {
  const suggestion = suggestLabel(one)
  const { width, height, lines } = labelSize(one.text.trim() === '' ? suggestion : one.text, rules, one)
  return {
    entry: one.entry,
    work: one.work,
    running: one.running,
    number: one.number ?? '',
    title: one.title,
    text: one.text,
    suggestion,
    width,
    height,
    lines: [...lines],
    ownWidth: one.width,
    ownHeight: one.height,
    ownGap: one.gap,
    gap: one.gap ?? rules.gap,
    ...stageOf(one.proofed),
    placed:
      there === undefined
        ? null
        : {
            placement: there.work.placement,
            face: one.face ?? '',
            room: there.elevation.room.name,
            wall: there.elevation.wall.name,
            side: there.work.labelSide,
            centreY: there.centreY,
            troubles: [...there.troubles],
          },
  }
}

function list({ db, person }: Reading, { exhibition, unit }: Received<'label.list'>): Output<'label.list'> {
  if (row(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined) {
    throw notFound('exhibition', 'exhibition')
  }
  return { labels: labelsOf(db, exhibition, readerOf(person, unit)) }
}

interface Entry {
  readonly id: string
  readonly exhibition: string
  readonly title: string
  readonly text: string
  readonly proofed: string
}

function entryOf(db: ReadHandle, entry: string, field: string): Entry {
  const found = row<Entry>(
    db,
    `SELECT entry.id, entry.exhibition, work.title, entry.label_text AS text, entry.label_proofed AS proofed
     FROM entry JOIN work ON work.id = entry.work WHERE entry.id = :entry`,
    { entry },
  )
  if (found === undefined) throw notFound('work in this show', field)
  openExhibition(db, found.exhibition, field)
  return found
}

function count(entries: readonly Entry[]): string {
  const [first] = entries
  if (entries.length !== 1 || first === undefined) return `${entries.length} labels`
  return `the label of ${first.title === '' ? 'a work' : first.title}`
}

const columns = { text: 'label_text', width: 'label_width', height: 'label_height', gap: 'label_gap' } as const

function change(writing: Writing, { entry, changes }: Received<'label.update'>): Output<'label.update'> {
  const { db } = writing
  const before = entryOf(db, entry, 'entry')
  writing.label(`Change ${count([before])}`)
  const { saved, clashes, values } = changeFields(writing, 'entry', entry, changes, columns, 'work in this show')
  if (typeof values.text === 'string' && values.text !== before.text && before.proofed !== '') {
    update(db, 'entry', entry, { label_proofed: '' })
  }
  return { saved, clashes }
}

function setMany(writing: Writing, input: Received<'label.setMany'>): Output<'label.setMany'> {
  const { db } = writing
  const { side, suggest } = input
  const entries = [...new Set(input.entries)].map((entry, index) => entryOf(db, entry, `entries.${index}`))
  const size = {
    ...(input.width === undefined ? {} : { label_width: input.width }),
    ...(input.height === undefined ? {} : { label_height: input.height }),
    ...(input.gap === undefined ? {} : { label_gap: input.gap }),
  }
  if (side === undefined && suggest === undefined && Object.keys(size).length === 0) {
    throw new Refusal(
      'bad-input',
      'Say what the labels shall have: a side, a size, a distance, or the suggested words.',
    )
  }
  writing.label(`Change ${count(entries)}`)
  const notPlaced: string[] = []
  let changed = 0
  for (const entry of entries) {
    const words = suggest === true && entry.text.trim() === '' ? suggestionOf(db, entry.id) : ''
    const fields = { ...size, ...(words === '' ? {} : { label_text: words, label_proofed: '' }) }
    let touched = Object.keys(fields).length > 0
    if (touched) update(db, 'entry', entry.id, fields)
    if (side !== undefined) {
      const placed = row<{ id: string }>(db, 'SELECT id FROM placement WHERE entry = :entry', { entry: entry.id })
      if (placed === undefined) notPlaced.push(entry.id)
      else {
        update(db, 'placement', placed.id, { label_side: side })
        touched = true
      }
    }
    if (touched) changed++
  }
  return { changed, notPlaced }
}

function suggestionOf(db: ReadHandle, entry: string): string {
  const found = row<Parameters<typeof suggestLabel>[0]>(
    db,
    `SELECT work.maker, work.title, work.date_text AS dateText, work.medium, work.credit_line AS credit
     FROM entry JOIN work ON work.id = entry.work WHERE entry.id = :entry`,
    { entry },
  )
  return found === undefined ? '' : suggestLabel(found)
}

function setStage(writing: Writing, input: Received<'label.setStage'>): Output<'label.setStage'> {
  const { db, person } = writing
  const { to } = input
  const entries = [...new Set(input.entries)].map((entry, index) => entryOf(db, entry, `entries.${index}`))
  const mute = entries.findIndex(entry => entry.text.trim() === '')
  if (to !== '' && mute !== -1) {
    throw new Refusal('label-says-nothing', 'A label without words cannot be proofed or printed. Write it first.', {
      field: `entries.${mute}`,
    })
  }
  writing.label(`${to === '' ? 'Not proofed yet' : `Mark as ${to}`}: ${count(entries)}`)
  const stored = to === '' ? '' : JSON.stringify({ stage: to, stageAt: writing.now(), stageBy: person?.name ?? '' })
  let changed = 0
  for (const entry of entries) {
    if (stageOf(entry.proofed).stage === to) continue
    update(db, 'entry', entry.id, { label_proofed: stored })
    changed++
  }
  return { changed }
}

export const labelServices: ServicesOf<'label.list' | 'label.update' | 'label.setMany' | 'label.setStage'> = {
  'label.list': list,
  'label.update': change,
  'label.setMany': setMany,
  'label.setStage': setStage,
}
