/** Drawings that are hostile, odd or large by few lines: each is refused by name, or read in bounded memory. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { readDxf } from '../../../main/files/dxf/read.ts'
import { plainWords } from '../../../main/files/dxf/words.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { box, dxfOf } from '../../contract/dxf-files.ts'

const folder = mkdtempSync(join(tmpdir(), 'hangwright-dxf-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
let count = 0

function read(content: string | Uint8Array, watch: () => void = () => undefined) {
  const file = join(folder, `${count++}.dxf`)
  writeFileSync(file, content)
  return readDxf(file, watch)
}

function codeOf(content: string | Uint8Array): string {
  try {
    read(content)
  } catch (error) {
    if (error instanceof Refusal) return error.code
    throw error
  }
  return 'read'
}

const tags = (...all: (string | number)[]) => `${all.join('\n')}\n`
const block = (name: string, ...body: (string | number)[]) => [0, 'BLOCK', 2, name, 10, 0, 20, 0, ...body, 0, 'ENDBLK']
const insert = (name: string, ...more: (string | number)[]) => [0, 'INSERT', 8, 'A', 2, name, 10, 0, 20, 0, ...more]
const line = [0, 'LINE', 8, '0', 10, 0, 20, 0, 11, 1, 21, 0]
const drawing = (blocks: (string | number)[], entities: (string | number)[]) =>
  tags(
    0,
    'SECTION',
    2,
    'BLOCKS',
    ...blocks,
    0,
    'ENDSEC',
    0,
    'SECTION',
    2,
    'ENTITIES',
    ...entities,
    0,
    'ENDSEC',
    0,
    'EOF',
  )

describe('what is no DXF', () => {
  test.each([
    ['nothing', '', 'not-dxf'],
    ['a letter', 'Dear Sir,\nhere is the plan.\n', 'not-dxf'],
    ['zeros', new Uint8Array(3_000_000), 'not-dxf'],
    ['one endless line', 'x'.repeat(3_000_000), 'not-dxf'],
    ['numbers alone', '0\n1\n2\n3\n', 'not-dxf'],
    ['a binary DXF', 'AutoCAD Binary DXF\r\n\u001a\0\0\0', 'binary-dxf'],
    ['a DWG', 'AC1032\0\0\0\0', 'not-dxf'],
    ['one that ends in the middle', dxfOf(box('A', 0, 0, 1, 1)).slice(0, 200), 'damaged-dxf'],
    ['one without lines', dxfOf([]), 'no-lines'],
  ])('%s', (_, content, code) => {
    expect(codeOf(content)).toBe(code)
  })

  test('garbage in the middle is told with its line', () => {
    const whole = new TextDecoder().decode(dxfOf(box('A', 0, 0, 1, 1)))
    expect(() => read(whole.replace('\nLINE\n', '\nLINE\nnonsense\n'))).toThrow(/line \d+ should be a group code/)
  })
})

describe('blocks', () => {
  test('scaled, turned and put into one another', () => {
    const { pieces, layers } = read(
      drawing(
        [...block('IN', ...line), ...block('OUT', ...insert('IN', 41, 2, 50, 90))],
        insert('OUT', 50, 90, 41, 3, 42, 3),
      ),
    )
    // Twice as long and turned to the top, then three times and to the left: from 0, 0 to −6, 0.
    expect([...pieces.xy].map(value => Math.round(value * 1e9) / 1e9 || 0)).toEqual([0, 0, -6, 0])
    expect(layers[pieces.layer[0] ?? -1]?.name).toBe('A')
  })

  test('that hold themselves are left out, and told', () => {
    const { pieces, remarks } = read(
      drawing([...block('A', ...line, ...insert('B')), ...block('B', ...line, ...insert('A'))], insert('A')),
    )
    expect(pieces.count).toBe(2)
    expect(remarks.join(' ')).toContain('hold themselves')
  })

  test('that are not there are told', () => {
    expect(read(drawing([], [...line, ...insert('GHOST')])).remarks.join(' ')).toContain('GHOST')
  })

  test('a few lines that multiply into millions are refused', () => {
    const levels = Array.from({ length: 10 }, (_, level) =>
      block(`L${level}`, ...(level === 0 ? line : Array.from({ length: 10 }, () => insert(`L${level - 1}`)).flat())),
    ).flat()
    expect(codeOf(drawing(levels, insert('L9')))).toBe('drawing-too-large')
    expect(codeOf(drawing(block('A', ...line), insert('A', 70, 30_000, 71, 30_000)))).toBe('drawing-too-large')
    expect(codeOf(drawing(block('E'), insert('E', 70, 30_000, 71, 30_000)))).toBe('drawing-too-large')
  })
})

test('a half circle as bulge and as arc is the same chords, 0.13 % short of π', () => {
  const lengthOf = (entity: (string | number)[]) => {
    const { pieces } = read(drawing([], entity))
    let sum = 0
    for (let at = 0; at < pieces.count; at++) {
      const [a = 0, b = 0, c = 0, d = 0] = pieces.xy.subarray(at * 4, at * 4 + 4)
      sum += Math.hypot(c - a, d - b)
    }
    return sum
  }
  const arc = lengthOf([0, 'ARC', 8, 'A', 10, 1, 20, 0, 40, 1, 50, 0, 51, 180])
  const bulge = lengthOf([0, 'LWPOLYLINE', 8, 'A', 90, 2, 70, 0, 10, 0, 20, 0, 42, 1, 10, 2, 20, 0])
  // 18 chords of 10°: 36 sin 5°.
  expect(arc).toBeCloseTo(36 * Math.sin((5 * Math.PI) / 180), 9)
  expect(bulge).toBeCloseTo(arc, 9)
})

test('a cancel is heard while it reads', () => {
  const stop = () => {
    throw new Refusal('cancelled', 'stop')
  }
  expect(() => read(dxfOf(box('A', 0, 0, 1, 1)), stop)).toThrow('stop')
})

test('units are as the header says; words come without their marks', () => {
  expect(read(dxfOf(box('A', 0, 0, 1, 1), [], 6)).unit).toBe('m')
  expect(read(dxfOf(box('A', 0, 0, 1, 1), [], null)).unit).toBeNull()
  expect(read(dxfOf(box('A', 0, 0, 1, 1), [], 13)).unit).toBeNull()
  expect(plainWords('{\\fArial|b1|i0;\\C2;Great} Hall\\P%%uNorth%%u \\S1/2;')).toBe('Great Hall North 1/2')
})
