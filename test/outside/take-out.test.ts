/** Everything that was taken out, read by Python's own ZIP and CSV readers and held against the catalogue. */
import { execFileSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { filesFolder } from '../../main/database/catalogue.ts'
import { makeFixture } from '../contract/fixture.ts'
import { openOn, ownFolder } from '../contract/opened.ts'
import { pythonAlone, withProgram } from './programs.ts'

const reader = fileURLToPath(new URL('read_take_out.py', import.meta.url))

interface Read {
  readonly tables: readonly string[]
  readonly rows: number
  readonly differing: readonly string[]
  readonly wordless: readonly string[]
  readonly works: readonly Readonly<Record<string, unknown>>[]
  readonly files: readonly string[]
}

withProgram('Python', 'everything, taken out', () => {
  test('every cell is as the catalogue has it, whatever stands in it', { timeout: 120_000 }, async () => {
    const folder = ownFolder()
    const { file, known } = await makeFixture(folder)
    const { call, host } = openOn(folder, file)
    await call('desk.sit', { person: known.person })
    // What a careless writer breaks: quotes, line ends, separators, other alphabets, a text of nothing, a formula.
    const awkward = '“a”, "b";\r\n=1+1\tЖ 🜁 ‘c’'
    await call('work.update', {
      id: known.causeway,
      changes: {
        note: { was: (await call('work.get', { id: known.causeway })).facts.note, to: awkward },
        inscriptions: { was: '', to: 'A. R., lower left' },
        placeOfOrigin: { was: '', to: 'Tamble' },
        objectName: { was: '', to: 'panel' },
      },
    })
    // What works.json says of records: damage with what was said of it but what was struck, and a receipt.
    const found = { foundAt: '2025-03-02T09:10:00.000Z', reportedAt: '2025-03-02T09:20:00.000Z' }
    const { id: damage } = await call('damage.add', {
      work: known.causeway,
      how: 'a fall',
      reporter: 'Bo Lind',
      ...found,
    })
    const at = '2025-03-02T10:00:00.000Z'
    const told = await call('damage.say', { damage, kind: 'owner told', whom: 'Nobody', at })
    await call('damage.strike', { word: told.id, why: 'it was another' })
    await call('damage.say', { damage, kind: 'action', said: 'Laid flat.', at })
    const { id: loan } = await call('loan.add', { party: known.lender, number: 'L-2025-1', first: '2025-03-01' })
    await call('loan.addWorks', { loan, works: [known.causeway] })
    const came = { loan, works: [{ work: known.causeway, condition: 'as sent' }], handedBy: 'Ines Maro' }
    await call('receipt.add', { ...came, kind: 'received', day: '2025-03-02', number: 'R-1' })
    const taken = await call('catalogue.takeOut', { files: true })
    const read: Read = JSON.parse(
      execFileSync(pythonAlone ?? '', [reader, host.handles.path(taken.handle), file], { encoding: 'utf8' }),
    )
    expect(read.differing).toEqual([])
    expect(read.wordless).toEqual([])
    expect([read.tables.length, read.rows, read.files.length]).toEqual([taken.tables, taken.rows, taken.files])
    expect(read.tables).toEqual(expect.arrayContaining(['work', 'wall', 'placement', 'journal', 'edit', 'movement']))
    const kept = readdirSync(filesFolder(file), { recursive: true }).map(String)
    for (const name of read.files) expect(kept.some(one => one.endsWith(name.replace(/\.[a-z]+$/, '')))).toBe(true)
    expect(read.works).toHaveLength((await call('work.counts', {})).works)
    const { facts, numbers, sizes } = await call('work.get', { id: known.causeway })
    const one = read.works.find(({ key }) => key === known.causeway)
    expect(one).toMatchObject({ Title: facts.title, Comments: facts.note, 'Object production person': facts.maker })
    expect(one?.Damage).toEqual([
      {
        'Damage reference': 'D-0001',
        'Damage found': found.foundAt,
        'Damage reported': found.reportedAt,
        'Damage reporter': 'Bo Lind',
        'Damage cause': 'a fall',
        'Damage entries': [{ Entry: 'What was done', 'Entry date': at, 'Entry note': 'Laid flat.' }],
        'Damage closed': 'open',
      },
    ])
    expect(one?.Receipts).toMatchObject([
      { 'Receipt number': 'R-1', 'Receipt kind': 'received', 'Loan number': 'L-2025-1', 'Condition note': 'as sent' },
    ])
    expect(one).toMatchObject({
      'Inscription content': 'A. R., lower left',
      'Object production place': 'Tamble',
      'Object name': ['panel', 'painting'],
    })
    // What nobody filled in is left out.
    expect(Object.keys(one ?? {})).not.toContain('Distinguishing features')
    const permanent = numbers.find(({ kind }) => kind === 'permanent')
    if (permanent !== undefined) expect(one?.['Object number']).toBe(permanent.text)
    const height = sizes.find(size => size.height !== null)
    if (height !== undefined)
      expect(one?.Dimensions).toContainEqual(
        expect.objectContaining({
          Dimension: 'height',
          'Dimension value': height.height,
          'Dimension measurement unit': 'mm',
        }),
      )
  })
})
