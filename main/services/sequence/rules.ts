/** Rules of a hang: listed as they hold today, given, changed, removed; light limits excepted with a reason. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { ruleNeeds } from '../../../src/sequence/hang-rule.ts'
import { stateOf } from '../../../src/sequence/rule-holds.ts'
import { namedWorks } from '../../../src/sequence/rule-sentence.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Reading, ServicesOf, Writing } from '../service.ts'
import { insert, remove, row, rows, value } from '../sql.ts'
import { entryName } from '../walls/placements.ts'
import { groundsOf, type Question } from './question.ts'
import { changeRule, checkedRule, writePlaces, writeWorks } from './rules-change.ts'
import { lightException, notesOf } from './rules-stored.ts'
import { figuresOf, type Grounds, hungToday, namedFaces, type Ruling, rulingsOf, whereHung } from './ruling.ts'
import { quotesOf, termsRead } from './terms-read.ts'
import { checkRules } from './under-rules.ts'

type Told = Output<'sequence.rules'>['rules'][number]

function list(reading: Reading, { exhibition }: Received<'sequence.rules'>): Output<'sequence.rules'> {
  const { db } = reading
  const grounds = groundsOf(reading, exhibition)
  const { rulings, exceptions } = rulingsOf(db, exhibition, grounds)
  const { works } = grounds.question
  const hung = hungToday(grounds)
  const notes = notesOf(db, exhibition)
  const saysNow = new Map(notes.map(({ work, field, text }) => [`${work} ${field}`, quotesOf(text, field)] as const))
  const told = rulings.map(ruling => {
    const { stored, rule, says, rests, places, limit } = ruling
    const off = stored?.inForce === false
    const state = off ? 'off' : rests !== '' ? 'rests' : stateOf(rule, hung)
    const broken = state === 'broken' ? (limit === null ? rule.works : brighter(ruling, hung.spots)) : []
    const said = stored?.said ?? null
    return {
      id: rule.id,
      kind: rule.kind,
      works: [
        ...rule.works.flatMap(index => works[index] ?? []).map(asNamed),
        ...ruling.gone.map(work => gone(db, work)),
      ],
      places: [...places],
      within: rule.within,
      says,
      state,
      why: state === 'rests' ? rests : whereHung(grounds, { ...rule, works: broken }, hung.spots),
      from: limit === null ? 'given' : 'light limit',
      reason: stored?.reason ?? '',
      said: said === null ? null : { ...said, still: saysNow.get(`${said.of} ${said.field}`)?.has(said.text) === true },
    } satisfies Told
  })
  return {
    rules: [...told, ...heldOn(grounds)],
    notes: termsRead(db, exhibition, grounds, rulings, notes),
    exceptions: exceptions.flatMap(({ id, entry, reason, by }) => {
      const work = works.find(each => each.entry === entry)
      if (work === undefined || work.limit === null) return []
      return [{ id, entry, running: work.running, title: work.title, limit: work.limit, reason, by }]
    }),
    ...checkRules(grounds, rulings),
  }
}

function asNamed({ work, entry, running, title }: Question['works'][number]) {
  return { work, entry, running, title }
}

function gone(db: ReadHandle, work: string) {
  const title = value<string>(db, 'SELECT title FROM work WHERE id = :work', { work }) ?? ''
  return { work, entry: null, running: '', title }
}

/** Works of a light limit that hang where more is planned. */
function brighter({ rule }: Ruling, spots: readonly { readonly work: number; readonly face: string }[]): number[] {
  return spots.flatMap(({ work, face }) => (rule.works.includes(work) && !rule.faces.includes(face) ? [work] : []))
}

/** What a hand holds on each wall: no proposal moves it. */
function heldOn({ question, rooms }: Grounds): Told[] {
  const names = new Map(rooms.flatMap(room => namedFaces(room)).map(each => [each.face, each.name] as const))
  return question.walls.flatMap(({ wall, works }): Told[] => {
    const held = new Set(works.filter(work => work.held).map(({ entry }) => entry))
    const own = question.works.filter(({ entry }) => held.has(entry))
    if (own.length === 0) return []
    const name = names.get(wall.face) ?? wall.name
    const says = `${namedWorks(own)} ${own.length === 1 ? 'is held where it hangs' : 'are held where they hang'} on ${name}.`
    const places = [{ kind: 'wall' as const, id: wall.face, name }]
    const told = { id: `held:${wall.face}`, kind: 'held' as const, works: own.map(asNamed), places, within: null, says }
    return [{ ...told, state: 'held', why: '', from: 'wall', reason: '', said: null }]
  })
}

