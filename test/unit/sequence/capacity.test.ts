import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { layRow } from '../../../src/layout/row.ts'
import { capacityOf } from '../../../src/sequence/capacity.ts'

const work = (id: string, section: string | null, width: number | null) => ({ id, section, width })

describe('capacity', () => {
  test('widths, a gap after each and a panel for each section against what walls give', () => {
    const works = [work('a', 's', 800), work('b', 's', 1200), work('c', 't', 600), work('d', null, null)]
    const stretches = [
      { length: 3000, margin: 150, gap: 100 },
      { length: 1500, margin: 150, gap: 100 },
    ]
    // Section s: 500 + 800 + 1200 and three gaps; t: 500 + 600 and two; the last has no size.
    expect(capacityOf(works, ['s', 't', null], stretches, 500)).toEqual({
      there: 2800 + 1300,
      needed: 2800 + 1300,
      short: 0,
      sections: [
        { section: 's', works: 2, unsized: 0, needed: 2800, from: 0, short: 0 },
        { section: 't', works: 1, unsized: 0, needed: 1300, from: 2800, short: 0 },
        { section: null, works: 1, unsized: 1, needed: 0, from: 4100, short: 0 },
      ],
      tooWide: [],
    })
  })

  test('what does not fit is missing at the end, section by section', () => {
    const works = [work('a', 's', 1900), work('b', 't', 900), work('c', 'u', 900)]
    const found = capacityOf(works, ['s', 't', 'u'], [{ length: 2700, margin: 150, gap: 100 }], 0)
    expect(found).toMatchObject({ there: 2500, needed: 4000, short: 1500 })
    expect(found.sections.map(one => one.short)).toEqual([0, 500, 1000])
  })

  test('a work wider than every wall is named', () => {
    const found = capacityOf([work('a', null, 2500)], [null], [{ length: 2700, margin: 150, gap: 100 }], 0)
    expect(found.tooWide).toEqual(['a'])
    expect(capacityOf([work('a', null, 300)], [null], [], 0)).toMatchObject({ there: 0, tooWide: ['a'] })
  })

  test('on one wall it fits exactly where a row with the least gaps does', () => {
    const length = fc.integer({ min: 500, max: 9000 })
    const widths = fc.array(fc.integer({ min: 100, max: 2000 }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(length, widths, (wall, sizes) => {
        const [margin, gap] = [150, 75]
        const works = sizes.map((width, at) => work(String(at), null, width))
        const found = capacityOf(works, [null], [{ length: wall, margin, gap }], 0)
        const row = layRow({
          from: 0,
          to: wall,
          works: sizes.map((width, at) => ({ id: String(at), width, heldAt: null })),
          rule: { rule: 'margins', left: margin, right: margin },
          leastGap: gap,
        })
        expect(found.short < 1e-6).toBe(row.fits)
      }),
    )
  })
})
