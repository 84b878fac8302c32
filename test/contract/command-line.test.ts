/** The scripted way in as a script has it: real programs, one JSON value on standard output, the exit status. */
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { type AddressInfo, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { makeFixture } from './fixture.ts'

// Each call is a program that starts anew: on a busy machine a dozen of them take their time.
vi.setConfig({ testTimeout: 180_000 })

const program = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))
let folder = ''
let file = ''

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-line-'))
  file = (await makeFixture(folder)).file
}, 60_000)

afterAll(() => rmSync(folder, { recursive: true, force: true }))

function hangwright(args: readonly string[], input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    input,
    encoding: 'utf8',
    env: { ...process.env, HANGWRIGHT_DATA: join(folder, 'data') },
  })
  return { status, stdout, refusal: stderr.trim().split('\n').at(-1) ?? '', stderr }
}

/** Standard output is one JSON value and nothing else. */
function answered(args: readonly string[], input = '') {
  const done = hangwright(args, input)
  expect(done.stderr).not.toMatch(/"code"/)
  expect(done.status).toBe(0)
  expect(done.stdout.trim().split('\n')).toHaveLength(1)
  return JSON.parse(done.stdout)
}

function refused(args: readonly string[], input = '') {
  const done = hangwright(args, input)
  expect(done.stdout).toBe('')
  expect(done.status).toBe(1)
  return JSON.parse(done.refusal)
}

test('new writes an empty catalogue and replaces nothing', () => {
  const empty = join(folder, 'empty.hangwright')
  expect(answered(['new', empty])).toEqual({ catalogue: empty })
  expect(refused(['new', empty])).toMatchObject({ code: 'catalogue-exists' })
  expect(answered(['check', empty])).toEqual({ ok: true, integrity: [], findings: [] })
})

test('import takes a list at once; the same file again adds nothing', () => {
  const list = join(folder, 'list.csv')
  writeFileSync(
    list,
    'Loan no.,Title,Artist,Dimensions\nQ 1,Groyne,Ina Vorr,24 1/2 x 36 3/4 in.\nQ 2,Nets,Ina Vorr,61 x 91.5\n',
  )
  const args = ['import', file, list, '--exhibition', 'Listed', '--lender', 'Quay Collection']
  expect(answered(args)).toMatchObject({
    added: 2,
    updated: 0,
    questions: [{ row: 3, text: '61 x 91.5' }],
    refused: [],
  })
  expect(answered(args)).toMatchObject({ added: 0, updated: 0, unchanged: 2 })
})

/** What stands in a catalogue now, by two lists that a half-written import would lengthen. */
function stands() {
  return [
    answered(['call', file, 'exhibition.list']).exhibitions.length,
    answered(['call', file, 'work.list']).total,
    answered(['call', file, 'edit.list']).total,
  ]
}

