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
      changes: { note: { was: (await call('work.get', { id: known.causeway })).facts.note, to: awkward } },
    })
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
