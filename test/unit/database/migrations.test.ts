/**
 * Migrations: each from the version before with rows in it, none ever altered once it is out, all or nothing. A new
 * migration fails here until it has its own line in `before` and `frozen`.
 */
import { createHash } from 'node:crypto'
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, test } from 'vitest'
import { backupFolder, listBackups } from '../../../main/database/backup-files.ts'
import { createCatalogue, openCatalogue } from '../../../main/database/catalogue.ts'
import { checkCatalogue } from '../../../main/database/check.ts'
import { undoStateOf } from '../../../main/database/history.ts'
import { type Migration, migrate } from '../../../main/database/migrate.ts'
import { removedFrom } from '../../../main/database/migrations/0014-removed-rows.ts'
import { removedFrom as removedFromLoan } from '../../../main/database/migrations/0015-loans.ts'
import { migrations } from '../../../main/database/migrations/list.ts'
import { ordinaryTables } from '../../../main/database/tables.ts'
import { ann, checkText, dump, look, refusalOf, testClock, testFolder } from './fixture.ts'

const clock = testClock()

/** By version: rows as the version before could hold them, and what must be true of them after. */
const before: Readonly<
  Record<number, { readonly fill: (db: Database.Database) => void; readonly expect: (db: Database.Database) => void }>
> = {
  1: {
    fill: () => {}, // before the first there is nothing
    expect(db) {
      expect(db.prepare('SELECT edit FROM edit_now').pluck().all()).toEqual([null])
      expect(db.prepare('SELECT version, name, last_edit FROM schema_step').all()).toEqual([
        { version: 1, name: 'foundation', last_edit: 0 },
      ])
      expect(ordinaryTables(db)).toContain('placement')
    },
  },
  2: {
    fill(db) {
      db.exec(`INSERT INTO import_run(id, name, at) VALUES ('r', 'list.csv', '2031-03-01T00:00:00.000Z');
        INSERT INTO import_question(id, run, question) VALUES ('q', 'r', 'Which unit?')`)
    },
    expect(db) {
      expect(db.prepare('SELECT id, question, asked_at, asked_by FROM import_question').all()).toEqual([
        { id: 'q', question: 'Which unit?', asked_at: null, asked_by: null },
      ])
    },
  },
  3: {
    fill(db) {
      db.exec(`INSERT INTO building(id) VALUES ('b');
        INSERT INTO room(id, building, name) VALUES ('r', 'b', 'Long room');
        INSERT INTO corner(id, room, x, y) VALUES ('c', 'r', 0, 0), ('d', 'r', 4000, 0);
        INSERT INTO wall(id, room, from_corner, to_corner, length, height) VALUES ('w', 'r', 'c', 'd', 4000, 3000);
        INSERT INTO face(id, wall) VALUES ('f', 'w');
        INSERT INTO work(id, title) VALUES ('k', 'Salt pans');
        INSERT INTO exhibition(id, title) VALUES ('x', 'Low water');
        INSERT INTO entry(id, exhibition, work) VALUES ('e', 'x', 'k');
        INSERT INTO fixing_kind(id, name, kind, hole_offset, rated_kg) VALUES ('h', 'hook', 'hook', 14, 13.6);
        INSERT INTO placement(id, exhibition, entry, face, x, fixing) VALUES ('p', 'x', 'e', 'f', 1200, 'h');`)
    },
    expect(db) {
      expect(db.prepare('SELECT x, fixing, keeper, lock_tool FROM placement').all()).toEqual([
        { x: 1200, fixing: 'h', keeper: null, lock_tool: '' },
      ])
      expect(db.prepare('SELECT length, ceiling, rail, datum_by FROM wall').all()).toEqual([
        { length: 4000, ceiling: null, rail: null, datum_by: '' },
      ])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['mark', 'placement_step', 'fixing_rating']))
    },
  },
  4: {
    fill(db) {
      db.exec(`INSERT INTO party(id, name) VALUES ('p', 'Harrow Point House');
        INSERT INTO work(id, title, maker, lender) VALUES ('k', 'Salt pans', 'Ina Vörr', 'p'), ('l', 'Groyne', '', NULL)`)
    },
    expect(db) {
      const found = (words: string) =>
        db.prepare('SELECT rowid FROM work_fts WHERE work_fts MATCH ?').pluck().all(words)
      expect([found('s*'), found('"vor"*'), found('g* s*')]).toEqual([[1], [1], []])
      db.exec(`INSERT INTO work_fts(work_fts, rank) VALUES ('integrity-check', 1)`)
      // Answered by an index alone, which the rows would take ten times as long for.
      const plan = db
        .prepare('EXPLAIN QUERY PLAN SELECT lender, kind, count(*), sum(hang_width) FROM work GROUP BY lender, kind')
        .all()
      expect(JSON.stringify(plan)).toContain('COVERING INDEX work_lender')
    },
  },
  5: {
    fill(db) {
      db.exec(`INSERT INTO work(id, title, set_form, set_gap_x) VALUES ('s', 'Tide', 'row', 30);
        INSERT INTO work(id, title, parent, part_order) VALUES ('k', 'Tide, one', 's', 1);`)
    },
    expect(db) {
      expect(db.prepare('SELECT id, parent, set_form, set_gap_x FROM work ORDER BY id').all()).toEqual([
        { id: 'k', parent: 's', set_form: '', set_gap_x: null },
        { id: 's', parent: null, set_form: 'row', set_gap_x: 30 },
      ])
      expect(ordinaryTables(db)).toContain('placement_part')
    },
  },
  6: {
    fill(db) {
      db.exec(`INSERT INTO building(id) VALUES ('b');
        INSERT INTO room(id, building, name) VALUES ('r', 'b', 'Long room');
        INSERT INTO corner(id, room, x, y) VALUES ('c', 'r', 0, 0), ('d', 'r', 4000, 0);
        INSERT INTO wall(id, room, from_corner, to_corner, length, height) VALUES ('w', 'r', 'c', 'd', 4000, 3000);
        INSERT INTO keep_clear(id, wall, kind, x, y, width, height) VALUES ('k', 'w', 'switch', 100, 1200, 80, 80);`)
    },
    expect(db) {
      expect(db.prepare('SELECT at_x, turn, storey FROM room').all()).toEqual([{ at_x: null, turn: 0, storey: '' }])
      expect(db.prepare('SELECT length, exhibition, backs FROM wall').all()).toEqual([
        { length: 4000, exhibition: null, backs: null },
      ])
      expect(db.prepare('SELECT depth, reachable, side FROM keep_clear').all()).toEqual([
        { depth: null, reachable: 0, side: 'a' },
      ])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['survey', 'standing', 'zone_room', 'underlay']))
    },
  },
  7: {
    fill(db) {
      db.exec("INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table')")
    },
    expect(db) {
      expect(db.prepare('SELECT title, frame_colour, hand_weight FROM work').all()).toEqual([
        { title: 'Tide table', frame_colour: '', hand_weight: null },
      ])
      expect(ordinaryTables(db)).toContain('picture_tone')
    },
  },
  8: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title, not_beside) VALUES ('w', 1, 'Tide table', 'anything red');
        INSERT INTO exhibition(id, title) VALUES ('x', 'Low water');
        INSERT INTO entry(id, exhibition, work) VALUES ('e', 'x', 'w');`)
    },
    expect(db) {
      expect(db.prepare('SELECT not_beside FROM work').pluck().all()).toEqual(['anything red'])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['hang_rule', 'hang_rule_work', 'hang_rule_place']))
      expect(db.prepare('SELECT count(*) FROM hang_rule').pluck().get()).toBe(0)
    },
  },
  9: {
    fill(db) {
      db.exec("INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table')")
    },
    expect(db) {
      expect(db.prepare('SELECT title FROM work').pluck().all()).toEqual(['Tide table'])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['location', 'movement', 'moved']))
    },
  },
  10: {
    fill(db) {
      db.exec(`INSERT INTO exhibition(id, title) VALUES ('x', 'Low water');
        INSERT INTO section(id, exhibition, title) VALUES ('s', 'x', 'The shore');`)
    },
    expect(db) {
      expect(db.prepare('SELECT title, hang, rows, align, gap_down, lowest, highest FROM section').all()).toEqual([
        { title: 'The shore', hang: 'row', rows: 2, align: 'axis', gap_down: 80, lowest: null, highest: null },
      ])
    },
  },
  11: {
    fill(db) {
      db.exec("INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table')")
    },
    expect(db) {
      expect(db.prepare('SELECT title FROM work').pluck().all()).toEqual(['Tide table'])
      expect(ordinaryTables(db)).toEqual(
        expect.arrayContaining([
          'condition_term',
          'condition_report',
          'condition_finding',
          'condition_signature',
          'condition_seal',
        ]),
      )
    },
  },
  12: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO condition_report(id, work, kind, examined_at, width, height)
        VALUES ('r', 'w', 'check', '2031-03-01T00:00:00.000Z', 400, 300)`)
    },
    expect(db) {
      expect(db.prepare('SELECT id FROM condition_report').pluck().all()).toEqual(['r'])
      expect(ordinaryTables(db)).toContain('condition_photo')
    },
  },
  13: {
    fill(db) {
      db.exec("INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table')")
    },
    expect(db) {
      expect(db.prepare('SELECT title FROM work').pluck().all()).toEqual(['Tide table'])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['hours_lit', 'light_reading']))
    },
  },
  14: {
    fill(db) {
      db.exec(`INSERT INTO edit(id, label, procedure, person, person_name, at, first_seq, last_seq)
          VALUES (1, 'Take a number off', 'work.removeNumber', '', '', '2031-03-01T00:00:00.000Z', 1, 2);
        INSERT INTO journal(edit, tbl, key, op, data) VALUES (1, 'work_number', 'n', 'd', '{"id":"n","work":"w"}'),
          (1, 'work', 'w', 'u', '{"note":["",""]}')`)
    },
    expect(db) {
      const asked = `SELECT key FROM journal WHERE tbl = ? AND op = 'd' AND ${removedFrom} = ?`
      expect(db.prepare(asked).pluck().all('work_number', 'w')).toEqual(['n'])
      expect(JSON.stringify(db.prepare(`EXPLAIN QUERY PLAN ${asked}`).all('work_number', 'w'))).toContain(
        'journal_removed (tbl=? AND <expr>=?)',
      )
    },
  },
  15: {
    fill(db) {
      db.exec(`INSERT INTO party(id, name) VALUES ('p', 'Harrow Point House');
        INSERT INTO edit(id, label, procedure, person, person_name, at, first_seq, last_seq)
          VALUES (1, 'Take a number off', 'work.removeNumber', '', '', '2031-03-01T00:00:00.000Z', 1, 2);
        INSERT INTO journal(edit, tbl, key, op, data) VALUES (1, 'work_number', 'n', 'd', '{"id":"n","work":"w"}')`)
    },
    expect(db) {
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['loan', 'loan_contact', 'loan_work']))
      const asked = `SELECT key FROM journal WHERE tbl = ? AND op = 'd' AND ${removedFromLoan} = ?`
      expect(db.prepare(asked).pluck().all('work_number', 'w')).toEqual(['n'])
      expect(JSON.stringify(db.prepare(`EXPLAIN QUERY PLAN ${asked}`).all('loan_work', 'l'))).toContain(
        'journal_removed (tbl=? AND <expr>=?)',
      )
    },
  },
  16: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO party(id, name) VALUES ('p', 'Harrow Point House')`)
    },
    expect(db) {
      expect(db.prepare('SELECT title FROM work').pluck().all()).toEqual(['Tide table'])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['exchange_rate', 'value_limit', 'work_value']))
    },
  },
  17: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO condition_report(id, work, kind, examined_at, width, height)
          VALUES ('r', 'w', 'check', '2031-03-01T00:00:00.000Z', 400, 300);
        INSERT INTO condition_finding(id, report, position, form, points) VALUES ('f', 'r', 1, 'mark', '[{"x":1,"y":2}]')`)
    },
    expect(db) {
      expect(db.prepare('SELECT side, back_picture FROM condition_finding, condition_report').all()).toEqual([
        { side: 'front', back_picture: null },
      ])
    },
  },
  18: {
    fill(db) {
      db.exec(`INSERT INTO work(id, title) VALUES ('w', 'Salt pans');
        INSERT INTO work_number(id, work, kind, text, norm) VALUES ('n', 'w', 'permanent', '1995.5.2', '1995.5.2')`)
    },
    expect(db) {
      expect(db.prepare('SELECT text, since, "by", note FROM work_number').all()).toEqual([
        { text: '1995.5.2', since: '', by: '', note: '' },
      ])
    },
  },
  19: {
    fill(db) {
      db.exec(`INSERT INTO party(id, name) VALUES ('p', 'Harrow Point House');
        INSERT INTO loan(id, party, number) VALUES ('l', 'p', '7')`)
    },
    expect(db) {
      expect(db.prepare('SELECT id, number FROM loan').all()).toEqual([{ id: 'l', number: '7' }])
      expect(ordinaryTables(db)).toContain('loan_term')
    },
  },
  20: {
    fill(db) {
      db.exec("INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table')")
    },
    expect(db) {
      expect(db.prepare('SELECT title FROM work').pluck().all()).toEqual(['Tide table'])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['climate_file', 'climate_day', 'climate_limit']))
    },
  },
  21: {
    fill(db) {
      db.exec("INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table')")
    },
    expect(db) {
      expect(db.prepare('SELECT title FROM work').pluck().all()).toEqual(['Tide table'])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['damage', 'damage_word']))
    },
  },
  22: {
    fill(db) {
      db.exec(`INSERT INTO party(id, name) VALUES ('p', 'Harrow Point House');
        INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO loan(id, party, number) VALUES ('l', 'p', '7');
        INSERT INTO loan_work(id, loan, work) VALUES ('i', 'l', 'w')`)
    },
    expect(db) {
      expect(db.prepare('SELECT id, loan, work FROM loan_work').all()).toEqual([{ id: 'i', loan: 'l', work: 'w' }])
      expect(ordinaryTables(db)).toEqual(expect.arrayContaining(['loan_receipt', 'loan_receipt_work']))
    },
  },
  23: {
    fill(db) {
      db.exec(`INSERT INTO climate_file(id, room, room_words, name, file_hash, logger, read_as, told, count, first, last,
          withdraws, recorded_at, recorded_by)
        VALUES ('f', 'r', 'Long room', 'a.csv', 'h', 'L1', '{}', '[]', 1, 'x', 'x', NULL, 'x', 'Bo'),
          ('g', 'r', 'Long room', 'a.csv', 'h', 'L1', '{}', '[]', 0, 'x', 'x', 'f', 'x', 'Bo');
        INSERT INTO climate_day(id, file, day, seconds, celsius, humidity, count) VALUES ('d', 'f', 22348, '0', '2000', '-', 1)`)
    },
    expect(db) {
      const hashes = db.prepare('SELECT hash FROM climate_file ORDER BY rowid').pluck().all()
      // By hand, as the words beside the columns say: the row before its days, the link before first.
      const hash = (text: string) => createHash('sha256').update(text).digest('hex')
      const row = '"r","Long room","a.csv","h","L1","{}","[]"'
      const first = hash(`["","f",${row},1,"x","x","",null,"x","Bo"]\n["d",22348,"0","2000","-",1]`)
      expect(hashes).toEqual([first, hash(`["${first}","g",${row},0,"x","x","","f","x","Bo"]`)])
    },
  },
  24: {
    fill(db) {
      db.exec(`INSERT INTO edit(label, procedure, person, person_name, at, first_seq, last_seq)
        VALUES ('Add Tide table', 'work.add', '', '', '2031-03-01T00:00:00.000Z', 1, 0)`)
    },
    expect(db) {
      expect(db.prepare('SELECT label FROM edit').pluck().all()).toContain('Add Tide table')
      expect(ordinaryTables(db)).toContain('edit_reason')
    },
  },
  25: {
    fill(db) {
      db.exec(`INSERT INTO party(id, name) VALUES ('p', 'Harrow Point House');
        INSERT INTO loan(id, party, number) VALUES ('l', 'p', '7');
        INSERT INTO loan_term(id, loan, kind, high, said) VALUES ('t', 'l', 'light', 50, 'Fifty lux.');
        INSERT INTO value_limit(id, scope, lender, value, currency, last) VALUES ('m', 'lender', 'p', 100, 'EUR', '2031-09-01')`)
    },
    expect(db) {
      expect(db.prepare('SELECT id, kind, high, said FROM loan_term').all()).toEqual([
        { id: 't', kind: 'light', high: 50, said: 'Fifty lux.' },
      ])
      expect(db.prepare('SELECT id, scope, lender, bearer, value, last FROM value_limit').all()).toEqual([
        { id: 'm', scope: 'lender', lender: 'p', bearer: '', value: 100, last: '2031-09-01' },
      ])
    },
  },
  26: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO light_reading(id, work, at, points, lux, uv, strikes, recorded_at, recorded_by)
        VALUES ('r', 'w', 'x', '[50]', 50, 12, NULL, 'x', 'Bo'), ('s', 'w', 'x', '[]', 50, NULL, 'r', 'x', 'Bo')`)
    },
    expect(db) {
      const rows = db.prepare('SELECT lux, uv, uv_area, hash FROM light_reading ORDER BY rowid').all()
      // By hand, as the words beside the columns say: the link before first.
      const hash = (text: string) => createHash('sha256').update(text).digest('hex')
      const first = hash('["","r","w","x","[50]",50,12,"","",null,"x","Bo",null]')
      expect(rows).toEqual([
        { lux: 50, uv: 12, uv_area: null, hash: first },
        {
          lux: 50,
          uv: null,
          uv_area: null,
          hash: hash(`["${first}","s","w","x","[]",50,null,"","","r","x","Bo",null]`),
        },
      ])
    },
  },
  27: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO movement(id, at, place, place_kind, place_words, recorded_at, recorded_by, hash) VALUES ('m',
          '2031-03-01T00:00:00.000Z', 'r', 'room', 'Room 1', '2031-03-01T00:00:00.000Z', 'Tamsin Oake', 'h');
        INSERT INTO moved(id, movement, work, at, place) VALUES ('d', 'm', 'w', '2031-03-01T00:00:00.000Z', 'r')`)
    },
    expect(db) {
      expect(db.prepare('SELECT work, part_of, condition FROM moved').all()).toEqual([
        { work: 'w', part_of: null, condition: '' },
      ])
    },
  },
  28: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO condition_report(id, work, kind, examined_at, width, height)
          VALUES ('r', 'w', 'check', '2031-03-01T00:00:00.000Z', 500, 400);
        INSERT INTO condition_finding(id, report, position, side, form, points) VALUES ('f', 'r', 1, 'back', 'mark', '[]')`)
    },
    expect(db) {
      expect(db.prepare('SELECT depth FROM condition_report').all()).toEqual([{ depth: null }])
      expect(db.prepare('SELECT side, face FROM condition_finding').all()).toEqual([{ side: 'back', face: '' }])
    },
  },
  29: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title, note) VALUES ('w', 1, 'Tide table', 'Signed on the back.');
        INSERT INTO party(id, kind, name) VALUES ('p', 'lender', 'Quay');
        INSERT INTO loan(id, party, way, number) VALUES ('l', 'p', 'in', 'QC 7')`)
    },
    expect(db) {
      expect(db.prepare('SELECT note, inscriptions, subject, place_of_origin FROM work').all()).toEqual([
        { note: 'Signed on the back.', inscriptions: '', subject: '', place_of_origin: '' },
      ])
      expect(db.prepare('SELECT number, authoriser FROM loan').all()).toEqual([{ number: 'QC 7', authoriser: '' }])
      const found = (word: string) =>
        db.prepare('SELECT rowid FROM work_fts WHERE work_fts MATCH ?').pluck().all(`"${word}"*`)
      expect(found('sig')).toEqual([1])
      db.exec(`UPDATE edit_now SET edit = 0; UPDATE work SET inscriptions = 'Cut below: A. R.'`)
      expect(found('bel')).toEqual([1])
      db.exec(`UPDATE work SET inscriptions = ''; UPDATE edit_now SET edit = NULL`)
      expect(found('bel')).toEqual([])
    },
  },
  30: {
    fill(db) {
      db.exec(`INSERT INTO party(id, name) VALUES ('p', 'Harrow Point House');
        INSERT INTO loan(id, party, number) VALUES ('l', 'p', '7');
        INSERT INTO loan_term(id, loan, kind, choice, said) VALUES ('t', 'l', 'handling', 'Ines Farrow', 'By I. Farrow.')`)
    },
    expect(db) {
      expect(db.prepare('SELECT id, kind, choice, said, confirmed, confirmed_by FROM loan_term').all()).toEqual([
        { id: 't', kind: 'handling', choice: 'Ines Farrow', said: 'By I. Farrow.', confirmed: '', confirmed_by: '' },
      ])
    },
  },
  31: {
    fill(db) {
      db.exec(`INSERT INTO work(id, n, title) VALUES ('w', 1, 'Tide table');
        INSERT INTO movement(id, at, place, place_kind, place_words, recorded_at, recorded_by, hash) VALUES ('m',
          '2031-03-01T00:00:00.000Z', 'r', 'room', 'Room 1', '2031-03-01T00:00:00.000Z', 'Tamsin Oake', 'h');
        INSERT INTO moved(id, movement, work, at, place, condition)
          VALUES ('d', 'm', 'w', '2031-03-01T00:00:00.000Z', 'r', 'sound')`)
    },
    expect(db) {
      expect(db.prepare('SELECT work, condition, plan, plan_words FROM moved').all()).toEqual([
        { work: 'w', condition: 'sound', plan: '', plan_words: '' },
      ])
      expect(ordinaryTables(db)).toContain('planned_move')
    },
  },
}

