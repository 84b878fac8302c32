/** What becomes of rules of a hang when their show is copied, and when a wall they name is cut in two or made one. */
import type { Writing } from '../service.ts'
import { insert, rows, update, type Value } from '../sql.ts'

type Row = Record<string, Value> & { id: string }

/**
 * The rules of one show for its copy. `copies` are the new partitions' sides, doorways and benches by what they are
 * copied from; `hung` says that the works hang in the copy too, else nothing can stay where it hangs.
 */
export function copyRules(
  writing: Writing,
  from: string,
  to: string,
  copies: ReadonlyMap<string, string>,
  hung: boolean,
): void {
  const { db } = writing
  const rules = rows<Row & { kind: string }>(db, 'SELECT * FROM hang_rule WHERE exhibition = :from ORDER BY id', {
    from,
  })
  for (const rule of rules) {
    if (rule.kind === 'stays' && !hung) continue
    const id = writing.newId()
    insert(db, 'hang_rule', { ...rule, id, exhibition: to })
    for (const work of partsOf(writing, 'hang_rule_work', rule.id))
      insert(db, 'hang_rule_work', { ...work, id: writing.newId(), rule: id })
    for (const place of partsOf(writing, 'hang_rule_place', rule.id)) {
      const turned = Object.entries(place).map(([column, is]) => [column, copies.get(String(is)) ?? is] as const)
      insert(db, 'hang_rule_place', { ...Object.fromEntries(turned), id: writing.newId(), rule: id })
    }
  }
}

/** A wall was cut: what held for it holds for both parts, and what stays on it stays on the part where it hangs now. */
export function rulesOfParts(writing: Writing, left: string, right: string): void {
  const { db, newId } = writing
  for (const place of placesAt(writing, left)) {
    const [rule] = rows<Row & { kind: string }>(db, 'SELECT * FROM hang_rule WHERE id = :rule', { rule: place.rule })
    if (rule === undefined) continue
    if (rule.kind !== 'stays') {
      insert(db, 'hang_rule_place', { ...place, id: newId(), face: right })
      continue
    }
    const works = partsOf(writing, 'hang_rule_work', rule.id)
    const gone = rows<Row>(
      db,
      `SELECT part.* FROM hang_rule_work AS part JOIN entry ON entry.work = part.work
       JOIN placement ON placement.entry = entry.id
       WHERE part.rule = :rule AND entry.exhibition = :exhibition AND placement.face = :right ORDER BY part.id`,
      { rule: rule.id, exhibition: rule.exhibition ?? '', right },
    )
    if (gone.length === 0) continue
    if (gone.length === works.length) {
      update(db, 'hang_rule_place', place.id, { face: right })
      continue
    }
    const id = newId()
    insert(db, 'hang_rule', { ...rule, id })
    insert(db, 'hang_rule_place', { ...place, id: newId(), rule: id, face: right })
    for (const work of gone) update(db, 'hang_rule_work', work.id, { rule: id })
  }
}

/** Two walls become one: rules of the right one name the left one, once. */
export function rulesOfOne(writing: Writing, left: string, right: string): void {
  const there = new Set(placesAt(writing, left).map(({ rule }) => rule))
  for (const { id, rule } of placesAt(writing, right))
    if (!there.has(rule)) update(writing.db, 'hang_rule_place', id, { face: left })
}

function placesAt({ db }: Writing, face: string): (Row & { rule: string })[] {
  return rows(db, 'SELECT * FROM hang_rule_place WHERE face = :face ORDER BY id', { face })
}

function partsOf({ db }: Writing, table: 'hang_rule_work' | 'hang_rule_place', rule: string): Row[] {
  return rows(db, `SELECT * FROM ${table} WHERE rule = :rule ORDER BY position, id`, { rule })
}
