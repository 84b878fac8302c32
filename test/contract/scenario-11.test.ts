/**
 * Scenario 11 as a script plays it: a program of its own for every call, on a real file. What comes out is what its facts
 * have by hand (test/contract/scenario-11/facts.ts).
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import ExcelJS from 'exceljs'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { contract, type Name, type Output } from '../../src/contract/contract.ts'
import { onePixel } from './fixture.ts'
import * as facts from './scenario-11/facts.ts'
import { type Ask, answerOf, play } from './scenario-11/play.ts'
import * as steps from './scenario-11/steps.ts'

const program = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))
const keys = new steps.Keys()
let folder = ''
let file = ''
let answers = new Map<string, unknown>()
/** Sums in whole euros, as they were told while the works were there and when one had left. */
const sums = { inHouse: 0, without: 0 }

function hangwright(args: readonly string[], input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    input,
    encoding: 'utf8',
    env: { ...process.env, HANGWRIGHT_DATA: join(folder, 'data') },
  })
  if (status === 2) throw new Error(stderr)
  const last = stderr.trim().split('\n').at(-1) ?? ''
  return status === 0 ? { ok: true as const, value: JSON.parse(stdout) } : { ok: false as const, ...JSON.parse(last) }
}

const ask: Ask = async (name, input, files) =>
  hangwright(['call', file, name, '-', ...files.flatMap(each => ['--file', each])], JSON.stringify(input))

async function told<N extends Name>(name: N, input: unknown, more: readonly string[] = []): Promise<Output<N>> {
  const answered = hangwright(['call', file, name, '-', ...more], JSON.stringify(input))
  if (!answered.ok) throw new Error(`${name}: ${JSON.stringify(answered)}`)
  return contract[name].output.parse(answered.value) as Output<N> // just parsed by its own schema
}

/** The greatest sum of a day, in whole euros. */
async function sumOn(day: string): Promise<number> {
  const { lines } = await told('insured.day', { day, currency: 'EUR' })
  return (lines.find(({ kind }) => kind === 'all')?.minor ?? 0) / 100
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-scenario-'))
  file = join(folder, 'slow-tide.hangwright')
  const list = join(folder, 'list.csv')
  const photo = join(folder, 'joint.png')
  writeFileSync(list, facts.list)
  writeFileSync(photo, onePixel)
  expect(hangwright(['new', file])).toMatchObject({ ok: true })
  const imported = hangwright(['import', file, list, '--exhibition', facts.show.title])
  expect(imported.value).toMatchObject({ added: 9, questions: [], refused: [] })
  const { found, house, loans, values, agreed, arrival, examined, hung } = steps
  const first = [found, house, loans, values, agreed, arrival, examined, hung, steps.deinstalled(photo)].flat()
  answers = await play(first, keys, ask)
  sums.inHouse = await sumOn('2025-05-20')
  await play(steps.goes, keys, ask)
  sums.without = await sumOn('2025-05-28')
  await play(steps.back, keys, ask)
}, 1_800_000)

afterAll(() => rmSync(folder, { recursive: true, force: true }))

const patient = 180_000

test('the crate told that it would be opened too early', () => {
  const { notes } = answers.get('opened early') as Output<'movement.check'> // the answer of that step
  expect(notes.map(({ code, figures }) => [code, figures.opens])).toEqual([
    ['opened-early', facts.at('2025-03-03 09:10')],
  ])
})

test(
  'of what was found in and out: two the same and one new; one grown and one not seen again',
  async () => {
    const compared = async (before: string, after: string) =>
      (await told('condition.compare', { before: keys.of(before), after: keys.of(after) })).counts
    expect(await compared('incoming', 'outgoing')).toEqual({ same: 2, grown: 0, new: 1, notSeen: 0 })
    expect(await compared('other incoming', 'other outgoing')).toEqual({ same: 0, grown: 1, new: 0, notSeen: 1 })
  },
  patient,
)

test(
  'the damage has its times and its photograph, and its owner waited as long as by hand',
  async () => {
    const damage = await told('damage.get', { id: keys.of('damage') })
    expect(damage).toMatchObject({
      reference: facts.damage.reference,
      foundAt: facts.damage.found,
      reportedAt: facts.damage.reported,
      clock: { waited: facts.damage.waited, late: 0, toldAt: facts.damage.told },
      movedFirst: null,
      lacks: [],
    })
    expect(damage.reports.map(({ complete, photos }) => [complete, photos.length])).toEqual([[true, 1]])
  },
  patient,
)

test(
  'every place of it, in order, with the names of who carried and who recorded',
  async () => {
    const { movements } = await told('movement.history', { kind: 'work', id: keys.of(facts.main) })
    const by = facts.registrar
    expect(movements.map(each => [each.words, each.spot, each.within, each.people, each.recordedBy])).toEqual([
      ['Crate 5', '', '', 'Harbour', by],
      ['R2', '', 'Crate 5', 'Harbour', by],
      ['R2', 'the floor', '', facts.crew, by],
      ['R2, W3', 'P4', '', facts.crew, by],
      ['Hold', '', '', 'Lind', by],
      ['Crate 5', '', '', facts.crew, by],
      ['Harbour House', '', 'Crate 5', 'Harbour', by],
      ['Harbour House', '', '', 'Harbour', by],
    ])
  },
  patient,
)

