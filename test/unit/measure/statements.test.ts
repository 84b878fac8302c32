/**
 * Dimension statements in the styles museums and dealers publish, in three languages. Works and figures are invented;
 * the millimetres are worked out by hand (1 in = 25.4 mm). Styles: common practice, no source.
 */
import { describe, expect, test } from 'vitest'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import type { Part, ReadOptions } from '../../../src/measure/statement.ts'

type Expected = readonly [Part, ...(number | undefined)[]]
type Row = readonly [string, ...Expected[]]

const dual: readonly Row[] = [
  ['10 x 8 in. (25.4 x 20.3 cm)', ['unnamed', 254, 203.2]],
  ['25.4 × 20.3 cm (10 × 8 in.)', ['unnamed', 254, 203]],
  ['24 in (61 cm) x 36 in (91.4 cm)', ['unnamed', 609.6, 914.4]],
  ['height 24 in. (61 cm), width 36 in. (91.4 cm)', ['unnamed', 609.6, 914.4]],
  ['24 x 36 in / 61 x 91.4 cm', ['unnamed', 609.6, 914.4]],
  ['24 × 36 in\n61 × 91.4 cm', ['unnamed', 609.6, 914.4]],
  ['24 x 36 (61 x 91.4 cm)', ['unnamed', 609.6, 914.4]],
  ['61 cm x 91 cm (24 x 36)', ['unnamed', 610, 910]],
  ['76.2 x 101.6cm [30 x 40in]', ['unnamed', 762, 1016]],
  ['30 1/8 × 40 1/4 × 2 1/2 inches (76.5 × 102.2 × 6.4 cm)', ['unnamed', 765.175, 1022.35, 63.5]],
  ['framed 24 x 36 in; framed 61 x 91.4 cm', ['framed', 609.6, 914.4]],
]

const named: readonly Row[] = [
  ['50 x 70 cm (sheet), 60 x 80 cm (framed)', ['sheet', 500, 700], ['framed', 600, 800]],
  ['(sheet) 50 x 70 cm', ['sheet', 500, 700]],
  ['50 x 70 cm (framed: 60 x 80 cm)', ['unnamed', 500, 700], ['framed', 600, 800]],
  ['50 x 70 cm, framed 60 x 80 cm', ['unnamed', 500, 700], ['framed', 600, 800]],
  ['unframed 50 x 70 cm; framed 56 x 76 cm', ['support', 500, 700], ['framed', 560, 760]],
  ['50 x 70 cm framed', ['framed', 500, 700]],
  ['60 x 80 cm, with frame 70 x 90 x 4 cm', ['unnamed', 600, 800], ['framed', 700, 900, 40]],
  ['50 x 70 cm. Framed 60 x 80 cm.', ['unnamed', 500, 700], ['framed', 600, 800]],
  [
    'image: 8 x 10 in (20.3 x 25.4 cm)\nsheet: 11 x 14 in (27.9 x 35.6 cm)',
    ['image', 203.2, 254],
    ['sheet', 279.4, 355.6],
  ],
  ['Framed\n60 x 80 cm\nUnframed\n50 x 70 cm', ['framed', 600, 800], ['support', 500, 700]],
  ['60 x 80 cm\nframed\n50 x 70 cm\nunframed', ['framed', 600, 800], ['support', 500, 700]],
  ['mat 40 x 50 cm, sight 28 x 38 cm', ['mount', 400, 500], ['sight', 280, 380]],
  ['plate mark 20 x 30 cm; sheet 40 x 50 cm', ['plate', 200, 300], ['sheet', 400, 500]],
  ['Overall: 24 x 36 x 2 in.', ['overall', 609.6, 914.4, 50.8]],
  ['45 cm high including base', ['overall', 450]],
  ['plinth 100 x 40 x 40 cm', ['base', 1000, 400, 400]],
  ['16 × 20 in. paper, 15 × 19 in. image', ['sheet', 406.4, 508], ['image', 381, 482.6]],
  ['50 x 70 cm (19 5/8 x 27 1/2 in., sheet)', ['sheet', 500, 700]],
  ['sheet 50 x 70; framed 60 x 80 cm', ['sheet', 500, 700], ['framed', 600, 800]],
  ['support: 1018 x 1270 mm; frame: 1187 x 1438 x 95 mm', ['support', 1018, 1270], ['framed', 1187, 1438, 95]],
  ['Artwork: 70 x 50 cm Frame: 82 x 62 cm', ['unnamed', 700, 500], ['framed', 820, 620]],
  ['Part 1: 50 x 70 cm; Part 2: 30 x 40 cm', ['part', 500, 700], ['part', 300, 400]],
]

