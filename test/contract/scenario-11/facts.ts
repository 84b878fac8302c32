/**
 * Scenario 11 of our own notes on practice (invented, common practice, no source but those notes): a loan of nine works
 * from three lenders, through a show and home again. What must come out of it is reckoned here by hand.
 */

/** By the clock of the machine, as a person there writes it: `2025-03-02 09:10`. */
export const at = (written: string) => new Date(written.replace(' ', 'T')).toISOString()

export const show = { title: 'Slow Tide', opens: '2025-03-10', closes: '2025-05-18' }
export const registrar = 'Ines Varga'
export const courier = 'Bo Lind'
export const crew = 'Oake, Lind'

export const lenders = ['Harbour House', 'Salt Museum', 'Tern Collection'] as const
/** Agreements by lender, in their order. */
export const agreements = ['HH 2025/4', 'SM 25-11', 'TC 88'] as const
export const period = { first: '2025-02-24', last: '2025-06-15' }

/** Number, title, its lender by place, agreed value in whole euros. Measured 400 × 600 mm, framed, all of them. */
export const works = [
  ['L-2031.7.1', 'Ebb', 0, 12_000],
  ['L-2031.7.2', 'Groyne in fog', 0, 8_500],
  ['L-2031.7.3', 'Bell buoy', 0, 9_500],
  ['L-2031.7.4', 'Slack water', 0, 45_000],
  ['SM 101', 'Salt pans', 1, 20_000],
  ['SM 102', 'Brine', 1, 5_000],
  ['SM 103', 'Rake and barrow', 1, 5_000],
  ['TC 7', 'Tern colony', 2, 10_000],
  ['TC 9', 'Spit', 2, 10_000],
] as const
/** The work that the scenario is about, and one that changes otherwise. */
export const main = 'L-2031.7.4'
export const other = 'SM 101'
export const face = { height: 400, width: 600 }

/** The list as the lenders sent it. */
export const list = [
  'Lender,Lender no.,Artist,Title,Medium,Framed size',
  ...works.map(([number, title, lender]) =>
    [lenders[lender], number, 'Ada Ruel', title, 'oil on canvas', `${face.height} x ${face.width} mm`].join(','),
  ),
].join('\n')

/** Of the first agreement, in its words. */
export const terms = [
  { kind: 'light', high: 60, said: 'Not above 60 lux.' },
  { kind: 'handling', choice: 'the lender’s courier', said: 'Unpacked in the presence of our courier.' },
] as const

/** mm from the left and the top edge of the face. */
export const abrasions = [
  {
    form: 'outline',
    points: [
      { x: 300, y: 200 },
      { x: 320, y: 200 },
    ],
  },
  { form: 'mark', points: [{ x: 250, y: 170 }] },
] as const
export const joint = { form: 'mark', points: [{ x: 590, y: 390 }], across: 2 } as const
/** Of the other work: a dent that grows from 5 to 9 mm, and an accretion that is not seen again. */
export const dent = { form: 'mark', points: [{ x: 100, y: 100 }] } as const
export const accretion = { form: 'mark', points: [{ x: 500, y: 300 }], across: 3 } as const

export const points = [47, 52, 50]
export const hoursADay = 8

/** By hand, in whole euros. */
export const sums = {
  /** 12 000 + 8 500 + 9 500 + 45 000 + 20 000 + 5 000 + 5 000 + 10 000 + 10 000. */
  inHouse: 125_000,
  /** Without the 45 000 of the work that has left. */
  without: 80_000,
}

/** Lux-hours by the end of a day: days lit from 10 March × 8 h × 52 lx, the greatest of the points. */
export const light = {
  /** The tenth day: 10 × 8 × 52. */
  '2025-03-19': 4_160,
  /** All days: 22 of March, 30 of April, 18 of May are 70: 70 × 8 × 52. */
  '2025-05-20': 29_120,
} as const

/** The owner is told at 16:30 of what was found at 14:00. */
export const damage = {
  reference: 'D-0007',
  found: at('2025-05-20 14:00'),
  reported: at('2025-05-20 14:05'),
  photographed: at('2025-05-20 14:25'),
  told: at('2025-05-20 16:30'),
  waited: 2.5,
}

/** What a registrar must be able to say of the work, on any day. */
export interface Answer {
  readonly day: string
  readonly where: string | null
  readonly people: string
  /** The last complete report. */
  readonly report: 'incoming' | 'outgoing' | null
  readonly findings: number
  readonly damage: readonly string[]
  readonly loan: string | null
  readonly receipt: 'received' | 'sent' | 'acknowledged' | null
  readonly luxHours: number
}

const lent = { loan: agreements[0], damage: [] }
// A record is closed when somebody says so, which here is today: until then it was open.
const hurt = { loan: agreements[0], damage: [damage.reference] }
export const answers: readonly Answer[] = [
  // Before the loan begins nobody knows anything of it.
  {
    day: '2025-02-20',
    where: null,
    people: '',
    report: null,
    findings: 0,
    damage: [],
    loan: null,
    receipt: null,
    luxHours: 0,
  },
  {
    ...lent,
    day: '2025-03-01',
    where: 'Crate 5, at Harbour House',
    people: 'Harbour',
    report: null,
    findings: 0,
    receipt: null,
    luxHours: 0,
  },
  {
    ...lent,
    day: '2025-03-02',
    where: 'Crate 5, at R2',
    people: 'Harbour',
    report: null,
    findings: 0,
    receipt: 'received',
    luxHours: 0,
  },
  {
    ...lent,
    day: '2025-03-03',
    where: 'R2',
    people: crew,
    report: 'incoming',
    findings: 2,
    receipt: 'received',
    luxHours: 0,
  },
  {
    ...lent,
    day: '2025-03-19',
    where: 'R2, W3',
    people: crew,
    report: 'incoming',
    findings: 2,
    receipt: 'received',
    luxHours: light['2025-03-19'],
  },
  {
    ...hurt,
    day: '2025-05-20',
    where: 'Hold',
    people: 'Lind',
    report: 'outgoing',
    findings: 3,
    receipt: 'received',
    luxHours: light['2025-05-20'],
  },
  {
    ...hurt,
    day: '2025-05-27',
    where: 'Harbour House',
    people: 'Harbour',
    report: 'outgoing',
    findings: 3,
    receipt: 'sent',
    luxHours: light['2025-05-20'],
  },
  {
    ...hurt,
    day: '2025-06-01',
    where: 'Harbour House',
    people: 'Harbour',
    report: 'outgoing',
    findings: 3,
    receipt: 'acknowledged',
    luxHours: light['2025-05-20'],
  },
]
