/**
 * Condition reports: a complete one is never altered, through no procedure and by no statement on the open catalogue;
 * what is altered past the triggers is found; a draft is undone like everything else; two windows lose nothing.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { namedAnywhere, namedInRows } from '../../main/database/named-files.ts'
import { answer } from '../../main/hosts/answer.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import type { Input, Name } from '../../src/contract/contract.ts'
import { callOn, give, type Known, makeFixture, onePixel } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

interface Opened {
  readonly host: Host
  readonly known: Known
  readonly file: string
}

/** `finished`: what is done with the way to close it. */
async function opened(finished: (close: () => Promise<void>) => void = onTestFinished): Promise<Opened> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-condition-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-01T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  finished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person })
  return { host, known, file }
}

const refusal = async (host: Host, name: Name, input: unknown) => {
  const answered = await answer(host, name, input)
  return answered.ok ? null : answered.refusal.code
}

const strokes = [[100, 200, 300, 100, 500, 220]]
type Finding = Omit<Input<'condition.addFinding'>, 'report'>
const said = { age: 'old', severity: 'slight' } as const
const abrasion = (x: number, y: number): Finding => ({
  form: 'outline',
  points: [
    { x, y },
    { x: x + 12, y: y + 5 },
  ],
  term: 'paper.skinning',
  ...said,
})

async function signBoth(host: Host, report: string): Promise<void> {
  await callOn(host, 'condition.sign', { report, role: 'registrar', name: 'Tamsin Oake', strokes })
  await callOn(host, 'condition.sign', { report, role: 'courier', name: 'Bo Lind', strokes })
}

/** A complete incoming report with two findings, and a draft after it with one. */
async function completed(finished?: (close: () => Promise<void>) => void) {
  const all = await opened(finished)
  const { host, known } = all
  const { id: report } = await callOn(host, 'condition.add', { work: known.pans, kind: 'incoming' })
  const first = await callOn(host, 'condition.addFinding', { report, ...abrasion(40, 60) })
  await callOn(host, 'condition.addFinding', { report, ...abrasion(300, 500) })
  const photo = await callOn(host, 'condition.addPhoto', { report, handle: give(host, 'corner.png', onePixel) })
  await callOn(host, 'condition.updatePhoto', { id: photo.id, changes: { findings: { was: [], to: [first.id] } } })
  await signBoth(host, report)
  await callOn(host, 'condition.complete', { report })
  const { id: draft } = await callOn(host, 'condition.add', { work: known.pans, kind: 'check' })
  const other = await callOn(host, 'condition.addFinding', { report: draft, ...abrasion(42, 61) })
  await callOn(host, 'condition.addPhoto', { report: draft, handle: give(host, 'again.png', onePixel) })
  return { ...all, report, finding: first.id, photo: photo.id, draft, other: other.id }
}

const tables = ['condition_report', 'condition_finding', 'condition_photo', 'condition_signature', 'condition_seal']
const rowsOf = (db: Database.Database) =>
  JSON.stringify(tables.map(table => db.prepare(`SELECT * FROM ${table}`).all()))

