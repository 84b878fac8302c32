/** The wall sheet as a model: its numbers, its pages, what it calls a revision. */
import { describe, expect, test } from 'vitest'
import { boxesMeet, type Paper, papers } from '../../../src/sheets/shapes.ts'
import { wallSheetContent } from '../../../src/sheets/wall-sheet.ts'
import { mixed } from './cases.ts'
import { question, sheetOf } from './made.ts'
import { placed, rowOfWorks, six, wallOf } from './wall.ts'

const wallOfSix = () => wallOf(six.map((given, index) => placed(given, index)))
const plain = (text: string | undefined) => text?.replace(/[\u2009\u00a0]/g, ' ')

describe('numbers of the table', () => {
  // Source: worked scenario "wall of six, D-rings", computed by a script outside this program; common practice.
  test('are those of the worked wall of six in millimetres', async () => {
    const { rows } = await sheetOf(wallOfSix())
    expect(rows.map(row => row.leftEdge?.mm)).toEqual([900, 2012, 3354, 4526, 6118, 7230])
    expect(rows.map(row => row.fromFloor[0]?.mm)).toEqual([1695, 1795, 1680, 1880, 1695, 1730])
    expect(rows.map(row => row.fromLine[0]?.main)).toEqual(['+215', '+315', '+200', '+400', '+215', '+250'])
    expect([rows[3]?.leftMark?.mm, rows[3]?.rightMark?.mm]).toEqual([4586, 5426])
    expect(rows.map(row => row.gapBefore?.mm)).toEqual([900, 632, 632, 632, 632, 632])
    expect(rows[5]?.rightEdge?.mm).toBe(8240)
    expect(rows[5]?.gapAfter?.mm).toBe(900)
  })

  test('are those of the worked wall of six in inches', async () => {
    const { rows } = await sheetOf(wallOfSix(), { unit: 'in' })
    expect(plain(rows[1]?.fromFloor[0]?.main)).toBe('70 11/16')
    expect([plain(rows[1]?.leftMark?.main), plain(rows[1]?.rightMark?.main)]).toEqual(['81 3/8', '105'])
    expect(plain(rows[1]?.fromFloor[0]?.other)).toBe('1 795')
  })

  test('are the printed numbers of the marks, every one', async () => {
    const asked = question(rowOfWorks(25))
    const { rows } = await sheetOf(rowOfWorks(25))
    expect(rows).toHaveLength(25)
    for (const row of rows) {
      const found = asked.marks.get(row.placement)
      if (found === undefined || !('answer' in found)) throw new Error('no marks')
      const [left, right] = found.answer.marks
      expect(row.fromFloor[0]).toMatchObject(left?.printed.fromFloor ?? {})
      expect(row.fromLine[0]).toMatchObject(left?.printed.fromLine ?? {})
      expect(row.holeFromFloor[0]).toMatchObject(left?.printed.holeFromFloor ?? {})
      expect(row.leftMark).toMatchObject(left?.printed.x ?? {})
      expect(row.rightMark).toMatchObject(right?.printed.x ?? {})
      expect(row.apart).toMatchObject(found.answer.printed.between ?? {})
    }
  })

  test.each(['mm', 'in'] as const)('add up along the wall in %s', async unit => {
    const elevation = rowOfWorks(25)
    const { rows } = await sheetOf(elevation, { unit })
    const pick = (figure: { mm: number; inches: number } | null) =>
      unit === 'mm' ? (figure?.mm ?? 0) : (figure?.inches ?? 0)
    let sum = 0
    for (const row of rows) {
      expect(pick(row.leftMark) + pick(row.apart)).toBeCloseTo(pick(row.rightMark), 9)
      sum += pick(row.gapBefore) + (pick(row.rightEdge) - pick(row.leftEdge))
    }
    sum += pick(rows.at(-1)?.gapAfter ?? null)
    const whole =
      unit === 'mm' ? Math.round(elevation.wall.length) : Math.round((elevation.wall.length / 25.4) * 16) / 16
    expect(sum).toBeCloseTo(whole, 9)
  })

  test('show both sides where drops differ or the floor slopes', async () => {
    const [first] = six
    if (first === undefined) throw new Error('no work')
    const uneven = placed(first, 0, {
      back: {
        method: 'd-rings',
        seenFrom: 'front',
        data: { left: { drop: 95, inset: 40 }, right: { drop: 99, inset: 40 } },
      },
    })
    const { rows } = await sheetOf(wallOf([uneven]))
    expect(rows[0]?.fromFloor.map(figure => [figure.side, figure.mm])).toEqual([
      ['left', 1695],
      ['right', 1691],
    ])
    // One line for both sides, by hand: 1 480 + 620 / 2 − 95 = 1 695 and − 99 = 1 691; 1 170 + 525 and + 521; + 14.
    const working = rows[0]?.working.map(line => plain(line.text)) ?? []
    expect(working.slice(0, 3)).toEqual([
      'bears at 1 480 + 620 / 2 − 95 = 1 695 left, … − 99 = 1 691 right',
      'from below 1 170 + 525 = 1 695 left, … + 521 = 1 691 right',
      'hole 1 695 + 14 = 1 709 left, 1 691 + 14 = 1 705 right',
    ])
    expect(rows[0]?.working[1]).toMatchObject({ agrees: true, sides: [{ agrees: true }, { agrees: true }] })
    const sloping = await sheetOf(
      wallOf([placed(first, 0)], 9140, {
        floor: [
          [0, 0],
          [6000, -38],
        ],
      }),
    )
    expect(sloping.rows[0]?.fromLine.map(figure => figure.main)).toEqual(['+215'])
    expect(sloping.rows[0]?.fromFloor.map(figure => figure.mm)).toEqual([1701, 1703])
  })

  test('show a cleat as one bar with its screws', async () => {
    const [first] = six
    if (first === undefined) throw new Error('no work')
    const fixing = placed(first, 0).fixing
    if (fixing === null) throw new Error('no fixing')
    const cleat = placed({ ...first, width: 1200 }, 0, {
      back: { method: 'cleat', seenFrom: 'front', data: { drop: 70, length: 1000 } },
      fixing: { ...fixing, kind: 'cleat', name: 'cleat', holeOffset: 0, ratedKg: 60 },
    })
    const { rows } = await sheetOf(wallOf([cleat], 9140, { studFirst: 400, studSpacing: 400 }))
    expect(plain(rows[0]?.fixing)).toBe('cleat, rated 60 kg')
    // Studs at 1 200 and 1 600 lie under the bar, the one at 2 000 does not.
    expect(plain(rows[0]?.working.at(-1)?.text)).toBe('screws of the wall part at 1 200 · 1 600, 2 at each')
  })

  test('never show a hole where no fixing is chosen', async () => {
    const [first] = six
    if (first === undefined) throw new Error('no work')
    const { rows } = await sheetOf(wallOf([placed(first, 0, { fixing: null })]))
    expect(rows[0]?.fromFloor[0]?.mm).toBe(1695)
    expect(rows[0]?.holeFromFloor).toEqual([])
    expect(rows[0]?.fixing).toContain('No fixing chosen')
  })

  test('give way to a sentence where the back was never measured', async () => {
    const [first] = six
    if (first === undefined) throw new Error('no work')
    const { rows, boxes } = await sheetOf(wallOf([placed(first, 0, { back: null })]))
    expect(rows[0]?.fromFloor).toEqual([])
    expect(boxes[0]?.some(box => box.text.startsWith('No marks: Nobody has measured its back'))).toBe(true)
  })
})

