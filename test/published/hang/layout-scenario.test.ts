/** Scenario 2 of the trade notes, the wall as a whole: gaps, left edges, the thermostat and the shift that cures it. */
import { describe, expect, test } from 'vitest'
import { printedText } from '../../../src/hang/printing.ts'
import type { KeepClear } from '../../../src/hang/wall.ts'
import { wallChain } from '../../../src/layout/chains.ts'
import { wallFindings } from '../../../src/layout/findings.ts'
import { layRow } from '../../../src/layout/row.ts'
import { plainWall } from '../../unit/hang/sample.ts'

const SIZES = { A: [620, 480], B: [910, 710], C: [540, 540], D: [1220, 960], E: [620, 480], F: [760, 1010] } as const
const works = Object.entries(SIZES).map(([id, [, width]]) => ({ id, width }))
const row = layRow({ from: 0, to: 9140, works, rule: { rule: 'margins', left: 900, right: 900 } })

const thermostat: KeepClear = {
  id: 't',
  kind: 'thermostat',
  label: '',
  x: 4300,
  y: 1400,
  width: 120,
  height: 120,
  margin: 150,
  reason: '',
}

describe('scenario 2: a wall of six', () => {
  test('with margins of 900 the gap is 632.0; all equal it would be 708.6', () => {
    expect(row.gaps).toEqual([900, 632, 632, 632, 632, 632, 900])
    const equal = layRow({ from: 0, to: 9140, works, rule: { rule: 'equal' } })
    expect(equal.gaps[0]?.toFixed(1)).toBe('708.6')
  })

  test('left edges and right end', () => {
    expect(row.works.map(work => work.left)).toEqual([900, 2012, 3354, 4526, 6118, 7230])
    expect(row.works.at(-1)?.right).toBe(8240)
  })

  test('D stands 44 mm inside the thermostat’s margin; moving all 44 mm right cures it, right margin 856', () => {
    const hung = Object.entries(SIZES).map(([id, [height, width]]) => {
      const left = row.works.find(work => work.id === id)?.left ?? 0
      return { id, name: id, x: left, y: 1480 - height / 2, width, height }
    })
    const rules = { minimumGap: 75, minimumMargin: 150, liftOn: 25 }
    const found = wallFindings({ ...plainWall, keepClears: [thermostat] }, hung, rules)
    expect(found.map(finding => finding.code)).toEqual(['in-keep-clear'])
    expect(found[0]?.subject).toEqual({ kind: 'placement', id: 'D' })
    expect(found[0]?.text).toContain('D stands 44 mm inside the thermostat’s margin: move all six 44 mm right')
    expect(found[0]?.figures).toMatchObject({ distance: 106, inside: 44, shiftAll: 44, rightMarginThen: 856 })
  })

  test('the printed chain: 24 7/8 from A to B, and each unit adds up to the wall', () => {
    const chain = wallChain(
      9140,
      row.works.map(work => ({ id: work.id, left: work.left, width: work.right - work.left })),
    )
    const gap = chain.pieces[2]
    expect(gap?.kind).toBe('gap')
    expect(gap === undefined ? '' : printedText(gap.printed.size, 'in')).toBe('24 7/8')
    expect(gap?.printed.size.mm).toBe(632)
    expect(chain.pieces.reduce((sum, piece) => sum + piece.printed.size.mm, 0)).toBe(9140)
    expect(chain.pieces.reduce((sum, piece) => sum + piece.printed.size.inches, 0)).toBe(chain.length.inches)
  })
})
