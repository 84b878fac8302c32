/** What a rule of a hang may name, and its changes field by field. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { type RuleKind, ruleNeeds } from '../../../src/sequence/hang-rule.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound, same, yesNoColumn } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { insert, remove, row, rows, value } from '../sql.ts'
import { placeColumns, placeSelect } from './rules-stored.ts'

type Place = NonNullable<Received<'sequence.addRule'>['places']>[number]

/** Works of the show and places of the building that such a rule can name. Refuses others. */
export function checkedRule(
  db: ReadHandle,
  exhibition: string,
  { kind, works: given, places = [] }: Pick<Received<'sequence.addRule'>, 'kind' | 'works' | 'places'>,
  prefix = '',
): { readonly works: readonly string[]; readonly places: readonly Place[] } {
  const works = [...new Set(given)]
  const { least, most, place } = ruleNeeds[kind]
  if (works.length < least || works.length > most) {
    const wanted = most === 1 ? 'one work' : least === 1 ? `1 to ${most} works` : `${least} to ${most} works`
    throw new Refusal('bad-rule', `Such a rule names ${wanted}; select ${most === 1 ? 'it' : 'them'} first.`, {
      field: `${prefix}works`,
    })
  }
  for (const [index, work] of works.entries()) {
    const entry = value(db, 'SELECT id FROM entry WHERE exhibition = :exhibition AND work = :work', {
      exhibition,
      work,
    })
    if (entry === undefined) throw notFound('work in this show', `${prefix}works.${index}`)
  }
  if (kind === 'stays')
    return { works, places: [{ kind: 'wall', id: wallOf(db, exhibition, works, `${prefix}works`) }] }
  for (const [index, each] of places.entries()) checkPlace(db, exhibition, kind, each, `${prefix}places.${index}`)
  if ((place === 'walls' || place === 'axis') && places.length === 0) {
    const what = place === 'walls' ? 'the walls or rooms' : 'the doorway or bench'
    throw new Refusal('bad-rule', `Such a rule names ${what}; choose at least one.`, { field: `${prefix}places` })
  }
  if (place === 'none' && places.length > 0)
    throw new Refusal('bad-rule', 'Such a rule names works alone.', { field: `${prefix}places` })
  return { works, places }
}

/** The one wall that all of them hang on. */
function wallOf(db: ReadHandle, exhibition: string, works: readonly string[], field: string): string {
  const walls = works.map(work =>
    value<string>(
      db,
      `SELECT placement.face FROM placement JOIN entry ON entry.id = placement.entry
       WHERE entry.exhibition = :exhibition AND entry.work = :work`,
      { exhibition, work },
    ),
  )
  const [first] = walls
  if (first === undefined || walls.includes(undefined))
    throw new Refusal('not-hung', 'A work that shall stay hangs on a wall first.', { field })
  if (walls.some(wall => wall !== first))
    throw new Refusal('bad-rule', 'These works hang on different walls; give the rule wall by wall.', { field })
  return first
}

const there: Readonly<Record<Place['kind'], string>> = {
  wall: `SELECT 1 FROM face JOIN wall ON wall.id = face.wall
    WHERE face.id = :id AND (wall.exhibition IS NULL OR wall.exhibition = :exhibition)`,
  room: 'SELECT 1 FROM room WHERE id = :id AND id <> :exhibition',
  doorway: "SELECT 1 FROM opening WHERE id = :id AND kind IN ('door', 'passage') AND id <> :exhibition",
  bench: `SELECT 1 FROM standing
    WHERE id = :id AND kind = 'bench' AND (exhibition IS NULL OR exhibition = :exhibition)`,
}

