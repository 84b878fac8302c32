/** Words for the house: its fixings and crew, its rules, and who is at the desk. */
import { mm, of, type Tables, table } from './words.ts'

export const house: Tables = {
  fixing_kind: table('fixing', 'A kind of hook, screw or plate in the house’s drawers.', ['id', 'source', 'note'], {
    name: 'name',
    kind: 'kind',
    hole_offset: mm('hole above where it bears'),
    rated_kg: ['rated for', 'By its maker, for the wall named beside it.', 'kg'],
    wall_type: ['in which wall', 'Empty: whatever the wall.'],
    shank: mm('shank'),
    length: mm('length'),
    head: mm('head'),
    bit: ['bit', 'To drill for it.'],
    tool: 'tool',
    in_stock: ['in stock', ''],
  }),
  fixing_rating: table('rating of a fixing', 'What it is rated for in one kind of wall.', ['id', 'source'], {
    fixing: of('fixing'),
    wall_type: ['in which wall', ''],
    rated_kg: ['rated for', '', 'kg'],
  }),
  equipment: table('equipment', 'A ladder, lift or trolley of the house.', ['id', 'note'], {
    name: 'name',
    carries_kg: ['carries', '', 'kg'],
    reaches: mm('reaches'),
    count: ['how many', ''],
    people: ['people it takes', ''],
  }),
  method_time: table('time of a method', 'How long hanging by a method takes here.', ['id', 'source'], {
    minutes: ['time', '', 'minutes'],
  }),
  house_rule: table(
    'house rule',
    'A default that the house set for itself. Its key is its name.',
    ['id', 'source', 'by'],
    {
      value: ['value', 'As JSON; lengths in mm.'],
      since: ['since', 'In UTC, ISO 8601.'],
    },
  ),
  setting: table('setting', 'What the catalogue remembers of itself. Its key is its name.', ['id'], {
    value: ['value', 'As JSON.'],
  }),
  person: table('person at the desk', 'Who writes in this catalogue, and how they like their figures.', ['id'], {
    name: 'name',
    role: 'role',
    length_unit: ['unit', 'mm or in.'],
    paper: ['paper', ''],
    fraction: ['fraction of an inch', 'Its divisor.'],
    created_at: ['since', 'In UTC, ISO 8601.'],
  }),
  settlement: table(
    'settlement',
    'A finding that a person settled, with the reason. It lapses when its figures change.',
    ['id', 'by', 'at'],
    {
      code: ['which finding', ''],
      subject: of('of which record'),
      figures: ['figures', 'Those it was settled for, as JSON.'],
      reason: 'reason',
    },
  ),
  import_mapping: table(
    'kept columns',
    'Which column of a lender’s lists is which. Its key says whose and of which headings.',
    ['id', 'at'],
    {
      mapping: ['columns', 'As JSON.'],
    },
  ),
  import_run: table('list that was read in', '', ['id', 'hash', 'at', 'by'], {
    name: ['name of the file', ''],
    lender: of('lender', 'A party.'),
    exhibition: of('show'),
    mapping: ['columns', 'As JSON.'],
    added: ['works added', ''],
    updated: ['works changed', ''],
    unchanged: ['works as they were', ''],
  }),
  import_question: table('question about a list', 'What a list left open, and what was answered.', ['id'], {
    run: of('list'),
    work: of('work'),
    row: ['row of the list', ''],
    column_name: ['column of the list', ''],
    field: ['fact of the work', ''],
    raw: ['as the list has it', ''],
    question: ['question', 'As JSON.'],
    kind: 'kind',
    options: ['answers offered', 'As JSON.'],
    answer: ['answer', 'As JSON.'],
    answered_by: ['answered by', ''],
    answered_at: ['answered when', 'In UTC, ISO 8601.'],
    asked_at: ['asked of the lender when', 'In UTC, ISO 8601.'],
    asked_by: ['asked of the lender by', ''],
  }),
  import_value: table('what a list said', 'One row a work: what a list said of it last.', ['id', 'at'], {
    work: of('work'),
    field: ['fact', 'Empty: all of them in the value.'],
    value: ['what it said', 'As JSON.'],
    run: of('list'),
  }),
}
