/**
 * The tables of the Foundation. Frozen: a change is a new migration. Every journaled table has one key column `id`
 * that never changes; `work` also has `n`, the row number that the text index reads, never used twice. Lengths are
 * millimetres, masses kilograms, angles degrees, light lux; `*_text` and `raw` are what a person typed; times are
 * ISO 8601. Only parts of a thing go with it (ON DELETE CASCADE); other references stand in the way of a removal.
 * References are NO ACTION, not RESTRICT, so that undo may defer them to its end.
 */
import type { Migration } from '../migrate.ts'

export const foundation: Migration = {
  version: 1,
  name: 'foundation',
  sql: `
CREATE TABLE schema_step (
  version INTEGER PRIMARY KEY, name TEXT NOT NULL, at TEXT NOT NULL, last_edit INTEGER NOT NULL
) STRICT;

CREATE TABLE edit (
  id INTEGER PRIMARY KEY, label TEXT NOT NULL, procedure TEXT NOT NULL, person TEXT NOT NULL,
  person_name TEXT NOT NULL, at TEXT NOT NULL, undoes INTEGER REFERENCES edit(id),
  first_seq INTEGER NOT NULL, last_seq INTEGER NOT NULL
) STRICT;
CREATE INDEX edit_person ON edit(person, id);
CREATE INDEX edit_undoes ON edit(undoes) WHERE undoes IS NOT NULL;
CREATE TABLE edit_now (one INTEGER PRIMARY KEY CHECK (one = 1), edit INTEGER) STRICT;
INSERT INTO edit_now VALUES (1, NULL);
CREATE TABLE journal (
  seq INTEGER PRIMARY KEY, edit INTEGER NOT NULL, tbl TEXT NOT NULL, key TEXT NOT NULL, op TEXT NOT NULL, data TEXT
) STRICT;
CREATE INDEX journal_key ON journal(tbl, key);

CREATE TABLE house_rule (
  id TEXT PRIMARY KEY NOT NULL, value TEXT NOT NULL, source TEXT NOT NULL DEFAULT '', since TEXT NOT NULL DEFAULT '',
  by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE TABLE setting (id TEXT PRIMARY KEY NOT NULL, value TEXT NOT NULL) STRICT;
CREATE TABLE person (
  id TEXT PRIMARY KEY NOT NULL, name TEXT NOT NULL, role TEXT NOT NULL DEFAULT '',
  length_unit TEXT NOT NULL DEFAULT 'mm' CHECK (length_unit IN ('mm', 'cm', 'in')),
  paper TEXT NOT NULL DEFAULT 'A4' CHECK (paper IN ('A4', 'A3', 'Letter', 'Tabloid')),
  fraction INTEGER NOT NULL DEFAULT 16 CHECK (fraction IN (8, 16, 32)), created_at TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE TABLE party (
  id TEXT PRIMARY KEY NOT NULL, kind TEXT NOT NULL DEFAULT 'lender', name TEXT NOT NULL, name_norm TEXT NOT NULL DEFAULT '',
  contact TEXT NOT NULL DEFAULT '', credit_line TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX party_name_norm ON party(name_norm);

CREATE TABLE work (
  n INTEGER PRIMARY KEY AUTOINCREMENT, id TEXT NOT NULL UNIQUE,
  title TEXT NOT NULL DEFAULT '', maker TEXT NOT NULL DEFAULT '', date_text TEXT NOT NULL DEFAULT '',
  medium TEXT NOT NULL DEFAULT '', credit_line TEXT NOT NULL DEFAULT '', lender TEXT REFERENCES party(id),
  kind TEXT NOT NULL DEFAULT '', sensitivity TEXT NOT NULL DEFAULT '', light_limit REAL, uv_limit REAL,
  glazing TEXT NOT NULL DEFAULT '', not_beside TEXT NOT NULL DEFAULT '', loan_terms TEXT NOT NULL DEFAULT '',
  handling TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT '',
  sort_maker TEXT NOT NULL DEFAULT '', sort_title TEXT NOT NULL DEFAULT '', sort_number TEXT NOT NULL DEFAULT '',
  hang_height REAL, hang_width REAL, hang_depth REAL, hang_diameter REAL, hang_part TEXT NOT NULL DEFAULT '',
  hang_source TEXT NOT NULL DEFAULT '' CHECK (hang_source IN ('', 'listed', 'measured')), hang_at TEXT NOT NULL DEFAULT '',
  mass REAL, mass_source TEXT NOT NULL DEFAULT '' CHECK (mass_source IN ('', 'listed', 'measured')),
  method TEXT NOT NULL DEFAULT '', picture TEXT, numbers TEXT NOT NULL DEFAULT '',
  parent TEXT REFERENCES work(id), part_order REAL, parts_count INTEGER, created_at TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX work_sort_maker ON work(sort_maker, sort_title, n);
CREATE INDEX work_sort_title ON work(sort_title, n);
CREATE INDEX work_sort_number ON work(sort_number, n);
CREATE INDEX work_lender ON work(lender);
CREATE INDEX work_parent ON work(parent) WHERE parent IS NOT NULL;
CREATE VIRTUAL TABLE work_fts USING fts5(
  title, maker, medium, date_text, credit_line, numbers, note,
  content='work', content_rowid='n', tokenize='unicode61 remove_diacritics 2'
);

CREATE TABLE work_number (
  id TEXT PRIMARY KEY NOT NULL, work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE, kind TEXT NOT NULL,
  text TEXT NOT NULL, norm TEXT NOT NULL DEFAULT '', party TEXT REFERENCES party(id)
) STRICT;
CREATE INDEX work_number_norm ON work_number(norm);
CREATE INDEX work_number_work ON work_number(work);
CREATE INDEX work_number_party ON work_number(party) WHERE party IS NOT NULL;
CREATE TABLE work_size (
  id TEXT PRIMARY KEY NOT NULL, work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE, part TEXT NOT NULL,
  label TEXT NOT NULL DEFAULT '', height REAL, width REAL, depth REAL, diameter REAL, count INTEGER NOT NULL DEFAULT 1,
  unit TEXT NOT NULL DEFAULT '', raw TEXT NOT NULL DEFAULT '', kind TEXT NOT NULL CHECK (kind IN ('listed', 'measured')),
  source TEXT NOT NULL DEFAULT '', by TEXT NOT NULL DEFAULT '', at TEXT NOT NULL,
  approximate INTEGER NOT NULL DEFAULT 0 CHECK (approximate IN (0, 1)), chosen INTEGER NOT NULL DEFAULT 0 CHECK (chosen IN (0, 1))
) STRICT;
CREATE INDEX work_size_work ON work_size(work);
CREATE TABLE work_mass (
  id TEXT PRIMARY KEY NOT NULL, work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE, kg REAL NOT NULL,
  raw TEXT NOT NULL DEFAULT '', kind TEXT NOT NULL CHECK (kind IN ('listed', 'measured')), source TEXT NOT NULL DEFAULT '',
  by TEXT NOT NULL DEFAULT '', at TEXT NOT NULL,
  approximate INTEGER NOT NULL DEFAULT 0 CHECK (approximate IN (0, 1)), chosen INTEGER NOT NULL DEFAULT 0 CHECK (chosen IN (0, 1))
) STRICT;
CREATE INDEX work_mass_work ON work_mass(work);
CREATE TABLE work_back (
  id TEXT PRIMARY KEY NOT NULL, work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE, method TEXT NOT NULL,
  data TEXT NOT NULL, seen_from TEXT NOT NULL CHECK (seen_from IN ('front', 'back')), by TEXT NOT NULL DEFAULT '',
  at TEXT NOT NULL, note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX work_back_work ON work_back(work, at);
CREATE TABLE picture (
  id TEXT PRIMARY KEY NOT NULL, work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE, hash TEXT NOT NULL,
  mime TEXT NOT NULL DEFAULT '', name TEXT NOT NULL DEFAULT '', width_px INTEGER, height_px INTEGER,
  position REAL NOT NULL DEFAULT 0, at TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX picture_work ON picture(work, position);
CREATE TABLE document (
  id TEXT PRIMARY KEY NOT NULL, subject_kind TEXT NOT NULL, subject TEXT NOT NULL, hash TEXT NOT NULL,
  mime TEXT NOT NULL DEFAULT '', name TEXT NOT NULL DEFAULT '', bytes INTEGER NOT NULL DEFAULT 0, at TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX document_subject ON document(subject, subject_kind);

CREATE TABLE exhibition (
  id TEXT PRIMARY KEY NOT NULL, title TEXT NOT NULL, venue TEXT NOT NULL DEFAULT '', opens TEXT NOT NULL DEFAULT '',
  closes TEXT NOT NULL DEFAULT '',
  state TEXT NOT NULL DEFAULT 'planning' CHECK (state IN ('planning', 'installing', 'open', 'closing', 'closed')),
  note TEXT NOT NULL DEFAULT '', position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE TABLE section (
  id TEXT PRIMARY KEY NOT NULL, exhibition TEXT NOT NULL REFERENCES exhibition(id), title TEXT NOT NULL,
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX section_exhibition ON section(exhibition, position);
CREATE TABLE entry (
  id TEXT PRIMARY KEY NOT NULL, exhibition TEXT NOT NULL REFERENCES exhibition(id), work TEXT NOT NULL REFERENCES work(id),
  section TEXT REFERENCES section(id), position REAL NOT NULL DEFAULT 0, running TEXT NOT NULL DEFAULT '',
  running_before TEXT NOT NULL DEFAULT '', status TEXT NOT NULL DEFAULT 'wanted', UNIQUE (exhibition, work)
) STRICT;
CREATE INDEX entry_work ON entry(work);
CREATE INDEX entry_section ON entry(section) WHERE section IS NOT NULL;
CREATE INDEX entry_position ON entry(exhibition, section, position);

CREATE TABLE import_run (
  id TEXT PRIMARY KEY NOT NULL, name TEXT NOT NULL, hash TEXT NOT NULL DEFAULT '', lender TEXT REFERENCES party(id),
  exhibition TEXT REFERENCES exhibition(id) ON DELETE SET NULL, mapping TEXT, added INTEGER NOT NULL DEFAULT 0,
  updated INTEGER NOT NULL DEFAULT 0, unchanged INTEGER NOT NULL DEFAULT 0, at TEXT NOT NULL, by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE TABLE import_value (
  id TEXT PRIMARY KEY NOT NULL, work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE, field TEXT NOT NULL, value TEXT,
  run TEXT REFERENCES import_run(id), at TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX import_value_work ON import_value(work, field);
CREATE INDEX import_value_run ON import_value(run);
CREATE TABLE import_question (
  id TEXT PRIMARY KEY NOT NULL, run TEXT NOT NULL REFERENCES import_run(id), work TEXT REFERENCES work(id) ON DELETE CASCADE,
  row INTEGER, column_name TEXT, field TEXT, raw TEXT, question TEXT NOT NULL, kind TEXT NOT NULL DEFAULT '', options TEXT,
  answer TEXT, answered_by TEXT, answered_at TEXT
) STRICT;
CREATE INDEX import_question_work ON import_question(work);
CREATE INDEX import_question_run ON import_question(run);
CREATE INDEX import_question_open ON import_question(work) WHERE answer IS NULL;
CREATE TABLE import_mapping (id TEXT PRIMARY KEY NOT NULL, mapping TEXT NOT NULL, at TEXT NOT NULL DEFAULT '') STRICT;

CREATE TABLE building (id TEXT PRIMARY KEY NOT NULL, name TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE room (
  id TEXT PRIMARY KEY NOT NULL, building TEXT NOT NULL REFERENCES building(id), name TEXT NOT NULL,
  number TEXT NOT NULL DEFAULT '', position REAL NOT NULL DEFAULT 0, height REAL, floor_note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX room_building ON room(building);
CREATE TABLE corner (
  id TEXT PRIMARY KEY NOT NULL, room TEXT NOT NULL REFERENCES room(id), position REAL NOT NULL DEFAULT 0,
  x REAL NOT NULL, y REAL NOT NULL, angle REAL, angle_text TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX corner_room ON corner(room, position);
CREATE TABLE wall (
  id TEXT PRIMARY KEY NOT NULL, room TEXT NOT NULL REFERENCES room(id), position REAL NOT NULL DEFAULT 0,
  from_corner TEXT NOT NULL REFERENCES corner(id), to_corner TEXT NOT NULL REFERENCES corner(id),
  name TEXT NOT NULL DEFAULT '', length REAL NOT NULL, length_text TEXT NOT NULL DEFAULT '', height REAL NOT NULL,
  height_text TEXT NOT NULL DEFAULT '', wall_type TEXT NOT NULL DEFAULT 'other', stud_first REAL, stud_spacing REAL,
  backing_from REAL, backing_to REAL, skirting REAL, datum REAL, datum_note TEXT NOT NULL DEFAULT '', floor TEXT,
  measured_at TEXT NOT NULL DEFAULT '', measured_by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX wall_room ON wall(room, position);
CREATE INDEX wall_from_corner ON wall(from_corner);
CREATE INDEX wall_to_corner ON wall(to_corner);
CREATE TABLE face (
  id TEXT PRIMARY KEY NOT NULL, wall TEXT NOT NULL REFERENCES wall(id), side TEXT NOT NULL DEFAULT 'a' CHECK (side IN ('a', 'b')),
  name TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX face_wall ON face(wall);
CREATE TABLE opening (
  id TEXT PRIMARY KEY NOT NULL, wall TEXT NOT NULL REFERENCES wall(id) ON DELETE CASCADE, kind TEXT NOT NULL,
  x REAL NOT NULL, y REAL NOT NULL, width REAL NOT NULL, height REAL NOT NULL, label TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX opening_wall ON opening(wall);
CREATE TABLE keep_clear (
  id TEXT PRIMARY KEY NOT NULL, wall TEXT NOT NULL REFERENCES wall(id) ON DELETE CASCADE, kind TEXT NOT NULL,
  x REAL NOT NULL, y REAL NOT NULL, width REAL NOT NULL, height REAL NOT NULL, margin REAL NOT NULL DEFAULT 0,
  label TEXT NOT NULL DEFAULT '', reason TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX keep_clear_wall ON keep_clear(wall);

CREATE TABLE face_plan (
  id TEXT PRIMARY KEY NOT NULL, exhibition TEXT NOT NULL REFERENCES exhibition(id), face TEXT NOT NULL REFERENCES face(id),
  centre_line REAL, rule TEXT NOT NULL DEFAULT 'centre', eye_fraction REAL, planned_lux REAL, visitor_order REAL,
  viewing_distance REAL, viewers TEXT, colour TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT '', UNIQUE (exhibition, face)
) STRICT;
CREATE INDEX face_plan_face ON face_plan(face);
CREATE TABLE fixing_kind (
  id TEXT PRIMARY KEY NOT NULL, name TEXT NOT NULL, kind TEXT NOT NULL, hole_offset REAL, rated_kg REAL,
  wall_type TEXT NOT NULL DEFAULT '', shank REAL, length REAL, source TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE TABLE placement (
  id TEXT PRIMARY KEY NOT NULL, exhibition TEXT NOT NULL REFERENCES exhibition(id), entry TEXT NOT NULL UNIQUE REFERENCES entry(id),
  face TEXT NOT NULL REFERENCES face(id), x REAL NOT NULL, rule TEXT NOT NULL DEFAULT 'centre', y REAL,
  held INTEGER NOT NULL DEFAULT 0 CHECK (held IN (0, 1)),
  state TEXT NOT NULL DEFAULT 'planned' CHECK (state IN ('planned', 'hung', 'level', 'locked', 'checked')),
  fixing TEXT REFERENCES fixing_kind(id), hooks_apart REAL, label_side TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX placement_face ON placement(face, exhibition, x);
CREATE INDEX placement_exhibition ON placement(exhibition);
CREATE INDEX placement_fixing ON placement(fixing) WHERE fixing IS NOT NULL;
CREATE TABLE kept_layout (
  id TEXT PRIMARY KEY NOT NULL, exhibition TEXT NOT NULL REFERENCES exhibition(id), face TEXT NOT NULL REFERENCES face(id),
  name TEXT NOT NULL, at TEXT NOT NULL DEFAULT '', by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX kept_layout_face ON kept_layout(face, exhibition);
CREATE INDEX kept_layout_exhibition ON kept_layout(exhibition);
CREATE TABLE kept_place (
  id TEXT PRIMARY KEY NOT NULL, layout TEXT NOT NULL REFERENCES kept_layout(id) ON DELETE CASCADE,
  entry TEXT NOT NULL REFERENCES entry(id) ON DELETE CASCADE, x REAL NOT NULL, rule TEXT NOT NULL DEFAULT 'centre', y REAL,
  held INTEGER NOT NULL DEFAULT 0 CHECK (held IN (0, 1))
) STRICT;
CREATE INDEX kept_place_layout ON kept_place(layout);
CREATE INDEX kept_place_entry ON kept_place(entry);

CREATE TABLE settlement (
  id TEXT PRIMARY KEY NOT NULL, code TEXT NOT NULL, subject TEXT NOT NULL, figures TEXT NOT NULL DEFAULT '',
  reason TEXT NOT NULL DEFAULT '', by TEXT NOT NULL DEFAULT '', at TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX settlement_subject ON settlement(subject, code);
CREATE TABLE sheet_print (
  id TEXT PRIMARY KEY NOT NULL, exhibition TEXT NOT NULL REFERENCES exhibition(id), face TEXT REFERENCES face(id),
  kind TEXT NOT NULL, revision INTEGER NOT NULL, hash TEXT NOT NULL, at TEXT NOT NULL, by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX sheet_print_face ON sheet_print(exhibition, face, kind, revision);
CREATE INDEX sheet_print_of_face ON sheet_print(face);
`,
}
