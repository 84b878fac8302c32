/** Works that hang as sets: two panels of one ford, six photographs of one gauge. All invented. */
import type { DemoWork } from './work-shape.ts'

/** Two panels of different size and mass, each with rings of its own. */
const ford: readonly DemoWork[] = [
  {
    key: 'ford-left',
    section: 0,
    title: 'The ford, near bank',
    maker: 'dunnavore',
    date: '2019',
    medium: 'oil on panel',
    kind: 'painting',
    lender: 'house',
    number: 'LH 2020.4a',
    image: [500, 360],
    framed: [560, 420, 34],
    measured: true,
    kg: 4.1,
    weighed: true,
    glazing: 'none',
    lux: 200,
    sensitivity: 'medium',
    hangs: 'd-rings on hooks',
    fixing: 'hook22',
    picture: ['oil, broad', 'reeds', 'meadow'],
    note: 'Left of the two panels; 20 mm between the frames, by the artist’s letter.',
  },
  {
    key: 'ford-right',
    section: 0,
    title: 'The ford, far bank',
    maker: 'dunnavore',
    date: '2019',
    medium: 'oil on panel',
    kind: 'painting',
    lender: 'house',
    number: 'LH 2020.4b',
    image: [400, 240],
    framed: [460, 300, 34],
    measured: true,
    kg: 2.3,
    weighed: true,
    glazing: 'none',
    lux: 200,
    sensitivity: 'medium',
    hangs: 'd-rings on hooks',
    fixing: 'hook13',
    picture: ['oil, broad', 'hills', 'meadow'],
    note: 'Right of the two panels.',
  },
]

/** What differs between the six: a frame of one workshop, and still no two alike to the millimetre. */
const readings = [
  { numeral: 'I', letter: 'a', framed: [260, 200], kg: 0.8, scene: 'weir' },
  { numeral: 'II', letter: 'b', framed: [260, 201], kg: 0.8, scene: 'bridge' },
  { numeral: 'III', letter: 'c', framed: [261, 200], kg: 0.8, scene: 'stones' },
  { numeral: 'IV', letter: 'd', framed: [260, 203], kg: 0.9, scene: 'reeds' },
  { numeral: 'V', letter: 'e', framed: [262, 200], kg: 0.8, scene: 'town' },
  { numeral: 'VI', letter: 'f', framed: [260, 200], kg: 0.8, scene: 'lamps' },
] as const

const gauge = readings.map(
  ({ numeral, letter, framed: [height, width], kg, scene }): DemoWork => ({
    key: `gauge-${numeral.toLowerCase()}`,
    section: 3,
    title: `Gauge at Sallowford, ${numeral}`,
    maker: 'ormerelle',
    date: '1952',
    medium: 'gelatin silver print',
    kind: 'photograph',
    lender: 'house',
    number: `LH 1988.21${letter}`,
    image: [180, 130],
    framed: [height, width, 22],
    measured: true,
    kg,
    weighed: true,
    glazing: 'acrylic',
    lux: 50,
    sensitivity: 'high',
    hangs: 'd-rings on hooks',
    fixing: 'hook13',
    picture: ['gelatin silver', scene, 'winter'],
  }),
)

export const inSets: readonly DemoWork[] = [...ford, ...gauge]