function add(writing: Writing, input: Received<'sequence.addRule'>): Output<'sequence.addRule'> {
  const { db } = writing
  const { exhibition, kind, within } = input
  openExhibition(db, exhibition)
  const { works, places } = checkedRule(db, exhibition, input)
  if ((ruleNeeds[kind].place === 'within') !== (within !== undefined))
    throw new Refusal('bad-rule', 'The first or last is that of a wall, a room, a section or the show.', {
      field: 'within',
    })
  if (within === 'room' && places.length !== 1)
    throw new Refusal('bad-rule', 'Name the one room that it is the first or last of.', { field: 'places' })
  const id = writing.newId()
  const position = nextPosition(orderedRows(db, 'hang_rule', 'exhibition = :exhibition', { exhibition }))
  const said = input.said === undefined ? {} : noteOf(db, input.said)
  insert(db, 'hang_rule', { id, exhibition, kind, within: within ?? '', reason: input.reason ?? '', position, ...said })
  writeWorks(writing, id, works)
  writePlaces(writing, id, places)
  const grounds = groundsOf(writing, exhibition)
  const { rulings } = rulingsOf(db, exhibition, grounds)
  const says = rulings.find(({ rule }) => rule.id === id)?.says ?? ''
  writing.label(`Give the rule: ${says}`)
  const { contradiction } = checkRules(grounds, rulings, id)
  return { id, says, contradiction: contradiction?.rules.includes(id) === true ? contradiction : null }
}

/** The note as the work says it now, or a sentence of it, to be kept with the rule. */
function noteOf(db: ReadHandle, { work, field, quoted }: NonNullable<Received<'sequence.addRule'>['said']>) {
  const column = field === 'notBeside' ? 'not_beside' : 'loan_terms'
  const said = value<string>(db, `SELECT ${column} FROM work WHERE id = :work`, { work }) ?? ''
  if (said.trim() === '') throw notFound('note on this work', 'said.work')
  if (quoted !== undefined && !quotesOf(said, field).has(quoted))
    throw new Refusal('not-said', 'The work’s words have changed meanwhile; read them again.', { field: 'said.quoted' })
  return { said_of: work, said_in: field, said: quoted ?? said }
}

function removeRules(writing: Writing, input: Received<'sequence.removeRules'>): Output<'sequence.removeRules'> {
  const { db } = writing
  const ids = [...new Set(input.rules)]
  for (const [index, id] of ids.entries()) {
    const exhibition = value<string>(db, 'SELECT exhibition FROM hang_rule WHERE id = :id', { id })
    if (exhibition === undefined) throw notFound('rule', `rules.${index}`)
    openExhibition(db, exhibition, `rules.${index}`)
    remove(db, 'hang_rule', id)
  }
  writing.label(ids.length === 1 ? 'Remove a rule of the hang' : `Remove ${ids.length} rules of the hang`)
  return { removed: ids.length }
}

function exceptLight(
  writing: Writing,
  { entry, reason }: Received<'sequence.exceptLight'>,
): Output<'sequence.exceptLight'> {
  const { db } = writing
  const found = row<{ exhibition: string; limit: number | null }>(
    db,
    `SELECT entry.exhibition, (SELECT min(light_limit) FROM work WHERE work.id = entry.work OR work.parent = entry.work) AS "limit"
     FROM entry WHERE entry.id = :entry`,
    { entry },
  )
  if (found === undefined) throw notFound('work in this show', 'entry')
  openExhibition(db, found.exhibition, 'entry')
  if (found.limit === null)
    throw new Refusal('no-limit', 'Nobody has said a light limit of this work; there is nothing to except.', {
      field: 'entry',
    })
  const figures = figuresOf(found.limit)
  for (const { id } of rows<{ id: string }>(db, 'SELECT id FROM settlement WHERE code = :code AND subject = :entry', {
    code: lightException,
    entry,
  }))
    remove(db, 'settlement', id)
  const id = writing.newId()
  const by = writing.person?.name ?? ''
  insert(db, 'settlement', { id, code: lightException, subject: entry, figures, reason, by, at: writing.now() })
  writing.label(`Let ${entryName(db, entry)} hang in more light than ${found.limit} lux: ${reason}`)
  return { limit: found.limit }
}

export const sequenceRulesServices: ServicesOf<
  'sequence.rules' | 'sequence.addRule' | 'sequence.changeRule' | 'sequence.removeRules' | 'sequence.exceptLight'
> = {
  'sequence.rules': list,
  'sequence.addRule': add,
  'sequence.changeRule': changeRule,
  'sequence.removeRules': removeRules,
  'sequence.exceptLight': exceptLight,
}