const lettered: readonly Row[] = [
  ['120 (H) x 90 (W) x 4 (D) cm', ['unnamed', 1200, 900, 40]],
  ['120 cm high, 90 cm wide, 4 cm deep', ['unnamed', 1200, 900, 40]],
  ['Height: 120 cm; Width: 90 cm; Depth: 4 cm', ['unnamed', 1200, 900, 40]],
  ['30"H x 40"W x 2"D', ['unnamed', 762, 1016, 50.8]],
  ['H: 30 in. W: 40 in.', ['unnamed', 762, 1016]],
  ['40 cm W x 30 cm H', ['unnamed', 300, 400]],
  ['w 40 h 30 cm', ['unnamed', 300, 400]],
  ['48 h x 36 w in.', ['unnamed', 1219.2, 914.4]],
  ['120H x 90W x 4D cm', ['unnamed', 1200, 900, 40]],
  ['H120xW90xD4cm', ['unnamed', 1200, 900, 40]],
  ['h x w: 50 x 70 cm', ['unnamed', 500, 700]],
  ['50 x 70 cm (h x w)', ['unnamed', 500, 700]],
  ['w x h: 70 x 50 cm', ['unnamed', 500, 700]],
  ['(H x W x D) 50 x 70 x 3 cm', ['unnamed', 500, 700, 30]],
  ['H. 30 cm, Diam. 12 cm', ['unnamed', 300, undefined, undefined, 120]],
  ['45 cm in diameter', ['unnamed', undefined, undefined, undefined, 450]],
  ['60 x 40 cm, depth 3 cm', ['unnamed', 600, 400, 30]],
  ['about 4 ft 6 in high by 3 ft wide', ['unnamed', 1371.6, 914.4]],
]

const french: readonly Row[] = [
  ['H. 120 cm ; L. 90 cm ; P. 4 cm', ['unnamed', 1200, 900, 40]],
  ['hauteur 50 cm, largeur 70 cm, profondeur 3 cm', ['unnamed', 500, 700, 30]],
  ['Hauteur : 162 cm ; Largeur : 130,5 cm', ['unnamed', 1620, 1305]],
  ['50 cm de haut, 70 cm de large', ['unnamed', 500, 700]],
  ['feuille : 50 x 70 cm ; cadre : 60 x 80 cm', ['sheet', 500, 700], ['framed', 600, 800]],
  ['à vue 48 x 68 cm, avec cadre 60 x 80 cm', ['sight', 480, 680], ['framed', 600, 800]],
  ['H. 50,2 ; L. 61 cm ; P. 3 cm (sans cadre)', ['support', 502, 610, 30]],
  ['passe-partout 40 x 50 cm', ['mount', 400, 500]],
  ['50 sur 70 cm, encadré', ['framed', 500, 700]],
  ['1,20 m x 80 cm', ['unnamed', 1200, 800]],
  ['diamètre : 45 cm ; épaisseur : 3 cm', ['unnamed', undefined, undefined, 30, 450]],
]

