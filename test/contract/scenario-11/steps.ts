/**
 * What is done in scenario 11, step by step, as calls of the contract. Whoever plays it says how a step is called: a
 * program of its own on the command line, or by hand on the screens.
 */
import type { Input, Name, Output } from '../../../src/contract/contract.ts'
import * as facts from './facts.ts'

const { at, registrar, courier, crew } = facts
const by = registrar

/** Keys by the names that steps give them. */
export class Keys {
  private readonly known = new Map<string, string>()
  of(name: string): string {
    const found = this.known.get(name)
    if (found === undefined) throw new Error(`no step made ${name}`)
    return found
  }
  set(name: string, id: string): void {
    this.known.set(name, id)
  }
}

export interface Step<N extends Name = Name> {
  readonly name: N
  /** What a step is known by to whoever plays it another way. */
  readonly key: string
  readonly input: (keys: Keys) => unknown
  /** Files given with the call; `"$1"` in its input is the first. */
  readonly files?: readonly string[]
  /** The code of the refusal that must come. */
  readonly refused?: string
  readonly keep?: (answer: never, keys: Keys) => void
}

interface More<N extends Name> {
  readonly key?: string
  readonly files?: readonly string[]
  readonly refused?: string
  readonly keep?: (answer: Output<N>, keys: Keys) => void
}

function step<N extends Name>(name: N, input: (keys: Keys) => Input<N>, more: More<N> = {}): Step {
  return { key: name, ...more, name, input } as Step // the keeper is of this answer
}

/** Keeps the id that the answer gives. */
const as =
  (name: string) =>
  (answer: { readonly id: string }, keys: Keys): void =>
    keys.set(name, answer.id)

const numberOf = (at: number) => facts.works[at]?.[0] ?? ''
const lentBy = (lender: number) => facts.works.filter(each => each[2] === lender).map(each => each[0])
const all = facts.works.map(each => each[0])
const three = [0, 1, 2] as const

/** After the list is in: what there is, by number and name. */
export const found: readonly Step[] = [
  step('work.list', () => ({ limit: 50 }), {
    keep: ({ works }, keys) => {
      for (const each of works)
        for (const [number, title] of facts.works) if (each.title === title) keys.set(number, each.id)
    },
  }),
  step('party.list', () => ({}), {
    keep: ({ parties }, keys) => {
      for (const each of parties) keys.set(each.name, each.id)
    },
  }),
  step('exhibition.list', () => ({}), { keep: ({ exhibitions }, keys) => keys.set('show', exhibitions[0]?.id ?? '') }),
  step('exhibition.update', keys => ({
    id: keys.of('show'),
    changes: { opens: { was: '', to: facts.show.opens }, closes: { was: '', to: facts.show.closes } },
  })),
  step('exhibition.frieze', keys => ({ exhibition: keys.of('show') }), {
    keep: ({ works }, keys) => {
      for (const { entry, work } of works) keys.set(`entry ${work}`, entry)
    },
  }),
]

const walls = [
  { name: 'W1', length: 8000 },
  { name: 'W2', length: 5000 },
  { name: 'W3', length: 8000 },
  { name: 'W4', length: 5000 },
]

export const house: readonly Step[] = [
  step('room.add', () => ({ name: 'R2', height: 3400, walls }), { keep: as('room') }),
  step('room.list', () => ({}), { keep: ({ rooms }, keys) => keys.set('W3', rooms[0]?.walls[2]?.face ?? '') }),
  step('location.add', () => ({ kind: 'place', name: 'Hold' }), { keep: as('hold') }),
  step('location.add', () => ({ kind: 'crate', name: 'Crate 5', holdHours: 24, width: 900, height: 700, depth: 300 }), {
    keep: as('crate'),
  }),
  ...three.map(lender =>
    step('location.add', () => ({ kind: 'elsewhere', name: facts.lenders[lender], address: 'Quay 4' }), {
      keep: as(`at ${lender}`),
    }),
  ),
  step('light.addHours', keys => ({
    exhibition: keys.of('show'),
    kind: 'open',
    first: facts.show.opens,
    last: facts.show.closes,
    hours: facts.hoursADay,
  })),
]

export const loans: readonly Step[] = three.flatMap(lender => [
  step(
    'loan.add',
    keys => ({ party: keys.of(facts.lenders[lender]), number: facts.agreements[lender], ...facts.period }),
    {
      key: `loan ${lender}`,
      keep: as(`loan ${lender}`),
    },
  ),
  step(
    'loan.addWorks',
    keys => ({ loan: keys.of(`loan ${lender}`), works: lentBy(lender).map(each => keys.of(each)) }),
    {
      keep: ({ added }, keys) => {
        for (const [index, { id }] of added.entries()) keys.set(`item ${lentBy(lender)[index]}`, id)
      },
    },
  ),
])