describe('pages', () => {
  const counts = [0, 1, 6, 25, 60]
  const cases = (Object.keys(papers) as Paper[]).flatMap(paper =>
    counts.flatMap(count => (['mm', 'in'] as const).map(unit => [paper, count, unit] as const)),
  )

  test.each(cases)(
    '%s with %i works in %s: no text meets another or leaves the paper, every work once',
    async (paper, count, unit) => {
      const elevation = count === 6 ? wallOfSix() : rowOfWorks(count)
      const { pages, boxes, rows } = await sheetOf(elevation, { paper, unit })
      const problems: string[] = []
      boxes.forEach((page, number) => {
        page.forEach((box, index) => {
          if (box.x < 0 || box.y < 0 || box.x + box.w > papers[paper].width || box.y + box.h > papers[paper].height) {
            problems.push(`${number}: ${box.text} leaves the paper`)
          }
          for (const other of page.slice(index + 1)) {
            if (boxesMeet(box, other)) problems.push(`${number}: “${box.text}” meets “${other.text}”`)
          }
        })
      })
      expect(problems).toEqual([])
      const names = boxes.flat().map(box => box.name)
      for (const row of rows) expect(names.filter(name => name === `row ${row.called} number`)).toHaveLength(1)
      // Each page says which wall, which revision, which sheet of how many, and the height of the line where it is drawn.
      boxes.forEach((page, index) => {
        const texts = page.map(box => box.text).join('|')
        expect(texts).toContain('Room 2, east wall')
        expect(texts).toContain('revision 4')
        expect(texts).toContain(`sheet ${index + 1} of ${pages.length}`)
        expect(texts).toContain('revisions 1 to 3 of this wall are void')
        if (page.some(box => box.name.startsWith('drawing'))) {
          expect(plain(texts)).toContain(unit === 'mm' ? '1 480 mm' : '58 1/4 in')
        }
      })
    },
  )

  test('uneven drops take little more height than even ones: six works stand in one table', async () => {
    const uneven = six.map((given, index) =>
      placed(given, index, {
        back: {
          method: 'd-rings',
          seenFrom: 'front',
          data: {
            left: { drop: given.drop, inset: given.inset },
            right: { drop: given.drop + 12, inset: given.inset },
          },
        },
      }),
    )
    const { pages } = await sheetOf(wallOf(uneven))
    const numbers = (pages[0]?.shapes ?? []).flatMap(shape =>
      shape.kind === 'rect' && shape.width === 0.25 && shape.w === shape.h ? [shape.y] : [],
    )
    // A row of tick boxes for each work.
    expect(new Set(numbers).size).toBe(6)
  })

  test('six works stand on one A4 sheet; how they come down is on the next', async () => {
    const { boxes } = await sheetOf(wallOfSix())
    expect(boxes).toHaveLength(2)
    expect(boxes[0]?.filter(box => / number$/.test(box.name))).toHaveLength(6)
    expect(boxes[1]?.some(box => box.text.includes('to take down'))).toBe(true)
    expect(boxes[1]?.some(box => box.name.startsWith('row'))).toBe(false)
  })

  test('works above each other keep their labels apart too', async () => {
    const works = Array.from({ length: 18 }, (_, index) =>
      placed(
        {
          running: String(index + 1),
          title: 'Of a wall hung close',
          height: 300,
          width: 300,
          drop: 60,
          inset: 30,
          left: 500 + 350 * Math.floor(index / 3) + (index % 3) * 20,
          mass: 2,
        },
        index,
        { rule: 'hand', centreY: 900 + 400 * (index % 3) },
      ),
    )
    const { boxes } = await sheetOf(wallOf(works, 4000, { keepClears: [] }))
    const meeting = boxes.flatMap(page =>
      page.flatMap((box, index) => page.slice(index + 1).filter(other => boxesMeet(box, other))),
    )
    expect(meeting).toEqual([])
  })

  test('each work has a box for each step', async () => {
    const { pages } = await sheetOf(wallOfSix())
    const square = pages[0]?.shapes.filter(
      shape => shape.kind === 'rect' && shape.w === shape.h && shape.fill === undefined && shape.w > 2 && shape.w < 4,
    )
    expect(square?.length).toBe(6 * 7)
  })
})

