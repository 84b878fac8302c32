/** The history of a record with all that belongs to it: nothing of it is lost, whatever became of the rows since. */
import { beforeEach, expect, test } from 'vitest'
import type { RecordChange } from '../../src/contract/areas/history.ts'
import { type Known, makeFixture } from './fixture.ts'
import { type Opened, openOn, ownFolder, refusalCode } from './opened.ts'

let here: Opened
let known: Known

beforeEach(async () => {
  const folder = ownFolder()
  const fixture = await makeFixture(folder)
  known = fixture.known
  here = openOn(folder, fixture.file)
  await here.call('desk.sit', { person: known.person })
}, 60_000)

const told = ({ one, kind, fields }: RecordChange) =>
  [one, kind, Object.fromEntries(fields.map(({ column, from, to }) => [column, [from, to]]))] as const

async function newest(): Promise<number> {
  return (await here.call('edit.state', {})).last
}

test('of a work: its numbers too, with what was written and what was removed, newest first', async () => {
  const { id } = await here.call('work.add', { title: 'Slack water' })
  const added = await newest()
  const first = await here.call('edit.changes', { edit: added })
  const { id: number } = await here.call('work.addNumber', { work: id, kind: 'loan', text: 'L.31 .4' })
  await here.call('work.update', { id, changes: { title: { was: 'Slack water', to: 'Slack water, dusk' } } })
  await here.call('work.removeNumber', { id: number })
  await here.call('work.update', { id, changes: { medium: { was: '', to: 'etching' } } })

  const { total, changes } = await here.call('edit.history', { table: 'work', id })
  expect(total).toBe(changes.length)
  expect(changes.map(({ edit }) => edit)).toEqual(changes.map(({ edit }) => edit).sort((a, b) => b - a))
  const [medium, removed, title, written] = changes.filter(({ fields }) => fields.length > 0).map(told)
  expect(medium).toEqual(['work', 'changed', { medium: ['', 'etching'] }])
  expect(removed).toEqual([
    'number of a work',
    'removed',
    { work: [id, null], kind: ['loan', null], text: ['L.31 .4', null], by: ['Tamsin Oake', null] },
  ])
  expect(title).toEqual(['work', 'changed', { title: ['Slack water', 'Slack water, dusk'] }])
  expect(written).toEqual([
    'number of a work',
    'added',
    { work: [null, id], kind: [null, 'loan'], text: [null, 'L.31 .4'], by: [null, 'Tamsin Oake'] },
  ])
  // What an addition wrote reads the same whatever came after it; the work is called what it is called now.
  const later = await here.call('edit.changes', { edit: added })
  expect(later.changes.map(told)).toEqual(first.changes.map(told))
  expect(later.changes.find(({ table }) => table === 'work')?.called).toBe('Slack water, dusk')
  // Undone and redone, removed and added again: each time tells its own.
  await here.call('edit.undo', {})
  await here.call('edit.redo', {})
  expect((await here.call('edit.changes', { edit: added })).changes.map(told)).toEqual(first.changes.map(told))
  const page = await here.call('edit.history', { table: 'work', id, limit: 2 })
  expect([page.changes.length, page.total]).toEqual([2, total + 2])
})

test('keys of other rows are told by what those are called, those that are gone too', async () => {
  const { changes } = await here.call('edit.history', { table: 'work', id: known.causeway })
  const places = changes.filter(({ table, kind }) => table === 'placement' && kind === 'added')
  expect(places.length).toBeGreaterThan(0)
  const wall = places[0]?.fields.find(({ column }) => column === 'face')
  expect(wall?.names).toEqual([null, 'north'])
  const { id: work, entry } = await here.call('work.duplicate', { id: known.causeway, exhibition: known.show })
  const duplicated = await newest()
  expect(entry).not.toBeNull()
  await here.call('edit.undo', {})
  const gone = await here.call('edit.changes', { edit: duplicated })
  expect(gone.changes.find(({ table }) => table === 'entry')?.fields).toContainEqual({
    column: 'work',
    called: 'work',
    unit: '',
    from: null,
    to: work,
    names: [null, 'Causeway'],
  })
})

test('edits are found by words of what was done, in any order and case, and by who did it', async () => {
  await here.call('work.update', { id: known.causeway, changes: { note: { was: '', to: 'dry' } } })
  const all = await here.call('edit.list', {})
  const mine = await here.call('edit.list', { person: all.people[0] ?? '' })
  expect(all.people).toHaveLength(1)
  expect([mine.total, mine.edits[0]?.person]).toEqual([1, all.people[0]])
  const [last] = all.edits
  const words = (last?.label ?? '').split(' ').reverse().join(' ').toUpperCase()
  expect((await here.call('edit.list', { find: words })).edits[0]).toEqual(last)
  expect(await here.call('edit.list', { find: 'no such words' })).toMatchObject({ total: 0, edits: [] })
})

