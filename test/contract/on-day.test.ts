/** What was agreed on a day reads as it stood then, whatever was written, changed or taken off since. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { callOn, makeFixture } from './fixture.ts'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

test('terms and values of a loan on days between its changes', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-on-day-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  /** What is done on a day: a desk of its own, at eight in the morning. */
  async function on<T>(day: string, act: (host: Host) => Promise<T>): Promise<T> {
    const clock = { at: `${day}T08:00:00.000Z`, ids: day.replaceAll('-', '') }
    const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
    host.openFile(file)
    await callOn(host, 'desk.sit', { person: known.person })
    const answer = await act(host)
    await host.close()
    return answer
  }
  const loan = await on('2031-06-01', async host => {
    const { id } = await callOn(host, 'loan.add', { party: known.lender, number: 'QC 9', first: '2031-05-01' })
    const { added } = await callOn(host, 'loan.addWorks', { loan: id, works: [known.pans, known.causeway] })
    const item = added[0]?.id ?? ''
    const light = await callOn(host, 'loan.addTerm', { loan: id, kind: 'light', high: 50 })
    const glazing = await callOn(host, 'loan.addTerm', { loan: id, kind: 'glazing', choice: 'glass' })
    const other = await callOn(host, 'loan.addTerm', { loan: id, kind: 'light', high: 40, item: added[1]?.id ?? '' })
    const value = { was: null, to: { minor: 1_000_00, currency: 'EUR' } }
    await callOn(host, 'loan.updateWork', { id: item, changes: { value } })
    return { item, light: light.id, glazing: glazing.id, other: other.id }
  })
  await on('2031-06-10', async host => {
    await callOn(host, 'loan.updateTerm', { id: loan.light, changes: { high: { was: 50, to: 80 } } })
    await callOn(host, 'loan.removeTerm', { id: loan.glazing })
    await callOn(host, 'loan.removeTerm', { id: loan.other })
    const value = { was: { minor: 1_000_00, currency: 'EUR' }, to: { minor: 2_000_00, currency: 'EUR' } }
    await callOn(host, 'loan.updateWork', { id: loan.item, changes: { value } })
  })
  // Taken off by a slip and brought back, it stood all the time but for that day.
  await on('2031-06-20', async host => {
    await callOn(host, 'loan.removeTerm', { id: loan.light })
    await callOn(host, 'edit.undo', {})
  })
  const told = (day: string) =>
    on('2031-06-30', async host => {
      const [lent] = (await callOn(host, 'work.onDay', { work: known.pans, day })).loans
      return {
        value: lent?.value?.minor,
        valueThen: lent?.valueThen?.value?.minor,
        terms: lent?.terms.map(({ kind, high, written, stood }) => [kind, high, written.slice(0, 10), stood?.high]),
        takenOff: lent?.takenOff.map(({ kind, choice, at, person }) => [kind, choice, at.slice(0, 10), person]),
      }
    })
  const gone = ['glazing', 'glass', '2031-06-10', 'Tamsin Oake']
  // Typed a month after the loan began, they are told with the day on which they were written down.
  expect(await told('2031-05-15')).toEqual({
    value: 2_000_00,
    valueThen: undefined,
    terms: [['light', 80, '2031-06-01', undefined]],
    takenOff: [],
  })
  expect(await told('2031-06-05')).toEqual({
    value: 2_000_00,
    valueThen: 1_000_00,
    terms: [['light', 80, '', 50]],
    takenOff: [gone],
  })
  const since = { value: 2_000_00, valueThen: undefined, terms: [['light', 80, '', undefined]], takenOff: [] }
  expect(await told('2031-06-10')).toEqual(since)
  expect(await told('2031-06-15')).toEqual(since)
  expect(await told('2031-06-25')).toEqual(since)
})