test('what was insured falls by the value of the work when it leaves', () => {
  expect(sums).toEqual({ inHouse: facts.sums.inHouse, without: facts.sums.without })
})

test.each(facts.answers)(
  'on $day: where, in which condition, under whose terms, with how much light',
  async answer => {
    // By the verb that people type: the work’s own number, and the day.
    const asked = hangwright(['on-day', file, facts.main, '--day', answer.day])
    const day = contract['work.onDay'].output.parse(asked.value)
    expect(answerOf(day)).toEqual(answer)
    const signed = answer.report === null ? [] : [facts.registrar, facts.courier]
    expect((day.examined?.signedBy ?? []).map(({ name }) => name)).toEqual(signed)
    expect((day.loans[0]?.terms ?? []).map(({ said }) => said)).toEqual(
      answer.loan === null ? [] : facts.terms.map(({ said }) => said),
    )
  },
  patient,
)

test(
  'at the end of the show all that left without a report is told, and nothing is outstanding',
  async () => {
    const { lines } = await told('leaving.list', { exhibition: keys.of('show') })
    const lacking = lines.filter(({ lacks }) => lacks.some(({ code }) => code === 'left-without-report'))
    expect(lacking.map(({ title }) => title)).toEqual(
      facts.works.filter(([number]) => number !== facts.main && number !== facts.other).map(([, title]) => title),
    )
    expect((await told('receipt.outstanding', {})).lines).toEqual([])
  },
  patient,
)

/** All words of a workbook. */
async function wordsOf(path: string): Promise<string> {
  const book = new ExcelJS.Workbook()
  await book.xlsx.readFile(path)
  const words: string[] = []
  book.eachSheet(sheet => sheet.eachRow(row => row.eachCell(cell => words.push(cell.text))))
  return words.join('\n')
}

test(
  'papers of a loan come out by its number: its file and every receipt, or receipts alone',
  async () => {
    const out = join(folder, 'loan papers')
    const sheets = (...more: string[]) =>
      hangwright(['sheets', file, '--loan', facts.agreements[1].toLowerCase(), '--out', out, ...more])
    const kinds = (answered: { value?: { files: { kind: string }[] } }) => answered.value?.files.map(({ kind }) => kind)
    expect(kinds(sheets())).toEqual(['loan file', 'loan file', 'receipt', 'receipt', 'receipt'])
    expect(kinds(sheets('--only', 'receipt'))).toEqual(['receipt', 'receipt', 'receipt'])
    expect(readdirSync(out).filter(name => name.startsWith('receipt')).length).toBeGreaterThan(2)
    expect(() => sheets('--only', 'wall sheet')).toThrow('--only takes one of: loan file, receipt')
    expect(() => sheets('--exhibition', facts.show.title)).toThrow('not both')
    const unknown = hangwright(['sheets', file, '--loan', 'HH 9', '--out', out])
    expect(unknown).toMatchObject({ code: 'not-found', field: 'loan' })
    expect(hangwright(['on-day', file, 'SM 999'])).toMatchObject({ code: 'not-found', field: 'work' })
  },
  patient,
)

test(
  'its whole file, its loan’s and the outgoing list come out as PDF and as workbook',
  async () => {
    const out = join(folder, 'papers')
    await told('sheet.objectFile', { work: keys.of(facts.main) }, ['--out', out])
    await told('sheet.loanFile', { loan: keys.of('loan 0') }, ['--out', out])
    await told('sheet.outgoing', { exhibition: keys.of('show') }, ['--out', out])
    const made = readdirSync(out)
    const [pdfs, books] = ['.pdf', '.xlsx'].map(end =>
      made.filter(name => name.endsWith(end)).map(name => join(out, name)),
    )
    expect([pdfs?.length, books?.length]).toEqual([3, 3])
    for (const pdf of pdfs ?? []) expect(readFileSync(pdf).subarray(0, 5).toString('latin1')).toBe('%PDF-')
    const words = (await Promise.all((books ?? []).map(wordsOf))).join('\n')
    for (const said of [
      facts.damage.reference,
      facts.agreements[0],
      facts.courier,
      'Hold',
      ...facts.terms.map(each => each.said),
    ])
      expect(words).toContain(said)
  },
  patient,
)

test(
  'all of it is taken out, and the file is whole',
  async () => {
    const out = join(folder, 'taken')
    const taken = await told('catalogue.takeOut', { files: true }, ['--out', out])
    expect(readFileSync(join(out, taken.name)).subarray(0, 2).toString('latin1')).toBe('PK')
    expect(taken.files).toBeGreaterThan(0)
    expect(hangwright(['check', file]).value).toMatchObject({ ok: true, integrity: [] })
  },
  patient,
)