/** SHA-256 of each migration's SQL, so that none changes once catalogues have it. */
const frozen: Readonly<Record<number, string>> = {
  1: 'b1e61c8678c2032b0dbbe923795ac6f529c8bfb934d20a2f37f2bc78df202cfa',
  2: 'fff75be93eeeec015d26e0c50a99eba5eb5a7cce2d9848bf2ff8ccca0ce2b693',
  3: '6397266c994a223ba69495d15640be886ccfa59d310fa8664c151ea14686dac8',
  4: 'c3616f909c3881d505c5b4c8c7729a503d2a36ee35f64be38faa28f321f505b2',
  5: '8c0048540c261ed2e78f79929a51cf6b95be5aced9c4e817ca0997291fca3e04',
  6: 'c020d99991914266d5ae212efffcd849042f8dd5e91b851d90a118b0a06fead4',
  7: 'db17d76d1066a2444df9aa7f08741c73235e68bccc2f5946a7c126b2d57a6ced',
  8: '24a0c300d35d419ecb59e71ad8c7da9a44a5d40c1a855c4eae77762340a47ebd',
  9: '68c11c0a7f1193147daf648778039f1a1ecf5f1f2ea4ba26b12fc8528d87e7df',
  10: '6b5a788e79046612b751ba5d28e4447c5bc95e394c6597512f39ab87d45422b3',
  11: '88a4ce23488702627f707719ade9cd2e0896d53c7750070e51464a2e4273f5d2',
  12: '8acbf13f2cf1f85146e26edf3e356e06b56e147d28d4a2d3eb97b2e4793328e6',
  13: '3ef3946a2b724374f25ee7d1423b9ed9b8401f960de39d2c0b2dd9aaa68643f2',
  14: 'b761aad23f74fb90cc70816af0bd2661d35e6d0309b7db53928c7481ea9e8e52',
  15: 'b60007a43f551bb54990e78958af72660d5063cf4cf0d9eee61ffb572ce2d64b',
  16: '4fee2438272abe329e59b776c6044f3fedae1e088e09077be25f10b71d1b5c63',
  17: 'fcdcb463e95fb03007bc9a7ba34985528f78ad3eea73e4ede9b0b119f7dcab4a',
  18: '8c13e8ce93b33f302eacd3340e918f902fad13767c5430882232dd3d284632f0',
  19: '3b148081cfdd78b70d08fb89576e8a3925fc9f3a16d248099a024b54a57b1499',
  20: '693c3b030ec7f3d0292e37a3af1b1038353c9ec425606795c315fc209b54d997',
  21: '4273009d2d8fa437d277a0747ae9fa72b87a93ccd85aebfc6155d799bd92c871',
  22: '1282b7c4ece35272e0311bcf8ec0b88b611fe9456c37f1797855b5de85e47ad9',
  23: 'a82d2a8346e4c381649cbca8f6f2551aff12df9ca3410861b9d3f41025c017a8',
  24: '7080066a250db21a8838b7f46abed26bb4f62ae4989bb65720b0d89d1402a702',
  25: 'f01f6a38dddab0fb5cf91e93786ab890b359f557838a8e73f6355f77a5037c3a',
  26: 'dc1dcad131310c1199f0a97d3698234316d9bdceb72f51d146ba71593559252a',
  27: 'b7b34bd473aef229e05eb1d8a9673a047fc514f8579131856142b7b487a944ef',
  28: 'bb43893053ac7008dcf859899bccf7a90f85da1e51495fea2d738b75c485f73e',
  29: 'eed84446c6c33cfd2a3a0beadbe482d2f0b1105b417f25f90677253f42119b3a',
  30: '97ec48945e172c530fa8d70507fc8b3bd11d4c70ad3c919d8a225370a3afb58a',
  31: '74d07869a08fad0c35978e4fd47f4c96d7feeee988dd02a4e9506af0855ff345',
}