test('a person’s word on a term, as it stood each day', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-on-day-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  async function on<T>(day: string, act: (host: Host) => Promise<T>): Promise<T> {
    const clock = { at: `${day}T08:00:00.000Z`, ids: day.replaceAll('-', '') }
    const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
    host.openFile(file)
    await callOn(host, 'desk.sit', { person: known.person })
    const answer = await act(host)
    await host.close()
    return answer
  }
  const yes = { kept: true, by: 'Ines Farrow', on: '2031-06-09', note: 'rota' }
  const no = { kept: false, by: 'Bo Lind', on: '2031-06-14', note: '' }
  const term = await on('2031-06-01', async host => {
    const { id: loan } = await callOn(host, 'loan.add', { party: known.lender, number: 'QC 9', first: '2031-05-01' })
    await callOn(host, 'loan.addWorks', { loan, works: [known.pans] })
    const { id } = await callOn(host, 'loan.addTerm', { loan, kind: 'security', choice: 'watched' })
    return id
  })
  const say = (day: string, was: typeof yes | null, to: typeof yes | null) =>
    on(day, host => callOn(host, 'loan.updateTerm', { id: term, changes: { confirmed: { was, to } } }))
  const told = (day: string) =>
    on('2031-06-30', async host => {
      const [lent] = (await callOn(host, 'work.onDay', { work: known.pans, day })).loans
      const [one] = [...(lent?.terms ?? []), ...(lent?.takenOff ?? [])]
      return one === undefined ? undefined : 'wordThen' in one ? [one.word, one.wordThen] : ['gone', one.word]
    })
  await say('2031-06-11', null, yes)
  // Said on the ninth, written down on the eleventh.
  expect(await told('2031-06-08')).toEqual([null, null])
  expect(await told('2031-06-10')).toEqual([yes, { word: null }])
  expect(await told('2031-06-11')).toEqual([yes, null])
  await say('2031-06-15', yes, no)
  expect(await told('2031-06-12')).toEqual([null, { word: yes }])
  expect(await told('2031-06-14')).toEqual([no, { word: yes }])
  expect(await told('2031-06-15')).toEqual([no, null])
  await say('2031-06-20', no, null)
  expect(await told('2031-06-15')).toEqual([null, { word: no }])
  expect(await told('2031-06-20')).toEqual([null, null])
  await on('2031-06-25', host => callOn(host, 'loan.removeTerm', { id: term }))
  expect(await told('2031-06-17')).toEqual(['gone', no])
  expect(await told('2031-06-22')).toEqual(['gone', null])
})

test('damage of its set and of its parts, whose it is', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-on-day-'))
  folders.push(folder)
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-14T08:00:00.000Z', ids: 'd' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  await callOn(host, 'desk.sit', { person: known.person })
  const works = [known.causeway, known.raking]
  const { id: set } = await callOn(host, 'set.make', { works, exhibition: known.show, form: 'row', gapX: 30, gapY: 0 })
  await callOn(host, 'damage.add', { work: known.causeway, foundAt: '2031-06-12T09:00:00.000Z', reference: 'D-1' })
  await callOn(host, 'damage.add', { work: set, foundAt: '2031-06-13T09:00:00.000Z', reference: 'D-2' })
  const told = async (work: string, day: string) =>
    (await callOn(host, 'work.onDay', { work, day })).damage.map(({ reference, whose }) => [reference, whose])
  const { title } = (await callOn(host, 'work.get', { id: set })).facts
  expect(await told(known.causeway, '2031-06-11')).toEqual([])
  expect(await told(known.causeway, '2031-06-13')).toEqual([
    ['D-1', ''],
    ['D-2', title || 'untitled'],
  ])
  // What happened to one part alone is told of the set, not of its other part.
  expect(await told(set, '2031-06-13')).toEqual([
    ['D-1', 'Causeway'],
    ['D-2', ''],
  ])
  expect(await told(known.raking, '2031-06-13')).toEqual([['D-2', title || 'untitled']])
  await host.close()
})
