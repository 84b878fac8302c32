/**
 * Labels: their size from words, their place by the work, and what is in their way. Places follow the rule of the
 * trade's own writing (right `x = xl + W + gap`, left `x = xl − gap − w`, one centre line; common practice, no source);
 * 1 370 mm and the readable band are 54, 48 and 67 in of published guidelines for accessible exhibitions.
 */
import { describe, expect, test } from 'vitest'
import { seeded } from '../../../main/demo/pictures/random.ts'
import { clearDistance, overlap } from '../../../src/geometry/rect.ts'
import { labelSize, linesOf, suggestLabel } from '../../../src/layout/label-size.ts'
import { defaultLabelRules, labelRect, layLabels } from '../../../src/layout/labels.ts'
import type { LabelledWork, LabelsQuestion } from '../../../src/layout/labels-shape.ts'

const wall: LabelsQuestion['wall'] = {
  length: 9140,
  height: 3450,
  wallType: 'plaster',
  datum: null,
  floor: [],
  skirting: null,
  studFirst: null,
  studSpacing: null,
  backingFrom: null,
  backingTo: null,
  openings: [],
  keepClears: [],
}

function work(id: string, x: number, more: Partial<LabelledWork> = {}): LabelledWork {
  return { id, name: id, x, y: 1170, width: 480, height: 620, side: null, text: 'one line', holes: [], ...more }
}

const codes = (question: LabelsQuestion) => layLabels(question).findings.map(found => `${found.severity} ${found.code}`)

describe('size', () => {
  test('follows from type, lines and characters per line', () => {
    // 45 × 0.5 × 6.35 + 2 × 1.25 × 6.35 = 158.75; 4 × 1.35 × 6.35 + 15.875 = 50.165; both cut up to whole millimetres.
    const { width, height, lines } = labelSize('a\nb\nc\nd', defaultLabelRules)
    expect({ width, height, lines: lines.length }).toEqual({ width: 159, height: 51, lines: 4 })
  })

  test('a card of its own width holds fewer characters and grows higher', () => {
    const words = 'Nine herring boats at the slip, morning, from the loft'
    // (100 − 15.875) / 3.175 = 26.5: 26 characters.
    const own = labelSize(words, defaultLabelRules, { width: 100 })
    expect(own.lines).toEqual(['Nine herring boats at the', 'slip, morning, from the', 'loft'])
    expect(own.height).toBe(42)
    expect(labelSize(words, defaultLabelRules, { width: 100, height: 90 }).height).toBe(90)
  })

  test('no line is longer than its measure and no character is lost', () => {
    const { next: chance } = seeded(7)
    for (let round = 0; round < 300; round++) {
      const perLine = 1 + Math.floor(chance() * 30)
      const words = Array.from({ length: Math.floor(chance() * 20) }, () => 'x'.repeat(1 + Math.floor(chance() * 40)))
      const lines = linesOf(words.join(' '), perLine)
      expect(lines.every(line => [...line].length <= perLine)).toBe(true)
      expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''))
    }
  })

  test('counts letters, not their pieces', () => {
    expect(linesOf('👩‍🎨é', 40)).toHaveLength(1)
    expect(linesOf('ééé', 3)).toEqual(['ééé'])
  })

  test('suggests only what is known', () => {
    const known = { maker: 'Ada Ruel', title: 'Weir', dateText: '1911', medium: '', credit: 'Lent by the Quay' }
    expect(suggestLabel(known)).toBe('Ada Ruel\nWeir, 1911\nLent by the Quay')
    expect(suggestLabel({ maker: '', title: '', dateText: '', medium: '', credit: '' })).toBe('')
  })
})

