/** A set on a wall: places of its parts, marks running from its left edge, and what sheets make of it. By hand. */
import { describe, expect, test } from 'vitest'
import { wantedHoles } from '../../../src/model/holes-of-face.ts'
import { laidOpen } from '../../../src/model/laid-open.ts'
import { marksOfFace } from '../../../src/model/marks-of-face.ts'
import { hungOf, layPlaced, letterOf, placesOfParts } from '../../../src/model/parts-of-set.ts'
import { setFindings } from '../../../src/model/set-findings.ts'
import { wallSheetRows } from '../../../src/sheets/wall-rows.ts'
import { placed, six, wallOf } from '../sheets/wall.ts'
import { triptych } from './triptych.ts'

const style = { unit: 'mm', steps: { mm: 1, fraction: 16 } } as const

describe('a triptych', () => {
  // Left edge 4 000 − 884 = 3 116.
  test('its parts stand after each other, their centres on one line', () => {
    const places = placesOfParts(triptych())
    if ('problem' in places) throw new Error(places.problem)
    expect(places.map(({ letter, centre }) => [letter, centre.x, centre.y])).toEqual([
      ['a', 3116 + 240, 1480],
      ['b', 3116 + 499 + 355, 1480],
      ['c', 3116 + 1228 + 270, 1480],
    ])
  })

  test('each part by its own back: bearing points and holes', () => {
    const holes = wantedHoles(wallOf([triptych()]), style)
    // a: 3 116 + 40 and 1 480 + 310 − 95 + 14; b: 3 615 + 55 and 1 480 + 455 − 140 + 14; c: 4 344 + 35, 1 480 + 270 − 70 + 14
    expect(holes.map(hole => [hole.slot, hole.x, hole.y])).toEqual([
      ['a-left', 3156, 1709],
      ['a-right', 3556, 1709],
      ['b-left', 3670, 1809],
      ['b-right', 4270, 1809],
      ['c-left', 4379, 1694],
      ['c-right', 4849, 1694],
    ])
  })

  test('running from its left edge and back from its right edge: both routes agree', () => {
    const part = marksOfFace(wallOf([triptych()]), style).get('p9')?.parts?.[2]
    if (part === undefined || 'problem' in part.marks) throw new Error('no marks')
    const lines = new Map(part.marks.answer.working.map(line => [line.key, line]))
    expect(lines.get('set-left')?.mm.value.replaceAll(/\s/g, '')).toBe('1228')
    expect(lines.get('set-right')?.mm.value.replaceAll(/\s/g, '')).toBe('1228')
    expect(lines.get('set-x-left')?.mm.value.replaceAll(/\s/g, '')).toBe('1263')
    // 1 228 mm = 48.346 in, to the sixteenth 48 3/8.
    expect(lines.get('set-left')?.in.value.replaceAll(/\s/g, ' ')).toBe('48 3/8')
    expect(part.marks.answer.secondRoute.every(route => route.agrees)).toBe(true)
  })

  test.each([
    ['row', null, 'gaps'],
    ['row', null, 'centres'],
    ['grid', 2, 'gaps'],
    ['grid', 2, 'centres'],
    ['column', null, 'centres'],
  ] as const)(
    '%s, %o columns, %s kept: back from the right edge it comes to the same, unless the whole was measured wrongly',
    (form, columns, keeps) => {
      const { set, size } = triptych()
      if (set === null || size === null) throw new Error('no set')
      const laid = layPlaced({ ...set, form, columns, keeps })
      if ('problem' in laid) throw new Error(laid.problem)
      const agrees = (width: number) => {
        const asked = triptych({ set: { ...set, form, columns, keeps }, size: { ...size, width, height: laid.height } })
        const parts = marksOfFace(wallOf([asked]), style).get('p9')?.parts ?? []
        const routes = parts.flatMap(({ marks }) => ('answer' in marks ? marks.answer.secondRoute : []))
        return routes.filter(({ side }) => side === 'set').map(route => route.agrees)
      }
      expect(agrees(laid.width)).toEqual([true, true, true])
      expect(agrees(laid.width + 5)).toEqual([false, false, false])
    },
  )

  test('a printed mark less the printed edge of the set is the running dimension, and never a step off', () => {
    for (const x of [4000, 4000.3, 3999.77, 4012.5]) {
      const found = marksOfFace(wallOf([triptych({ x })]), style).get('p9')
      for (const { marks } of found?.parts ?? []) {
        if ('problem' in marks) throw new Error(marks.problem)
        const left = Math.round(x - 884)
        for (const mark of marks.answer.marks) {
          const exact = mark.bearing.x - (x - 884)
          expect(Math.abs(mark.printed.x.mm - left - exact)).toBeLessThanOrEqual(1)
        }
      }
    }
  })

  test('a sheet has a row for each part, a wall one object', () => {
    const wall = wallOf([triptych()])
    const marks = marksOfFace(wall, style)
    expect([...marks.keys()]).toEqual(['p9'])
    expect(wallSheetRows(wall, marks, style).map(row => row.called)).toEqual(['12 a', '12 b', '12 c'])
    expect(laidOpen(wall, marks).elevation.works.map(work => work.placement)).toEqual(['p9/a', 'p9/b', 'p9/c'])
  })

  test('what is missing of one part is missing of the set, and named', () => {
    const set = triptych()
    const parts = set.set?.parts.map((part, index) => (index === 1 ? { ...part, back: null } : part)) ?? []
    const lacking = triptych({ set: set.set === null ? null : { ...set.set, parts } })
    const found = marksOfFace(wallOf([lacking]), style).get('p9')
    expect(found !== undefined && 'problem' in found ? found.problem : '').toMatch(
      /^Part b: Nobody has measured its back/,
    )
    expect(wantedHoles(wallOf([lacking]), style)).toEqual([])
  })

  test('parts that differ ask once, with both answers in figures', () => {
    const { set } = triptych({}, '')
    if (set === null) throw new Error('no set')
    const [finding] = setFindings('w9', set, set.parts, mm => `${mm}`)
    // Kept centres: (710 + 540) / 2 + 19 = 644 apart; gaps 644 − 595 = 49 and 19.
    expect(finding?.text).toContain('keep the centres (644 along; gaps 19 to 49 along)')
    expect(setFindings('w9', { ...set, keeps: 'gaps' }, set.parts, mm => `${mm}`)).toEqual([])
  })
})

test('parts are lettered past z', () => {
  expect([0, 25, 26, 51, 52].map(letterOf)).toEqual(['a', 'z', 'aa', 'az', 'ba'])
})

test('a work that is no set hangs as itself', () => {
  const [given] = six
  if (given === undefined) throw new Error('no work')
  const work = placed(given, 0)
  expect(hungOf(work)).toEqual([work])
})