describe('rail, lock, plinth and a hole that stayed', () => {
  test('have lines of their own with place, type and tool', async () => {
    const { rows, boxes } = await sheetOf(mixed)
    // By hand: edge 2 012 + 355 = 2 367 along; bottom 1 480 − 455 = 1 025, + 26 = 1 051 up, − 429 from the line.
    expect(rows[1]?.others).toMatchObject([
      {
        called: 'lock',
        x: { mm: 2367 },
        fromFloor: { mm: 1051 },
        fromLine: { mm: -429 },
        says: 'lock screw · hex key',
      },
    ])
    // Rail 2 710 + 6 · 940 / 6 000 = 2 710.94 over the left ring, less 18 of hook, less the ring at 1 695: 997.94.
    expect(rows[0]?.others.map(one => one.called)).toEqual(['left hanger', 'right hanger'])
    expect(rows[0]?.others[0]?.says).toContain('998')
    expect(rows[2]?.fixing).toBe('Stands on the floor: no hole.')
    expect(rows[2]?.fromFloor).toEqual([])
    const texts = boxes.flat().map(box => plain(box.text))
    expect(texts.some(text => text?.includes('5 000 along, 1 600 up'))).toBe(true)
    expect(
      boxes.flatMap(page =>
        page.flatMap((box, i) =>
          page
            .slice(i + 1)
            .filter(other => boxesMeet(box, other))
            .map(other => [box.text, other.text]),
        ),
      ),
    ).toEqual([])
  })

  test('carry what was written at a mark, which makes no other revision', async () => {
    const [first] = mixed.works
    const [hole] = mixed.made
    if (first === undefined || hole === undefined) throw new Error('the mixed wall has works and a hole')
    const note = 'hit metal at 20 mm, moved 12 mm right'
    const noted = { ...hole, id: 'm2', placement: first.placement, state: 'marked' as const, drilled: null }
    const bare = { ...mixed, made: [...mixed.made, noted] }
    const written = { ...mixed, made: [...mixed.made, { ...noted, note }] }
    const { pages, rows } = await sheetOf(written)
    const texts = pages.flatMap(page => page.shapes).map(one => ('text' in one ? one.text : ''))
    expect(texts.join(' ')).toContain(`${rows[0]?.called}: left mark: hit metal`)
    expect(wallSheetContent(question(written))).toBe(wallSheetContent(question(bare)))
  })

  test('are ticked as far as they are done', async () => {
    const { rows } = await sheetOf(mixed)
    expect(rows[0]?.ticks).toMatchObject({ 'services checked': 'none', drilled: 'none', hung: 'open' })
    expect(rows[1]?.ticks).toMatchObject({
      drilled: 'open',
      hung: 'done',
      level: 'done',
      locked: 'done',
      'second check': 'open',
    })
    const undone = { ...mixed, works: mixed.works.map(work => ({ ...work, state: 'planned' as const })) }
    expect(wallSheetContent(question(undone))).toBe(wallSheetContent(question(mixed)))
    expect(wallSheetContent(question({ ...mixed, made: [] }))).not.toBe(wallSheetContent(question(mixed)))
  })
})

