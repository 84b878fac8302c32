/** Values are on no checklist unless somebody asked for them; of a whole file there is a copy to give away; feet say which. */
import ExcelJS from 'exceljs'
import { expect, test } from 'vitest'
import type { Output } from '../../src/contract/contract.ts'
import { makeFixture } from './fixture.ts'
import { openOn, ownFolder } from './opened.ts'

const secret = { value: '45 123', reach: 'ring 0199', place: 'Vault Nine', indemnity: '7 654' }

test('what papers hold, asked for and not', { timeout: 120_000 }, async () => {
  const folder = ownFolder()
  const { file, known } = await makeFixture(folder)
  const { call, host } = openOn(folder, file)
  await call('desk.sit', { person: known.person })
  const exhibition = known.show ?? ''
  const { id: loan } = await call('loan.add', {
    party: known.lender,
    number: 'QC 7',
    first: '2025-03-01',
    last: '2099-07-20',
  })
  await call('loan.addContact', { loan, name: 'Ines Farrow', role: 'courier', reach: secret.reach })
  const { added } = await call('loan.addWorks', { loan, works: [known.pans] })
  const euros = (minor: number) => ({ minor, currency: 'EUR' })
  const value = { was: null, to: euros(45_123_00) }
  await call('loan.updateWork', { id: added[0]?.id ?? '', changes: { value } })
  await call('loan.addTerm', { loan, kind: 'indemnity', high: 7_654_00, choice: 'EUR' })
  await call('loan.addTerm', { loan, kind: 'security', choice: 'watched' })
  const { id: vault } = await call('location.add', { kind: 'place', name: secret.place })
  await call('movement.add', { works: [known.pans], to: vault })
  await call('insured.addValue', { work: known.pans, value: euros(45_123_00), day: '2025-03-01' })

  async function read({ files }: Output<'sheet.set'>) {
    const words: string[] = []
    const feet: string[] = []
    for (const { handle } of files.filter(({ name }) => name.endsWith('xlsx'))) {
      const book = new ExcelJS.Workbook()
      await book.xlsx.readFile(host.handles.path(handle))
      book.eachSheet(sheet => {
        feet.push(sheet.headerFooter.oddFooter ?? '')
        sheet.eachRow(row => row.eachCell(cell => words.push(cell.text)))
      })
    }
    return { text: words.join('\n').replace(/[\u2009\u202f\u00a0]/g, ' '), feet }
  }
  const told = (text: string) => Object.values(secret).filter(word => text.includes(word))

  const loanCopy = await read(await call('sheet.loanFile', { loan, withValues: false }))
  expect(told(loanCopy.text)).toEqual([])
  expect(loanCopy.text).toContain('Ines Farrow')
  expect(loanCopy.text).toContain('watched')
  for (const foot of loanCopy.feet) expect(foot).toContain('without values, contacts, places and changes')
  const loanWhole = await read(await call('sheet.loanFile', { loan }))
  expect(told(loanWhole.text)).toEqual(Object.values(secret))
  for (const foot of loanWhole.feet) expect(foot).toContain('with values, contacts')

  const objectCopy = await read(await call('sheet.objectFile', { work: known.pans, withValues: false }))
  expect(told(objectCopy.text)).toEqual([])
  const objectWhole = await read(await call('sheet.objectFile', { work: known.pans }))
  expect(told(objectWhole.text)).toEqual([secret.value, secret.place, secret.indemnity])

  const checklist = await read(await call('sheet.checklist', { exhibition }))
  expect([told(checklist.text), checklist.feet]).toEqual([[], [expect.stringContaining('without values')]])
  const valued = await read(await call('sheet.checklist', { exhibition, withValues: true }))
  expect([told(valued.text), valued.feet]).toEqual([[secret.value], [expect.stringContaining('· with values')]])
  expect(told((await read(await call('sheet.set', { exhibition }))).text)).toEqual([])

  // What has no such choice never holds what works are worth or how to reach whom.
  for (const name of ['sheet.hangList', 'sheet.labels', 'sheet.hardware', 'sheet.locks'] as const) {
    expect(told((await read(await call(name, { exhibition }))).text), name).toEqual([])
  }
  const outgoing = await read(await call('sheet.outgoing', { exhibition }))
  expect(told(outgoing.text).filter(word => word !== secret.place)).toEqual([])
  const wall = await call('sheet.preview', { exhibition, face: known.northFace })
  expect(told(JSON.stringify(wall.pages))).toEqual([])
})
