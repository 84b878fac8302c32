/**
 * One step of every procedure that writes, its input drawn from what is in the catalogue now. A procedure that is not
 * here does not compile. A step gives null where nothing is there to do it to. No step closes an exhibition: what was
 * done in a closed one stays, which is held by a test of its own.
 */

import type { JournalName } from '../../main/services/service.ts'
import type { Input, NameOf } from '../../src/contract/contract.ts'
import { litFor } from '../../src/light/hours.ts'
import { houseRules } from '../../src/model/house-rules.ts'
import { pivots } from '../../src/plan/turn-wall.ts'
import { ages, reportKinds, severities } from '../../src/record/condition/report.ts'
import { materials } from '../../src/record/condition/vocabulary.ts'
import type { Chance } from './chance.ts'
import {
  endsOf,
  figure,
  kinds,
  numberKinds,
  parts,
  people,
  rectangle,
  spotOf,
  text,
  wallTypes,
  withId,
} from './drawn.ts'
import { dxfOf, oneRoom } from './dxf-files.ts'
import { onePixel } from './fixture.ts'

type LongStep =
  | 'work.addPicture'
  | 'work.addDocument'
  | 'condition.addPhoto'
  | 'import.accept'
  | 'drawing.take'
  | 'underlay.add'
  | 'climate.takeFile'
  | 'sheet.wall'
export type StepName = Exclude<NameOf<'write'>, JournalName> | LongStep
export type Steps = { readonly [N in StepName]: (chance: Chance) => Input<N> | null }

/** Walls that works stand on or that sheets were printed of: they stay, so most tries should be at others. */
const usedWalls = `SELECT wall FROM face WHERE id IN (SELECT face FROM placement)
  OR id IN (SELECT face FROM sheet_print WHERE face IS NOT NULL)`

/** Shows that nothing printed, hung or drilled keeps. */
const removable = `id NOT IN (SELECT exhibition FROM sheet_print)
  AND id NOT IN (SELECT exhibition FROM placement WHERE state <> 'planned')
  AND id NOT IN (SELECT exhibition FROM mark WHERE state = 'drilled' AND filled_at = '')`

/** What the fixture made: its ids begin so, those of steps otherwise. */
const ofFixture = "id LIKE 'f%'"

/** The loan that a walk begins with: there are receipts of it. */
const lent = "number = 'on record'"
const notLent = "number <> 'on record'"

/** The condition report that a walk begins with is signed and completed, all others are drafts. */
const onRecord = "place = 'on record'"
const drafted = "place <> 'on record'"
const photoOfDraft = `report IN (SELECT id FROM condition_report WHERE ${drafted})`
const unsealed = 'condition_report.id NOT IN (SELECT report FROM condition_seal)'

/** Records of damage that nobody has closed since they were begun or opened again. */
const openDamage = `(SELECT count(*) FROM damage_word WHERE damage = damage.id AND kind = 'closed')
  <= (SELECT count(*) FROM damage_word WHERE damage = damage.id AND kind = 'reopened')`

const sets = "SELECT id FROM work WHERE set_form <> ''"
/** Works that a set can be made of: measured, no parts, no sets. */
const loose = "parent IS NULL AND set_form = '' AND id IN (SELECT work FROM work_size)"