describe('import', () => {
  test('makes a new show together with the list, as one edit, and undoes both', () => {
    const list = join(folder, 'new-show.csv')
    writeFileSync(list, 'Title,Artist\nShingle,Ina Vorr\n')
    const before = stands()
    const { exhibition } = answered(['import', file, list, '--exhibition', 'Shingle Show'])
    expect(stands()).toEqual([before[0] + 1, before[1] + 1, before[2] + 1])
    const shows = answered(['call', file, 'exhibition.list']).exhibitions
    expect(shows.find((each: { id: string }) => each.id === exhibition)).toMatchObject({
      title: 'Shingle Show',
      works: 1,
    })
    answered(['call', file, 'edit.undo'])
    expect(stands().slice(0, 2)).toEqual(before.slice(0, 2))
  })

  test('writes nothing at all where the list, or the columns said for it, cannot be read', () => {
    const list = join(folder, 'good.csv')
    const empty = join(folder, 'empty.csv')
    const noHeadings = join(folder, 'no-headings.csv')
    const broken = join(folder, 'broken.json')
    const wrong = join(folder, 'wrong.json')
    writeFileSync(list, 'Title,Artist\nBreakwater,Ina Vorr\n')
    writeFileSync(empty, '')
    writeFileSync(noHeadings, '8812;9913;17\n8813;9914;18\n')
    writeFileSync(broken, '[{"column": 1')
    writeFileSync(wrong, '{"column":1,"field":"title"}')
    const before = stands()
    const importing = (given: string, ...more: string[]) =>
      refused(['import', file, given, '--exhibition', 'Never Made', ...more])
    expect(importing(join(folder, 'none.csv'))).toMatchObject({
      code: 'no-such-file',
      message: expect.stringContaining('none.csv'),
    })
    expect(importing(folder)).toMatchObject({ code: 'not-a-file', message: expect.stringContaining(folder) })
    expect(importing(empty)).toMatchObject({ code: 'empty-file' })
    expect(importing(noHeadings)).toMatchObject({ code: 'no-headings' })
    expect(importing(list, '--map', join(folder, 'none.json'))).toMatchObject({
      code: 'no-such-file',
      message: expect.stringContaining('none.json'),
    })
    expect(importing(list, '--map', folder)).toMatchObject({ code: 'not-a-file' })
    expect(importing(list, '--map', broken)).toMatchObject({
      code: 'bad-json',
      message: expect.stringContaining('broken.json'),
    })
    expect(importing(list, '--map', wrong)).toMatchObject({ code: 'bad-input', field: 'mapping' })
    expect(stands()).toEqual(before)
  })
})

describe('files and folders that are not what they should be are refused by name', () => {
  let plain = ''
  beforeAll(() => {
    plain = join(folder, 'plain')
    writeFileSync(plain, 'a file, not a folder')
  })

  test('where files are given and made ones saved', () => {
    expect(refused(['call', file, 'work.list', '{}', '--file', folder])).toMatchObject({ code: 'not-a-file' })
    expect(refused(['call', file, 'work.list', '{}', '--out', plain])).toMatchObject({
      code: 'no-such-folder',
      field: 'out',
      message: expect.stringContaining(plain),
    })
  })

  test('before sheets are made, so that no revision is counted', () => {
    const before = stands()
    for (const out of [plain, join(plain, 'deeper')]) {
      expect(refused(['sheets', file, '--exhibition', 'Low Water', '--out', out])).toMatchObject({
        code: 'no-such-folder',
        message: expect.stringContaining(plain),
      })
    }
    expect(stands()).toEqual(before)
  })

  test('where a catalogue or its copy should stand', () => {
    for (const place of [join(folder, 'nowhere'), plain]) {
      const there = join(place, 'made.hangwright')
      for (const args of [
        ['new', there],
        ['backup', file, there],
      ])
        expect(refused(args)).toMatchObject({ code: 'no-such-folder', message: expect.stringContaining(place) })
    }
    expect(refused(['demo', join(plain, 'made.hangwright')])).toMatchObject({ code: 'no-such-folder' })
    expect(existsSync(join(folder, 'nowhere'))).toBe(false)
    for (const there of [plain, folder])
      expect(refused(['backup', file, there])).toMatchObject({ code: 'file-exists', field: 'file' })
    expect(readFileSync(plain, 'utf8')).toBe('a file, not a folder')
  })

  test('where a port is taken', async () => {
    const other = createServer()
    await new Promise<void>(resolve => other.listen(0, '127.0.0.1', resolve))
    const { port } = other.address() as AddressInfo
    try {
      expect(refused(['serve', file, '--port', String(port)])).toMatchObject({
        code: 'port-taken',
        field: 'port',
        message: expect.stringContaining(String(port)),
      })
    } finally {
      other.close()
    }
  })
})

