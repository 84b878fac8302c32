/**
 * The promise of undo at the level of the contract: whatever procedures write, in whatever order and by whom, undo and
 * redo walk back and forth through exactly the states that were there, across closing and opening again.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, expect, test } from 'vitest'
import { checkCatalogue } from '../../main/database/check.ts'
import { type Answer, answer } from '../../main/hosts/answer.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { checkText, dump } from '../unit/database/fixture.ts'
import { type Chance, chanceFrom } from './chance.ts'
import { callOn, type Known, makeFixture, onePixel } from './fixture.ts'
import { recordedRows, touched } from './recorded.ts'
import { type StepName, steps } from './steps.ts'

/** A long step takes a worker: each is asked this often in a walk. The others are drawn by weight. */
const longSteps: readonly StepName[] = [
  'import.accept',
  'work.addPicture',
  'work.addDocument',
  'condition.addPhoto',
  'sheet.wall',
]
const longEach = 2
const quickSteps = (Object.keys(steps) as StepName[]).filter(name => !longSteps.includes(name)) // Object.keys forgets the names
const succeeded = new Set<string>()
/** What came of undo and redo where two people work at once. */
const met = { done: 0, blocked: 0 }
const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

interface Walk {
  readonly file: string
  readonly db: Database.Database
  readonly chance: Chance
  readonly people: readonly string[]
  readonly ask: (name: string, input: unknown) => Promise<Answer>
  readonly sit: (person: string) => Promise<void>
  readonly reopen: () => Promise<void>
  readonly editCount: () => number
  readonly close: () => Promise<void>
  /** Every record that was ever there, byte by byte. */
  readonly recorded: Map<string, string>
}

async function begin(seed: number): Promise<Walk> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-walk-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const faults: unknown[] = []
  let opened = 0
  function openHost(): Host {
    // Ids and times from the seed, so that a failed walk can be walked again.
    const clock = { at: `2031-04-${10 + (opened % 10)}T08:00:00.000Z`, ids: `s${opened++}o` }
    const host = createHost({
      kind: 'command line',
      data: join(folder, 'data'),
      clock,
      checksOutput: true,
      report: fault => faults.push(fault),
    })
    host.openFile(file)
    return host
  }
  let host = openHost()
  let sitting = ''
  const first = (await callOn(host, 'person.list', {})).people[0]?.id ?? ''
  const second = await callOn(host, 'person.add', {
    name: 'Bo Lind',
    role: '',
    lengthUnit: 'in',
    paper: 'A3',
    fraction: 8,
  })
  await callOn(host, 'exhibition.add', { title: 'Printed' })
  await callOn(host, 'room.add', { name: 'Store', height: 3000, walls: [{ name: 'printed', length: 4000 }] })
  await leaveHoles(host, known)
  const examined = { work: known.pans ?? '', kind: 'incoming' as const, examiner: 'Tamsin Oake', place: 'on record' }
  const { id: report } = await callOn(host, 'condition.add', examined)
  await callOn(host, 'condition.update', { id: report, changes: { note: { was: '', to: 'no change' } } })
  // Records of damage link it: they close only with a photograph.
  const photo = host.handles.create('corner.png')
  writeFileSync(photo.path, onePixel)
  await callOn(host, 'condition.addPhoto', { report, handle: photo.handle })
  const { id: loan } = await callOn(host, 'loan.add', { party: known.lender ?? '', number: 'on record' })
  const works = [known.pans ?? '', known.causeway ?? '']
  for (const { id } of (await callOn(host, 'loan.addWorks', { loan, works })).added) {
    await callOn(host, 'loan.updateWork', { id, changes: { note: { was: '', to: 'on record' } } })
  }
  const db = new Database(file, { timeout: 2000 })
  const walk: Walk = {
    file,
    db,
    recorded: new Map(),
    people: [first, second.id],
    chance: chanceFrom(seed * 7919, db, (name, bytes) => {
      const { handle, path } = host.handles.create(name)
      writeFileSync(path, bytes)
      return handle
    }),
    async ask(name, input) {
      const answered = await answer(host, name, input)
      if (faults.length > 0) throw faults[0]
      return answered
    },
    async sit(person) {
      if (person === sitting) return
      await callOn(host, 'desk.sit', { person })
      sitting = person
    },
    async reopen() {
      await host.close()
      host = openHost()
      if (sitting !== '') await callOn(host, 'desk.sit', { person: sitting })
    },
    editCount: () => Number(db.prepare('SELECT count(*) FROM edit').pluck().get()),
    async close() {
      db.close()
      await host.close()
    },
  }
  return walk
}

