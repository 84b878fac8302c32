/**
 * What a loan says alike of several works of a show: told once, wherever they hang, and laid open the same as what each
 * work's own terms and days say; settled with one reason, work by work underneath.
 */
import { expect, test } from 'vitest'
import type { Finding } from '../../src/contract/shared.ts'
import { laidOpen } from '../../src/loan/grouped.ts'
import { wallOfSix } from './wall-of-six.ts'

const byLoan = ({ code }: Finding) => code.startsWith('loan-') || code.startsWith('term-')

test('a loan of works on two walls and on none', { timeout: 60_000 }, async () => {
  const { here, show, faces, work, entry, place } = await wallOfSix()
  const { call } = here
  await call('exhibition.update', {
    id: show,
    changes: { opens: { was: '', to: '2031-04-01' }, closes: { was: '', to: '2031-07-01' } },
  })
  const loose = (await call('work.add', { title: 'G', exhibition: show })).id
  const [north = '', east = ''] = faces
  await call('placement.remove', { placements: [place.F ?? ''] })
  await call('placement.put', {
    exhibition: show,
    places: [{ entry: entry.F ?? '', face: east, x: 2600, rule: 'face', y: null, was: null }],
  })
  const lent = [work.A, work.B, work.C, work.F, loose].map(id => id ?? '')
  const { id: party } = await call('party.add', { kind: 'lender', name: 'Quay Collection' })
  const { id: loan } = await call('loan.add', { party, number: 'QC 7', first: '2031-03-01', last: '2031-06-30' })
  await call('loan.addWorks', { loan, works: lent })
  const { id: term } = await call('loan.addTerm', { loan, kind: 'security', choice: 'watched', said: 'Watched.' })

  const told = async (face?: string) =>
    (await call('finding.list', { exhibition: show, ...(face === undefined ? {} : { face }) })).findings.filter(byLoan)
  const sums = async () => (await call('room.plan', { exhibition: show })).rooms[0]?.walls.map(({ settle }) => settle)

  const all = await told()
  expect(all.map(({ code, works }) => [code, works?.length])).toEqual([
    ['term-security-asked', 5],
    ['loan-ends-early', 5],
  ])
  // By another route: what each work's page tells of its terms, and the days from the loan alone.
  const alone = await Promise.all(
    lent.map(async id => {
      const { terms } = await call('loan.termsOfWork', { work: id, exhibition: show })
      const { title } = (await call('work.get', { id })).facts
      return terms
        .filter(({ state }) => state === 'asked')
        .map(({ id: of, text }) => ({
          code: 'term-security-asked',
          id,
          figures: { term: of },
          text: expect.stringMatching(new RegExp(`^(${title}|.*): loan QC 7 says “Watched.”. ${text}$`)),
        }))
    }),
  )
  const early = lent.map(id => ({
    code: 'loan-ends-early',
    id,
    figures: { loan, last: '2031-06-30', closes: '2031-07-01', days: 1 },
    text: expect.stringContaining('is lent until 30 June 2031, by loan QC 7 of Quay Collection'),
  }))
  const open = laidOpen(all).map(({ code, subject, figures, text }) => ({ code, id: subject.id, figures, text }))
  expect(open).toHaveLength(10)
  expect(open).toEqual(expect.arrayContaining([...alone.flat(), ...early]))
  // A wall tells those that hang there alone; one alone is told as the work it is.
  expect((await told(north)).map(({ works }) => works?.map(({ id }) => id))).toEqual([
    lent.slice(0, 3),
    lent.slice(0, 3),
  ])
  expect((await told(east)).map(({ subject }) => subject)).toEqual([
    { kind: 'work', id: work.F },
    { kind: 'work', id: work.F },
  ])

  // One settled before stays settled; the rest is settled with one reason, in one edit, and comes back in one.
  const settle = { code: 'term-security-asked', figures: JSON.stringify({ term }), reason: 'the rota says so' }
  await call('finding.settle', { ...settle, subject: work.B ?? '', reason: 'seen' })
  const [left] = await told(north)
  expect(left?.works?.map(({ id }) => id)).toEqual([work.A, work.C])
  const before = (await sums())?.[0] ?? 0
  const [subject = '', ...also] = left?.works?.map(({ id }) => id) ?? []
  await call('finding.settle', { ...settle, subject, also })
  expect((await told(north)).map(({ code }) => code)).toEqual(['loan-ends-early'])
  expect((await sums())?.[0]).toBe(before - 1)
  await call('edit.undo', {})
  expect((await told(north))[0]?.works?.map(({ id }) => id)).toEqual([work.A, work.C])
  await call('edit.redo', {})

  // A work that comes to the loan later is told, by itself.
  await call('loan.addWorks', { loan, works: [work.D ?? ''] })
  expect((await told(north)).find(({ code }) => code === 'term-security-asked')?.subject).toEqual({
    kind: 'work',
    id: work.D,
  })
  const settled = (await call('wall.elevation', { exhibition: show, face: north })).settled
  const together = settled.filter(({ reason }) => reason === 'the rota says so').map(({ id }) => id)
  expect(together).toHaveLength(2)
  const [one = '', ...others] = together
  await expect(call('finding.unsettle', { id: one, also: [...others, 'zzzz'] })).rejects.toThrow('not-found')
  await call('finding.unsettle', { id: one, also: others })
  const again = (await told(north)).find(({ code }) => code === 'term-security-asked')
  expect(again?.works?.map(({ id }) => id)).toEqual([work.A, work.C, work.D])
})
