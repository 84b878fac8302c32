/** What a loan says alike of several works, told once and laid open again. */
import { describe, expect, test } from 'vitest'
import type { Finding } from '../../../src/contract/shared.ts'
import { grouped, type LoanFinding, laidOpen } from '../../../src/loan/grouped.ts'
import { periodFindings } from '../../../src/loan/period.ts'
import { randomFrom } from '../database/random-edits.ts'

const said = (id: string, loan: string, more: Partial<Finding> = {}): LoanFinding => {
  const ofSeveral = (works: string) => `${works}: loan ${loan} says “watched”. ${more.text ?? 'No plan tells it.'}`
  const subject = { kind: 'work', id }
  const figures = { term: loan }
  const finding = {
    severity: 'settle',
    code: 'term-security-asked',
    figures,
    ...more,
    subject,
    text: ofSeveral(id),
  } as const
  return { finding, loan, called: id.toUpperCase(), ofSeveral }
}
const inOrder = (findings: readonly Finding[]) => findings.toSorted((a, b) => a.subject.id.localeCompare(b.subject.id))

describe('what a loan says alike', () => {
  test('is one finding of the loan that names its works', () => {
    expect(grouped([said('a', 'l'), said('b', 'l'), said('c', 'k')])).toEqual([
      {
        severity: 'settle',
        code: 'term-security-asked',
        subject: { kind: 'loan', id: 'l' },
        text: '2 works: loan l says “watched”. No plan tells it.',
        figures: { term: 'l' },
        works: [
          { id: 'a', called: 'A', text: 'a: loan l says “watched”. No plan tells it.' },
          { id: 'b', called: 'B', text: 'b: loan l says “watched”. No plan tells it.' },
        ],
      },
      said('c', 'k').finding,
    ])
  })

  test('is told apart where figures, sentences or loans differ, and what stops a hand always', () => {
    const apart = [
      said('a', 'l'),
      said('b', 'l', { figures: { term: 'other' } }),
      said('c', 'l', { text: 'It is not so.' }),
      said('d', 'l', { code: 'term-courier-asked' }),
      said('e', 'l', { severity: 'stop' }),
      said('f', 'l', { severity: 'stop' }),
    ]
    expect(grouped(apart)).toEqual(apart.map(({ finding }) => finding))
  })

  test('laid open is what was told of each, whatever there is', () => {
    const random = randomFrom(11)
    const one = <T>(of: readonly T[]) => of[Math.floor(random() * of.length)] as T
    for (let round = 0; round < 200; round += 1) {
      const all = Array.from({ length: Math.floor(random() * 12) }, (_, at) =>
        said(`w${at}`, one(['l', 'k']), {
          severity: one(['settle', 'settle', 'stop'] as const),
          code: one(['a', 'b']),
          figures: { most: one([1, 2]) },
          text: one(['so', 'otherwise']),
        }),
      )
      const told = grouped(all)
      expect(inOrder(laidOpen(told))).toEqual(inOrder(all.map(({ finding }) => finding)))
      expect(told.length).toBeLessThanOrEqual(all.length)
      for (const { works } of told) expect(works === undefined || works.length > 1).toBe(true)
    }
  })

  test('tells periods of several in the plural', () => {
    const lent = { loan: 'l', number: 'QC 7', partyName: 'Quay Collection', first: '2031-04-03', last: '2031-06-30' }
    const show = { opens: '2031-04-01', closes: '2031-07-01' }
    const all = ['a', 'b', 'c'].flatMap(id => periodFindings({ id, called: id }, [lent], show, day => day))
    expect(grouped(all).map(({ text }) => text)).toEqual([
      '3 works are lent from 2031-04-03 on, by loan QC 7 of Quay Collection; the show opens on 2031-04-01, 2 days before. Ask for an earlier beginning, or hang them later.',
      '3 works are lent until 2031-06-30, by loan QC 7 of Quay Collection; the show closes on 2031-07-01, one day later. Ask for a longer loan, or take them down before.',
    ])
  })
})
