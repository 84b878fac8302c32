/**
 * Checks a whole catalogue: SQLite's pages, references, the text index, the triggers, the rules of the model that
 * tables cannot say, and every kept file by its hash. It finds and tells; nothing it finds is fatal and nothing is
 * mended. Safe to run in a worker.
 */
import { existsSync } from 'node:fs'
import Database from 'better-sqlite3'
import { hashOf, openStore } from '../files/store.ts'
import type { BackupWork } from './backup.ts'
import { brokenClimate } from './climate-chain.ts'
import { brokenSeal } from './condition-chain.ts'
import { brokenDamage } from './damage-chain.ts'
import { asRefusal, isDamage } from './faults.ts'
import { brokenReading } from './light-chain.ts'
import { namedInRows } from './named-files.ts'
import { brokenReceipt } from './receipt-chain.ts'
import { brokenLink } from './record-chain.ts'
import { allTriggers, storedTriggers } from './triggers.ts'

export interface CheckFinding {
  readonly code: string
  readonly text: string
}

/** Each finds the rows that break a rule; `what` names one of them for people. */
const invariants: readonly { readonly code: string; readonly text: string; readonly sql: string }[] = [
  {
    code: 'placement-show',
    text: 'A placement belongs to another exhibition than its entry',
    sql: `SELECT placement.id AS what FROM placement JOIN entry ON entry.id = placement.entry WHERE entry.exhibition <> placement.exhibition`,
  },
  {
    code: 'entry-section',
    text: 'An entry stands in a section of another exhibition',
    sql: `SELECT entry.id AS what FROM entry JOIN section ON section.id = entry.section WHERE section.exhibition <> entry.exhibition`,
  },
  {
    code: 'wall-without-face',
    text: 'A wall has no face, so nothing can hang on it',
    sql: `SELECT coalesce(nullif(name, ''), id) AS what FROM wall WHERE NOT EXISTS (SELECT 1 FROM face WHERE face.wall = wall.id)`,
  },
  {
    code: 'wall-corner',
    text: 'A wall runs between corners of another room',
    sql: `SELECT coalesce(nullif(wall.name, ''), wall.id) AS what FROM wall JOIN corner ON corner.id IN (wall.from_corner, wall.to_corner) WHERE corner.room <> wall.room`,
  },
  {
    code: 'size-not-positive',
    text: 'A size is nothing or less',
    sql: `SELECT id AS what FROM work_size WHERE height <= 0 OR width <= 0 OR depth < 0 OR diameter <= 0`,
  },
  {
    code: 'mass-not-positive',
    text: 'A mass is nothing or less',
    sql: 'SELECT id AS what FROM work_mass WHERE kg <= 0',
  },
  {
    code: 'wall-not-positive',
    text: 'A wall has no length or no height',
    sql: `SELECT coalesce(nullif(name, ''), id) AS what FROM wall WHERE length <= 0 OR height <= 0`,
  },
  {
    code: 'back-not-json',
    text: 'What was measured on a back cannot be read',
    sql: 'SELECT id AS what FROM work_back WHERE NOT json_valid(data)',
  },
  {
    code: 'picture-copy',
    text: 'A work shows a picture that is not its own',
    sql: `SELECT work.title AS what FROM work WHERE picture IS NOT NULL
      AND NOT EXISTS (SELECT 1 FROM picture WHERE picture.work = work.id AND picture.hash = work.picture)`,
  },
  {
    code: 'document-subject',
    text: 'A document is attached to a work that is not there',
    sql: `SELECT name AS what FROM document WHERE subject_kind = 'work' AND NOT EXISTS (SELECT 1 FROM work WHERE work.id = document.subject)`,
  },
  {
    code: 'part-of-itself',
    text: 'A work is a part of itself',
    sql: `WITH RECURSIVE above(id, up) AS (SELECT id, parent FROM work WHERE parent IS NOT NULL
      UNION SELECT above.id, work.parent FROM above JOIN work ON work.id = above.up WHERE work.parent IS NOT NULL)
      SELECT id AS what FROM above WHERE id = up`,
  },
  {
    code: 'edit-under-way',
    text: 'An edit was left unfinished',
    sql: 'SELECT edit AS what FROM edit_now WHERE edit IS NOT NULL',
  },
  {
    code: 'journal-gap',
    text: 'An edit’s entries do not match its row',
    sql: `SELECT label AS what FROM edit WHERE last_seq - first_seq + 1 <>
      (SELECT count(*) FROM journal WHERE seq BETWEEN first_seq AND last_seq AND journal.edit = edit.id)`,
  },
]

function integrity(db: Database.Database): CheckFinding[] {
  const words = db.pragma('integrity_check(20)') as { integrity_check: string }[] // the pragma's one column
  return words
    .filter(word => word.integrity_check !== 'ok')
    .map(word => ({ code: 'damaged', text: `The file is damaged: ${word.integrity_check}. Restore a backup.` }))
}

