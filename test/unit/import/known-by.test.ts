/** What a work is known by, as lists in three languages head it: read, written on our checklist, read again. */
import { afterEach, beforeEach, expect, test } from 'vitest'
import { type Desk, openDesk } from './desk.ts'

let desk: Desk
beforeEach(() => {
  desk = openDesk()
})
afterEach(() => desk.close())

const stored = () =>
  desk.rows<Record<string, string>>(
    `SELECT title, object_name, title_translation, title_language, inscriptions, subject, description,
         place_of_origin, distinguishing, department FROM work ORDER BY n`,
  )
const known = {
  title: 'Salzgarten',
  object_name: 'mezzotint',
  title_translation: 'Salt pans',
  title_language: 'German',
  inscriptions: 'A. R. below right',
  subject: 'women raking salt',
  description: 'dark, wide margins',
  place_of_origin: 'Tamble',
  distinguishing: 'a mended corner',
  department: 'Prints',
}
// Common practice, no source: headings as lenders write them.
test.each([
  [
    'English',
    'Lender’s no.,Title,Name of the object,Translated title,Language,Signature and marks,Subject matter,Description,Place made,Distinguishing features,Department',
  ],
  [
    'French',
    'N° du prêteur,Titre,Dénomination,Traduction du titre,Langue du titre,Inscriptions et marques,Sujet représenté,Description sommaire,Lieu de création,Signes distinctifs,Département',
  ],
  [
    'German',
    'Leihgebernummer,Titel,Sachbezeichnung,Titelübersetzung,Sprache des Titels,Beschriftung,Darstellung,Kurzbeschreibung,Entstehungsort,Besondere Merkmale,Abteilung',
  ],
])('is read under %s headings, comes out on our checklist and back unchanged', async (_, headings) => {
  const row =
    'Q 1,Salzgarten,mezzotint,Salt pans,German,A. R. below right,women raking salt,"dark, wide margins",Tamble,a mended corner,Prints'
  const { exhibition } = await desk.call('import.accept', {
    text: `${headings}\n${row}\n`,
    lenderName: 'Quay',
    exhibitionTitle: 'Low Water',
  })
  expect(stored()).toEqual([known])
  const written = await desk.call('sheet.checklist', { exhibition: exhibition ?? '' })
  const before = desk.dump()
  const handle = written.files[0]?.handle ?? ''
  expect(await desk.call('import.accept', { handle, exhibition: exhibition ?? '' })).toMatchObject({ unchanged: 1 })
  expect(desk.dump()).toBe(before)
})

test('of several columns of inscriptions stands whole in one', async () => {
  const text = 'Lender’s no.,Title,Signature,Stamps\nQ 1,Nets,B. L. in red,harbour office 1904\n'
  await desk.call('import.accept', { text, lenderName: 'Quay' })
  expect(stored().map(({ inscriptions }) => inscriptions)).toEqual(['B. L. in red\nharbour office 1904'])
})
