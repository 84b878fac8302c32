/**
 * Receipts stay: no SQL on the open catalogue changes or removes one, who alters one past the triggers is found, and no
 * undo takes away what one speaks of.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, expect, onTestFinished, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { callOn, type Known, makeFixture } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

async function withReceipts(): Promise<{ readonly host: Host; readonly file: string; readonly known: Known }> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-receipts-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-14T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person })
  const { id: loan } = await callOn(host, 'loan.add', { party: known.lender, number: 'QC 2031/7' })
  await callOn(host, 'loan.addWorks', { loan, works: [known.pans, known.causeway] })
  const works = [{ work: known.pans }, { work: known.causeway }]
  await callOn(host, 'receipt.add', { loan, kind: 'received', day: '2031-03-02', works })
  await callOn(host, 'receipt.add', { loan, kind: 'sent', day: '2031-06-13', works: works.slice(0, 1) })
  return { host, file, known }
}

test.each([
  "UPDATE loan_receipt SET day = '2031-03-01'",
  'DELETE FROM loan_receipt',
  "INSERT OR REPLACE INTO loan_receipt SELECT * FROM loan_receipt WHERE number = 'R 2031-1'",
  "INSERT OR REPLACE INTO loan_receipt(id, loan, number, number_norm, kind, day, recorded_at, recorded_by, hash) SELECT 'other', loan, number, number_norm, kind, day, recorded_at, recorded_by, hash FROM loan_receipt",
  "UPDATE loan_receipt_work SET crate = 'another'",
  'DELETE FROM loan_receipt_work',
  'INSERT OR REPLACE INTO loan_receipt_work SELECT * FROM loan_receipt_work',
])('not even within an edit does SQL change, remove or replace a receipt: %s', async sql => {
  const { file } = await withReceipts()
  const db = new Database(file)
  onTestFinished(() => {
    db.close()
  })
  db.exec('BEGIN; UPDATE edit_now SET edit = 1')
  expect(() => db.exec(sql)).toThrow('is only added to')
  db.exec('ROLLBACK')
})

test.each([
  "UPDATE loan_receipt SET day = '2031-03-01' WHERE number = 'R 2031-1'",
  "UPDATE loan_receipt_work SET condition = 'as new' WHERE rowid = 1",
  "DELETE FROM loan_receipt_work WHERE receipt = (SELECT id FROM loan_receipt WHERE number = 'R 2031-1')",
])('who drops the triggers is found: %s', async sql => {
  const { file, host } = await withReceipts()
  await host.close()
  expect(await checkCatalogue(file)).toEqual([])
  const db = new Database(file)
  const kept = db
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name LIKE 'loan_receipt%'",
    )
    .all()
  for (const { name } of kept) db.exec(`DROP TRIGGER ${name}`)
  db.exec(sql)
  for (const each of kept) db.exec(each.sql)
  db.close()
  const found = await checkCatalogue(file)
  expect(found.map(({ code }) => code)).toEqual(['record-chain'])
  expect(found[0]?.text).toContain('R 2031-1')
})

test('undo takes away neither the receipt nor the work of the loan that it names', async () => {
  const { host, known } = await withReceipts()
  await expect(callOn(host, 'edit.undo', {})).rejects.toThrow('edit.undo:')
  const { receipts } = await callOn(host, 'receipt.ofWork', { work: known.pans })
  expect(receipts.map(({ number, kind }) => [number, kind])).toEqual([
    ['R 2031-1', 'received'],
    ['R 2031-2', 'sent'],
  ])
})