/** Two drilled holes whose work has left: chance alone would seldom bring what a filling needs. */
async function leaveHoles(host: Host, { causeway = '', show = '', northFace = '', hook = '' }: Known): Promise<void> {
  const { id: work, entry } = await callOn(host, 'work.duplicate', { id: causeway, exhibition: show })
  await callOn(host, 'work.addSize', { work, part: 'framed', height: 500, width: 700, raw: '', kind: 'measured' })
  await callOn(host, 'work.addMass', { work, kg: 4, raw: '', kind: 'measured' })
  const ring = { drop: 90, inset: 60 }
  const data = { left: ring, right: ring, spacing: 580 }
  await callOn(host, 'work.setBack', { work, method: 'd-rings', seenFrom: 'back', data })
  const place = { entry: entry ?? '', face: northFace, x: 7000, rule: 'face' as const, y: null, was: null }
  const { placements } = await callOn(host, 'placement.put', { exhibition: show, places: [place] })
  const placement = placements[0] ?? ''
  await callOn(host, 'placement.update', { id: placement, changes: { fixing: { was: null, to: hook } } })
  const marks = (['left', 'right'] as const).map(slot => ({ placement, slot }))
  const asked = { exhibition: show, face: northFace, marks }
  await callOn(host, 'mark.services', { ...asked, checked: true })
  await callOn(host, 'mark.set', { ...asked, to: 'drilled' })
  const change = { kind: 'drop' as const, entry: entry ?? '' }
  await callOn(host, 'late.take', { exhibition: show, change, key: 'leave-gap', moves: [] })
}

/** Removals are rarer, those of whole shows and rooms rarest, so that there is something left to work on. */
function wanted(chance: Chance, name: string): boolean {
  if (name === 'exhibition.remove' || name === 'room.remove') return chance.maybe(0.15)
  return !name.endsWith('.remove') || chance.maybe(0.4)
}

/** The steps of a walk: every quick one several times, every long one some times, in an order of chance. */
function order(chance: Chance, count: number): StepName[] {
  const names: StepName[] = []
  while (names.length < count) {
    // Dealt like cards, so that none is left out however many there are.
    const deck = [...quickSteps]
    while (deck.length > 0) {
      const [name] = deck.splice(chance.whole(0, deck.length - 1), 1)
      if (name !== undefined && wanted(chance, name)) names.push(name)
    }
  }
  for (const name of longSteps) for (let n = 0; n < longEach; n++) names.splice(chance.whole(0, names.length), 0, name)
  // What is used stays; so each is made anew beside its removal, or chance alone would decide whether one succeeds.
  for (const pair of [
    ['exhibition.add', 'exhibition.remove'],
    ['room.add', 'room.remove'],
    ['placement.put', 'placement.remove'],
    ['work.duplicate', 'work.remove'],
    // A set needs measured works, and its parts a wall, before there is anything to change in it.
    ['work.addSize', 'set.make', 'set.make', 'placement.put', 'placement.put', 'set.fix', 'set.update', 'set.parts'],
  ] as const) {
    names.splice(chance.whole(0, names.length), 0, ...pair)
  }
  // The wall and the show that are printed may get other names later.
  return ['sheet.wall', ...names]
}

const seeds = [1, 2, 3]
const stepsEach = 220

interface Done {
  readonly name: StepName
  readonly person: string
}

/** What is recorded stays, whatever is done and taken back. */
function recordStays(walk: Walk, where: string): void {
  const now = recordedRows(walk.db, ['edit', 'journal'])
  expect(touched(walk.recorded, now), `${where}: what was recorded is no more what it was`).toEqual([])
  for (const [key, text] of now) walk.recorded.set(key, text)
}

function sameState(walk: Walk, state: string | undefined, where: string): void {
  const now = dump(walk.db)
  if (now !== state) {
    const lines = now.split('\n')
    const other = (state ?? '').split('\n')
    const at = lines.findIndex((line, index) => line !== other[index])
    expect.fail(
      `${where}: another state than before.\nnow:    ${lines[at]?.slice(0, 2000)}\nbefore: ${other[at]?.slice(0, 2000)}`,
    )
  }
  checkText(walk.db)
}

/** A report that two have signed closes a damage. */
const signed = ['condition.sign', 'condition.sign', 'condition.complete'] as const