describe('migrations', () => {
  test.each(migrations.map(each => [each.name, each] as const))(
    '%s: from the version before',
    (_, { version, sql }) => {
      const given = before[version]
      if (given === undefined) throw new Error(`Migration ${version} has no test from the version before`)
      expect(createHash('sha256').update(sql).digest('hex')).toBe(frozen[version])
      const db = new Database(':memory:')
      db.pragma('foreign_keys = ON')
      migrate(db, migrations.slice(0, version - 1), clock.now)
      // Triggers refuse what is written outside an edit.
      if (version > 1) db.exec('UPDATE edit_now SET edit = 0')
      given.fill(db)
      if (version > 1) db.exec('UPDATE edit_now SET edit = NULL')
      expect(migrate(db, migrations.slice(0, version), clock.now)).toBe(1)
      given.expect(db)
      expect(db.pragma('user_version', { simple: true })).toBe(version)
      expect(db.pragma('foreign_key_check')).toEqual([])
      expect(db.pragma('foreign_keys', { simple: true })).toBe(1)
      db.close()
    },
  )

  test('the schema is the one on record', async () => {
    const db = new Database(':memory:')
    migrate(db, migrations, clock.now)
    const lines = ordinaryTables(db)
      .filter(table => !table.startsWith('work_fts'))
      .map(table => {
        const columns = db
          .prepare(`SELECT name || ' ' || type || iif("notnull", ' NOT NULL', '') FROM pragma_table_info(?)`)
          .pluck()
          .all(table)
        const refers = db
          .prepare(`SELECT "from" || ' → ' || "table" || ' ' || on_delete FROM pragma_foreign_key_list(?) ORDER BY 1`)
          .pluck()
          .all(table)
        return [table, ...columns.map(each => `  ${each}`), ...refers.map(each => `  ${each}`)].join('\n')
      })
    const strict = db
      .prepare(
        `SELECT name FROM pragma_table_list WHERE type = 'table' AND NOT strict AND schema = 'main' AND name NOT LIKE 'sqlite%'`,
      )
      .pluck()
      .all()
    expect(strict).toEqual([])
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('./schema.txt')
    db.close()
  })
})

