/**
 * All triggers of a catalogue, generated from its tables after every migration: those that write the journal, those
 * that keep the text index, and those that refuse what must not happen. None is ever written by hand or migrated.
 *
 * A journal entry is lean: nothing for an insert (what it wrote is the row itself, or the next entry about it),
 * {column: [before, after]} of the changed columns for an update, the whole row for a deletion.
 */
import type Database from 'better-sqlite3'
import { sealTriggers } from './seal-triggers.ts'
import { journaledTables, literal, ordinaryTables, quoted, records, type TableShape } from './tables.ts'

export interface Trigger {
  readonly name: string
  readonly sql: string
}

const now = '(SELECT edit FROM edit_now)'
const guard = `SELECT CASE WHEN ${now} IS NULL THEN raise(ABORT, 'change outside an edit') END;`

/** What the text index reads of a work, by the form that the catalogue has. */
export function textColumns(db: Database.Database): string[] {
  return db.prepare<[], string>(`SELECT name FROM pragma_table_info('work_fts')`).pluck().all()
}

export function journalTriggers({ name, columns }: TableShape): Trigger[] {
  const row = `json_object(${columns.map(column => `${literal(column)}, old.${quoted(column)}`).join(', ')})`
  const differs = (column: string) => `old.${quoted(column)} IS NOT new.${quoted(column)}`
  const changed = columns
    .map(
      column =>
        `SELECT ${literal(column)} AS c, old.${quoted(column)} AS o, new.${quoted(column)} AS n WHERE ${differs(column)}`,
    )
    .join(' UNION ALL ')
  function trigger(op: 'i' | 'u' | 'd', event: string, row: 'old' | 'new', data: string, when = ''): Trigger {
    const title = `journal_${name}_${op}`
    return {
      name: title,
      sql: `CREATE TRIGGER ${quoted(title)} AFTER ${event} ON ${quoted(name)} ${when}BEGIN ${guard}
INSERT INTO journal(edit, tbl, key, op, data) VALUES (${now}, ${literal(name)}, ${row}.id, '${op}', ${data}); END`,
    }
  }
  return [
    trigger('i', 'INSERT', 'new', 'NULL'),
    trigger(
      'u',
      'UPDATE',
      'old',
      `(SELECT json_group_object(c, json_array(o, n)) FROM (${changed}))`,
      `WHEN ${columns.map(differs).join(' OR ')} `,
    ),
    trigger('d', 'DELETE', 'old', row),
    {
      name: `key_${name}`,
      sql: `CREATE TRIGGER ${quoted(`key_${name}`)} BEFORE UPDATE OF id ON ${quoted(name)} WHEN old.id IS NOT new.id
BEGIN SELECT raise(ABORT, 'a key never changes'); END`,
    },
  ]
}

function refuses(table: string, event: 'UPDATE' | 'DELETE', reason: string): Trigger {
  const name = `only_added_${table}_${event.toLowerCase()}`
  return {
    name,
    sql: `CREATE TRIGGER ${quoted(name)} BEFORE ${event} ON ${quoted(table)} BEGIN SELECT raise(ABORT, ${literal(reason)}); END`,
  }
}

/** `INSERT OR REPLACE` takes rows away without asking the trigger of a deletion, so it is met before it does. */
function replacesNothing(table: string, keys: readonly string[]): Trigger {
  const name = `only_added_${table}_insert`
  const taken = keys.map(key => `EXISTS (SELECT 1 FROM ${quoted(table)} WHERE ${key} = new.${key})`).join(' OR ')
  return {
    name,
    sql: `CREATE TRIGGER ${quoted(name)} BEFORE INSERT ON ${quoted(table)} WHEN ${taken}
BEGIN SELECT raise(ABORT, ${literal(`${table} is only added to`)}); END`,
  }
}

/** By which keys a row could be replaced. */
const replaceable: Readonly<Record<string, readonly string[]>> = {
  edit: ['id'],
  journal: ['seq'],
  movement: ['id', 'rowid', 'corrects'],
  condition_seal: ['id', 'rowid', 'report'],
  light_reading: ['id', 'rowid', 'strikes'],
  climate_file: ['id', 'rowid', 'withdraws'],
  damage: ['id', 'rowid', 'reference'],
  damage_word: ['id', 'rowid', 'strikes'],
  loan_receipt: ['id', 'rowid', 'corrects', 'number_norm'],
}

function guardTriggers(db: Database.Database): Trigger[] {
  const there = new Set(ordinaryTables(db))
  // A catalogue on its way through older versions has not all of them.
  const recorded = records.filter(table => there.has(table))
  const kept: readonly string[] = ['edit', 'journal', ...recorded]
  return [
    ...kept.flatMap(table => [
      refuses(table, 'UPDATE', `${table} is only added to`),
      refuses(table, 'DELETE', `${table} is only added to`),
      replacesNothing(table, replaceable[table] ?? ['id', 'rowid']),
    ]),
    ...recorded.map(table => ({
      name: `record_${table}`,
      sql: `CREATE TRIGGER ${quoted(`record_${table}`)} BEFORE INSERT ON ${quoted(table)} BEGIN ${guard} END`,
    })),
  ]
}

/** External content: the index must be told the old text exactly, before it is told the new. */
export function textTriggers(db: Database.Database): Trigger[] {
  const read = textColumns(db)
  const columns = read.join(', ')
  const values = (row: string) => read.map(column => `${row}.${column}`).join(', ')
  const take = `INSERT INTO work_fts(work_fts, rowid, ${columns}) VALUES ('delete', old.n, ${values('old')});`
  const put = `INSERT INTO work_fts(rowid, ${columns}) VALUES (new.n, ${values('new')});`
  const when = read.map(column => `old.${column} IS NOT new.${column}`).join(' OR ')
  return [
    { name: 'text_work_i', sql: `CREATE TRIGGER text_work_i AFTER INSERT ON work BEGIN ${put} END` },
    { name: 'text_work_d', sql: `CREATE TRIGGER text_work_d AFTER DELETE ON work BEGIN ${take} END` },
    {
      name: 'text_work_u',
      sql: `CREATE TRIGGER text_work_u AFTER UPDATE OF ${columns} ON work WHEN ${when} BEGIN ${take} ${put} END`,
    },
  ]
}

export function allTriggers(db: Database.Database): Trigger[] {
  const seals = sealTriggers(ordinaryTables(db))
  return [...journaledTables(db).flatMap(journalTriggers), ...guardTriggers(db), ...seals, ...textTriggers(db)]
}

/** Every trigger that is there, whoever made it. */
export function storedTriggers(db: Database.Database): Trigger[] {
  return db.prepare<[], Trigger>(`SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY name`).all()
}

export function dropTriggers(db: Database.Database): void {
  for (const { name } of storedTriggers(db)) db.exec(`DROP TRIGGER ${quoted(name)}`)
}

export function makeTriggers(db: Database.Database): void {
  for (const { sql } of allTriggers(db)) db.exec(sql)
}

/**
 * Runs `change` with the text index left alone and built anew once at its end, inside the same transaction: for 70,000
 * works a third of the time.
 */
export function withTextRebuilt<T>(db: Database.Database, change: () => T): T {
  const triggers = textTriggers(db)
  for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`)
  const result = change()
  db.exec(`INSERT INTO work_fts(work_fts) VALUES ('rebuild')`)
  for (const { sql } of triggers) db.exec(sql)
  return result
}