export const steps: Steps = {
  'person.add': people,
  'person.update': chance => withId(chance.id('person'), people(chance)),
  'rule.set': ({ row, pick, change, length, words, maybe }) => {
    const key = pick(['centreLine', 'minimumGap', 'minimumMargin', 'heightRule'] as const)
    const stored = row('house_rule', `id = '${key}'`)
    const was: string | number = stored === null ? houseRules[key].value : JSON.parse(text(stored, 'value'))
    const to = key === 'heightRule' ? pick(['centre', 'top', 'bottom', 'eye']) : length(300, 1600)
    return { key, ...change(was, to), source: maybe(0.5) ? words() : '' }
  },
  'work.add': ({ words, pick, maybe, id }) => {
    const exhibition = maybe(0.6) ? id('exhibition') : null
    const section = exhibition === null ? null : id('section', `exhibition = '${exhibition}'`)
    return {
      title: words(),
      maker: words(),
      kind: pick(kinds),
      lender: maybe(0.5) ? id('party') : null,
      ...(maybe(0.5) ? { number: { kind: pick(numberKinds), text: words() } } : {}),
      ...(exhibition === null ? {} : { exhibition, section }),
    }
  },
  'work.update': ({ row, change, words, pick, length, id }) => {
    const work = row('work')
    if (work === null) return null
    const some = pick([
      { title: change(text(work, 'title'), words()), maker: change(text(work, 'maker'), words()) },
      { kind: change(text(work, 'kind') as '', pick(kinds)) }, // one of the kinds
      {
        lender: change(work.lender === null ? null : text(work, 'lender'), id('party')),
        medium: change(text(work, 'medium'), words()),
      },
      { lightLimit: change(work.light_limit === null ? null : figure(work, 'light_limit'), length(20, 300)) },
      {
        notBeside: change(text(work, 'not_beside'), words()),
        inscriptions: change(text(work, 'inscriptions'), words()),
      },
    ])
    return { id: text(work, 'id'), changes: some }
  },
  'work.updateMany': ({ ids, row, words, maybe }) => {
    const works = ids('work')
    if (works === null) return null
    const was = (id: string) => text(row('work', `id = '${id}'`) ?? {}, 'medium')
    return { works: works.map(id => ({ id, was: maybe(0.8) ? was(id) : 'another' })), field: 'medium', to: words() }
  },
  'work.duplicate': ({ id, maybe }) => {
    const exhibition = maybe(0.5) ? id('exhibition') : null
    return withId(id('work'), exhibition === null ? {} : { exhibition })
  },
  'work.remove': ({ id }) => withId(id('work', 'id NOT IN (SELECT work FROM entry)') ?? id('work'), {}),
  'work.addNumber': ({ id, pick, words }) => {
    const work = id('work')
    return work === null ? null : { work, kind: pick(numberKinds), text: words() }
  },
  'work.changeNumber': ({ row, change, words, maybe, pick }) => {
    const number = row('work_number')
    if (number === null) return null
    const id = text(number, 'id')
    if (maybe(0.7)) return { id, changes: { text: change(text(number, 'text'), words()) } }
    // The table holds kinds of the contract alone.
    const was = text(number, 'kind') as (typeof numberKinds)[number]
    return { id, changes: { kind: { was, to: pick(numberKinds) }, note: change(text(number, 'note'), words()) } }
  },
  'work.removeNumber': ({ id }) => withId(id('work_number'), {}),
  'number.giveParts': ({ id }) => {
    const set = id('work', "set_form <> ''") ?? id('work')
    return set === null ? null : { set }
  },
  'work.addSize': ({ id, pick, length, maybe }) => {
    const work = id('work')
    if (work === null) return null
    const kind = pick(['listed', 'measured'] as const)
    if (maybe(0.3)) return { work, part: pick(parts), raw: `${pick(['24 1/2', '61', '9¾'])} x 30 in`, kind }
    return { work, part: pick(parts), height: length(80, 1900), width: length(80, 1900), raw: '', kind }
  },
  'work.addStatement': ({ id, pick }) => {
    const work = id('work')
    const raw = pick(['image 24 x 30 cm; framed 40 x 50 cm; 4 kg', '61 x 91,5 cm', '12 kg'])
    return work === null ? null : { work, part: pick(parts), raw, kind: pick(['listed', 'measured'] as const) }
  },
  'work.chooseSize': ({ id, maybe }) => withId(id('work_size'), { chosen: maybe(0.6) }),
  'work.addMass': ({ id, length, pick }) => {
    const work = id('work')
    return work === null ? null : { work, kg: length(1, 60), raw: '', kind: pick(['listed', 'measured'] as const) }
  },
  'work.chooseMass': ({ id, maybe }) => withId(id('work_mass'), { chosen: maybe(0.6) }),
  'work.setBack': ({ id, length, pick }) => {
    const work = id('work')
    if (work === null) return null
    const ring = () => ({ drop: length(50, 200), inset: length(20, 90) })
    const data = { left: ring(), right: ring(), spacing: length(200, 700) }
    return { work, method: 'd-rings', data, seenFrom: pick(['front', 'back'] as const) }
  },
  'work.addPicture': ({ id, give }) => {
    const work = id('work')
    return work === null ? null : { work, handle: give('grey.png', onePixel) }
  },
  'work.removePicture': ({ id }) => withId(id('picture'), {}),
  'work.addDocument': ({ id, give, words }) => {
    const work = id('work')
    return work === null ? null : { work, handle: give('terms.txt', words()) }
  },
  'work.removeDocument': ({ id }) => withId(id('document'), {}),
  'set.make': ({ ids, id, pick, maybe, length }) => {
    const exhibition = maybe(0.7) ? id('exhibition') : null
    const some = maybe(0.8)
      ? `${loose} AND id NOT IN (SELECT work FROM entry WHERE exhibition IS NOT '${exhibition}')`
      : '1'
    const works = [...(ids('work', some) ?? []), ...(ids('work', some) ?? [])]
    if (works.length === 0) return null
    return {
      works: [...new Set(works)],
      ...(exhibition === null ? {} : { exhibition }),
      form: pick(['row', 'column', 'grid'] as const),
      columns: maybe(0.8) ? 2 : null,
      gapX: maybe(0.9) ? length(0, 60) : -1,
      gapY: length(0, 60),
      keeps: pick(['', 'gaps', 'centres'] as const),
    }
  },
  'set.takeApart': ({ id }) => withId(id('work', "set_form <> ''"), {}),
  'set.update': ({ row, change, length, pick }) => {
    const set = row('work', "set_form <> ''")
    if (set === null) return null
    return {
      id: text(set, 'id'),
      changes: pick([
        { gapX: change(figure(set, 'set_gap_x'), length(0, 90)) },
        { keeps: change(text(set, 'set_keeps') as '', pick(['', 'gaps', 'centres'] as const)) }, // one of the three
        { form: change(text(set, 'set_form') as 'row', pick(['row', 'column'] as const)) }, // one of the forms
      ]),
    }
  },
  'set.parts': ({ row, ids, maybe, pick }) => {
    const set = row('work', "set_form <> ''")
    if (set === null) return null
    const id = text(set, 'id')
    const was = ids('work', `parent = '${id}'`)
    const now = was === null ? null : [...was].sort()
    const more = maybe(0.4) ? ids('work', loose) : null
    if (now === null) return null
    return { id, was: now, to: [...(maybe(0.5) ? [...now].reverse() : now), ...(more ?? []).slice(0, pick([0, 1, 2]))] }
  },
  'set.fix': ({ row, id }) => {
    const placement = row(
      'placement',
      "entry IN (SELECT entry.id FROM entry JOIN work ON work.id = entry.work WHERE set_form <> '')",
    )
    if (placement === null) return null
    const at = text(placement, 'id')
    const work = id(
      'work',
      `parent = (SELECT entry.work FROM entry JOIN placement ON placement.entry = entry.id WHERE placement.id = '${at}')`,
    )
    return work === null ? null : { placement: at, work, changes: { fixing: { was: null, to: id('fixing_kind') } } }
  },
  'party.add': ({ words, pick }) => ({
    kind: pick(['lender', 'owner', 'person', 'house'] as const),
    name: words(),
    contact: words(),
  }),
  'party.update': ({ row, change, words }) => {
    const party = row('party')
    if (party === null) return null
    return {
      id: text(party, 'id'),
      changes: { name: change(text(party, 'name'), words()), contact: change(text(party, 'contact'), words()) },
    }
  },
  'exhibition.add': ({ words, maybe }) => ({
    title: words(),
    ...(maybe(0.5) ? { opens: '2031-05-01', closes: '2031-08-01' } : {}),
  }),
  'exhibition.update': ({ row, change, words }) => {
    const show = row('exhibition')
    if (show === null) return null
    return {
      id: text(show, 'id'),
      changes: { title: change(text(show, 'title'), words()), note: change(text(show, 'note'), words()) },
    }
  },
  'exhibition.setState': ({ row, change, pick }) => {
    const show = row('exhibition', `state <> 'closed'`)
    const states = ['planning', 'installing', 'open', 'closing'] as const
    return show === null ? null : { id: text(show, 'id'), ...change(text(show, 'state') as 'open', pick(states)) } // one of the states
  },
  'exhibition.copy': ({ id, words, maybe }) => withId(id('exhibition'), { title: words(), placements: maybe(0.6) }),
  'exhibition.remove': ({ id }) => withId(id('exhibition', removable), {}),
  'exhibition.renumber': ({ id, whole }) => withId(id('exhibition'), { from: whole(1, 40) }),
  'section.add': ({ id, words }) => {
    const exhibition = id('exhibition')
    return exhibition === null ? null : { exhibition, title: words() }
  },
  'section.update': ({ row, change, words, pick }) => {
    const section = row('section')
    return section === null
      ? null
      : {
          id: text(section, 'id'),
          changes: {
            title: change(text(section, 'title'), words()),
            hang: change(section.hang as 'row', pick(['row', 'stacks', 'grid'] as const)),
          },
        }
  },
  'section.move': ({ row, id, maybe }) => {
    const section = row('section')
    if (section === null) return null
    const before = maybe(0.6) ? id('section', `exhibition = '${text(section, 'exhibition')}'`) : null
    return { id: text(section, 'id'), before }
  },
  'section.remove': ({ id }) => withId(id('section'), {}),
  'entry.add': ({ id, ids }) => {
    const exhibition = id('exhibition')
    const works = ids('work')
    if (exhibition === null || works === null) return null
    return { exhibition, works, section: id('section', `exhibition = '${exhibition}'`) }
  },
  'entry.move': ({ row, id, ids, maybe }) => {
    const entry = row('entry')
    if (entry === null) return null
    const show = `exhibition = '${text(entry, 'exhibition')}'`
    const section = maybe(0.7) ? id('section', show) : null
    const within = section === null ? 'section IS NULL' : `section = '${section}'`
    return {
      entries: ids('entry', show) ?? [],
      section,
      before: maybe(0.5) ? id('entry', `${show} AND ${within}`) : null,
    }
  },
  'entry.setRunning': ({ row, change, whole }) => {
    const entry = row('entry')
    return entry === null ? null : { id: text(entry, 'id'), ...change(text(entry, 'running'), `${whole(1, 90)}a`) }
  },
  'label.update': ({ row, change, words, maybe, length }) => {
    const entry = row('entry')
    if (entry === null) return null
    const width = entry.label_width === null ? null : figure(entry, 'label_width')
    return {
      entry: text(entry, 'id'),
      changes: {
        text: change(text(entry, 'label_text'), maybe(0.8) ? words() : ''),
        ...(maybe(0.5) ? { width: change(width, maybe(0.5) ? length(60, 400) : null) } : {}),
      },
    }
  },
  'label.setMany': ({ ids, pick, maybe }) => {
    const entries = ids('entry')
    if (entries === null) return null
    return {
      entries,
      side: pick(['', 'left', 'right', 'below'] as const),
      ...(maybe(0.5) ? { suggest: true as const } : {}),
    }
  },
  'label.setStage': ({ ids, pick }) => {
    const entries = ids('entry', `label_text <> ''`)
    return entries === null ? null : { entries, to: pick(['', 'proofed', 'printed'] as const) }
  },
  'location.add': ({ words, pick, maybe, length }) => ({
    kind: pick(['place', 'crate', 'vehicle', 'elsewhere'] as const),
    name: words(),
    ...(maybe(0.5) ? { width: length(300, 2000), height: length(300, 2000), depth: length(100, 400) } : {}),
  }),
  'location.update': ({ row, words, change }) => {
    const stored = row('location')
    return stored === null ? null : { id: text(stored, 'id'), changes: { name: change(text(stored, 'name'), words()) } }
  },
  'location.remove': chance => withId(chance.id('location'), {}),
  // Undo never takes a record back, so here it speaks only of what no step has made: else undoing that would be barred.
  'movement.add': ({ row, id, words, maybe }) => {
    const work = row('work', ofFixture)
    const to = id(maybe(0.5) ? 'room' : 'face', ofFixture)
    if (work === null || to === null) return null
    return { works: [text(work, 'id')], to, spot: words(), ...(maybe(0.2) ? { at: '2031-03-20T09:00:00Z' } : {}) }
  },
  'movement.correct': ({ id, words, maybe }) => {
    const movement = id(
      'movement',
      'id NOT IN (SELECT corrects FROM movement WHERE corrects IS NOT NULL) AND struck = 0',
    )
    return movement === null ? null : { movement, why: words(), struck: maybe(0.3) }
  },
  'planned.add': ({ id, words, whole, maybe }) => {
    const work = id('work')
    const to = id(maybe(0.5) ? 'room' : 'face')
    if (work === null || to === null) return null
    const more = maybe(0.5) ? { hour: '09:30', hands: whole(1, 4) } : {}
    return { works: [work], to, day: `2031-06-${whole(10, 28)}`, note: words(), ...more }
  },
  'planned.fromShow': ({ id, whole }) => {
    const exhibition = id('exhibition', "state <> 'closed'")
    return exhibition === null ? null : { exhibition, day: `2031-06-${whole(10, 28)}` }
  },
  'planned.update': ({ row, words, change }) => {
    const plan = row('planned_move')
    if (plan === null) return null
    return { id: text(plan, 'id'), changes: { note: change(text(plan, 'note'), words()) } }
  },
  'planned.setDay': ({ id, whole }) => {
    const plan = id('planned_move')
    return plan === null ? null : { ids: [plan], day: `2031-06-${whole(10, 28)}` }
  },
  'planned.remove': ({ id }) => {
    const plan = id('planned_move')
    return plan === null ? null : { ids: [plan] }
  },
  'light.addHours': ({ id, pick, whole, maybe }) => {
    const exhibition = id('exhibition')
    if (exhibition === null) return null
    const day = whole(10, 28)
    return {
      exhibition,
      kind: pick(litFor),
      first: `2031-04-${day}`,
      last: `2031-0${pick([4, 5])}-${day}`,
      hours: whole(1, 8),
      ...(maybe(0.3) ? { lux: whole(50, 300) } : {}),
    }
  },
  'light.updateHours': ({ row, change, whole, pick }) => {
    const entry = row('hours_lit', "kind <> 'closed'")
    if (entry === null) return null
    const changes = pick([
      { hours: change(figure(entry, 'hours'), whole(1, 8)) },
      { weekdays: change(figure(entry, 'weekdays'), whole(1, 127)) },
    ])
    return { id: text(entry, 'id'), changes }
  },
  'light.removeHours': ({ id }) => withId(id('hours_lit'), {}),
  'light.addReading': ({ id, whole }) => {
    const work = id('work', ofFixture)
    return work === null ? null : { work, points: [whole(20, 80), whole(20, 80)] }
  },
  'light.strikeReading': ({ id, words }) => {
    const wrong = 'strikes IS NULL AND id NOT IN (SELECT strikes FROM light_reading WHERE strikes IS NOT NULL)'
    const reading = id('light_reading', wrong)
    return reading === null ? null : { reading, why: words() }
  },
  'climate.takeFile': ({ id, give, whole, words }) => {
    const room = id('room', ofFixture)
    if (room === null) return null
    const rows = [0, 5, 10].map(
      minute => `2031-03-${whole(10, 28)} 11:${String(minute).padStart(2, '0')},20,${whole(30, 70)}`,
    )
    const text = `Time,Temp °C,RH %\n${rows.join('\n')}\n`
    return { room, logger: words(), zone: '+00:00', handle: give('log.csv', new TextEncoder().encode(text)) }
  },
  'climate.withdrawFile': ({ id, words }) => {
    const file = id(
      'climate_file',
      'withdraws IS NULL AND id NOT IN (SELECT withdraws FROM climate_file WHERE withdraws IS NOT NULL)',
    )
    return file === null ? null : { file, why: words() }
  },
  'climate.setLimits': ({ id, row, change, whole }) => {
    const room = id('room', ofFixture)
    if (room === null) return null
    const now = row('climate_limit', `room = '${room}'`)?.humidity_high
    const was = typeof now === 'number' ? now : null
    return { room, changes: { humidityHigh: change<number | null>(was, whole(45, 70)) } }
  },
  'loan.add': ({ id, words, whole, pick }) => {
    const party = id('party')
    if (party === null) return null
    return {
      party,
      number: words(),
      way: pick(['in', 'out'] as const),
      first: `2031-0${whole(2, 4)}-10`,
      last: '2031-05-02',
    }
  },
  'loan.update': ({ row, change, words, whole, maybe, pick }) => {
    const loan = row('loan')
    if (loan === null) return null
    const changed = pick([
      { authoriser: change(text(loan, 'authoriser'), words()), creditLine: change(text(loan, 'credit_line'), words()) },
      { last: change(text(loan, 'last'), `2031-0${whole(3, 7)}-20`) },
      { closed: change(text(loan, 'closed'), maybe(0.3) ? '2031-06-01' : '') },
    ])
    return { id: text(loan, 'id'), changes: changed }
  },
  'loan.remove': ({ id }) => withId(id('loan', notLent), {}),
  'loan.addContact': ({ id, words }) => {
    const loan = id('loan')
    return loan === null ? null : { loan, name: words(), role: words() }
  },
  'loan.updateContact': ({ row, change, words }) => {
    const person = row('loan_contact')
    if (person === null) return null
    return { id: text(person, 'id'), changes: { reach: change(text(person, 'reach'), words()) } }
  },
  'loan.removeContact': ({ id }) => withId(id('loan_contact'), {}),
  'loan.addWorks': ({ id, ids }) => {
    const loan = id('loan')
    const works = ids('work')
    return loan === null || works === null ? null : { loan, works }
  },
  'loan.updateWork': ({ row, change, words, whole }) => {
    const item = row('loan_work')
    if (item === null) return null
    const was = item.value === null ? null : { minor: figure(item, 'value'), currency: text(item, 'currency') }
    return {
      id: text(item, 'id'),
      changes: {
        item: change(text(item, 'item'), words()),
        value: change<typeof was>(was, { minor: whole(1, 900) * 1000, currency: 'EUR' }),
      },
    }
  },
  'loan.addTerm': ({ id, row, whole, words, maybe, pick }) => {
    const item = row('loan_work')
    const loan = item === null ? id('loan') : text(item, 'loan')
    if (loan === null) return null
    const one = item !== null && maybe(0.5) ? { item: text(item, 'id') } : {}
    if (maybe(0.3)) return { loan, ...one, kind: 'security', choice: pick(['watched', 'alarm']) }
    if (maybe(0.3)) {
      const kind = pick(['indemnity', 'vehicle', 'journey'] as const)
      return { loan, ...one, kind, high: whole(1, 900) * 100_000, choice: 'EUR', said: words() }
    }
    return { loan, ...one, kind: 'light', high: whole(20, 300), said: words() }
  },
  'loan.updateTerm': ({ row, change, whole, words, maybe }) => {
    const asked = row('loan_term', "kind = 'security' AND confirmed = ''")
    if (asked !== null && maybe(0.5)) {
      const to = { kept: maybe(0.7), by: words(), on: '2026-01-05', note: words() }
      return { id: text(asked, 'id'), changes: { confirmed: { was: null, to } } }
    }
    const term = row('loan_term', "kind <> 'security'")
    if (term === null) return null
    const changes = {
      high: change<number | null>(figure(term, 'high'), whole(20, 300)),
      said: change(text(term, 'said'), words()),
    }
    return { id: text(term, 'id'), changes }
  },
  'loan.removeTerm': ({ id }) => withId(id('loan_term'), {}),
  'loan.removeWork': ({ id }) => withId(id('loan_work', `loan NOT IN (SELECT id FROM loan WHERE ${lent})`), {}),
  // As movements: of a loan and works that a walk begins with, for undo never takes a receipt back.
  'receipt.add': ({ id, row, words }) => {
    const loan = id('loan', `${lent} AND closed = ''`)
    const item = row('loan_work', `loan IN (SELECT id FROM loan WHERE ${lent}) AND note = 'on record'`)
    if (loan === null || item === null) return null
    const works = [{ work: text(item, 'work'), condition: words(), crate: words() }]
    return { loan, kind: 'received', works, day: '2031-03-20', handedBy: words() }
  },
  'receipt.correct': ({ id, words, maybe }) => {
    const wrong = 'struck = 0 AND id NOT IN (SELECT corrects FROM loan_receipt WHERE corrects IS NOT NULL)'
    const receipt = id('loan_receipt', wrong)
    return receipt === null ? null : { receipt, why: words(), ...(maybe(0.5) ? { struck: true } : { place: words() }) }
  },
  'insured.addValue': ({ id, whole, pick, words }) => {
    const work = id('work')
    if (work === null) return null
    const value = { minor: whole(1, 900) * 1000, currency: pick(['EUR', 'CHF', 'JPY'] as const) }
    return { work, value, day: `2031-0${whole(1, 5)}-${whole(10, 28)}`, source: words() }
  },
  'insured.removeValue': ({ id }) => withId(id('work_value'), {}),
  'insured.addRate': ({ whole, pick, words }) => ({
    from: pick(['EUR', 'JPY'] as const),
    to: pick(['CHF', 'USD'] as const),
    rate: `0.${whole(1, 9999)}1`,
    day: `2031-0${whole(1, 5)}-${whole(10, 28)}`,
    source: words(),
  }),
  'insured.removeRate': ({ id }) => withId(id('exchange_rate'), {}),
  'insured.addLimit': ({ id, whole, maybe, pick, words }) => {
    const lender = id('party')
    const room = id('room')
    const amount = { minor: whole(1, 900) * 100_000, currency: pick(['EUR', 'CHF'] as const) }
    const days = { first: '2031-02-01', last: maybe(0.5) ? '2031-09-01' : '' }
    if (lender !== null && maybe(0.3)) return { scope: 'lender', lender, amount, ...days, source: words() }
    if (room !== null && maybe(0.3)) return { scope: 'place', place: room, amount, ...days }
    const bearer = pick(['', 'house', 'indemnity'] as const)
    return { scope: pick(['all', 'crate', 'vehicle', 'journey'] as const), bearer, amount, ...days }
  },
  'insured.removeLimit': ({ id }) => withId(id('value_limit'), {}),
  'condition.addWord': ({ pick, words }) => ({ material: pick(materials), word: words(), meaning: words() }),
  'condition.removeWord': ({ id }) => withId(id('condition_term'), {}),
  'condition.add': ({ id, pick, words }) => {
    const work = id('work', 'coalesce(hang_width, hang_diameter) IS NOT NULL AND hang_height IS NOT NULL')
    return work === null ? null : { work, kind: pick(reportKinds), examiner: words() }
  },
  'condition.update': ({ row, change, words }) => {
    const stored = row('condition_report', drafted)
    return stored === null
      ? null
      : withId(text(stored, 'id'), { changes: { note: change(text(stored, 'note'), words()) } })
  },
  'condition.remove': ({ id }) => withId(id('condition_report', drafted), {}),
  'condition.addFinding': ({ row, maybe, length, pick }) => {
    const stored = row('condition_report', drafted)
    if (stored === null) return null
    const spot = () => ({ x: length(0, figure(stored, 'width')), y: length(0, figure(stored, 'height')) })
    const shape = maybe(0.5)
      ? { form: 'mark' as const, points: [spot()] }
      : { form: 'area' as const, points: [spot(), spot(), spot()] }
    return {
      report: text(stored, 'id'),
      ...shape,
      term: pick(['paper.stain', '', 'frame.chip']),
      severity: pick(severities),
    }
  },
  'condition.updateFinding': ({ row, change, pick }) => {
    const stored = row('condition_finding', `report IN (SELECT id FROM condition_report WHERE ${drafted})`)
    if (stored === null) return null
    const was = text(stored, 'age') as '' // one of the ages
    return withId(text(stored, 'id'), { changes: { age: change(was, pick(ages)) } })
  },
  'condition.removeFinding': ({ id }) =>
    withId(id('condition_finding', `report IN (SELECT id FROM condition_report WHERE ${drafted})`), {}),
  'condition.addPhoto': ({ id, give }) => {
    const report = id('condition_report', `${drafted} AND id NOT IN (SELECT report FROM condition_photo)`)
    return report === null ? null : { report, handle: give('corner.png', onePixel) }
  },
  'condition.updatePhoto': ({ row, change, words }) => {
    const stored = row('condition_photo', photoOfDraft)
    return stored === null
      ? null
      : withId(text(stored, 'id'), { changes: { shows: change(text(stored, 'shows'), words()) } })
  },
  'condition.movePhoto': ({ id }) => withId(id('condition_photo', photoOfDraft), { before: null }),
  'condition.removePhoto': ({ id }) => withId(id('condition_photo', photoOfDraft), {}),
  // Undo never takes a record back: only what the walk began with is signed, and nothing else is done to it.
  'condition.sign': ({ id, pick }) => {
    const report = id('condition_report', `${onRecord} AND corrects IS NULL AND ${unsealed}`)
    const [role, name] = pick([['registrar', 'Tamsin Oake'] as const, ['courier', 'Bo Lind'] as const])
    return report === null ? null : { report, role, name, strokes: [[100, 200, 300, 100, 500, 220]] }
  },
  'condition.complete': ({ id }) => {
    const signed = `SELECT report FROM condition_signature GROUP BY report HAVING count(DISTINCT role) > 1`
    const report = id('condition_report', `id IN (${signed}) AND ${unsealed}`)
    return report === null ? null : { report }
  },
  'condition.correct': ({ id, words }) => {
    const report = id(
      'condition_report',
      `NOT (${unsealed}) AND id NOT IN (SELECT corrects FROM condition_report WHERE corrects IS NOT NULL)`,
    )
    return report === null ? null : { report, why: words() }
  },
  // A draft that a record names could not be taken back; only what the walk began with is linked.
  'damage.add': ({ id, row, words, maybe }) => {
    const report = row('condition_report', `${onRecord} AND corrects IS NULL`)
    const found = {
      foundAt: '2031-03-10T09:10:00.000Z',
      reportedAt: '2031-03-10T09:20:00.000Z',
      circumstances: words(),
    }
    if (report !== null && maybe(0.6)) return { work: text(report, 'work'), report: text(report, 'id'), ...found }
    const work = id('work', ofFixture)
    return work === null ? null : { work, ...found }
  },
  'damage.say': ({ id, row, pick, words, maybe }) => {
    const said = (kind: string) =>
      `id IN (SELECT damage FROM damage_word WHERE kind = '${kind}' AND id NOT IN (SELECT strikes FROM damage_word WHERE strikes IS NOT NULL))`
    // Mostly what one lacks that could be closed.
    const lacking = id(
      'damage',
      `report IS NOT NULL AND ${openDamage} AND NOT (${said('owner told')} AND ${said('action')})`,
    )
    const damage = maybe(0.8) && lacking !== null ? lacking : id('damage', openDamage)
    if (damage === null) return null
    const toldOwner = row('damage', `id = '${damage}' AND ${said('owner told')}`) !== null
    const kind = toldOwner ? pick(['action', 'insurer told', 'note'] as const) : ('owner told' as const)
    return { damage, kind, whom: words(), how: words(), said: words() }
  },
  'edit.explain': ({ row, words }) => {
    const edit = row('edit')
    return edit === null ? null : { edit: Number(edit.id), why: words() }
  },
  'damage.strike': ({ id, words }) => {
    const word = id(
      'damage_word',
      `kind IN ('insurer told', 'note', 'action') AND id NOT IN (SELECT strikes FROM damage_word WHERE strikes IS NOT NULL)`,
    )
    return word === null ? null : { word, why: words() }
  },
  'damage.close': ({ id, words }) => {
    const damage = id('damage', `report IS NOT NULL AND ${openDamage}`)
    return damage === null ? null : { damage, why: words() }
  },
  'damage.reopen': ({ id, words }) => {
    const damage = id('damage', `NOT (${openDamage})`)
    return damage === null ? null : { damage, why: words() }
  },
  'movement.takeHung': ({ row, id }) => {
    // One that is not in the record since its tick.
    const works = `SELECT id FROM work WHERE ${ofFixture}`
    const ticked = `SELECT max(at) FROM placement_step WHERE placement_step.placement = placement.id AND state = 'hung'`
    const hung = row(
      'placement',
      `state <> 'planned' AND entry IN (SELECT id FROM entry WHERE work IN (${works})
       AND NOT EXISTS (SELECT 1 FROM moved WHERE moved.work = entry.work AND moved.at >= (${ticked})))`,
    )
    if (hung === null) return null
    const work = id('work', `id = (SELECT work FROM entry WHERE id = '${text(hung, 'entry')}')`)
    return work === null ? null : { exhibition: text(hung, 'exhibition'), works: [work] }
  },
  'entry.setStatus': ({ ids, pick }) => {
    const entries = ids('entry')
    return entries === null ? null : { entries, to: pick(['agreed', 'arrived', 'unpacked', 'checked in'] as const) }
  },
  'entry.remove': ({ ids }) => {
    const entries = ids('entry')
    return entries === null ? null : { entries }
  },
  'room.setBuilding': ({ words }) => ({ name: words() }),
  'room.add': ({ words, whole, length, pick }) => ({
    name: words(),
    height: length(2600, 4200),
    wallType: pick(wallTypes),
    walls: Array.from({ length: whole(1, 5) }, () => ({ length: length(1500, 9000), angle: 90 })),
  }),
  'room.update': ({ row, change, words, length }) => {
    const room = row('room')
    if (room === null) return null
    return {
      id: text(room, 'id'),
      changes: {
        name: change(text(room, 'name'), words()),
        height: change(figure(room, 'height'), length(2600, 4200)),
      },
    }
  },
  // A copy of the wall that is printed would be printed in its turn, and what is printed can't be taken back.
  'room.copy': ({ id, words, maybe }) =>
    withId(id('room', `id NOT IN (SELECT room FROM wall WHERE name = 'printed')`), maybe(0.5) ? { name: words() } : {}),
  'room.move': ({ id, maybe }) => withId(id('room'), { before: maybe(0.6) ? id('room') : null }),
  'room.remove': ({ id }) => withId(id('room', `id NOT IN (SELECT room FROM wall WHERE id IN (${usedWalls}))`), {}),
  'plan.placeRoom': ({ row, id, change, length, words, whole, maybe }) => {
    const room = row('room')
    if (room === null) return null
    const at: [number, number] | null = room.at_x === null ? null : [figure(room, 'at_x'), figure(room, 'at_y')]
    const to: [number, number] | null = maybe(0.2) ? null : [length(-20_000, 20_000), length(-20_000, 20_000)]
    const [one, other] = [id('wall', 'exhibition IS NULL'), id('wall', 'exhibition IS NULL')]
    return {
      rooms: [
        {
          id: text(room, 'id'),
          changes: {
            at: change(at, to),
            turn: change(figure(room, 'turn'), whole(0, 359)),
            ...(maybe(0.3) ? { storey: change(text(room, 'storey'), words()) } : {}),
          },
        },
      ],
      ...(one !== null && other !== null && maybe(0.2) ? { walls: [{ id: one, with: other, thickness: null }] } : {}),
    }
  },
  'wall.share': ({ id, length, maybe }) => {
    const wall = id('wall', 'exhibition IS NULL')
    const other = id('wall', 'exhibition IS NULL')
    if (wall === null || other === null) return null
    return { id: wall, with: other, thickness: maybe(0.5) ? length(80, 500) : null }
  },
  'wall.unshare': ({ id, maybe }) => withId(id('wall', maybe(0.8) ? 'backs IS NOT NULL' : 'exhibition IS NULL'), {}),
  'wall.shift': ({ id, length, maybe }) =>
    withId(id('wall', 'exhibition IS NULL'), {
      by: length(-400, 400),
      setAside: maybe(0.8),
      alone: maybe(0.3),
    }),
  'wall.turn': ({ id, length, whole, maybe }) =>
    withId(id('wall', 'exhibition IS NULL'), {
      about: pivots[whole(0, 2)] ?? 'left',
      by: length(-9, 9),
      setAside: maybe(0.8),
      alone: maybe(0.3),
    }),
  'plan.setNorth': ({ row, change, whole, maybe }) => {
    const building = row('building')
    if (building === null) return null
    const was = building.north === null ? null : figure(building, 'north')
    return change<number | null>(was, maybe(0.3) ? null : whole(0, 359))
  },
  'wall.add': ({ id, length, words, maybe }) => {
    const room = id('room')
    if (room === null) return null
    const after = maybe(0.7) ? id('wall', `room = '${room}'`) : null
    return { room, after, wall: { name: words(), length: length(800, 7000), angle: 90 } }
  },
  'wall.update': ({ row, change, length, words, pick }) => {
    const wall = row('wall')
    if (wall === null) return null
    const corner = row('corner', `id = '${text(wall, 'to_corner')}'`)
    const angle = corner === null || corner.angle === null ? null : figure(corner, 'angle')
    const changes = pick([
      {
        length: change(figure(wall, 'length'), length(800, 9000)),
        lengthText: change(text(wall, 'length_text'), words()),
      },
      {
        height: change(figure(wall, 'height'), length(2400, 4200)),
        wallType: change(text(wall, 'wall_type') as 'brick', pick(wallTypes)),
      }, // one of the types
      { angle: change<number | null>(angle, pick([null, 45, 90, 120.5])) },
      { studFirst: change(wall.stud_first === null ? null : figure(wall, 'stud_first'), length(0, 500)) },
      {
        studs: change<number[]>(JSON.parse(wall.studs === null ? '[]' : text(wall, 'studs')), [
          length(0, 300),
          length(400, 790),
        ]),
        datumBy: change(text(wall, 'datum_by') as 'high', pick(['', 'high', 'middle', 'ramp'] as const)), // one of them
      },
    ])
    return { id: text(wall, 'id'), changes }
  },
  'wall.move': ({ row, id, maybe }) => {
    const wall = row('wall')
    if (wall === null) return null
    const before = maybe(0.7) ? id('wall', `room = '${text(wall, 'room')}'`) : null
    return { id: text(wall, 'id'), before }
  },
  'wall.split': ({ row, length, maybe }) => {
    const wall = row('wall', 'exhibition IS NULL')
    return wall === null
      ? null
      : { id: text(wall, 'id'), x: length(1, figure(wall, 'length')), ...(maybe(0.3) ? { alone: true } : {}) }
  },
  'wall.join': ({ id, maybe }) =>
    withId(
      id('wall', 'exhibition IS NULL AND to_corner IN (SELECT id FROM corner WHERE angle = 180)') ?? id('wall'),
      maybe(0.3) ? { alone: true } : {},
    ),
  'wall.remove': ({ id, maybe }) => withId(id('wall', maybe(0.8) ? `id NOT IN (${usedWalls})` : '1'), {}),
  'partition.add': ({ id, length, maybe, whole }) => {
    const [exhibition, room] = [id('exhibition'), id('room')]
    if (exhibition === null || room === null) return null
    const from: [number, number] = [length(0, 6000), length(0, 4000)]
    const end = maybe(0.5) ? { to: [length(0, 6000), length(0, 4000)] as [number, number] } : null
    return { exhibition, room, from, ...(end ?? { length: length(500, 4000), angle: whole(0, 359) }) }
  },
  'partition.update': ({ row, change, length, words }) => {
    const wall = row('wall', 'exhibition IS NOT NULL')
    if (wall === null) return null
    const end = (column: string): [number, number] => {
      const corner = row('corner', `id = '${text(wall, column)}'`) ?? {}
      return [figure(corner, 'x'), figure(corner, 'y')]
    }
    const was: [[number, number], [number, number]] = [end('from_corner'), end('to_corner')]
    return {
      id: text(wall, 'id'),
      changes: {
        name: change(text(wall, 'name'), words()),
        ends: change<typeof was>(was, [
          [length(0, 6000), length(0, 4000)],
          [length(0, 6000), length(0, 4000)],
        ]),
      },
    }
  },
  'partition.remove': ({ id }) => withId(id('wall', 'exhibition IS NOT NULL'), {}),
  'standing.add': ({ id, length, pick, whole, maybe }) => {
    const room = id('room')
    if (room === null) return null
    return {
      room,
      exhibition: maybe(0.5) ? id('exhibition') : null,
      kind: pick(['bench', 'plinth', 'column'] as const),
      at: [length(0, 6000), length(0, 4000)] as [number, number],
      turn: whole(0, 359),
      width: length(200, 1800),
      depth: length(200, 800),
    }
  },
  'standing.update': ({ row, id, change, length, words }) => {
    const thing = row('standing')
    if (thing === null) return null
    const was: [number, number] = [figure(thing, 'x'), figure(thing, 'y')]
    return {
      id: text(thing, 'id'),
      changes: {
        at: change<typeof was>(was, [length(0, 6000), length(0, 4000)]),
        name: change(text(thing, 'name'), words()),
        exhibition: change(thing.exhibition === null ? null : text(thing, 'exhibition'), id('exhibition')),
      },
    }
  },
  'standing.remove': ({ id }) => withId(id('standing'), {}),
  'track.add': ({ id, length }) => {
    const room = id('room')
    return room === null ? null : { room, ends: endsOf(length), height: length(2000, 4000) }
  },
  'track.update': ({ row, change, length }) => {
    const track = row('track')
    if (track === null) return null
    const was: [[number, number], [number, number]] = [
      [figure(track, 'from_x'), figure(track, 'from_y')],
      [figure(track, 'to_x'), figure(track, 'to_y')],
    ]
    return { id: text(track, 'id'), changes: { ends: change<typeof was>(was, endsOf(length)) } }
  },
  'track.remove': ({ id }) => withId(id('track'), {}),
  'zone.add': ({ words, pick, ids }) => ({
    kind: pick(['climate', 'light'] as const),
    name: words(),
    rooms: ids('room') ?? [],
  }),
  'zone.update': ({ row, change, words, ids }) => {
    const zone = row('zone')
    if (zone === null) return null
    return {
      id: text(zone, 'id'),
      changes: { name: change(text(zone, 'name'), words()), rooms: { was: [], to: ids('room') ?? [] } },
    }
  },
  'zone.remove': ({ id }) => withId(id('zone'), {}),
  'survey.add': ({ row, id, length, maybe, whole, words }) => {
    const wall = row('wall', 'exhibition IS NULL')
    if (wall === null) return null
    const room = text(wall, 'room')
    const from = text(wall, 'to_corner')
    const outline = `id IN (SELECT to_corner FROM wall WHERE room = '${room}' AND exhibition IS NULL)`
    const how = maybe(0.7) ? ('measured' as const) : ('drawn' as const)
    if (maybe(0.3)) return { room, from, to: null, value: whole(30, 300), how }
    return { room, from, to: id('corner', outline), value: length(900, 9000), text: words(), how }
  },
  'survey.update': ({ row, change, length, maybe, words }) => {
    const measure = row('survey')
    if (measure === null) return null
    const used = change(figure(measure, 'used') === 1, maybe(0.5))
    const value = change(figure(measure, 'value'), text(measure, 'kind') === 'angle' ? 89.5 : length(900, 9000))
    return {
      id: text(measure, 'id'),
      changes: maybe(0.5) ? { used } : { value, note: change(text(measure, 'note'), words()) },
    }
  },
  'survey.remove': ({ id }) => withId(id('survey'), {}),
  'opening.add': chance => {
    const wall = chance.id('wall')
    return wall === null
      ? null
      : { wall, kind: chance.pick(['door', 'window', 'passage', 'niche'] as const), ...rectangle(chance) }
  },
  'opening.update': ({ row, id, change, length, words }) => {
    const opening = row('opening')
    if (opening === null) return null
    return {
      id: text(opening, 'id'),
      changes: {
        x: change(figure(opening, 'x'), length(0, 3000)),
        label: change(text(opening, 'label'), words()),
        leadsTo: change(opening.leads_to === null ? null : text(opening, 'leads_to'), id('room')),
      },
    }
  },
  'opening.pair': ({ id, maybe }) => withId(id('opening'), { other: maybe(0.7) ? id('opening') : null }),
  'opening.remove': ({ id }) => withId(id('opening'), {}),
  'keepClear.add': chance => {
    const wall = chance.id('wall')
    if (wall === null) return null
    return {
      wall,
      kind: chance.pick(['switch', 'grille', 'sign'] as const),
      ...rectangle(chance),
      margin: chance.length(0, 300),
    }
  },
  'keepClear.update': ({ row, change, length, words }) => {
    const clear = row('keep_clear')
    if (clear === null) return null
    return {
      id: text(clear, 'id'),
      changes: {
        margin: change(figure(clear, 'margin'), length(0, 300)),
        reason: change(text(clear, 'reason'), words()),
      },
    }
  },
  'keepClear.remove': ({ id }) => withId(id('keep_clear'), {}),
  'wall.plan': ({ id, row, change, length, pick }) => {
    const exhibition = id('exhibition')
    const face = id('face')
    if (exhibition === null || face === null) return null
    const plan = row('face_plan', `exhibition = '${exhibition}' AND face = '${face}'`)
    const line = plan === null || plan.centre_line === null ? null : figure(plan, 'centre_line')
    const note = plan === null ? '' : text(plan, 'note')
    return {
      exhibition,
      face,
      changes: {
        centreLine: change<number | null>(line, length(1300, 1650)),
        note: change(note, pick(['', 'east light'])),
      },
    }
  },
  'route.set': ({ id, ids, row, change }) => {
    const exhibition = id('exhibition')
    const to = ids('face', 'wall IN (SELECT id FROM wall WHERE exhibition IS NULL)')
    if (exhibition === null || to === null) return null
    const now = row(
      `(SELECT '' AS id, json_group_array(face ORDER BY visitor_order, face) AS faces FROM face_plan
        WHERE exhibition = '${exhibition}' AND visitor_order IS NOT NULL)`,
    )
    return { exhibition, order: change(JSON.parse(text(now ?? {}, 'faces')), to) }
  },
  'wall.rename': ({ row, change, words }) => {
    const wall = row('wall')
    return wall === null ? null : { walls: [{ id: text(wall, 'id'), name: change(text(wall, 'name'), words()) }] }
  },
  'sequence.take': ({ row, id, ids, length }) => {
    const exhibition = id('exhibition', 'id IN (SELECT exhibition FROM entry)')
    const face = id('face')
    const entries = exhibition === null ? null : ids('entry', `exhibition = '${exhibition}'`)
    if (exhibition === null || face === null || entries === null) return null
    const was = (entry: string) => {
      const there = row('placement', `entry = '${entry}'`)
      return there === null ? null : text(there, 'face')
    }
    const works = entries.slice(0, 3).map(entry => ({ entry, x: length(300, 5000), was: was(entry) }))
    return { exhibition, faces: [{ face, works }] }
  },
  'sequence.addRule': ({ id, ids, row, pick, maybe, words }) => {
    const exhibition = id('exhibition', 'id IN (SELECT exhibition FROM entry)')
    const works =
      exhibition === null ? null : ids('work', `id IN (SELECT work FROM entry WHERE exhibition = '${exhibition}')`)
    if (exhibition === null || works === null) return null
    const kind = pick(['stays', 'side by side', 'not beside', 'only on', 'not on', 'first', 'axis'] as const)
    const alone = kind === 'first' || kind === 'axis'
    const face = id('face')
    const room = id('room')
    const opening = row('opening')
    const places = {
      'only on': face === null ? [] : [{ kind: 'wall' as const, id: face }],
      'not on': room === null ? [] : [{ kind: 'room' as const, id: room }],
      axis: opening === null ? [] : [{ kind: 'doorway' as const, id: text(opening, 'id') }],
    }[kind as string]
    return {
      ...{ exhibition, kind, works: works.slice(0, alone ? 1 : 3), reason: maybe(0.3) ? words() : '' },
      ...(places === undefined ? {} : { places }),
      ...(kind === 'first' ? { within: pick(['wall', 'section', 'show'] as const) } : {}),
    }
  },
  'sequence.changeRule': ({ row, maybe, words }) => {
    const rule = row('hang_rule')
    if (rule === null) return null
    const was = rule.in_force === 1
    const changes = maybe(0.6)
      ? { inForce: { was, to: !was } }
      : { reason: { was: maybe(0.8) ? text(rule, 'reason') : 'another', to: words() } }
    return { id: text(rule, 'id'), changes }
  },
  'sequence.removeRules': ({ id }) => {
    const rule = id('hang_rule')
    return rule === null ? null : { rules: [rule] }
  },
  'sequence.exceptLight': ({ id, words }) => {
    const entry = id('entry', 'work IN (SELECT id FROM work WHERE light_limit IS NOT NULL)')
    return entry === null ? null : { entry, reason: `agreed: ${words()}` }
  },
  'placement.put': ({ row, id, length, maybe, pick, whole }) => {
    const exhibition = id('exhibition', 'id IN (SELECT exhibition FROM entry)')
    if (exhibition === null) return null
    const places = Array.from({ length: whole(1, 3) }, () => {
      const set = maybe(0.3) ? id('entry', `exhibition = '${exhibition}' AND work IN (${sets})`) : null
      const entry = set ?? id('entry', `exhibition = '${exhibition}'`) ?? ''
      const there = row('placement', `entry = '${entry}'`)
      const byHand = maybe(0.3)
      return {
        entry,
        face: id('face') ?? '',
        x: length(100, 5000),
        rule: byHand ? ('hand' as const) : pick(['face', 'centre', 'top'] as const),
        y: byHand || maybe(0.5) ? length(900, 1900) : null,
        was: there === null || maybe(0.1) ? null : spotOf(there),
      }
    })
    return {
      exhibition,
      places: places.filter((place, at) => places.findIndex(other => other.entry === place.entry) === at),
    }
  },
  'placement.remove': ({ ids }) => {
    const placements = ids('placement', `held = 0 AND state = 'planned'`) ?? ids('placement')
    return placements === null ? null : { placements }
  },
  'placement.update': ({ row, change, id, words, pick }) => {
    const placement = row('placement')
    if (placement === null) return null
    const fixing = placement.fixing === null ? null : text(placement, 'fixing')
    const side = text(placement, 'label_side') as '' // one of the sides
    const changes = pick([
      { fixing: change(fixing, id('fixing_kind')) },
      {
        labelSide: change<'' | 'left' | 'right'>(side, pick(['', 'left', 'right'] as const)),
        note: change(text(placement, 'note'), words()),
      },
    ])
    return { id: text(placement, 'id'), changes }
  },
  'placement.hold': ({ ids, maybe }) => {
    const placements = ids('placement')
    return placements === null ? null : { placements, held: maybe(0.5) }
  },
  'placement.setState': ({ ids, pick }) => {
    const placements = ids('placement')
    return placements === null ? null : { placements, to: pick(['planned', 'planned', 'hung', 'level'] as const) }
  },
  'mark.set': ({ row, pick, words, maybe }) => {
    // Mostly a work whose back was measured: another has no marks.
    const measured = 'entry IN (SELECT entry.id FROM entry JOIN work_back ON work_back.work = entry.work)'
    const placement = (maybe(0.8) ? row('placement', measured) : null) ?? row('placement')
    if (placement === null) return null
    return {
      exhibition: text(placement, 'exhibition'),
      face: text(placement, 'face'),
      marks: [{ placement: text(placement, 'id'), slot: pick(['left', 'right'] as const) }],
      to: pick(['planned', 'marked', 'drilled', 'drilled'] as const),
      ...(maybe(0.3) ? { reason: words() } : {}),
    }
  },
  'mark.services': ({ row, pick, maybe }) => {
    const placement = row('placement')
    if (placement === null) return null
    return {
      exhibition: text(placement, 'exhibition'),
      face: text(placement, 'face'),
      marks: [{ placement: text(placement, 'id'), slot: pick(['left', 'right'] as const) }],
      checked: maybe(0.8),
    }
  },
  'mark.fill': ({ id, ids, maybe }) => {
    // Mostly a hole that nothing hangs on: what is in use cannot be filled.
    const dead = maybe(0.8) ? id('mark', 'placement IS NULL') : null
    const marks = dead === null ? ids('mark') : [dead]
    return marks === null ? null : { marks, filled: maybe(0.6) }
  },
  'mark.note': ({ id, words }) => withId(id('mark'), { note: words() }),
  'late.take': ({ row }) => {
    const placement = row('placement')
    if (placement === null) return null
    return {
      exhibition: text(placement, 'exhibition'),
      change: { kind: 'drop', entry: text(placement, 'entry') },
      key: 'leave-gap',
      moves: [],
    }
  },
  'layout.keep': ({ row, words }) => {
    const placement = row('placement')
    return placement === null
      ? null
      : { exhibition: text(placement, 'exhibition'), face: text(placement, 'face'), name: words() }
  },
  'layout.take': ({ id }) => withId(id('kept_layout'), {}),
  'layout.remove': ({ id }) => withId(id('kept_layout'), {}),
  'fixing.add': ({ words, pick, length }) => ({
    name: words(),
    kind: pick(['hook', 'nail', 'screw', 'cleat'] as const),
    holeOffset: length(-20, 40),
    ratedKg: length(5, 50),
  }),
  'fixing.addUsual': () => ({}),
  'crew.set': ({ row, change, whole, length, maybe }) => {
    const show = row('exhibition', "state <> 'closed'")
    if (show === null) return null
    const known = (column: string) => (show[column] === null ? null : figure(show, column))
    return {
      exhibition: text(show, 'id'),
      changes: {
        teams: change(known('crew_teams'), maybe(0.3) ? null : whole(1, 6)),
        ...(maybe(0.5) ? { hours: change(known('crew_hours'), length(4, 8)) } : {}),
        ...(maybe(0.5) ? { spare: change(known('crew_spare'), length(0, 1)) } : {}),
      },
    }
  },
  'crew.setMinutes': ({ row, change, pick, length, maybe, words }) => {
    const key = pick(['wire', 'd-rings', 'label', 'not-known'] as const)
    const stored = row('method_time', `id = '${key}'`)
    const was = stored === null ? null : figure(stored, 'minutes')
    return { key, ...change<number | null>(was, maybe(0.3) ? null : length(5, 60)), source: words() }
  },
  'equipment.add': ({ words, length, whole, maybe }) => ({
    name: words(),
    carriesKg: maybe(0.5) ? length(50, 400) : null,
    reaches: maybe(0.5) ? length(2000, 5000) : null,
    count: whole(0, 3),
    people: whole(1, 3),
    note: words(),
  }),
  'equipment.update': ({ row, change, words, whole, length }) => {
    const found = row('equipment')
    if (found === null) return null
    return {
      id: text(found, 'id'),
      changes: {
        name: change(text(found, 'name'), words()),
        count: change(figure(found, 'count'), whole(0, 5)),
        carriesKg: change<number | null>(
          found.carries_kg === null ? null : figure(found, 'carries_kg'),
          length(50, 400),
        ),
      },
    }
  },
  'equipment.remove': ({ id }) => withId(id('equipment'), {}),
  'fixing.rate': ({ id, pick, length, maybe, words }) =>
    withId(id('fixing_kind'), {
      wallType: pick(wallTypes),
      ratedKg: maybe(0.2) ? null : length(2, 50),
      source: `packet ${words()}`,
    }),
  'fixing.unrate': ({ row }) => {
    const rating = row('fixing_rating')
    if (rating === null) return null
    return { id: text(rating, 'fixing'), wallType: text(rating, 'wall_type') as 'brick' } // one of the types
  },
  'fixing.copy': ({ id, words }) => withId(id('fixing_kind'), { name: words() }),
  'fixing.remove': ({ row }) => {
    const unused = row(
      'fixing_kind',
      'id NOT IN (SELECT fixing FROM placement WHERE fixing IS NOT NULL UNION SELECT keeper FROM placement WHERE keeper IS NOT NULL UNION SELECT fixing FROM mark WHERE fixing IS NOT NULL)',
    )
    return unused === null ? null : { id: text(unused, 'id') }
  },
  'fixing.stock': ({ row, change, whole, maybe }) => {
    const fixing = row('fixing_kind')
    if (fixing === null) return null
    const was = fixing.in_stock === null ? null : figure(fixing, 'in_stock')
    return {
      id: text(fixing, 'id'),
      changes: { inStock: change<number | null>(was, maybe(0.2) ? null : whole(0, 80)) },
    }
  },
  'fixing.update': ({ row, change, words, length }) => {
    const fixing = row('fixing_kind')
    if (fixing === null) return null
    return {
      id: text(fixing, 'id'),
      changes: {
        name: change(text(fixing, 'name'), words()),
        ratedKg: change<number | null>(fixing.rated_kg === null ? null : figure(fixing, 'rated_kg'), length(5, 50)),
      },
    }
  },
  'finding.settle': ({ id, words, whole }) => {
    const subject = id('placement') ?? id('work')
    return subject === null ? null : { code: 'no-marks', subject, figures: `{"gap":${whole(1, 90)}}`, reason: words() }
  },
  'finding.unsettle': ({ id }) => withId(id('settlement'), {}),
  'sheet.wall': ({ id }) => {
    // Only what was there before the walk: a printed paper keeps its wall and show for good, as it should.
    const exhibition = id('exhibition', `title = 'Printed'`)
    const face = id('face', `wall IN (SELECT id FROM wall WHERE name = 'printed')`)
    return exhibition === null || face === null ? null : { exhibition, faces: [face] }
  },
  'import.accept': ({ id, words, whole, maybe }) => {
    const exhibition = id('exhibition')
    const line = () =>
      `L-${whole(1, 12)}\t${words()}\t${words()}\t${maybe(0.5) ? `${whole(100, 900)} x ${whole(100, 900)} mm` : '61 x 91.5'}`
    const lines = Array.from({ length: whole(1, 6) }, line)
    return {
      text: `Lender’s no.\tArtist\tTitle\tDimensions\n${lines.join('\n')}\n`,
      lenderName: 'Quay Collection',
      ...(exhibition === null ? { exhibitionTitle: words() } : { exhibition }),
    }
  },
  'drawing.take': ({ give, words, length, maybe, pick }) => ({
    handle: give('east.dxf', dxfOf(oneRoom)),
    rooms: [{ outline: '1', name: words() }],
    height: length(2400, 5000),
    ...(maybe(0.5) ? { openings: { kind: pick(['door', 'passage'] as const), height: 2100 } } : {}),
    ...(maybe(0.3) ? { storey: 'first floor' } : {}),
  }),
  'underlay.add': ({ give, length }) => ({
    handle: give('grey.png', onePixel),
    at: [length(0, 9000), length(0, 9000)],
  }),
  'underlay.update': ({ row, change, length, pick }) => {
    const underlay = row('underlay')
    if (underlay === null) return null
    const was: [number, number] = [Number(underlay.at_x), Number(underlay.at_y)]
    const to: [number, number] = [length(0, 9000), length(0, 9000)]
    const at = change(was, to)
    const shown = change(underlay.shown === 1, underlay.shown !== 1)
    return { id: text(underlay, 'id'), changes: pick([{ at }, { shown }]) }
  },
  'underlay.scale': ({ id, length }) =>
    withId(id('underlay'), { from: [0, 0], to: [length(1000, 9000), 0], distance: length(1000, 9000) }),
  'underlay.remove': ({ id }) => withId(id('underlay'), {}),
  'import.answer': ({ id, pick }) =>
    withId(id('import_question', 'answer IS NULL'), { answer: pick(['1', '2', '3', '61 x 91 cm', 'no idea']) }),
  'import.ask': ({ id, maybe }) => {
    const question = id('import_question', 'answer IS NULL')
    return question === null ? null : { questions: [question], lender: maybe(0.6) }
  },
}