const next = migrations.length + 1

/** A step as a later version may take it: a parent table is built anew, and a column is added. */
const rebuild: Migration = {
  version: next,
  name: 'trial',
  sql: `CREATE TABLE new_party (id TEXT PRIMARY KEY NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, name_norm TEXT NOT NULL,
      contact TEXT NOT NULL, credit_line TEXT NOT NULL, town TEXT NOT NULL DEFAULT '') STRICT;
    INSERT INTO new_party SELECT *, '' FROM party; DROP TABLE party; ALTER TABLE new_party RENAME TO party;
    ALTER TABLE work ADD COLUMN height_note TEXT NOT NULL DEFAULT '';`,
}

describe('a catalogue of the version before', () => {
  async function old(): Promise<string> {
    const file = join(testFolder(), 'a.hangwright')
    const catalogue = createCatalogue(file, clock)
    await catalogue.edit({ procedure: 'test', person: ann, label: 'Add' }, ({ db }) => {
      db.prepare(`INSERT INTO party(id, name) VALUES ('p1', 'Harrow Point House')`).run()
      db.prepare(`INSERT INTO work(id, title, lender) VALUES ('w1', 'Salt pans', 'p1')`).run()
      db.prepare(`INSERT INTO work_number(id, work, kind, text, party) VALUES ('n1', 'w1', 'lender', '7', 'p1')`).run()
    })
    catalogue.close()
    return file
  }

  test('is backed up, brought up with every row, and undo does not reach behind', async () => {
    const file = await old()
    const catalogue = openCatalogue(file, clock, { migrations: [...migrations, rebuild] })
    expect(catalogue.db.prepare('SELECT lender, height_note FROM work').all()).toEqual([
      { lender: 'p1', height_note: '' },
    ])
    expect(catalogue.db.prepare('SELECT count(*) AS n FROM work_number').get()).toEqual({ n: 1 })
    expect(undoStateOf(catalogue.db, 'ann').undo).toBeNull()
    expect((await refusalOf(() => catalogue.undo(ann))).code).toBe('nothing-to-undo')
    // The triggers know the new column.
    await catalogue.edit({ procedure: 'test', person: ann, label: 'Note' }, ({ db }) =>
      db.prepare(`UPDATE work SET height_note = 'low'`).run(),
    )
    await catalogue.undo(ann)
    expect(catalogue.db.prepare('SELECT height_note FROM work').get()).toEqual({ height_note: '' })
    catalogue.close()
    look(file, checkText)
    const [backup] = listBackups(file)
    expect(backup?.why).toBe('migration')
    const kept = join(backupFolder(file), backup?.key ?? '')
    expect(look(kept, db => db.pragma('user_version', { simple: true }))).toBe(next - 1)
    expect(look(kept, db => db.prepare('SELECT title FROM work').pluck().all())).toEqual(['Salt pans'])
    expect(await checkCatalogue(file)).toEqual([])
  })

  test.each([
    ['that fails half way', 'ALTER TABLE work ADD COLUMN other TEXT; CREATE TABLE work (id TEXT) STRICT;'],
    ['that leaves references to nothing', 'DELETE FROM party;'],
  ])('stays as it was under a migration %s', async (_, sql) => {
    const file = await old()
    const was = look(file, dump)
    expect(() =>
      openCatalogue(file, clock, { migrations: [...migrations, { version: next, name: 'bad', sql }] }),
    ).toThrow()
    expect(look(file, dump)).toBe(was)
    const catalogue = openCatalogue(file, clock)
    expect((await catalogue.undo(ann)).label).toBe('Add')
    catalogue.close()
    expect(existsSync(backupFolder(file))).toBe(true)
    expect(readdirSync(backupFolder(file)).filter(name => name.endsWith('.making'))).toEqual([])
  })
})