function references(db: Database.Database): CheckFinding[] {
  const broken = db
    .prepare<[], { tbl: string; parent: string; rows: number }>(
      'SELECT "table" AS tbl, parent, count(*) AS rows FROM pragma_foreign_key_check GROUP BY "table", parent',
    )
    .all()
  return broken.map(({ tbl, parent, rows }) => ({
    code: 'reference',
    text: `${rows} rows of ${tbl} name a ${parent} that is not there.`,
  }))
}

/** FTS5 compares the index with the works only when asked with rank 1; it says so by an error. */
function textIndex(db: Database.Database): CheckFinding[] {
  try {
    db.prepare(`INSERT INTO work_fts(work_fts, rank) VALUES ('integrity-check', 1)`).run()
    return []
  } catch (error) {
    if (!isDamage(error)) throw error
    return [{ code: 'text-index', text: 'The search index does not match the works.' }]
  }
}

function triggers(db: Database.Database): CheckFinding[] {
  const stored = new Map(storedTriggers(db).map(({ name, sql }) => [name, sql]))
  const wanted = allTriggers(db)
  const wrong = wanted.filter(({ name, sql }) => stored.get(name) !== sql).map(({ name }) => name)
  const foreign = [...stored.keys()].filter(name => !wanted.some(trigger => trigger.name === name))
  return [...wrong, ...foreign].map(name => ({ code: 'trigger', text: `The trigger ${name} is not as it should be.` }))
}

function rules(db: Database.Database): CheckFinding[] {
  return invariants.flatMap(({ code, text, sql }) => {
    const found = db.prepare<[], { what: string | number }>(sql).all()
    if (found.length === 0) return []
    const more = found.length === 1 ? '' : ` and ${found.length - 1} more`
    return [{ code, text: `${text}: ${found[0]?.what}${more}.` }]
  })
}

function records(db: Database.Database): CheckFinding[] {
  const findings: CheckFinding[] = []
  const code = 'record-chain'
  const movement = brokenLink(db)
  if (movement !== null) {
    const text = `The record of movements was altered past the program: the movement of ${movement.at} does not join the one before it.`
    findings.push({ code, text })
  }
  const report = brokenSeal(db)
  if (report !== null) {
    const text = `A complete condition report was altered past the program: that of ${report.at} is not as it was signed, or does not join the one before it.`
    findings.push({ code, text })
  }
  const damage = brokenDamage(db)
  if (damage !== null) {
    const text = `The record of damage was altered past the program: ${damage.reference}, or a word on it, does not join the one before it.`
    findings.push({ code, text })
  }
  const reading = brokenReading(db)
  if (reading !== null) {
    const text = `The record of light was altered past the program: the reading of ${reading.at} at ${reading.title} does not join the one before it.`
    findings.push({ code, text })
  }
  const receipt = brokenReceipt(db)
  if (receipt !== null) {
    const text = `The record of receipts was altered past the program: receipt ${receipt.number} of ${receipt.day} does not join the one before it.`
    findings.push({ code, text })
  }
  const log = brokenClimate(db)
  if (log !== null) {
    const text = `The record of loggers’ files was altered past the program: ${log.name} of ${log.room} does not join the one before it, or its readings are others.`
    findings.push({ code, text })
  }
  return findings
}

async function files(file: string, hashes: readonly string[], work: BackupWork): Promise<CheckFinding[]> {
  const store = openStore(file)
  const findings: CheckFinding[] = []
  for (const [index, hash] of hashes.entries()) {
    work.signal?.throwIfAborted()
    work.progress?.(index, hashes.length, 'Checking pictures and documents')
    const path = store.path(hash)
    if (!existsSync(path))
      findings.push({ code: 'file-missing', text: `The file ${hash.slice(0, 12)}… is missing from ${store.folder}.` })
    else if ((await hashOf(path)) !== hash) {
      findings.push({ code: 'file-altered', text: `The file ${hash.slice(0, 12)}… was changed after it was kept.` })
    }
  }
  return findings
}

export async function checkCatalogue(file: string, work: BackupWork = {}): Promise<CheckFinding[]> {
  const findings: CheckFinding[] = []
  const db = new Database(file, { fileMustExist: true, timeout: 2000 })
  try {
    const steps = [integrity, references, textIndex, triggers, rules, records]
    for (const [index, step] of steps.entries()) {
      work.signal?.throwIfAborted()
      work.progress?.(index, steps.length, 'Checking the catalogue')
      try {
        findings.push(...step(db))
      } catch (error) {
        if (!isDamage(error)) throw error
        findings.push({
          code: 'damaged',
          text: 'The file is damaged: its pages contradict each other. Restore a backup.',
        })
        return findings
      }
    }
    return [...findings, ...(await files(file, [...namedInRows(db)].sort(), work))]
  } catch (error) {
    throw asRefusal(error, file)
  } finally {
    db.close()
  }
}
