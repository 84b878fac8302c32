/**
 * The triggers that close a complete condition report: once its seal is there, neither it nor a finding or photograph of it can be
 * changed, removed, replaced or added, by whatever statement, and nobody signs it any more. An upsert by REPLACE takes
 * rows away without asking the trigger of a deletion, so it is met by every key that it could take a row by.
 */
import type { Trigger } from './triggers.ts'

const reason = "SELECT raise(ABORT, 'a complete condition report is never altered')"
const sealed = (report: string) => `EXISTS (SELECT 1 FROM condition_seal WHERE report = ${report})`

function closes(table: string, event: 'INSERT' | 'UPDATE' | 'DELETE', when: readonly string[]): Trigger {
  const name = `sealed_${table}_${event.toLowerCase()}`
  return {
    name,
    sql: `CREATE TRIGGER "${name}" BEFORE ${event} ON "${table}" WHEN ${when.join(' OR ')} BEGIN ${reason}; END`,
  }
}

/** Whether a row of a complete report has one of the keys of the new row. */
function taken(table: string, report: string, keys: readonly string[]): string {
  const same = keys.map(key => `${table}.${key} = new.${key}`).join(' OR ')
  return `EXISTS (SELECT 1 FROM ${table} JOIN condition_seal ON condition_seal.report = ${table}.${report} WHERE ${same})`
}

const reportKeys = ['id', 'rowid', 'corrects']
const partKeys = ['id', 'rowid']
/** An update finds its own row by these; only another row's are taken. */
const others = 'new.rowid IS NOT old.rowid'

/** What a report is made of: rows that name it. */
const partsOf = (table: string): Trigger[] => [
  closes(table, 'INSERT', [sealed('new.report'), taken(table, 'report', partKeys)]),
  closes(table, 'UPDATE', [sealed('old.report'), sealed('new.report'), others, taken(table, 'report', partKeys)]),
  closes(table, 'DELETE', [sealed('old.report')]),
]

/** `tables`: those of the catalogue, which a migration may be on the way to. */
export function sealTriggers(tables: readonly string[]): Trigger[] {
  if (!tables.includes('condition_seal')) return []
  return [
    closes('condition_report', 'INSERT', [taken('condition_report', 'id', reportKeys)]),
    closes('condition_report', 'UPDATE', [sealed('old.id'), others, taken('condition_report', 'id', reportKeys)]),
    closes('condition_report', 'DELETE', [sealed('old.id')]),
    ...partsOf('condition_finding'),
    ...(tables.includes('condition_photo') ? partsOf('condition_photo') : []),
    closes('condition_signature', 'INSERT', [sealed('new.report')]),
  ]
}