describe('a complete report', () => {
  const own = 'report = (SELECT report FROM condition_seal)'
  const its = 'id = (SELECT report FROM condition_seal)'
  const draft = 'report <> (SELECT report FROM condition_seal)'
  // One catalogue for all: each try must leave it as it was.
  let shared = ''
  let close = async () => {}
  beforeAll(async () => {
    const all = await completed(closing => {
      close = closing
    })
    shared = all.file
  })
  afterAll(() => close())
  test.each([
    ['changed', `UPDATE condition_report SET note = 'x' WHERE ${its}`],
    ['removed', `DELETE FROM condition_report WHERE ${its}`],
    ['replaced by its key', `INSERT OR REPLACE INTO condition_report SELECT * FROM condition_report WHERE ${its}`],
    [
      'replaced by its row',
      `INSERT OR REPLACE INTO condition_report(rowid, id, work, kind, examined_at, width, height)
       SELECT rowid, 'other', work, kind, examined_at, width, height FROM condition_report WHERE ${its}`,
    ],
    [
      'rewritten on the way',
      `INSERT INTO condition_report SELECT * FROM condition_report WHERE true ON CONFLICT (id) DO UPDATE SET note = 'x'`,
    ],
    [
      'taken by another row',
      `UPDATE OR REPLACE condition_report SET rowid = (SELECT rowid FROM condition_report WHERE ${its})
       WHERE id <> (SELECT report FROM condition_seal)`,
    ],
    ['changed in a finding', `UPDATE condition_finding SET severity = 'severe' WHERE ${own}`],
    ['parted from a finding', `DELETE FROM condition_finding WHERE ${own}`],
    [
      'given another finding',
      `INSERT INTO condition_finding(id, report, position, form, points)
       SELECT 'n', report, 9, 'mark', '[{"x":1,"y":1}]' FROM condition_seal`,
    ],
    [
      'given a draft’s finding',
      `UPDATE condition_finding SET report = (SELECT report FROM condition_seal) WHERE ${draft}`,
    ],
    [
      'freed of a finding',
      `UPDATE condition_finding SET report = (SELECT report FROM condition_finding WHERE ${draft}) WHERE ${own}`,
    ],
    [
      'replaced in a finding',
      `INSERT OR REPLACE INTO condition_finding(id, report, position, form, points)
       SELECT (SELECT id FROM condition_finding WHERE ${own}), report, 9, form, points FROM condition_finding WHERE ${draft}`,
    ],
    [
      'replaced in a finding by its row',
      `INSERT OR REPLACE INTO condition_finding(rowid, id, report, position, form, points)
       SELECT (SELECT rowid FROM condition_finding WHERE ${own}), 'n', report, 9, form, points FROM condition_finding WHERE ${draft}`,
    ],
    [
      'robbed of a finding by a row',
      `UPDATE OR REPLACE condition_finding SET rowid = (SELECT rowid FROM condition_finding WHERE ${own}) WHERE ${draft}`,
    ],
    ['changed in a photograph', `UPDATE condition_photo SET shows = 'x' WHERE ${own}`],
    ['parted from a photograph', `DELETE FROM condition_photo WHERE ${own}`],
    [
      'given a draft’s photograph',
      `UPDATE condition_photo SET report = (SELECT report FROM condition_seal) WHERE ${draft}`,
    ],
    [
      'replaced in a photograph by its row',
      `INSERT OR REPLACE INTO condition_photo(rowid, id, report, position, hash, mime, name, width_px, height_px)
       SELECT (SELECT rowid FROM condition_photo WHERE ${own}), 'n', report, 9, hash, mime, name, 1, 1 FROM condition_photo WHERE ${draft}`,
    ],
    [
      'given another signature',
      `INSERT INTO condition_signature SELECT 'n', report, role, 'X', strokes, content, at FROM condition_signature LIMIT 1`,
    ],
    ['changed in a signature', `UPDATE condition_signature SET name = 'X'`],
    ['parted from a signature', `DELETE FROM condition_signature`],
    ['replaced in a signature', `INSERT OR REPLACE INTO condition_signature SELECT * FROM condition_signature`],
    ['opened again', `DELETE FROM condition_seal`],
    ['sealed anew', `INSERT OR REPLACE INTO condition_seal SELECT 'n', report, 'x', at, hash FROM condition_seal`],
    ['sealed otherwise', `UPDATE condition_seal SET content = 'x'`],
  ])('cannot be %s, even inside an edit, by SQL on the open catalogue', (_, sql) => {
    const db = new Database(shared)
    onTestFinished(() => void db.close())
    // References would stop some of it too; the triggers alone must stop all.
    db.pragma('foreign_keys = OFF')
    const before = rowsOf(db)
    expect(() =>
      db.transaction(() => {
        db.exec(`UPDATE edit_now SET edit = 1; ${sql}; UPDATE edit_now SET edit = NULL`)
      })(),
    ).toThrow(/never altered|only added to/)
    expect(rowsOf(db)).toBe(before)
  })

  test('cannot lose the correction that refers to it, itself complete', async () => {
    const { host, file, report, draft } = await completed()
    const { id } = await callOn(host, 'condition.correct', { report, why: 'the second is a fold' })
    await signBoth(host, id)
    await callOn(host, 'condition.complete', { report: id })
    const db = new Database(file)
    onTestFinished(() => void db.close())
    db.pragma('foreign_keys = OFF')
    const before = rowsOf(db)
    for (const sql of [
      `UPDATE OR REPLACE condition_report SET corrects = '${report}' WHERE id = '${draft}'`,
      `INSERT OR REPLACE INTO condition_report(id, work, kind, examined_at, width, height, corrects)
       SELECT 'n', work, kind, examined_at, width, height, '${report}' FROM condition_report WHERE id = '${draft}'`,
    ]) {
      expect(() =>
        db.transaction(() => db.exec(`UPDATE edit_now SET edit = 1; ${sql}; UPDATE edit_now SET edit = NULL`))(),
      ).toThrow('never altered')
    }
    expect(rowsOf(db)).toBe(before)
    expect(await refusal(host, 'condition.correct', { report, why: 'again' })).toBe('corrected-already')
    const { reports } = await callOn(host, 'condition.list', {})
    expect(reports.find(each => each.id === report)).toMatchObject({ correctedBy: id, corrects: null })
    expect(reports.find(each => each.id === id)).toMatchObject({ corrects: report, why: 'the second is a fold' })
  })

  test('is refused by every procedure that changes reports, and by undo', async () => {
    const { host, file, report, finding, photo, draft } = await completed()
    const mark: Finding = { form: 'mark', points: [{ x: 1, y: 1 }] }
    const calls: [Name, unknown][] = [
      ['condition.update', { id: report, changes: { note: { was: '', to: 'x' } } }],
      ['condition.remove', { id: report }],
      ['condition.addFinding', { report, ...mark }],
      ['condition.updateFinding', { id: finding, changes: { note: { was: '', to: 'x' } } }],
      ['condition.removeFinding', { id: finding }],
      ['condition.addPhoto', { report, handle: give(host, 'more.png', onePixel) }],
      ['condition.updatePhoto', { id: photo, changes: { shows: { was: '', to: 'x' } } }],
      ['condition.movePhoto', { id: photo, before: null }],
      ['condition.removePhoto', { id: photo }],
      ['condition.sign', { report, role: 'lender', name: 'X', strokes }],
      ['condition.complete', { report }],
    ]
    const db = new Database(file)
    onTestFinished(() => void db.close())
    const before = rowsOf(db)
    for (const [name, input] of calls) expect(await refusal(host, name, input), name).toBe('complete')
    expect(rowsOf(db)).toBe(before)
    // The draft's three edits go back, then undo comes to the report and stops.
    await callOn(host, 'edit.undo', {})
    await callOn(host, 'edit.undo', {})
    await callOn(host, 'edit.undo', {})
    expect(await refusal(host, 'condition.get', { id: draft })).toBe('not-found')
    expect(await refusal(host, 'edit.undo', {})).toBe('undo-blocked')
    expect((await callOn(host, 'condition.get', { id: report })).findings).toHaveLength(2)
    expect(await checkCatalogue(file)).toEqual([])
  })

  test.each([
    ['in its words', `DROP TRIGGER sealed_condition_report_update; UPDATE condition_report SET note = 'x'`],
    ['in a finding', `DROP TRIGGER sealed_condition_finding_update; UPDATE condition_finding SET age = 'new'`],
    ['in a signature', `DROP TRIGGER only_added_condition_signature_update; UPDATE condition_signature SET name = 'X'`],
  ])('that was altered %s with the triggers taken away is found', async (_, sql) => {
    const { host, file } = await completed()
    await host.close()
    const db = new Database(file)
    db.exec(`UPDATE edit_now SET edit = 1; ${sql}; UPDATE edit_now SET edit = NULL`)
    db.close()
    expect((await checkCatalogue(file)).map(({ code }) => code)).toContain('record-chain')
  })
})

