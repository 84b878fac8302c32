/**
 * What the catalogue says, kept fresh: a watched question is asked again when a change touches a table that its answer
 * is made of, and only then. Answers are replaced whole, never changed in place.
 */
import type { Input, Name, NameOf, Output } from '../../src/contract/contract.ts'
import { ask, listen, type Refused, refusalOf } from './client.svelte.ts'

const work = ['work', 'work_number', 'work_size', 'work_mass', 'work_back', 'picture', 'party', 'import_question']
const show = ['exhibition', 'section', 'entry']
const building = ['building', 'room', 'corner', 'wall', 'face', 'opening', 'keep_clear', 'survey']
const stands = ['standing', 'track', 'zone', 'zone_room']
const hanging = ['placement', 'placement_part', 'face_plan', 'fixing_kind', 'fixing_rating', 'house_rule', 'settlement']
const condition = [
  'condition_report',
  'condition_finding',
  'condition_photo',
  'condition_signature',
  'condition_seal',
  'work',
  'work_number',
]
const damage = [...condition, 'damage', 'damage_word', 'party', 'entry', 'moved', 'movement', 'house_rule']
const places = ['location', 'room', 'wall', 'face']
const planned = [
  ...[...places, ...show, 'opening', 'work', 'work_number', 'movement', 'moved', 'planned_move', 'placement'],
  ...['damage', 'damage_word'],
]
const light = [
  ...[
    'hours_lit',
    'light_reading',
    'moved',
    'movement',
    'house_rule',
    'work',
    'entry',
    'exhibition',
    'placement',
    'face_plan',
  ],
  ...['room', 'wall', 'face', 'loan', 'loan_work', 'loan_term', 'party'],
]
const loan = ['loan', 'loan_contact', 'loan_work', 'party', 'work', 'work_number']
const receipts = ['loan', 'loan_work', 'loan_receipt', 'loan_receipt_work', 'party', 'work', 'work_number']
const insured = [
  ...['work_value', 'exchange_rate', 'value_limit', 'loan', 'loan_work', 'party', 'location', 'movement', 'moved'],
  ...[...show, 'work', 'work_number', 'placement', 'room', 'wall', 'face'],
]
const terms = [
  ...loan,
  'loan_term',
  'condition_report',
  'condition_signature',
  ...light,
  ...building,
  ...stands,
  ...hanging,
  ...show,
  ...work,
  'placement_step',
]
const crew = [...building, ...hanging, ...show, ...work, 'mark', 'placement_step', 'equipment', 'method_time']

/** The tables that an answer is made of. A question that is not here is asked again after every change. */
const madeOf: Partial<Record<Name, readonly string[]>> = {
  'person.list': ['person'],
  'rule.list': ['house_rule'],
  'party.list': ['party', 'work'],
  'exhibition.list': [...show, 'placement'],
  'exhibition.frieze': [...show, 'work', 'picture', 'placement', 'party'],
  'room.list': building,
  'survey.get': ['room', 'corner', 'wall', 'survey', 'house_rule'],
  'room.findings': [...building, ...stands, 'survey', 'house_rule'],
  'partition.list': [...building, 'placement'],
  'standing.list': ['room', 'exhibition', ...stands],
  'room.plan': terms,
  'plan.get': [...building, ...stands, ...hanging, ...show, ...work],
  'underlay.list': ['underlay'],
  'work.list': [...work, ...show, 'placement', 'face', 'wall', 'room'],
  'work.counts': [...work, ...show, 'placement', 'wall', 'face'],
  'work.get': [...work, ...show, 'placement', 'document', 'settlement', 'face', 'wall', 'room', 'mark'],
  'wall.elevation': [...building, ...hanging, ...show, ...work, 'kept_layout', 'mark'],
  'sequence.walls': [...building, ...hanging, ...show, ...work, 'mark'],
  'sequence.sections': [...building, ...hanging, ...show, ...work, 'mark'],
  'sequence.capacity': [...building, ...hanging, ...show, ...work, 'mark'],
  'sequence.rules': [
    ...building,
    ...stands,
    ...hanging,
    ...show,
    ...work,
    'mark',
    'hang_rule',
    'hang_rule_work',
    'hang_rule_place',
  ],
  'wall.weights': [...building, ...stands, ...hanging, ...show, ...work],
  'work.weightSeen': ['work', 'work_size', 'picture', 'face_plan', 'house_rule'],
  'mark.ofFace': [...building, ...hanging, ...show, ...work, 'mark'],
  'placement.steps': ['placement', 'placement_step'],
  'fixing.list': ['fixing_kind', 'fixing_rating'],
  'fixing.uses': ['fixing_kind', 'placement', 'placement_part', 'mark', 'entry', 'work', 'face', 'wall', 'room'],
  'crew.plan': crew,
  'crew.hardware': crew,
  'crew.orders': crew,
  'lock.list': crew,
  'label.list': [...building, ...hanging, ...show, ...work],
  'location.list': [...places, 'movement', 'moved'],
  'movement.check': [...places, 'movement', 'moved', 'opening', 'work', 'work_number', 'damage', 'damage_word'],
  'movement.way': [...places, 'movement', 'moved', 'opening', 'work', 'work_number'],
  'movement.wholes': [...places, 'movement', 'moved', 'work', 'work_number'],
  'movement.where': [...places, ...show, 'work', 'work_number', 'movement', 'moved', 'placement', 'placement_step'],
  'movement.history': ['location', 'movement', 'moved', 'work', 'work_number'],
  'movement.list': ['movement', 'moved', 'work', 'work_number', 'location'],
  'planned.list': planned,
  'planned.check': planned,
  'leaving.list': [
    ...places,
    ...show,
    ...condition,
    'damage',
    'damage_word',
    ...receipts,
    'movement',
    'moved',
    'placement',
    'placement_step',
    'house_rule',
  ],
  'work.onDay': [...new Set([...places, ...light, ...condition, ...receipts, ...damage, 'loan_term'])],
  'damage.list': damage,
  'damage.get': damage,
  'condition.words': ['condition_term'],
  'condition.list': condition,
  'condition.get': condition,
  'condition.compare': [...condition, 'house_rule'],
  'number.list': ['work', 'work_number', 'party', 'settlement', 'entry'],
  'number.ofParts': ['work', 'work_number'],
  'light.hours': ['hours_lit'],
  'light.ledger': light,
  'light.list': [...light, 'section', 'work_number'],
  'climate.rooms': ['room', 'climate_file'],
  'climate.room': ['room', 'climate_file', 'climate_limit', 'house_rule'],
  'climate.readings': ['climate_file'],
  'loan.list': loan,
  'loan.get': loan,
  'loan.ofWork': loan,
  'loan.periods': [...loan, ...show],
  'receipt.list': receipts,
  'receipt.ofWork': receipts,
  'receipt.outstanding': receipts,
  'insured.days': insured,
  'insured.day': insured,
  'insured.values': ['work_value', 'work', ...loan],
  'insured.rates': ['exchange_rate'],
  'insured.limits': ['value_limit', 'party', ...places],
  'loan.terms': terms,
  'loan.termsOfWork': terms,
  'layout.compare': ['kept_layout', 'kept_place', 'placement', ...show, 'work'],
  'import.letters': ['import_question', 'import_run', 'work', 'entry', 'work_number', 'party'],
  'import.questions': ['import_question', 'import_run', 'work', 'entry', 'work_number'],
}

