/** A list finds a work by any of its numbers; where numbers and words lead to several, it asks. */
import { afterEach, beforeEach, expect, test } from 'vitest'
import { type Desk, openDesk } from './desk.ts'

let desk: Desk
beforeEach(() => {
  desk = openDesk()
})
afterEach(() => desk.close())

const numbers = () =>
  desk
    .rows<{ title: string; kind: string; text: string }>(
      'SELECT title, work_number.kind, text FROM work_number JOIN work ON work.id = work ORDER BY work.n, work_number.id',
    )
    .map(({ title, kind, text }) => `${title}: ${kind} ${text}`)
const works = () => desk.rows<{ title: string }>('SELECT title FROM work ORDER BY n').map(({ title }) => title)
const take = (text: string) => desk.call('import.accept', { text })
const questions = async (text: string) =>
  (await desk.call('import.preview', { text })).rows.flatMap(row => row.questions.map(({ question }) => question))

test('knows a column of every kind of number, in three languages', async () => {
  await take(
    'Accession no;Old inventory no;Receipt no;Exhibition no;Title;Artist\n1995.5.2;61/4;E 4012;X 7;Nets;Ina Vorr\n',
  )
  expect(numbers()).toEqual([
    'Nets: permanent 1995.5.2',
    'Nets: entry E 4012',
    'Nets: exhibition X 7',
    'Nets: former 61/4',
  ])
  const { columns } = await desk.call('import.preview', {
    text: 'Inventarnummer;Alte Inv.-Nr.;Ausstellungsnummer;Titel;Künstler\n1;2;3;Netze;Ina Vorr\n',
  })
  expect(columns.map(({ field }) => field)).toEqual(['permanent', 'formerNumber', 'exhibitionNumber', 'title', 'maker'])
})

test('a work is found by a number that it had once, and keeps the one it has', async () => {
  await take('Accession no;Old no;Title;Artist;Date\n1995.5.2;1961.4;Nets;Ina Vorr;1961\n')
  // Number, maker, title and date lead to one work.
  const known = 'Accession no;Title;Artist;Date;Medium\n1961.04;Nets;Ina Vorr;1961;linen\n'
  expect(await questions(known)).toEqual([])
  await take(known)
  expect(works()).toEqual(['Nets'])
  expect(numbers()).toEqual(['Nets: permanent 1995.5.2', 'Nets: former 1961.4'])
  // The number alone is a question.
  const other = 'Accession no;Title;Artist\n1961.4;The nets;Ina Vorr\n'
  expect(await questions(other)).toEqual(['1961.4 was once “Nets” by Ina Vorr. Is this the same work?'])
})

test('a work is found by its entry number where the words agree, and not by that of a whole delivery', async () => {
  await take('Receipt no;Title;Artist\nE 4012;Nets;Ina Vorr\nE 4012;Groyne;Ina Vorr\n')
  expect(works()).toEqual(['Nets', 'Groyne'])
  expect(await questions('Receipt no;Title\ne 4012;Nets\n')).toEqual(
    ['E 4012 is the entry number of “Nets” by Ina Vorr. Is this the same work?'].map(text =>
      text.replace('E 4012', 'e 4012'),
    ),
  )
  expect(await questions('Receipt no;Title;Artist\nE 4012;Slack water;Ina Vorr\n')).toEqual([])
})

test('two numbers of one row that stand for two works are a question, whichever agrees with its words', async () => {
  await take(
    'Accession no;Lender no;Title;Artist;Lender\n1995.5.2;;Nets;Ina Vorr;Quay\n1995.5.3;Q 12;Groyne;Ina Vorr;Quay\n',
  )
  const clash = 'Accession no;Lender no;Title;Artist;Lender\n1995.5.2;Q 12;Nets;Ina Vorr;Quay\n'
  expect(await questions(clash)).toEqual([
    '1995.5.2 is “Nets” by Ina Vorr, and Q 12 is “Groyne” by Ina Vorr. Which of them is it?',
  ])
  await take(clash)
  // Until somebody answers it is a work of its own, and neither of the two has changed.
  expect(works()).toEqual(['Nets', 'Groyne', 'Nets'])
})