describe('a draft', () => {
  test('is complete only when two people have signed what it says', async () => {
    const { host, known } = await opened()
    const { id: report } = await callOn(host, 'condition.add', { work: known.pans, kind: 'incoming' })
    const { id } = await callOn(host, 'condition.addFinding', { report, form: 'mark', points: [{ x: 10, y: 20 }] })
    const lacks = async () => (await callOn(host, 'condition.get', { id: report })).lacks.map(({ code }) => code)
    expect(await lacks()).toEqual(['no-word', 'no-age', 'no-severity', 'signatures'])
    const change = {
      term: { was: '', to: 'paper.hole' },
      age: { was: '', to: 'unsure' },
      severity: { was: '', to: 'severe' },
    } as const
    await callOn(host, 'condition.updateFinding', { id, changes: change })
    await callOn(host, 'condition.sign', { report, role: 'registrar', name: 'Tamsin Oake', strokes })
    await callOn(host, 'condition.sign', { report, role: 'courier', name: 'tamsin oake', strokes })
    expect(await lacks()).toEqual(['one-person'])
    await callOn(host, 'condition.sign', { report, role: 'courier', name: 'Bo Lind', strokes })
    expect(await lacks()).toEqual([])
    // What is changed under signatures is unsigned, and signed again where the change is taken back.
    await callOn(host, 'condition.updateFinding', { id, changes: { severity: { was: 'severe', to: 'slight' } } })
    expect(await lacks()).toEqual(['signatures'])
    expect(await refusal(host, 'condition.complete', { report })).toBe('incomplete')
    await callOn(host, 'edit.undo', {})
    expect(await lacks()).toEqual([])
    await callOn(host, 'condition.complete', { report })
    const { reports } = await callOn(host, 'condition.list', { work: known.pans })
    expect(reports[0]).toMatchObject({
      overall: 'severe',
      signedBy: [
        { role: 'registrar', name: 'Tamsin Oake' },
        { role: 'courier', name: 'Bo Lind' },
      ],
    })
    expect(reports[0]?.completeAt).not.toBeNull()
  })

  test('numbers its findings anew when one is taken off, and undo brings it back in its place', async () => {
    const { host, draft, other } = await completed()
    await callOn(host, 'condition.addFinding', { report: draft, ...abrasion(200, 200) })
    const numbers = async () =>
      (await callOn(host, 'condition.get', { id: draft })).findings.map(each => [each.number, each.points[0]?.x])
    await callOn(host, 'condition.removeFinding', { id: other })
    expect(await numbers()).toEqual([[1, 200]])
    await callOn(host, 'edit.undo', {})
    expect(await numbers()).toEqual([
      [1, 42],
      [2, 200],
    ])
  })

  test('written in two windows keeps both fields; the same field is told as a clash', async () => {
    const { host, other } = await completed()
    const age = await callOn(host, 'condition.updateFinding', {
      id: other,
      changes: { age: { was: 'old', to: 'new' } },
    })
    const severity = await callOn(host, 'condition.updateFinding', {
      id: other,
      changes: { severity: { was: 'slight', to: 'severe' }, age: { was: 'old', to: 'unsure' } },
    })
    expect([age.saved, severity.saved]).toEqual([['age'], ['severity']])
    expect(severity.clashes).toMatchObject([{ field: 'age', was: 'old', yours: 'unsure', theirs: 'new' }])
  })

  test('keeps its work in the catalogue until it is taken away', async () => {
    const { host } = await opened()
    const { id: work } = await callOn(host, 'work.add', { title: 'Groyne' })
    await callOn(host, 'work.addSize', { work, part: 'framed', height: 400, width: 300, raw: '', kind: 'measured' })
    const { id } = await callOn(host, 'condition.add', { work, kind: 'check' })
    expect(await refusal(host, 'work.remove', { id: work })).toBe('recorded')
    await callOn(host, 'condition.remove', { id })
    expect(await refusal(host, 'work.remove', { id: work })).toBeNull()
  })

  test('keeps its picture’s file, though the work has another by now', async () => {
    const { host, known, file, draft } = await completed()
    const { picture } = await callOn(host, 'condition.get', { id: draft })
    expect(picture).toBe(known.pansPictureHash)
    await callOn(host, 'work.removePicture', { id: known.pansPicture })
    const db = new Database(file, { readonly: true })
    onTestFinished(() => void db.close())
    expect(namedInRows(db).has(picture ?? '')).toBe(true)
    expect(namedAnywhere(db).has(picture ?? '')).toBe(true)
  })
})