/** Whether a change of these tables concerns the question. No tables named: anything may have changed. */
export function concerns(name: Name, tables: readonly string[]): boolean {
  const own = madeOf[name]
  return own === undefined || tables.length === 0 || tables.some(table => own.includes(table))
}

type Asked = NameOf<'read'> | NameOf<'desk'>

export class Query<N extends Asked> {
  value = $state.raw<Output<N> | undefined>(undefined)
  refusal = $state.raw<Refused | undefined>(undefined)
  /** The answer on show is not the last word yet. */
  stale = $state(true)
  /** How often it was asked anew. */
  times = $state(0)

  /** Asks the same anew, for who knows of a change that nobody told this window of. */
  again(): void {
    this.stale = true
    this.times += 1
  }
}

function follow<N extends Asked>(
  query: Query<N>,
  name: N,
  input: () => Input<N> | null,
  beside: () => unknown = () => null,
): void {
  // As text: the same words said anew, a dozen times a second while a hand moves a work, ask nothing anew.
  const told = $derived(JSON.stringify([input(), beside(), query.times]))
  $effect(() => {
    const [given] = JSON.parse(told) as [Input<N> | null] // what an input says as JSON is what the host reads
    if (given === null) {
      query.value = undefined
      query.stale = false
      return
    }
    return keepAsking(query, name, given)
  })
}

/** Asks now and after every change that concerns the question, one call at a time; gives back the way to stop. */
function keepAsking<N extends Asked>(query: Query<N>, name: N, given: Input<N>): () => void {
  let living = true
  let asking = false
  let again = false
  async function once(): Promise<void> {
    if (asking) {
      again = true
      return
    }
    asking = true
    do {
      again = false
      query.stale = true
      try {
        const value = await ask(name, given)
        if (!living) return
        query.value = value
        query.refusal = undefined
      } catch (thrown) {
        if (!living) return
        query.refusal = refusalOf(thrown)
      }
    } while (again)
    asking = false
    query.stale = false
  }
  void once()
  const stop = listen(event => {
    if (event.kind === 'opened' || (event.kind === 'changed' && concerns(name, event.tables))) void once()
  })
  return () => {
    living = false
    stop()
  }
}

/**
 * Watches a question for as long as the component lives. `input` is read reactively; null asks nothing. The last
 * answer stays on show until the next one is there.
 */
export function watch<N extends Asked>(name: N, input: () => Input<N> | null): Query<N> {
  const query = new Query<N>()
  follow(query, name, input)
  return query
}

/**
 * The same for as long as the window lives, for what several screens share. `beside` is what an answer depends on
 * although no input says it.
 */
export function watchAlways<N extends Asked>(name: N, input: () => Input<N> | null, beside?: () => unknown): Query<N> {
  const query = new Query<N>()
  $effect.root(() => follow(query, name, input, beside))
  return query
}