test('what is no edit and no journaled table is refused by its place', async () => {
  expect(refusalCode(await here.ask('edit.changes', { edit: 99_999 }))).toBe('not-found')
  for (const table of ['journal', 'sqlite_schema', 'work"; DROP TABLE work; --'])
    expect(refusalCode(await here.ask('edit.history', { table, id: known.causeway }))).toBe('not-found')
})

test('why an edit was made stays beside it, taken back or not, and each further reason beside the first', async () => {
  const { id } = await here.call('work.add', { title: 'Slack water' })
  await here.call('work.update', { id, changes: { title: { was: 'Slack water', to: 'Slack water, dusk' } } })
  const edit = await newest()
  await here.call('edit.explain', { edit, why: 'the lender’s own list says so' })
  await here.call('edit.undo', {})
  await here.call('edit.explain', { edit, why: 'it was of another work', by: 'Bo Lind' })
  // What only adds a record is no edit: nothing of it can be taken back.
  expect(await newest()).toBe(edit + 1)
  const { changes } = await here.call('edit.history', { table: 'work', id })
  for (const change of changes) {
    const said = change.reasons.map(({ why, by }) => `${by}: ${why}`)
    const because = ['Tamsin Oake: the lender’s own list says so', 'Bo Lind: it was of another work']
    expect(said).toEqual(change.edit === edit ? because : [])
  }
  const { edits } = await here.call('edit.list', { find: 'another LENDER’S dusk' })
  expect(edits.map(line => line.edit)).toEqual([])
  expect((await here.call('edit.list', { find: 'another LENDER’S' })).edits.map(line => line.edit)).toEqual([edit])
})

test('edits of some days, by the moment they were made', async () => {
  const all = await here.call('edit.list', { limit: 500 })
  const moments = all.edits.map(({ at }) => at).sort()
  const middle = moments[Math.floor(moments.length / 2)] ?? ''
  const count = (kept: (at: string) => boolean) => moments.filter(kept).length
  const later = await here.call('edit.list', { from: middle, limit: 500 })
  const earlier = await here.call('edit.list', { until: middle, limit: 500 })
  expect([later.total, earlier.total]).toEqual([count(at => at >= middle), count(at => at < middle)])
  expect(later.total + earlier.total).toBe(all.total)
})

test('money is told in its currency, as it was before and after', async () => {
  const { id: loan } = await here.call('loan.add', { party: known.lender ?? '', number: 'QC 7' })
  const { added } = await here.call('loan.addWorks', { loan, works: [known.pans ?? ''] })
  const id = added[0]?.id ?? ''
  const [yen, euros] = [
    { minor: 700_000, currency: 'JPY' },
    { minor: 4_500_050, currency: 'EUR' },
  ]
  await here.call('loan.updateWork', { id, changes: { value: { was: null, to: yen } } })
  await here.call('loan.updateWork', { id, changes: { value: { was: yen, to: euros } } })
  await here.call('loan.addTerm', { loan, kind: 'vehicle', high: 200_000_000, choice: 'EUR' })
  await here.call('loan.addTerm', { loan, kind: 'light', high: 50 })
  const value = { value: { minor: 12_345, currency: 'KWD' }, day: '2031-01-01' }
  const { id: valuation } = await here.call('insured.addValue', { work: known.pans ?? '', ...value })
  await here.call('insured.removeValue', { id: valuation })
  const names = (changes: readonly RecordChange[], table: string, column: string) =>
    changes
      .filter(each => each.table === table)
      .flatMap(({ fields }) => fields.filter(each => each.column === column).map(each => each.names))
  const { changes } = await here.call('edit.history', { table: 'loan', id: loan })
  expect(names(changes, 'loan_work', 'value')).toEqual([
    ['JPY\u00a0700\u2009000', 'EUR\u00a045\u2009000.50'],
    [null, 'JPY\u00a0700\u2009000'],
  ])
  // A level of light is no money.
  expect(names(changes, 'loan_term', 'high')).toEqual([
    [null, null],
    [null, 'EUR\u00a02\u2009000\u2009000'],
  ])
  const own = await here.call('edit.history', { table: 'work', id: known.pans ?? '' })
  expect(names(own.changes, 'work_value', 'value')).toEqual([
    ['KWD\u00a012.345', null],
    [null, 'KWD\u00a012.345'],
  ])
})
