/** The eighteen rows a lender sends, 22 strings, each with the outcome that practice asks for. Common practice, no source. */
import { describe, expect, test } from 'vitest'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import type { ReadOptions, Sizes } from '../../../src/measure/statement.ts'

function sizesOf(part: Sizes | undefined) {
  const { height, width, depth, diameter } = part ?? {}
  return [height, width, depth, diameter]
}

describe('values', () => {
  test.each([
    ['24 1/2 x 36 3/4 in.', [622.3, 933.45]],
    ['24½ × 36¾"', [622.3, 933.45]],
    ['49,8 x 69,2 cm', [498, 692]],
    ['24 x 36 in (61 x 91.4 cm)', [609.6, 914.4]],
    ['5\'4 1/2" x 3\'4"', [1638.3, 1016]],
    ['H 120 L 90 P 4 cm', [1200, 900, 40]],
    ['diam. 45 cm', [undefined, undefined, undefined, 450]],
    ['Ø45 cm', [undefined, undefined, undefined, 450]],
    [' 1\u00a0220 x 915 mm ', [1220, 915]],
    ['h x w x d\n 1\u00a0220 x\n915 mm \nh x w x d', [1220, 915]],
  ] as const)('%j', (text, sizes) => {
    const read = readDimensions(text)
    expect(read.parts).toHaveLength(1)
    expect(sizesOf(read.parts[0])).toEqual([0, 1, 2, 3].map(index => sizes[index]))
    expect(read.parts[0]).toMatchObject({ part: 'unnamed', unitStated: true, approximate: false })
    expect(read.questions).toEqual([])
    expect(read.hanging).toEqual({ index: 0, part: 'unnamed' })
  })

  test('row 10 shows that it was read as French', () => {
    expect(readDimensions('H 120 L 90 P 4 cm').parts[0]?.notes).toEqual(['read as French'])
  })

  test('row 7: frame and sight, inches inferred from the fractions, hung by the frame', () => {
    const read = readDimensions('framed: 31 7/8 x 48 1/16; sight 24 x 40')
    expect(read.parts.map(part => [part.part, part.height, part.width])).toEqual([
      ['framed', 809.625, 1220.7875],
      ['sight', 609.6, 1016],
    ])
    for (const part of read.parts) {
      expect(part).toMatchObject({ unit: 'in', unitStated: false })
      expect(part.warnings).toEqual([{ code: 'unit-inferred', text: 'Inches, inferred from the fractions.' }])
    }
    expect(read.questions).toEqual([])
    expect(read.hanging).toEqual({ index: 0, part: 'framed' })
  })

  test('row 14: size and weight, approximate', () => {
    const read = readDimensions('approx 120x80x4cm, 14kg')
    expect(read.parts[0]).toMatchObject({ height: 1200, width: 800, depth: 40, approximate: true })
    expect(read.mass).toEqual({ kg: 14, raw: '14kg', approximate: true })
    expect(read.questions).toEqual([])
  })

  test('row 15: four parts', () => {
    const read = readDimensions('4 panels, each 60 × 110 cm')
    expect(read.parts).toHaveLength(1)
    expect(read.parts[0]).toMatchObject({ part: 'part', count: 4, height: 600, width: 1100, label: '4 panels' })
    expect(read.questions).toEqual([])
  })
})

describe('questions', () => {
  test('row 6: the height is a value, the width a question with both readings', () => {
    const read = readDimensions('30 x 40 in. (76.2 x 106.1 cm)')
    expect(sizesOf(read.parts[0])).toEqual([762, undefined, undefined, undefined])
    expect(read.questions).toHaveLength(1)
    const [question] = read.questions
    expect(question).toMatchObject({ code: 'mismatch', index: 0 })
    expect(question?.text).toContain('40 in = 101.6 cm, list says 106.1')
    expect(question?.options.map(option => option.values)).toEqual([{ width: 1016 }, { width: 1061 }])
  })

  test('row 4: no unit, the neighbours are offered first and never taken', () => {
    const read = readDimensions('61 x 91.5', { neighboursUnit: 'cm' })
    expect(sizesOf(read.parts[0])).toEqual([undefined, undefined, undefined, undefined])
    expect(read.parts[0]).toMatchObject({ unit: null, unitStated: false, raw: '61 x 91.5' })
    expect(read.questions.map(question => question.code)).toEqual(['unit'])
    expect(read.questions[0]?.options[0]).toMatchObject({ unit: 'cm', values: { height: 610, width: 915 } })
    const inches = readDimensions('61 x 91.5', { neighboursUnit: 'in' })
    expect(inches.questions[0]?.options[0]).toMatchObject({ unit: 'in', values: { height: 1549.4, width: 2324.1 } })
  })

  test('row 9: neither the unit nor the order is taken for granted', () => {
    const read = readDimensions('16x20')
    expect(sizesOf(read.parts[0])).toEqual([undefined, undefined, undefined, undefined])
    expect(read.questions.map(question => question.code)).toEqual(['unit-and-order'])
    const inches = read.questions[0]?.options.filter(option => option.unit === 'in').map(option => option.values)
    expect(inches).toEqual([
      { height: 406.4, width: 508 },
      { height: 508, width: 406.4 },
    ])
  })

  test('row 9 with an image that is upright as written: only the unit is asked', () => {
    expect(readDimensions('16x20', { imageAspect: 20 / 16 }).questions.map(question => question.code)).toEqual(['unit'])
  })

  test('row 11: the sides are 80 high and 65 wide, only the unit is asked', () => {
    const read = readDimensions('B 65 × H 80')
    expect(read.questions.map(question => question.code)).toEqual(['unit'])
    expect(read.questions[0]?.options.find(option => option.unit === 'cm')?.values).toEqual({ height: 800, width: 650 })
    expect(read.parts[0]?.notes).toEqual(['read as German'])
  })

  test.each(['2-Jan', '45293', '1. Feb', '2024-01-02', '02/01/2024'])('row 12: %j is a date that was 1/2', text => {
    const read = readDimensions(text)
    expect(read.parts).toEqual([])
    expect(read.questions).toMatchObject([{ code: 'date', piece: text, options: [{ text: '1/2 in' }] }])
  })

  test.each(['dimensions variable', 'TBC', 'see image'])('row 16: %j is to do', text => {
    const read = readDimensions(text)
    expect(read.parts).toEqual([])
    expect(read.questions.map(question => question.code)).toEqual(['no-size'])
    expect(read.hanging).toBeNull()
  })

  test('row 17: the image is taller than wide, the size is not', () => {
    const upright: ReadOptions = { imageAspect: 0.75 }
    const bare = readDimensions('30 x 40', upright)
    expect(bare.questions.map(question => question.code)).toEqual(['unit-and-order'])
    expect(sizesOf(bare.parts[0])).toEqual([undefined, undefined, undefined, undefined])
    const read = readDimensions('30 x 40 cm', upright)
    expect(read.questions.map(question => question.code)).toEqual(['order'])
    expect(read.questions[0]?.options.map(option => option.values)).toEqual([
      { height: 400, width: 300 },
      { height: 300, width: 400 },
    ])
    expect(sizesOf(read.parts[0])).toEqual([undefined, undefined, undefined, undefined])
  })
})