/** What must have been done before a step that chance seldom brings about. */
function neededBy(name: StepName): readonly StepName[] {
  if (name === 'set.fix') return ['work.addSize', 'set.make', 'placement.put', 'placement.put', 'placement.put']
  if (name === 'number.giveParts') return ['set.make', 'work.addNumber', 'work.addNumber', 'work.addNumber']
  if (name.startsWith('set.')) return ['work.addSize', 'set.make']
  // A tick newer than every movement of its work.
  if (name === 'movement.takeHung') return ['placement.put', 'placement.setState', 'placement.setState']
  // Two sign, each in a role of their own.
  if (name === 'condition.complete') return ['condition.sign', 'condition.sign']
  // One that is complete and has no correction yet.
  if (name === 'condition.correct') return ['condition.sign', 'condition.sign', 'condition.complete']
  // A draft with a finding in it.
  if (name === 'condition.updateFinding') return ['condition.add', 'condition.addFinding']
  // Photographs are long work, so a walk takes few.
  if (/^condition\.(update|move|remove)Photo$/.test(name)) return ['condition.add', 'condition.addPhoto']
  // People and works of a loan; many loans are closed or removed again.
  if (name.startsWith('loan.')) return ['loan.add', 'loan.addWorks', 'loan.addContact', 'loan.addTerm']
  // One that came is struck, so that it can come again; the loan may have been closed.
  if (name === 'receipt.add') return ['receipt.correct', 'loan.update']
  if (name === 'receipt.correct') return ['loan.update', 'receipt.add']
  // One of each is there to be taken away.
  if (name.startsWith('insured.remove')) return ['insured.addValue', 'insured.addRate', 'insured.addLimit']
  // Photographed, its owner told, something done; what was done may be struck.
  if (name === 'damage.close') return [...signed, 'damage.add', 'damage.say', 'damage.say', 'damage.say', 'damage.say']
  if (name === 'damage.reopen') return [...neededBy('damage.close'), 'damage.close']
  if (name === 'damage.strike') return ['damage.add', 'damage.say', 'damage.say', 'damage.say']
  // Entries are taken away as often as they are made.
  if (name === 'light.updateHours') return ['light.addHours', 'light.addHours']
  if (name === 'climate.withdrawFile') return ['climate.takeFile']
  // A work in a show that may receive so much light.
  if (name === 'sequence.exceptLight') return ['work.update', 'work.update', 'work.update']
  return []
}

/** Forward: does the steps, keeping the state after each that made an edit. */
async function forward(walk: Walk, seed: number, count: number): Promise<{ states: string[]; done: Done[] }> {
  const { chance } = walk
  const states = [dump(walk.db)]
  const done: Done[] = []
  let taken = 0
  const take = async (name: StepName): Promise<void> => {
    const where = `seed ${seed}, step ${taken++}, ${name}`
    const person = chance.pick(walk.people)
    await walk.sit(person)
    const input = steps[name](chance)
    if (input === null) return
    const before = walk.editCount()
    const answered = await walk.ask(name, input).catch((error: unknown) => {
      throw new Error(`${where}: a fault of ours with ${JSON.stringify(input)}`, { cause: error })
    })
    // A field that a step made up would never get further than the schema: then it is the step that is wrong.
    if (!answered.ok) expect(answered.refusal.message, where).not.toContain('there is no such field')
    const edits = walk.editCount() - before
    expect(edits, where).toBeLessThanOrEqual(answered.ok ? 1 : 0)
    if (answered.ok) succeeded.add(name)
    recordStays(walk, where)
    if (edits === 0) {
      sameState(walk, states.at(-1), `${where}, which made no edit`)
      return
    }
    states.push(dump(walk.db))
    checkText(walk.db)
    done.push({ name, person })
  }
  for (const name of order(chance, count)) await take(name)
  // What chance left out of all walks is tried in the last one, beside what it needs, until it is done.
  for (let round = 0; seed === seeds.at(-1) && round < 200; round++) {
    const missing = (Object.keys(steps) as StepName[]).filter(name => !succeeded.has(name)) // Object.keys forgets the names
    for (const name of missing) {
      for (const needed of neededBy(name)) await take(needed)
      await take(name)
    }
  }
  return { states, done }
}

