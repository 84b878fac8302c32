/**
 * What a condition report says as one hash, which signatures name, and the chain of seals: each carries a hash over its
 * report's contents, the signatures under them and the seal before. Who alters a complete report past the triggers has
 * to make its signatures' hashes and every later seal anew; `check` finds the first that does not join.
 */
import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'
import type { ReadHandle } from './handles.ts'

/** All that a report, its findings and its photographs say, in the order of their columns. */
const reportSays = `SELECT id, work, kind, examined_at, place, examiner, packing, note, picture, width, height, corrects, why
  FROM condition_report WHERE id = ?`
const findingsSay = `SELECT id, term, word, form, points, across, age, severity, stable, note, follows
  FROM condition_finding WHERE report = ? ORDER BY position, id`
const photosSay = `SELECT id, hash, name, shows, findings, taken_at, taken_from, taken_by
  FROM condition_photo WHERE report = ? ORDER BY position, id`
const signaturesSay = `SELECT id, role, name, strokes, content, at FROM condition_signature WHERE report = ? ORDER BY rowid`

const backSays = `SELECT back_picture FROM condition_report WHERE id = ? AND back_picture IS NOT NULL`
const onBackSay = `SELECT id, side FROM condition_finding WHERE report = ? AND side <> 'front' ORDER BY position, id`

const facesSay = `SELECT id, face FROM condition_finding WHERE report = ? AND face <> '' ORDER BY position, id`
const depthSays = 'SELECT depth FROM condition_report WHERE id = ?'

type Db = ReadHandle | Database.Database

const said = (db: Db, sql: string, report: string) =>
  db
    .prepare(sql)
    .all(report)
    .map(row => Object.values(row as object)) // each a row by column

const hashOf = (of: unknown) => createHash('sha256').update(JSON.stringify(of)).digest('hex')

/** SHA-256 over what the report says now; 64 hex figures. */
export function contentHash(db: Db, report: string): string {
  const photos = said(db, photosSay, report)
  const back = [...said(db, backSays, report), ...said(db, onBackSay, report)]
  const faces = said(db, facesSay, report)
  // Without photographs, a back or further sides the hash is that of reports which were signed before there were any.
  return hashOf([
    said(db, reportSays, report),
    said(db, findingsSay, report),
    ...(photos.length === 0 ? [] : [photos]),
    ...(back.length === 0 ? [] : ['back', back]),
    ...(faces.length === 0 ? [] : ['faces', [...faces, ...said(db, depthSays, report)]]),
  ])
}

export interface SealRow {
  readonly id: string
  readonly report: string
  readonly content: string
  readonly at: string
}

export function sealHash(db: Db, before: string, { id, report, content, at }: SealRow): string {
  return hashOf([before, id, report, content, at, said(db, signaturesSay, report)])
}

/** The first complete report that is not as it was signed, or whose seal does not join the one before; null for none. */
export function brokenSeal(db: Database.Database): { readonly report: string; readonly at: string } | null {
  const seals = db.prepare<[], SealRow & { readonly hash: string }>('SELECT * FROM condition_seal ORDER BY rowid')
  let before = ''
  for (const seal of seals.all()) {
    if (contentHash(db, seal.report) !== seal.content || sealHash(db, before, seal) !== seal.hash) {
      return { report: seal.report, at: seal.at }
    }
    before = seal.hash
  }
  return null
}