const german: readonly Row[] = [
  ['H 120 × B 90 × T 4 cm', ['unnamed', 1200, 900, 40]],
  ['Höhe 50 cm, Breite 70 cm', ['unnamed', 500, 700]],
  ['B x H: 70 x 50 cm', ['unnamed', 500, 700]],
  ['Ho\u0308he 50 cm, Breite 70 cm', ['unnamed', 500, 700]],
  ['Blatt 50 x 70 cm, gerahmt 60 x 80 cm', ['sheet', 500, 700], ['framed', 600, 800]],
  ['50 x 70 cm (Blatt); 60 x 80 cm (Rahmen)', ['sheet', 500, 700], ['framed', 600, 800]],
  ['Sichtmaß 48,5 x 68,2 cm; mit Rahmen 60 x 80 cm', ['sight', 485, 682], ['framed', 600, 800]],
  ['Blattmaß: 29,7 x 42 cm, Bildmaß 24,5 x 36,8 cm', ['sheet', 297, 420], ['image', 245, 368]],
  ['ohne Rahmen 80 x 60 cm / mit Rahmen 95 x 75 cm', ['support', 800, 600], ['framed', 950, 750]],
  ['Durchmesser 45 cm, Tiefe 3 cm', ['unnamed', undefined, undefined, 30, 450]],
  ['Rahmen: 1.220,5 × 915 mm', ['framed', 1220.5, 915]],
]

const plain: readonly Row[] = [
  ['24-1/2 x 36-3/4 inches', ['unnamed', 622.3, 933.45]],
  ['24 1⁄2 x 36 3⁄4 in', ['unnamed', 622.3, 933.45]],
  ['24.375 x 36.5"', ['unnamed', 619.125, 927.1]],
  ['1’ 6” × 2’ 3½”', ['unnamed', 457.2, 698.5]],
  ['4 ft 2 in x 3 ft 1 1/2 in', ['unnamed', 1270, 952.5]],
  ["4' x 6'", ['unnamed', 1219.2, 1828.8]],
  ['4 x 6 ft', ['unnamed', 1219.2, 1828.8]],
  ['50*70 cm', ['unnamed', 500, 700]],
  ['50X70CM', ['unnamed', 500, 700]],
  ['50 by 70 cm', ['unnamed', 500, 700]],
  ['cm 50 x 70', ['unnamed', 500, 700]],
  ['50 x 70 (cm)', ['unnamed', 500, 700]],
  ['1.20 x 0.80 m', ['unnamed', 1200, 800]],
  ['1 220 × 915 × 40 mm', ['unnamed', 1220, 915, 40]],
  ['50 x 70 cm, 1987', ['unnamed', 500, 700]],
]

describe.each([
  ['two units', dual],
  ['parts named', named],
  ['letters', lettered],
  ['French', french],
  ['German', german],
  ['plain', plain],
] as const)('%s', (_name, rows) => {
  test.each(rows.map(([text, ...expected]) => ({ text, expected })))('$text', ({ text, expected }) => {
    const read = readDimensions(text)
    expect(read.questions).toEqual([])
    expect(read.parts.map(part => [part.part, part.height, part.width, part.depth, part.diameter])).toEqual(
      expected.map(row => [0, 1, 2, 3, 4].map(index => row[index])),
    )
  })
})