export const values: readonly Step[] = facts.works.map(([number, , , euros]) =>
  step('loan.updateWork', keys => ({
    id: keys.of(`item ${number}`),
    changes: {
      value: { was: null, to: { minor: euros * 100, currency: 'EUR' } },
      insuredBy: { was: '', to: 'borrower' },
    },
  })),
)

export const agreed: readonly Step[] = facts.terms.map(term =>
  step('loan.addTerm', keys => ({ loan: keys.of('loan 0'), ...term })),
)

const receipt = (lender: number, kind: 'received' | 'sent' | 'acknowledged', day: string): Step =>
  step(
    'receipt.add',
    keys => ({
      loan: keys.of(`loan ${lender}`),
      kind,
      day,
      place: 'Dock',
      ...(kind === 'received'
        ? { handedBy: courier, receivedBy: registrar }
        : { handedBy: registrar, receivedBy: courier }),
      works: lentBy(lender).map(each => ({ work: keys.of(each), condition: '', crate: '' })),
      by,
    }),
    { key: `receipt ${kind} ${lender}` },
  )

const move = (
  key: string,
  things: (keys: Keys) => { works?: string[]; crates?: string[] },
  to: string,
  when: string,
  people: string,
  more: { spot?: string; reason?: string } = {},
): Step =>
  step('movement.add', keys => ({ ...things(keys), to: keys.of(to), at: at(when), people, ...more, by }), { key })

const work = (number: string) => (keys: Keys) => ({ works: [keys.of(number)] })
const rest = (keys: Keys) => ({ works: all.filter(each => each !== facts.main).map(each => keys.of(each)) })
const crate = (keys: Keys) => ({ crates: [keys.of('crate')] })

export const arrival: readonly Step[] = [
  move('crate at the lender', crate, 'at 0', '2025-03-01 08:00', 'Harbour'),
  move('packed', work(facts.main), 'crate', '2025-03-01 09:00', 'Harbour'),
  move('crate comes', crate, 'room', '2025-03-02 09:10', 'Harbour'),
  ...three.map(lender => receipt(lender, 'received', '2025-03-02')),
  step('movement.check', keys => ({ works: [keys.of(facts.main)], to: keys.of('room'), at: at('2025-03-02 19:10') }), {
    key: 'opened early',
  }),
  move('unpacked', work(facts.main), 'room', '2025-03-03 10:00', crew, { spot: 'the floor' }),
  move('the rest comes', rest, 'room', '2025-03-02 11:00', crew),
]

const strokes = [[100, 200, 300, 100, 500, 220]]
const sign = (report: string, role: 'registrar' | 'courier', name: string): Step =>
  step('condition.sign', keys => ({ report: keys.of(report), role, name, strokes }), {
    key: `${report} signed ${role}`,
  })
const complete = (report: string): Step =>
  step('condition.complete', keys => ({ report: keys.of(report) }), { key: `${report} complete` })
const bothSign = (report: string): Step[] => [
  sign(report, 'registrar', registrar),
  // One signature is not enough.
  step('condition.complete', keys => ({ report: keys.of(report) }), {
    key: `${report} alone`,
    refused: 'incomplete',
  }),
  sign(report, 'courier', courier),
  complete(report),
]
const begin = (report: string, number: string, kind: 'incoming' | 'outgoing', when: string): Step =>
  step(
    'condition.add',
    keys => ({ work: keys.of(number), kind, examinedAt: at(when), place: 'R2', examiner: registrar }),
    { key: report, keep: as(report) },
  )
type Finding = Omit<Input<'condition.addFinding'>, 'report' | 'follows'>
const finding = (report: string, name: string, found: Finding, follows?: string): Step =>
  step(
    'condition.addFinding',
    keys => ({ report: keys.of(report), ...found, ...(follows === undefined ? {} : { follows: keys.of(follows) }) }),
    { key: name, keep: as(name) },
  )
const old = { term: 'painting.abrasion', age: 'old', severity: 'slight' } as const
const drawn = ({
  form,
  points,
  ...more
}: {
  form: 'mark' | 'outline'
  points: readonly { x: number; y: number }[]
  across?: number
}) => ({
  form,
  points: [...points],
  ...more,
})