function checkPlace(db: ReadHandle, exhibition: string, kind: RuleKind, place: Place, field: string): void {
  const axis = place.kind === 'doorway' || place.kind === 'bench'
  if (axis !== (kind === 'axis')) {
    const says = kind === 'axis' ? 'An axis is that of a doorway or a bench.' : 'Name a wall or a room for this rule.'
    throw new Refusal('bad-rule', says, { field })
  }
  if ((kind === 'first' || kind === 'last') && place.kind !== 'room')
    throw new Refusal('bad-rule', 'Name the room that it is the first or last of.', { field })
  if (value(db, there[place.kind], { id: place.id, exhibition }) === undefined)
    throw notFound(place.kind, `${field}.id`)
}

interface Stored {
  readonly exhibition: string
  readonly kind: RuleKind
  readonly within: string
}

export function changeRule(
  writing: Writing,
  { id, changes }: Received<'sequence.changeRule'>,
): Output<'sequence.changeRule'> {
  const { db } = writing
  const stored = row<Stored>(db, 'SELECT exhibition, kind, within FROM hang_rule WHERE id = :id', { id })
  if (stored === undefined) throw notFound('rule')
  openExhibition(db, stored.exhibition, 'id')
  const { works, places, ...plain } = changes
  const off = changes.inForce?.to
  writing.label(off === undefined ? 'Change a rule of the hang' : `Switch a rule of the hang ${off ? 'on' : 'off'}`)
  const { saved, clashes } = changeFields(
    writing,
    'hang_rule',
    id,
    plain,
    { inForce: yesNoColumn('in_force'), reason: 'reason' },
    'rule',
  )
  // Off and on go through whatever has become of its works.
  if (works === undefined && places === undefined) return { saved, clashes }
  const now = partsOf(db, id)
  const wanted = checkedRule(
    db,
    stored.exhibition,
    {
      kind: stored.kind,
      works: works?.to ?? now.works,
      places: stored.kind === 'stays' ? [] : (places?.to ?? now.places),
    },
    'changes.',
  )
  if (stored.within === 'room' && wanted.places.length !== 1)
    throw new Refusal('bad-rule', 'Name the one room that it is the first or last of.', { field: 'changes.places' })
  const parts = [
    { field: 'works', change: works, now: now.works, write: () => writeWorks(writing, id, wanted.works) },
    { field: 'places', change: places, now: now.places, write: () => writePlaces(writing, id, wanted.places) },
  ]
  for (const { field, change, now: theirs, write } of parts) {
    if (change === undefined) continue
    if (same(theirs, change.was) || same(theirs, change.to)) {
      write()
      saved.push(field)
    } else clashes.push({ code: 'clash', id, field, was: change.was, yours: change.to, theirs })
  }
  // Works that stay, stay where they hang now.
  if (stored.kind === 'stays' && saved.includes('works')) writePlaces(writing, id, wanted.places)
  return { saved, clashes }
}

function partsOf(db: ReadHandle, rule: string): { works: string[]; places: Place[] } {
  return {
    works: rows<{ work: string }>(db, 'SELECT work FROM hang_rule_work WHERE rule = :rule ORDER BY position, id', {
      rule,
    }).map(({ work }) => work),
    places: rows<Place>(db, `SELECT ${placeSelect} FROM hang_rule_place WHERE rule = :rule ORDER BY position, id`, {
      rule,
    }),
  }
}

/** All works of a rule, anew. */
export function writeWorks({ db, newId }: Writing, rule: string, works: readonly string[]): void {
  clear(db, 'hang_rule_work', rule)
  for (const [position, work] of works.entries()) insert(db, 'hang_rule_work', { id: newId(), rule, work, position })
}

/** All places of a rule, anew. */
export function writePlaces({ db, newId }: Writing, rule: string, places: readonly Place[]): void {
  clear(db, 'hang_rule_place', rule)
  for (const [position, place] of places.entries())
    insert(db, 'hang_rule_place', { id: newId(), rule, [placeColumns[place.kind]]: place.id, position })
}

function clear(db: Writing['db'], table: 'hang_rule_work' | 'hang_rule_place', rule: string): void {
  for (const { id } of rows<{ id: string }>(db, `SELECT id FROM ${table} WHERE rule = :rule`, { rule }))
    remove(db, table, id)
}
