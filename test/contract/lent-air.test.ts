/**
 * Terms of climate over a loan: a work that stood in two rooms and a store, loggers that read in both rooms, one with a
 * gap and in two files that meet within a day. What the term says is what the loggers' rows say, counted one by one.
 */
import { expect, onTestFinished, test } from 'vitest'
import { answer } from '../../main/hosts/answer.ts'
import { createHost } from '../../main/hosts/host.ts'
import { callOn, give, makeFixture } from './fixture.ts'
import { ownFolder } from './opened.ts'

const step = 600
const seconds = (moment: string) => Date.parse(moment) / 1000

interface Read {
  readonly at: number
  readonly humidity: number
}

/** A reading every ten minutes; damp from noon to three on the days named. */
function readings(from: string, until: string, usual: number, damp: readonly string[]): Read[] {
  const found: Read[] = []
  for (let at = seconds(from); at < seconds(until); at += step) {
    const moment = new Date(at * 1000).toISOString()
    const wet = damp.includes(moment.slice(0, 10)) && moment.slice(11, 13) >= '12' && moment.slice(11, 13) < '15'
    found.push({ at, humidity: wet ? usual + 10 + ((at / step) % 7) / 10 : usual })
  }
  return found
}

const csv = (rows: readonly Read[]) =>
  new TextEncoder().encode(
    `Time,RH %\n${rows.map(({ at, humidity }) => `${new Date(at * 1000).toISOString()},${humidity.toFixed(1)}`).join('\n')}\n`,
  )

test('a term of humidity over a loan says what the rows of the loggers say', { timeout: 60_000 }, async () => {
  const folder = ownFolder()
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-01T08:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: folder, clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(() => host.close())
  await callOn(host, 'desk.sit', { person: known.person })
  const { id: other } = await callOn(host, 'room.add', {
    name: 'Room 2',
    height: 3000,
    walls: [6000, 5000, 6000, 5000].map(length => ({ length })),
  })
  const { id: store } = await callOn(host, 'location.add', { kind: 'place', name: 'Store' })
  const { id: loan } = await callOn(host, 'loan.add', {
    party: known.lender,
    number: 'QC 7',
    first: '2031-04-01',
    last: '2031-04-30',
  })
  await callOn(host, 'loan.addWorks', { loan, works: [known.pans, known.raking] })
  const said = 'Between 45 and 55 per cent at all times.'
  await callOn(host, 'loan.addTerm', { loan, kind: 'humidity', low: 45, high: 55, said })

  const of = async (work: string) => {
    const { terms } = await callOn(host, 'loan.terms', { loan, exhibition: known.show })
    return terms[0]?.works.find(each => each.work === work)
  }
  expect(await of(known.pans)).toMatchObject({
    state: 'unknown',
    text: 'No relative humidity of Room 1 is on record from 1 April 2031 to 30 April 2031, 30 days: bring its logger’s file in.',
  })
  expect((await of(known.raking))?.text).toContain('Nothing says in which room it is')

  const first = readings('2031-03-20T00:00:00Z', '2031-04-12T10:30:00Z', 50, ['2031-03-25', '2031-04-05', '2031-04-10'])
  const second = readings('2031-04-12T10:30:00Z', '2031-04-26T00:00:00Z', 50, ['2031-04-12', '2031-04-20'])
  const elsewhere = readings('2031-04-01T00:00:00Z', '2031-05-20T00:00:00Z', 52, [
    '2031-04-02',
    '2031-04-16',
    '2031-05-10',
  ])
  const bring = async (name: string, room: string, logger: string, rows: readonly Read[]) =>
    callOn(host, 'climate.takeFile', { handle: give(host, name, csv(rows)), room, logger })
  await bring(
    'a.csv',
    known.room,
    'L1',
    first.filter(({ at }) => at < seconds('2031-04-07T00:00:00Z') || at >= seconds('2031-04-09T00:00:00Z')),
  )
  await bring('b.csv', known.room, 'L1', second)
  await bring('c.csv', other, 'L2', elsewhere)

  // Planned in room 1 until it is moved: to room 2 on the 15th, at noon and a quarter of the 16th into the store.
  const [toOther, toStore] = ['2031-04-15T09:00:00.000Z', '2031-04-16T13:05:00.000Z']
  await callOn(host, 'movement.add', { works: [known.pans], to: known.northFace, at: '2031-04-03T09:00:00.000Z' })
  await callOn(host, 'movement.add', { works: [known.pans], to: other, at: toOther })
  await callOn(host, 'movement.add', { works: [known.pans], to: store, at: toStore })

  const begin = new Date(2031, 3, 1).getTime() / 1000
  const lost = (at: number) => at >= seconds('2031-04-07T00:00:00Z') && at < seconds('2031-04-09T00:00:00Z')
  const mine = [
    ...[...first, ...second].filter(({ at }) => at >= begin && at < seconds(toOther) && !lost(at)),
    ...elsewhere.filter(({ at }) => at >= seconds(toOther) && at < seconds(toStore)),
  ]
  const wet = mine.filter(({ humidity }) => Number(humidity.toFixed(1)) > 55)
  const most = Math.max(...mine.map(({ humidity }) => Number(humidity.toFixed(1))))
  // The last reading before it went stands for five minutes, the others for ten.
  const minutes = wet.reduce((sum, { at }) => sum + Math.min(step, seconds(toStore) - at) / 60, 0)
  const days = new Set(mine.map(({ at }) => new Date(at * 1000).toDateString())).size
  const found = await of(known.pans)
  expect(found?.state).toBe('broken')
  expect(found?.text).toContain(`Room 2 reached ${most.toFixed(1)} % on `)
  expect(found?.text).toContain(
    `, ${(most - 55).toFixed(1)} % too much; beyond the term for ${(minutes / 60).toFixed(1)} h (Room 1 9 h, Room 2 `,
  )
  expect(found?.text).toContain(`Read on ${days} of 30 days from 1 April 2031 to 30 April 2031.`)

  const findings = (await callOn(host, 'finding.list', { exhibition: known.show, face: known.northFace })).findings
  const quoted = findings.find(({ code }) => code === 'term-humidity')
  expect(quoted).toMatchObject({ severity: 'settle', subject: { kind: 'work', id: known.pans } })
  expect(quoted?.text).toContain(`loan QC 7 says “${said}”. ${found?.text}`)

  // A file that was of another room counts no more.
  const { files } = await callOn(host, 'climate.room', { room: other })
  await callOn(host, 'climate.withdrawFile', { file: files[0]?.id ?? '', why: 'of the store' })
  expect((await of(known.pans))?.text).toContain('Room 1 reached 60.6 %')
  expect((await of(known.pans))?.text).toContain('beyond the term for 9 h. Read on')
  await answer(host, 'loan.updateTerm', { id: quoted?.figures.term, changes: { high: { was: 55, to: 61 } } })
  expect(await of(known.pans)).toMatchObject({ state: 'holds' })
})