describe('what else a statement says', () => {
  test.each([
    ['10 x 8 in., 22 lbs 8 oz', 10.205828325, false],
    ['50 x 70 cm, ca. 12 kg', 12, true],
    ['H 50 cm ; L 70 cm ; Poids : 21 kg', 21, false],
    ['Gewicht 8,5 kg, 60 x 80 cm', 8.5, false],
    ['14 kg (31 lb), 60 x 80 cm', 14, false],
  ])('%j weighs %d kg', (text, kg, approximate) => {
    const read = readDimensions(text)
    expect(read.mass).toMatchObject({ kg, approximate })
    expect(read.questions).toEqual([])
  })

  test.each([
    'c. 50 x 70 cm',
    'ca. 50 x 70 cm',
    'env. 50 × 70 cm',
    '~50 x 70 cm',
    'etwa 50 x 70 cm',
    '50 x 70 cm (approx.)',
    'about 50 x 70 cm',
  ])('%j is approximate', text => {
    expect(readDimensions(text).parts).toMatchObject([{ height: 500, width: 700, approximate: true }])
  })

  test.each([
    ['2 Tafeln, je 60 x 40 cm', 2],
    ['deux panneaux, chacun 60 x 40 cm', 2],
    ['60 x 40 cm each (4 panels)', 4],
    ['triptych, each panel 60 x 40 cm', 3],
    ['three parts, each 60 × 40 cm', 3],
    ['2 panels 60 x 40 cm each', 2],
  ])('%j is %d pieces', (text, count) => {
    const read = readDimensions(text)
    expect(read.parts).toMatchObject([{ part: 'part', count, height: 600, width: 400 }])
    expect(read.questions).toEqual([])
  })

  test('pieces and the whole side by side', () => {
    const read = readDimensions('diptych: 60 x 80 cm (each), 60 x 165 cm (overall)')
    expect(read.parts).toMatchObject([
      { part: 'part', count: 2, width: 800 },
      { part: 'overall', count: 1, width: 1650 },
    ])
    expect(read.hanging).toEqual({ index: 1, part: 'overall' })
  })

  test('what holds for each piece holds for every part that has a name', () => {
    expect(readDimensions('12 photographs, each: image 20 x 30 cm, frame 40 x 50 cm').parts).toMatchObject([
      { part: 'image', count: 12 },
      { part: 'framed', count: 12 },
    ])
  })

  test('a figure that runs into a size leaves no value behind', () => {
    expect(readDimensions('24 1 /4 x 36"').parts).toMatchObject([{ raw: '24 1 /4 x 36"' }])
    expect(readDimensions('24 1 /4 x 36"').parts[0]).not.toHaveProperty('height')
  })

  test('a frame of which only the depth is known is nothing to hang by', () => {
    expect(readDimensions('frame depth 4 cm, 50 x 70 cm').hanging).toEqual({ index: 1, part: 'unnamed' })
  })

  test('a C-print is not circa, an edition is no size, ten metres are worth a word', () => {
    expect(readDimensions('C-print, 120 × 150 cm').parts).toMatchObject([{ approximate: false }])
    expect(readDimensions('edition of 5, 50 x 70 cm').questions).toEqual([])
    expect(readDimensions('8 x 12 m').parts[0]?.warnings.map(warning => warning.code)).toEqual(['very-large'])
  })

  test('a figure that takes the unit of the one before it says so', () => {
    const [part] = readDimensions('24 in x 36').parts
    expect(part).toMatchObject({ height: 609.6, width: 914.4, warnings: [{ code: 'unit-inferred' }] })
  })

  test('the sight size alone hangs with a caution', () => {
    expect(readDimensions('sight 28 x 38 cm').hanging).toMatchObject({
      part: 'sight',
      caution: expect.stringContaining('measure'),
    })
  })

  test('a unit that was set is inferred and says so', () => {
    const read = readDimensions('61 x 91.5', { defaultUnit: 'cm' })
    expect(read.questions).toEqual([])
    expect(read.parts[0]).toMatchObject({ height: 610, width: 915, unit: 'cm', unitStated: false })
    expect(read.parts[0]?.warnings.map(warning => warning.code)).toEqual(['unit-inferred'])
  })

  test('words that were not read are shown', () => {
    expect(readDimensions('50 x 70 cm zwerg').warnings).toEqual([{ code: 'not-read', text: '“zwerg” was not read.' }])
    expect(readDimensions('-50 x 70 cm').warnings).toEqual([{ code: 'not-read', text: '“-” was not read.' }])
  })

  test('letters beat the image, and it is said', () => {
    const read = readDimensions('H 30 x W 40 cm', { imageAspect: 0.75 })
    expect(read.parts[0]).toMatchObject({ height: 300, width: 400, warnings: [{ code: 'image-against-letters' }] })
  })

  test('the language of the list decides D', () => {
    const sizes = (language: NonNullable<ReadOptions['language']>) =>
      readDimensions('H 20 cm, D 12 cm', { language }).parts[0]
    expect(sizes('de')).toMatchObject({ height: 200, diameter: 120 })
    expect(sizes('fr')).toMatchObject({ height: 200, diameter: 120 })
    expect(readDimensions('H 20 cm, D 12 cm').questions).toMatchObject([{ code: 'depth-or-diameter' }])
  })
})