export const examined: readonly Step[] = [
  begin('incoming', facts.main, 'incoming', '2025-03-03 10:10'),
  ...facts.abrasions.map((each, index) => finding('incoming', `abrasion ${index}`, { ...drawn(each), ...old })),
  ...bothSign('incoming'),
  begin('other incoming', facts.other, 'incoming', '2025-03-03 11:00'),
  finding('other incoming', 'dent', { ...drawn(facts.dent), across: 5, ...old, term: 'painting.dent' }),
  finding('other incoming', 'accretion', { ...drawn(facts.accretion), ...old, term: 'painting.accretion' }),
  ...bothSign('other incoming'),
]

export const hung: readonly Step[] = [
  step('placement.put', keys => ({
    exhibition: keys.of('show'),
    places: [
      {
        entry: keys.of(`entry ${keys.of(facts.main)}`),
        face: keys.of('W3'),
        x: 4000,
        rule: 'face',
        y: null,
        was: null,
      },
    ],
  })),
  move('hung', work(facts.main), 'W3', '2025-03-04 10:00', crew, { spot: 'P4' }),
  step('light.addReading', keys => ({
    work: keys.of(facts.main),
    points: [...facts.points],
    at: at('2025-03-10 09:00'),
    meter: 'meter 2',
    by,
  })),
]

/** `photo`: a picture file. */
export const deinstalled = (photo: string): readonly Step[] => [
  begin('outgoing', facts.main, 'outgoing', '2025-05-20 14:20'),
  ...facts.abrasions.map((each, index) =>
    finding('outgoing', `abrasion ${index} again`, { ...drawn(each), ...old }, `abrasion ${index}`),
  ),
  finding('outgoing', 'joint', { ...drawn(facts.joint), term: 'frame.open-joint', age: 'new', severity: 'marked' }),
  step('condition.addPhoto', keys => ({ report: keys.of('outgoing'), handle: '$1' }), {
    files: [photo],
    keep: as('photo'),
  }),
  // Before it was moved, as the camera’s owner says: the file itself does not tell.
  step('condition.updatePhoto', keys => ({
    id: keys.of('photo'),
    changes: { takenAt: { was: null, to: facts.damage.photographed }, takenBy: { was: '', to: registrar } },
  })),
  ...bothSign('outgoing'),
  begin('other outgoing', facts.other, 'outgoing', '2025-05-20 15:00'),
  finding('other outgoing', 'dent again', { ...drawn(facts.dent), across: 9, ...old, term: 'painting.dent' }, 'dent'),
  ...bothSign('other outgoing'),
  step(
    'damage.add',
    keys => ({
      work: keys.of(facts.main),
      foundAt: facts.damage.found,
      reportedAt: facts.damage.reported,
      reporter: registrar,
      how: 'the lower right joint of the frame has opened',
      reference: facts.damage.reference,
      report: keys.of('outgoing'),
      by,
    }),
    { keep: as('damage') },
  ),
  move('to the hold', work(facts.main), 'hold', '2025-05-20 15:30', 'Lind', { reason: 'damage D-0007' }),
  step(
    'movement.add',
    keys => ({ works: [keys.of(facts.main)], to: keys.of('at 0'), at: at('2025-05-21 09:00'), by }),
    { key: 'release', refused: 'damage-open' },
  ),
  step('damage.say', keys => ({
    damage: keys.of('damage'),
    kind: 'owner told',
    at: facts.damage.told,
    whom: facts.lenders[0],
    how: 'by telephone',
    by,
  })),
  step('damage.say', keys => ({
    damage: keys.of('damage'),
    kind: 'action',
    at: at('2025-05-22 11:00'),
    whom: crew,
    said: 'joint held by a strap for the way, as the lender asked',
    by,
  })),
  step('damage.close', keys => ({ damage: keys.of('damage'), why: 'the lender agreed in writing', by })),
]

export const goes: readonly Step[] = [
  move('packed again', work(facts.main), 'crate', '2025-05-26 09:00', crew),
  ...three.map(lender => receipt(lender, 'sent', '2025-05-27')),
  move('crate goes', crate, 'at 0', '2025-05-27 15:00', 'Harbour'),
  move('unpacked at home', work(facts.main), 'at 0', '2025-05-27 17:00', 'Harbour'),
]

export const back: readonly Step[] = [
  ...three
    .filter(lender => lender > 0)
    .map(lender =>
      move(
        `the rest goes to ${lender}`,
        keys => ({ works: lentBy(lender).map(each => keys.of(each)) }),
        `at ${lender}`,
        '2025-05-28 12:00',
        crew,
      ),
    ),
  move(
    'the rest goes to 0',
    keys => ({ works: [0, 1, 2].map(each => keys.of(numberOf(each))) }),
    'at 0',
    '2025-05-28 12:00',
    crew,
  ),
  ...three.map(lender => receipt(lender, 'acknowledged', '2025-05-30')),
]