describe('place', () => {
  const card = { width: 159, height: 51, gap: 60 }
  const rect = { x: 900, y: 1170, width: 480, height: 620 }

  test('beside the work at one height, below it flush with its left edge', () => {
    expect(labelRect(rect, 'right', card, 1370, 'line')).toEqual({ x: 1440, y: 1344.5, width: 159, height: 51 })
    expect(labelRect(rect, 'left', card, 1370, 'line')).toEqual({ x: 681, y: 1344.5, width: 159, height: 51 })
    expect(labelRect(rect, 'below', card, 1370, 'line')).toEqual({ x: 900, y: 1059, width: 159, height: 51 })
  })

  test('level with the bottom only where the work reaches lower than the line', () => {
    expect(labelRect(rect, 'right', card, 1370, 'bottom').y).toBe(1170)
    expect(labelRect({ ...rect, y: 1500 }, 'right', card, 1370, 'bottom').y).toBe(1344.5)
  })

  test('climbs with a ramp', () => {
    const ramp = {
      ...wall,
      ramp: true,
      floor: [
        [0, 0],
        [9140, 914],
      ] as const,
    }
    const { labels } = layLabels({ wall: ramp, works: [work('1', 4330, { y: 1700, side: 'right' })], line: 1370 })
    // Floor under the centre, x 4 570: + 457.
    expect(labels[0]).toMatchObject({ y: 1370 + 457 - 12.5 })
  })
})

