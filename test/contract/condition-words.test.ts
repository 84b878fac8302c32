/** A word that a house adds: chosen, compared, printed as any other, and there for as long as it is used. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { answer } from '../../main/hosts/answer.ts'
import { createHost } from '../../main/hosts/host.ts'
import { callOn, makeFixture } from './fixture.ts'

test('a word of the house goes wherever the program’s own go, and stays while a finding is called by it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-words-'))
  const { file, known } = await makeFixture(folder)
  const clock = { at: '2031-06-14T18:00:00.000Z', ids: 'r' }
  const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock, checksOutput: true })
  host.openFile(file)
  onTestFinished(async () => {
    await host.close()
    rmSync(folder, { recursive: true, force: true })
  })
  await callOn(host, 'desk.sit', { person: known.person })
  const { id: term } = await callOn(host, 'condition.addWord', {
    ...{ material: 'textile', word: 'tide line', meaning: 'the edge where water stopped' },
  })
  const { words } = await callOn(host, 'condition.words', {})
  expect(words.filter(({ key }) => key === term)).toMatchObject([{ word: 'tide line', material: 'textile', own: true }])
  const laid = async (kind: 'incoming' | 'outgoing', across: number) => {
    const { id } = await callOn(host, 'condition.add', { work: known.pans, kind })
    const said = { term, age: 'old', severity: 'slight', across } as const
    const { id: finding } = await callOn(host, 'condition.addFinding', {
      ...{ report: id, form: 'mark', points: [{ x: 40, y: 40 }], ...said },
    })
    return { id, finding }
  }
  const before = await laid('incoming', 4)
  const after = await laid('outgoing', 14)
  const { lines } = await callOn(host, 'condition.compare', { before: before.id, after: after.id })
  expect(lines).toMatchObject([{ outcome: 'grown', text: expect.stringMatching(/^tide line: larger/) }])
  const alone = await callOn(host, 'sheet.condition', { report: after.id })
  const both = await callOn(host, 'sheet.compared', { before: before.id, after: after.id })
  expect([alone.files.length, both.files.length]).toEqual([1, 1])
  const refused = await answer(host, 'condition.removeWord', { id: term })
  expect(refused).toMatchObject({
    ok: false,
    refusal: { code: 'in-use', message: expect.stringMatching(/^2 findings are called tide line.*incoming report of/) },
  })
  for (const { finding } of [before, after]) await callOn(host, 'condition.removeFinding', { id: finding })
  expect(await callOn(host, 'condition.removeWord', { id: term })).toEqual({ done: true })
})