describe('what has to be asked', () => {
  test.each([
    ['', 'empty'],
    ['garbage text', 'not-understood'],
    ['14 kg', 'no-size'],
    ['dimensions variable, approx 120 x 80 cm', 'no-size'],
    ['à confirmer', 'no-size'],
    ['Maße variabel', 'no-size'],
    ['n/a', 'no-size'],
    ['50 x 70', 'unit'],
    ['5 x 3\'4"', 'unit'],
    ['1 m x 80', 'unit'],
    ['120 cm', 'one-measure'],
    ['A44', 'not-understood'],
    ['2 x A4', 'number'],
    ['61/91,5 cm', 'fraction'],
    ['50 x 70 c m', 'unit'],
    ['50 x 70 x 3 x 2 cm', 'too-many'],
    ['1,220 x 915 mm', 'number'],
    ['1.220 x 915 mm', 'number'],
    ['60 x', 'number'],
    ['50 x 70 cm 12/50', 'number'],
    ['24 1 /4 x 36"', 'number'],
    ['24.1/4 x 36"', 'number'],
    ['20x30cm/8x12in', 'mismatch'],
    ['24/36 cm', 'fraction'],
    ['50-60 x 70 cm', 'range'],
    ['60 x 50–60 cm', 'range'],
    ['0 x 40 cm', 'out-of-range'],
    ['200 x 300 m', 'out-of-range'],
    ['Ø 45 x 3 cm', 'letters'],
    ['H 50 x H 70 cm', 'letters'],
    ['L 120 x W 80 cm', 'length'],
    ['L 90 B 60 H 40 cm', 'length'],
    ['50 x 70 cm; 60 x 80 cm', 'which-part'],
    ['50 x 70 cm, framed, 60 x 80 cm', 'which-part'],
    ['50 x 70 cm framed 60 x 80 cm', 'which-part'],
    ['sheet & image: 30 x 40 cm', 'which-part'],
    ['framed 50 x 70 cm; framed 60 x 80 cm', 'twice'],
    ['4 panels, 60 x 110 cm', 'count'],
    ['each 60 x 110 cm', 'count'],
    ['2 x 60 x 40 cm', 'count'],
    ['50 x 70 cm, 14 kg, 20 kg', 'mass'],
    ['10 Feb x 12 Mar', 'date'],
  ])('%j: %s', (text, code) => {
    const read = readDimensions(text)
    expect(read.questions.map(question => question.code)).toContain(code)
    for (const question of read.questions) {
      expect(question.text).toMatch(/[.?]$/)
      expect(text).toContain(question.piece)
    }
  })

  test('an answer that is a text reads without a question', () => {
    for (const text of ['50-60 x 70 cm', '1,220 x 915 mm', '24/36 cm']) {
      const options = readDimensions(text).questions[0]?.options ?? []
      expect(options.length).toBeGreaterThan(0)
      for (const option of options) expect(readDimensions(option.text ?? '').questions).toEqual([])
    }
  })

  test('more than 2,000 characters are refused as a question', () => {
    expect(readDimensions('50 x 70 cm '.repeat(200)).questions).toMatchObject([{ code: 'too-long' }])
  })
})