async function back(
  walk: Walk,
  way: 'undo' | 'redo',
  { name, person }: Done,
  state: string | undefined,
  where: string,
) {
  await walk.sit(person)
  if (walk.chance.maybe(0.04)) await walk.reopen()
  const answered = await walk.ask(`edit.${way}`, {})
  if (!answered.ok) expect.fail(`${where}, ${way} of ${name}: ${JSON.stringify(answered.refusal)}`)
  recordStays(walk, `${where}, ${way} of ${name}`)
  sameState(walk, state, `${where}, ${way} of ${name}`)
}

test.each(seeds)(
  'two people, every procedure, back and forth through every state (seed %i)',
  { timeout: 300_000 },
  async seed => {
    const walk = await begin(seed)
    try {
      const { states, done } = await forward(walk, seed, stepsEach)
      expect(done.length, 'edits made').toBeGreaterThan(stepsEach / 3)
      const undoTo = (at: number) =>
        back(walk, 'undo', done[at] ?? { name: 'work.add', person: '' }, states[at], `seed ${seed}, edit ${at}`)
      const redoTo = (at: number) =>
        back(walk, 'redo', done[at - 1] ?? { name: 'work.add', person: '' }, states[at], `seed ${seed}, edit ${at - 1}`)
      for (let at = done.length - 1; at >= 0; at--) await undoTo(at)
      for (const person of walk.people) {
        await walk.sit(person)
        expect(await walk.ask('edit.undo', {})).toMatchObject({ ok: false, refusal: { code: 'nothing-to-undo' } })
      }
      for (let at = 1; at <= done.length; at++) await redoTo(at)
      for (const person of walk.people) {
        await walk.sit(person)
        expect(await walk.ask('edit.redo', {})).toMatchObject({ ok: false, refusal: { code: 'nothing-to-redo' } })
      }
      // And some of the way at random, as a person does who is looking for something.
      let at = done.length
      for (let turn = 0; turn < 40; turn++) {
        if (at === 0 || (at < done.length && walk.chance.maybe(0.4))) await redoTo(++at)
        else await undoTo(--at)
      }
      expect(walk.db.pragma('foreign_key_check')).toEqual([])
      expect(await checkCatalogue(walk.file)).toEqual([])
    } finally {
      await walk.close()
    }
  },
)

test.each([11, 12])(
  'of two people at once neither takes back what the other built (seed %i)',
  { timeout: 300_000 },
  async seed => {
    const walk = await begin(seed)
    const { chance, db } = walk
    try {
      for (let step = 0; step < 240; step++) {
        const person = chance.pick(walk.people)
        await walk.sit(person)
        if (chance.maybe(0.7)) {
          const name = chance.pick(quickSteps)
          const input = wanted(chance, name) ? steps[name](chance) : null
          if (input !== null && (await walk.ask(name, input)).ok) succeeded.add(name)
          continue
        }
        const way = chance.maybe(0.3) ? 'redo' : 'undo'
        const where = `seed ${seed}, step ${step}, ${way}`
        const before = dump(db)
        const answered = await walk.ask(`edit.${way}`, {})
        if (answered.ok) {
          met.done++
          const owner = db
            .prepare('SELECT person FROM edit WHERE id = (SELECT undoes FROM edit ORDER BY id DESC LIMIT 1)')
            .pluck()
            .get()
          expect(owner, where).toBe(person)
        } else {
          expect(['undo-blocked', `nothing-to-${way}`], where).toContain(answered.refusal.code)
          if (answered.refusal.code === 'undo-blocked') met.blocked++
          sameState(walk, before, where)
        }
        checkText(db)
        expect(db.pragma('foreign_key_check'), where).toEqual([])
      }
      // One builds on the other's edit at last, so that this outcome does not hang on chance.
      for (const [at, person] of walk.people.entries()) {
        await walk.sit(person)
        expect(await walk.ask('room.setBuilding', { name: `Ropery ${at}` })).toMatchObject({ ok: true })
      }
      await walk.sit(walk.people[0] ?? '')
      const built = dump(db)
      expect(await walk.ask('edit.undo', {})).toMatchObject({ ok: false, refusal: { code: 'undo-blocked' } })
      met.blocked++
      sameState(walk, built, `seed ${seed}, undo of what the other built on`)
      expect(await checkCatalogue(walk.file)).toEqual([])
    } finally {
      await walk.close()
    }
  },
)

test('each procedure has succeeded, and each outcome of an undo was met, or the walks proved nothing', () => {
  expect(Object.keys(steps).filter(name => !succeeded.has(name))).toEqual([])
  expect(met.done).toBeGreaterThan(40)
  expect(met.blocked).toBeGreaterThan(0)
})
