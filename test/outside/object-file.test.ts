/**
 * The whole file of a work held against other readers: poppler reads its pages and openpyxl its workbook, and what both
 * say is what the program answers about the work.
 */
import { execFileSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { makeFixture } from '../contract/fixture.ts'
import { openOn, ownFolder } from '../contract/opened.ts'
import { python, run, withProgram } from './programs.ts'

/** A work with a movement, a report of two findings, a reading, a note changed twice. */
async function filed() {
  const folder = ownFolder()
  const { file, known } = await makeFixture(folder)
  const { call, host } = openOn(folder, file)
  await call('desk.sit', { person: known.person })
  const work = known.pans ?? ''
  const store = await call('location.add', { kind: 'place', name: 'Store, bay 3' })
  await call('movement.add', { works: [work], to: store.id, people: 'Ulla Brandt', reason: 'to be measured' })
  const report = await call('condition.add', { work, kind: 'incoming', examiner: 'Tamsin Oake' })
  const point = [{ x: 40, y: 55 }]
  await call('condition.addFinding', {
    report: report.id,
    form: 'mark',
    points: point,
    term: 'painting.loss',
    note: 'pin-sized',
  })
  await call('condition.addFinding', {
    report: report.id,
    form: 'mark',
    points: [{ x: 90, y: 20 }],
    term: 'painting.loss',
  })
  await call('light.addReading', { work, points: [47, 52], meter: 'meter 2' })
  for (const [was, to] of [
    ['', 'first words'],
    ['first words', 'other words'],
  ] as const)
    await call('work.update', { id: work, changes: { note: { was, to } } })
  const { files } = await call('sheet.objectFile', { work, unit: 'mm' })
  const pathOf = (ending: string) =>
    host.handles.path(files.find(({ name }) => name.endsWith(ending))?.handle ?? 'none of that ending')
  return { got: await call('work.get', { id: work }), pages: files[1]?.pages, pdf: pathOf('pdf'), xlsx: pathOf('xlsx') }
}

withProgram('poppler (pdftotext)', 'the whole file of a work on paper', () => {
  test('says what is on record, a sheet after the other', { timeout: 60_000 }, async () => {
    const { got, pages, pdf } = await filed()
    const text = run('pdftotext', ['-layout', pdf, '-'])
    const sheets = text.split('\f').filter(sheet => sheet.trim() !== '')
    expect(sheets).toHaveLength(pages ?? 0)
    for (const [at, sheet] of sheets.entries()) {
      expect(sheet).toContain(`sheet ${at + 1} of ${sheets.length}`)
      expect(sheet).toContain(got.numbers[0]?.text)
    }
    for (const words of [got.facts.title, 'Ulla Brandt', 'pin-sized', 'meter 2', 'first words', 'other words'])
      expect(text.replace(/\s+/g, ' ')).toContain(words)
    // The first sheet says on which sheet each table begins.
    const contents = [...(sheets[0] ?? '').matchAll(/(\S+(?: \S+)*?)\s+(?:nothing|\d+ lines?)\s+(\d+)$/gm)]
    expect(contents.length).toBeGreaterThan(8)
    for (const [, name = '', on = ''] of contents) expect(sheets[Number(on) - 1], name).toContain(name)
  })
})

withProgram('openpyxl', 'the whole file of a work as a workbook', () => {
  test('has the figures as numbers and every change', { timeout: 60_000 }, async () => {
    const { got, xlsx } = await filed()
    const script =
      'import json,sys,openpyxl\nbook=openpyxl.load_workbook(sys.argv[1])\nprint(json.dumps({s.title:[[c if isinstance(c,(int,float,str)) else None for c in r] for r in s.iter_rows(values_only=True)] for s in book}))'
    const book: Record<string, (string | number | null)[][]> = JSON.parse(
      execFileSync(python ?? '', ['-c', script, xlsx], { encoding: 'utf8' }),
    )
    const heights = (book.Sizes ?? []).flatMap(row => row.filter(cell => typeof cell === 'number'))
    for (const { height, width } of got.sizes) expect(heights).toEqual(expect.arrayContaining([height, width]))
    const found = (book.Condition ?? []).filter(row => row.includes('pin-sized'))
    expect(found).toHaveLength(1)
    expect(found[0]).toEqual(expect.arrayContaining([1, 40, 55]))
    expect(book['Readings of light']?.at(-1)).toEqual(expect.arrayContaining([52, '47, 52', 'meter 2']))
    const notes = (book['What was done to it'] ?? []).filter(row => row.includes('other words'))
    expect(notes[0]).toEqual(expect.arrayContaining(['first words', 'other words']))
    expect(Object.keys(book)).toEqual(expect.arrayContaining(['Numbers', 'Where it was', 'Pictures and documents']))
  })
})

withProgram('poppler (pdftotext)', 'the whole file of a loan on paper', () => {
  test('says what was agreed, and sums its values by currency', { timeout: 60_000 }, async () => {
    const folder = ownFolder()
    const { file, known } = await makeFixture(folder)
    const { call, host } = openOn(folder, file)
    await call('desk.sit', { person: known.person })
    // The loan began before today, whenever that is, and goes on.
    const period = { first: '2025-03-01', last: '2099-07-20' }
    const loan = await call('loan.add', { party: known.lender, number: 'QC 2031/7', ...period })
    const { added } = await call('loan.addWorks', { loan: loan.id, works: [known.pans, known.causeway, known.raking] })
    for (const [at, minor] of [1_200_050, 45_000_000].entries())
      await call('loan.updateWork', {
        id: added[at]?.id ?? '',
        changes: { value: { was: null, to: { minor, currency: 'EUR' } } },
      })
    await call('movement.add', {
      works: [known.pans],
      to: known.room,
      people: 'Ulla Brandt',
    })
    await call('loan.addTerm', { loan: loan.id, kind: 'light', high: 50 })
    const works = [{ work: known.pans, condition: 'as when it left', crate: 'crate 5' }]
    const came = await call('receipt.add', { loan: loan.id, kind: 'received', day: '2025-03-02', works })
    const { files } = await call('sheet.loanFile', { loan: loan.id })
    const pdf = host.handles.path(files.find(({ name }) => name.endsWith('pdf'))?.handle ?? 'none')
    const text = run('pdftotext', ['-layout', pdf, '-']).replace(/[\s\u2009]+/g, ' ')
    // 12 000.50 and 450 000 are 462 000.50.
    for (const words of [
      'The file of QC 2031/7',
      'Together EUR 462 000.50.',
      '1 without a value agreed.',
      'Ulla Brandt',
      'received, not back',
      'not received yet',
      came.number,
      'as when it left',
    ])
      expect(text).toContain(words)
    const printed = await call('sheet.receipt', { receipt: came.id })
    const paper = run('pdftotext', ['-layout', host.handles.path(printed.files[0]?.handle ?? 'none'), '-'])
    for (const words of [
      'Works received on loan from Quay Collection',
      'Salt pans',
      'crate 5',
      'Handed over by',
      'Received by',
    ])
      expect(paper.replace(/[\s\u2009]+/g, ' ')).toContain(words)
  })
})