describe('call', () => {
  test('takes its input from the line and from standard input', () => {
    const input = JSON.stringify({ text: '24 1/2 in' })
    expect(answered(['call', '-', 'measure.length', input])).toMatchObject({ mm: 622.3 })
    expect(answered(['call', '-', 'measure.length', '-'], input)).toMatchObject({ mm: 622.3 })
  })
  test('refuses with code and field as the last line of standard error', () => {
    expect(refused(['call', file, 'work.get', '{"id":"zzzzzz"}'])).toMatchObject({ code: 'not-found', field: 'id' })
    expect(refused(['call', file, 'no.such', '{}'])).toMatchObject({ code: 'unknown-procedure' })
    expect(refused(['call', file, 'work.get', '{'])).toMatchObject({ code: 'bad-json' })
    expect(refused(['call', join(folder, 'none.hangwright'), 'work.list'])).toMatchObject({ code: 'missing-catalogue' })
  })
})

test('procedures lists the contract with its schemas', () => {
  const all = answered(['procedures'])
  expect(all.length).toBeGreaterThan(100)
  for (const each of all)
    expect(each).toMatchObject({ kind: expect.stringMatching(/^(read|write|long)$/), input: { type: 'object' } })
})

test('sheets writes the whole set, or one kind', () => {
  const out = join(folder, 'papers')
  const { files } = answered(['sheets', file, '--exhibition', 'Low Water', '--out', out])
  expect(files.map((made: { kind: string }) => made.kind)).toEqual(['wall sheet', 'plan', 'checklist', 'hang list'])
  for (const { path } of files) expect(existsSync(path)).toBe(true)
  expect(readFileSync(files[0].path).subarray(0, 5).toString('latin1')).toBe('%PDF-')
  for (const kind of ['wall sheet', 'checklist', 'hang list']) {
    const made = answered(['sheets', file, '--exhibition', 'Low Water', '--out', out, '--only', kind])
    expect(made.files.map((each: { kind: string }) => each.kind)).toEqual([kind])
  }
  for (const kind of ['poster', 'movement sheet']) {
    expect(hangwright(['sheets', file, '--exhibition', 'Low Water', '--out', out, '--only', kind]).status).toBe(2)
  }
  const checklist = ['sheets', file, '--exhibition', 'Low Water', '--out', out, '--only', 'checklist', '--with']
  expect(answered([...checklist, 'values']).files).toHaveLength(1)
  expect(hangwright([...checklist, 'everything']).status).toBe(2)
  expect(hangwright([...checklist.slice(0, -1), '--without', 'values']).status).toBe(2)
  const { works } = answered(['call', file, 'work.list', '{}'])
  answered(['call', file, 'condition.add', JSON.stringify({ work: works[0].id, kind: 'incoming' })])
  const reports = answered(['sheets', file, '--exhibition', 'Low Water', '--out', out, '--only', 'condition report'])
  expect(reports.files).toMatchObject([{ kind: 'condition report', pages: 1 }])
  expect(refused(['sheets', file, '--exhibition', 'Nothing', '--out', out])).toMatchObject({ code: 'not-found' })
})

test('backup carries the files, every hash verified, and the copy opens', () => {
  const copy = join(folder, 'copy.hangwright')
  expect(answered(['backup', file, copy])).toMatchObject({ file: copy, files: 2, missing: [] })
  expect(answered(['check', copy, '--exhibition', 'Low Water'])).toMatchObject({ ok: true, integrity: [] })
})

test('wrong usage ends with 2 and says how it is used', () => {
  for (const args of [[], ['fly'], ['new'], ['call', file], ['sheets', file], ['serve', file, '--port', 'many']]) {
    const done = hangwright(args)
    expect(done.status, args.join(' ')).toBe(2)
    expect(done.stdout).toBe('')
  }
})

test('serve says its address on the first line, answers there, and stops when told', async () => {
  const child = spawn(process.execPath, [program, 'serve', file], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, HANGWRIGHT_DATA: join(folder, 'data') },
  })
  const ended = new Promise<number | null>(resolve => child.once('exit', resolve))
  const first = await new Promise<string>(resolve => createInterface({ input: child.stdout }).once('line', resolve))
  const { address } = JSON.parse(first)
  expect((await fetch(address)).status).toBe(200)
  child.kill('SIGTERM')
  expect(await ended).toBe(0)
  await expect(fetch(address)).rejects.toThrow()
})