test('scenario 11, the condition: two old abrasions are the same at deinstall, the opened joint is new', async () => {
  const { host, known, report } = await completed()
  const { id: after } = await callOn(host, 'condition.add', { work: known.pans, kind: 'outgoing' })
  const { findings } = await callOn(host, 'condition.get', { id: report })
  await callOn(host, 'condition.addFinding', { report: after, ...abrasion(44, 58) })
  // The second is called by another word now, and said to be the same.
  const second = { ...abrasion(301, 502), term: 'paper.soiling', follows: findings[1]?.id ?? '' }
  await callOn(host, 'condition.addFinding', { report: after, ...second })
  const joint = { form: 'mark' as const, points: [{ x: 479, y: 619 }], across: 2, term: 'frame.open-joint' }
  await callOn(host, 'condition.addFinding', { report: after, ...joint, age: 'new', severity: 'marked' })
  const { counts, lines } = await callOn(host, 'condition.compare', { before: report, after })
  expect(counts).toEqual({ same: 2, grown: 0, new: 1, notSeen: 0 })
  expect(lines.map(({ outcome, by }) => [outcome, by])).toEqual([
    ['same', 'place'],
    ['same', 'said'],
    ['new', null],
  ])
  await callOn(host, 'condition.sign', { report: after, role: 'registrar', name: 'Tamsin Oake', strokes })
  const { lacks, completeAt } = await callOn(host, 'condition.get', { id: after })
  expect([completeAt, lacks.map(({ code }) => code)]).toEqual([null, ['signatures']])
})