describe('letters that no face has', () => {
  test('are a finding that names the work, and stand on the sheet', async () => {
    const [first] = six
    if (first === undefined) throw new Error('no work')
    const { missing, boxes } = await sheetOf(wallOf([placed({ ...first, title: 'Wave 波, Łódź, Кама' }, 0)]))
    expect(missing).toMatchObject([{ subject: { kind: 'work', id: 'w0' }, figures: { characters: ['U+6CE2'] } }])
    expect(boxes[0]?.some(box => box.text.includes('波'))).toBe(true)
  })
})

describe('a revision', () => {
  test('is told by what the sheet says, not by paper, unit, person or time', () => {
    const content = (more: Parameters<typeof question>[1]) => wallSheetContent(question(wallOfSix(), more))
    const now = content({})
    expect(content({ paper: 'Tabloid', time: 'another day', by: 'Bo Lind', revision: 9, voids: [] })).toBe(now)
    const moved = wallOf(
      six.map((given, index) => placed(index === 2 ? { ...given, left: given.left + 1 } : given, index)),
    )
    expect(wallSheetContent(question(moved))).not.toBe(now)
    const remeasured = wallOf(
      six.map((given, index) => placed(index === 2 ? { ...given, drop: given.drop + 1 } : given, index)),
    )
    expect(wallSheetContent(question(remeasured))).not.toBe(now)
  })

  test('is not changed by what has been hung', () => {
    const hung = wallOf(six.map((given, index) => placed(given, index, { state: 'hung', held: true })))
    expect(wallSheetContent(question(hung))).toBe(wallSheetContent(question(wallOfSix())))
  })
})