describe('in its way', () => {
  test('a gap that is too narrow says by how much, and the other side', () => {
    const { labels, findings } = layLabels({ wall, works: [work('3', 900, { side: 'right' }), work('4', 1616)] })
    expect(findings).toHaveLength(1)
    expect(findings[0]?.text).toBe(
      'The gap right of 3, to 4, is too narrow for its label by 23 mm. On the left it would stand free.',
    )
    expect(labels[0]?.better).toBe('left')
  })

  test('exactly wide enough is enough', () => {
    expect(codes({ wall, works: [work('3', 900, { side: 'right' }), work('4', 900 + 480 + 259)] })).toEqual([])
    expect(codes({ wall, works: [work('3', 900, { side: 'left' }), work('4', 900 - 259 - 480)] })).toEqual([])
  })

  test('a label on the next work stops', () => {
    expect(codes({ wall, works: [work('3', 900, { side: 'right' }), work('4', 1500)] })).toEqual([
      'stop label-gap-narrow',
    ])
  })

  test('two labels in one gap', () => {
    const works = [work('3', 900, { side: 'right' }), work('4', 900 + 480 + 300, { side: 'left' })]
    expect(codes({ wall, works })).toEqual(['stop label-on-label', 'stop label-on-label'])
  })

  test('a stack: the label below and the work under it', () => {
    const works = [work('1', 900, { y: 1500, side: 'below' }), work('2', 900, { y: 800 })]
    const { findings } = layLabels({ wall, works })
    // The gap is 1 500 − 1 420 = 80 of 60 + 25 + 40 = 125.
    expect(findings[0]).toMatchObject({ code: 'label-gap-narrow', severity: 'stop', figures: { shortBy: 45 } })
  })

  test('labels of a stack stand in a column beside it, read downwards, in the band that can be read', () => {
    const stack = { id: 'upper', left: 850, right: 1380 }
    const works = [
      work('lower', 900, { y: 800, side: 'right', stack }),
      work('upper', 850, { y: 1500, width: 530, side: 'right', stack }),
    ]
    const { labels, findings } = layLabels({ wall, works })
    expect(findings).toEqual([])
    // Two of 25 with 40 between are 90, about 1370: 1390 and 1325; 60 to the right of the wider work.
    expect(labels.map(({ id, x, y }) => [id, x, y])).toEqual([
      ['lower', 1440, 1325],
      ['upper', 1440, 1390],
    ])
  })

  test('more labels than the band holds stand in a second column; a work too near is told, by how much', () => {
    const stack = { id: '1', left: 900, right: 1380 }
    // Eight of 25 with 40 between are 480 of 482.6, and begin at 1219.2; two more are 90 about 1370.
    const ten = Array.from({ length: 10 }, (_, index) =>
      work(String(index + 1), 900, { y: 2300 - 200 * index, height: 150, side: 'left', stack }),
    )
    const { labels, findings } = layLabels({ wall, works: ten })
    expect(findings).toEqual([])
    const first = 900 - 60 - 159
    expect(labels.map(({ x }) => x)).toEqual([...Array(8).fill(first), ...Array(2).fill(first - 60 - 159)])
    expect(labels[7]?.y).toBeCloseTo(1219.2, 6)
    expect(labels.slice(8).map(({ y }) => y)).toEqual([1390, 1325])
    const near = layLabels({ wall, works: [...ten, work('beside', 100)] })
    // It ends at 580; the second column begins at 462 and wants 40 more.
    expect(near.findings.find(found => found.code === 'label-gap-narrow')).toMatchObject({
      severity: 'stop',
      figures: { with: 'beside', gap: 320, wants: 478, shortBy: 158 },
    })
  })

  test('openings, what must stay clear, and the wall’s ends', () => {
    const door = { id: 'o', kind: 'door', x: 1400, y: 0, width: 900, height: 2100, label: '' }
    expect(codes({ wall: { ...wall, openings: [door] }, works: [work('3', 900, { side: 'right' })] })).toEqual([
      'stop label-in-opening',
    ])
    const niche = { ...door, kind: 'niche', x: 1500 }
    expect(
      layLabels({ wall: { ...wall, openings: [niche] }, works: [work('3', 900, { side: 'right' })] }).findings[0]?.text,
    ).toMatch(/^The label of 3 hangs over the edge of the niche: put it wholly into it, or wholly beside it\./)
    const point = { ...door, kind: 'call point', x: 1640, y: 1330, width: 100, height: 100, margin: 60, reason: '' }
    const near = layLabels({ wall: { ...wall, keepClears: [point] }, works: [work('3', 900, { side: 'right' })] })
    expect(near.findings[0]?.text).toBe(
      'The label of 3 stands 19 mm inside the call point’s margin. On the left it would stand free.',
    )
    expect(codes({ wall, works: [work('3', 100, { side: 'left' })] })).toEqual(['stop label-off-wall'])
  })

  test('a plate’s screw wants room for its tool; an ordinary hole is only not covered', () => {
    const plate = { name: 'right plate', x: 1420, y: 1370, keeps: true }
    const beside = layLabels({ wall, works: [work('3', 900, { side: 'right', holes: [plate] })] })
    expect(beside.findings[0]?.text).toBe(
      'The label of 3 is 20 mm from the right plate of 3; its tool needs 40 mm. On the left it would stand free.',
    )
    expect(codes({ wall, works: [work('3', 900, { side: 'right', holes: [{ ...plate, x: 1500 }] })] })).toEqual([
      'stop label-over-hole',
    ])
    expect(codes({ wall, works: [work('3', 900, { side: 'right', holes: [{ ...plate, keeps: false }] })] })).toEqual([])
  })

  test('the band that can be read, above the floor where the label is', () => {
    expect(codes({ wall, line: 1200, works: [work('3', 900, { side: 'right' })] })).toEqual(['settle label-too-low'])
    expect(codes({ wall, line: 1700, works: [work('3', 900, { side: 'right' })] })).toEqual(['settle label-too-high'])
    const sunk = {
      ...wall,
      floor: [
        [0, 0],
        [1000, -400],
        [9140, -400],
      ] as const,
    }
    expect(codes({ wall: sunk, works: [work('3', 900, { side: 'right' })] })).toEqual(['settle label-too-high'])
  })

  test('what it says is better is free, and nothing is said of a label that is free', () => {
    const { next: chance } = seeded(11)
    for (let round = 0; round < 200; round++) {
      let x = 200
      const works: LabelledWork[] = []
      for (let index = 0; index < 7; index++) {
        const side = (['left', 'right', 'below', null] as const)[Math.floor(chance() * 4)] ?? null
        works.push(work(String(index), x, { side, y: 1000 + chance() * 400, width: 200 + chance() * 500 }))
        x += (works.at(-1)?.width ?? 0) + 60 + chance() * 500
      }
      const { labels, findings } = layLabels({ wall, works })
      for (const label of labels) {
        const told = findings.some(found => found.subject.id === label.id)
        const near = works.some(each => each.id !== label.id && clearDistance(label, each) < 40 - 1e-6)
        if (near) expect(told).toBe(true)
        if (!told) expect(works.some(each => overlap(label, each))).toBe(false)
        if (label.better === null) continue
        const other = works.map(each => (each.id === label.id ? { ...each, side: label.better } : each))
        expect(layLabels({ wall, works: other }).findings.filter(found => found.subject.id === label.id)).toEqual([])
      }
    }
  })
})
