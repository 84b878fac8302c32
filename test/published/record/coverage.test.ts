/**
 * Which of our columns holds what two published standards ask to be recorded of an object. Names of categories and units
 * alone are quoted, definitions are not. What has no column is named too.
 */
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { migrate } from '../../../main/database/migrate.ts'
import { migrations } from '../../../main/database/migrations/list.ts'

interface Held {
  /** `table.column` */
  readonly in: readonly string[]
}

/**
 * Object ID: the eleven categories and five more that are recommended. ICOM,
 * archives.icom.museum/object-id/heritage/object.html and …/guide/guide_add.html.
 */
const objectId: Readonly<Record<string, Held>> = {
  Photographs: { in: ['picture.hash', 'condition_photo.hash'] },
  'Type of Object': { in: ['work.kind', 'work.object_name'] },
  Measurements: { in: ['work_size.height', 'work_size.width', 'work_size.depth', 'work_size.unit', 'work_mass.kg'] },
  'Materials & Techniques': { in: ['work.medium'] },
  'Inscriptions & Markings': { in: ['work.inscriptions'] },
  'Date or Period': { in: ['work.date_text'] },
  Maker: { in: ['work.maker'] },
  Subject: { in: ['work.subject'] },
  Title: { in: ['work.title'] },
  'Distinguishing Features': { in: ['work.distinguishing'] },
  Description: { in: ['work.description'] },
  'Inventory Number': { in: ['work_number.text', 'work_number.kind'] },
  'Related Written Material': { in: ['document.hash', 'document.name'] },
  'Place of Origin/Discovery': { in: ['work.place_of_origin'] },
  'Cross Reference to Related Objects': { in: ['work.parent'] },
  'Date Documented': { in: ['work.created_at', 'work_size.at', 'condition_report.examined_at'] },
}

/**
 * Spectrum's object identification information, unit by unit in its order: as listed, with the English names, in
 * digitalizacja-forum.nimoz.pl/viewtopic.php?f=18&t=89 (the Polish edition, 2014).
 */
const objectIdentification: Readonly<Record<string, Held>> = {
  'Object number': { in: ['work_number.text'] },
  'Other number': { in: ['work_number.text'] },
  'Other number type': { in: ['work_number.kind'] },
  'Brief description': { in: ['work.description'] },
  Comments: { in: ['work.note'] },
  'Distinguishing features': { in: ['work.distinguishing'] },
  'Number of objects': { in: ['work.parts_count'] },
  'Object name': { in: ['work.object_name', 'work.kind'] },
  'Object name currency': { in: [] },
  'Object name level': { in: [] },
  'Object name note': { in: [] },
  'Object name system': { in: [] },
  'Object name type': { in: [] },
  'Object name/title language': { in: ['work.title_language'] },
  'Responsible department/section': { in: ['work.department'] },
  Title: { in: ['work.title'] },
  'Title translation': { in: ['work.title_translation'] },
  'Title type': { in: [] },
}

describe('columns for what standards ask of an object', () => {
  const db = new Database(':memory:')
  let columns: ReadonlySet<string> = new Set()
  beforeAll(() => {
    migrate(db, migrations, () => '2031-03-01T00:00:00.000Z')
    columns = new Set(
      db
        .prepare<[], string>(
          `SELECT tables.name || '.' || columns.name FROM pragma_table_list AS tables
           JOIN pragma_table_info(tables.name) AS columns WHERE tables.schema = 'main' AND tables.type = 'table'`,
        )
        .pluck()
        .all(),
    )
  })
  afterAll(() => void db.close())

  test.each([
    ['Object ID', objectId],
    ['Spectrum, object identification', objectIdentification],
  ] as const)('%s: every column that it is said to be in is in the schema', (_, table) => {
    const missing = Object.entries(table).flatMap(([name, held]) =>
      held.in.filter(column => !columns.has(column)).map(column => `${name}: ${column}`),
    )
    expect(missing).toEqual([])
  })

  test('Object ID: each category has a place of its own', () => {
    expect(Object.keys(objectId)).toHaveLength(11 + 5)
    expect(Object.entries(objectId).filter(([, held]) => held.in.length === 0)).toEqual([])
  })

  test('Spectrum: what says how a name was given is kept nowhere', () => {
    expect(
      Object.entries(objectIdentification).flatMap(([name, held]) => (held.in.length === 0 ? [name] : [])),
    ).toEqual([
      // Of a vocabulary: whose word it is, how fine, whether it is still in use. A show quotes its lenders' words.
      'Object name currency',
      'Object name level',
      'Object name note',
      'Object name system',
      'Object name type',
      // Given by the maker, by custom or by a cataloguer; a label shows the title alone.
      'Title type',
    ])
  })

  test('every kind of number that a work may have can be stored with its occasion, its date and who wrote it', () => {
    for (const column of ['kind', 'text', 'norm', 'since', 'by', 'note', 'party']) {
      expect(columns.has(`work_number.${column}`)).toBe(true)
    }
  })
})
