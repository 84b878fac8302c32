/**
 * Papers of condition held against another reader: poppler counts their pages and reads back every word and figure,
 * and no text lies on another or off the paper.
 */
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, describe, expect, test } from 'vitest'
import { writePdf } from '../../main/files/pdf/writer.ts'
import { openFaces } from '../../main/fonts/faces.ts'
import type { ConditionFindingTold, Report } from '../../src/contract/areas/condition-shape.ts'
import { compareReports } from '../../src/record/condition/compare.ts'
import { extentOf, type Shape, thirdOf } from '../../src/record/condition/shape.ts'
import { comparedPaper } from '../../src/sheets/condition-compared.ts'
import { type ConditionPages, conditionPaper } from '../../src/sheets/condition-paper.ts'
import type { ReportQuestion } from '../../src/sheets/condition-question.ts'
import { boxesMeet, type Paper, papers } from '../../src/sheets/shapes.ts'
import { ownFolder, run, withProgram } from './programs.ts'

const at = '2031-03-14T16:20:00.000Z'
const folder = ownFolder()
afterAll(folder.remove)
const faces = await openFaces()
const file = (name: string) => join(folder.path, `${name}.pdf`)

const hashOf = (of: number) => of.toString(16).padStart(64, '0')
const painted = hashOf(1)
const picture = await sharp({ create: { width: 900, height: 600, channels: 3, background: '#7d8f86' } })
  .jpeg()
  .toBuffer()

const face = { width: 900, height: 600 }
const words = ['crackle', 'tear', 'loss', 'discoloration'] as const

function finding(index: number, more: Partial<ConditionFindingTold> & Shape): ConditionFindingTold {
  return {
    id: `f${index}`,
    number: index + 1,
    side: 'front',
    term: 'painting.loss',
    word: words[index % words.length] ?? '',
    age: (['old', 'new', 'unsure'] as const)[index % 3] ?? '',
    severity: index % 5 === 4 ? 'marked' : 'slight',
    stable: 'stable',
    note: '',
    follows: null,
    ...more,
    third: thirdOf(more, face),
    ...extentOf(more),
  }
}

/** Findings over the whole face, every form; many close to one another. */
function findings(count: number): ConditionFindingTold[] {
  return Array.from({ length: count }, (_, index) => {
    const [x, y] = [20 + ((index * 137) % 830), 15 + ((index * 61) % 560)]
    const points = [
      { x, y },
      { x: x + 24, y: y + 7 },
      { x: x + 10, y: y + 18 },
    ]
    const form = (['mark', 'outline', 'area'] as const)[index % 3] ?? 'mark'
    return finding(index, {
      form,
      points: form === 'mark' ? points.slice(0, 1) : points,
      across: form === 'mark' ? 2 : null,
    })
  })
}

const photo = (index: number, found: readonly string[]): Report['photos'][number] => ({
  id: `p${index}`,
  hash: painted,
  name: `IMG_${4100 + index}.jpg`,
  widthPx: 4032,
  heightPx: 3024,
  preview: false,
  shows:
    index === 1
      ? `the lower edge in raking light${' from the left and then from the right'.repeat(30)}`
      : `view ${index}`,
  findings: [...found],
  takenAt: index === 2 ? null : '2031-03-02T09:15:00.000Z',
  takenFrom: index === 2 ? '' : 'camera',
  takenBy: 'Tamsin Oake',
})

const strokes = [
  [60, 240, 200, 60, 320, 250, 480, 120, 760, 200],
  [300, 150, 420, 150],
]
const signature = (name: string, role: 'registrar' | 'courier'): Report['signatures'][number] => ({
  id: name,
  role,
  name,
  at,
  strokes,
  counts: true,
})

const empty: Report = {
  id: 'r1',
  work: 'w1',
  workTitle: 'The long causeway at low water',
  workNumber: 'L-2031.7.12',
  kind: 'incoming',
  examinedAt: '2031-03-02T09:10:00.000Z',
  place: 'Store, table 2',
  examiner: 'Tamsin Oake',
  packing: 'Crate 4, corner blocks, glassine; dry.',
  note: '',
  overall: '',
  completeAt: null,
  signedBy: [],
  corrects: null,
  correctedBy: null,
  why: '',
  picture: painted,
  backPicture: null,
  depth: 45,
  opening: null,
  behind: null,
  ...face,
  findings: [],
  photos: [],
  signatures: [],
  content: 'a3f09c1be4d20718'.padEnd(64, '5'),
  lacks: [{ code: 'signatures', finding: null, text: 'Nobody has signed this. It takes two people.' }],
}
const signed = {
  completeAt: at,
  lacks: [],
  signatures: [signature('Ines Varga', 'registrar'), signature('Bo Lind', 'courier')],
}

function question(report: Report, more: Partial<ReportQuestion> = {}): ReportQuestion {
  return {
    report,
    corrects: null,
    correctedBy: null,
    follows: new Map(),
    shown: () => true,
    units: { unit: 'mm', steps: { mm: 1, fraction: 16 } },
    paper: 'A4',
    when: moment => moment.slice(0, 16).replace('T', ' '),
    made: 'condition report · 14 March 2031, 16:20 · Tamsin Oake',
    ...more,
  }
}

const many = findings(60)
const long = question({
  ...empty,
  ...signed,
  overall: 'marked',
  findings: many.map((each, index) => ({
    ...each,
    ...(index === 3 ? { note: 'Seen in raking light alone; the edge is sharp. '.repeat(90) } : {}),
  })),
  photos: Array.from({ length: 12 }, (_, index) => photo(index, [`f${index}`, `f${index + 1}`])),
})
const german = question(
  {
    ...empty,
    workTitle: 'Überschwemmung bei Łódź, Straßenbahndepot — größere Fassung',
    picture: null,
    packing: 'Kiste 4 mit Eckschutz; Oberflächenspannung geprüft, Feuchtigkeitsindikator trocken.',
    note: 'Œuvre vérifiée à l’arrivée : craquelures prématurées, sans gravité. Vergrößerungsaufnahme nötig.',
    findings: [
      finding(0, {
        form: 'mark',
        points: [{ x: 5, y: 590 }],
        across: null,
        word: 'Leinwandoberflächenspannungsverlust',
      }),
      finding(1, { form: 'mark', points: [{ x: 895, y: 5 }], across: 2, follows: 'x1', note: 'déjà vue à l’aller' }),
    ],
    corrects: 'r0',
    why: 'la mesure était fausse',
  },
  {
    corrects: { kind: 'incoming', examinedAt: '2031-03-01T10:00:00.000Z' },
    follows: new Map([['f1', { number: 7, kind: 'outgoing', examinedAt: '2030-11-02T10:00:00.000Z' }]]),
    units: { unit: 'in', steps: { mm: 1, fraction: 16 } },
    paper: 'Letter',
  },
)
const behind = question({
  ...empty,
  behind: {
    rings: [
      { x: 90, y: 150 },
      { x: 810, y: 150 },
    ],
    lines: [
      [
        { x: 90, y: 150 },
        { x: 450, y: 90 },
        { x: 810, y: 150 },
      ],
    ],
  },
  findings: [
    ...findings(2),
    { ...finding(2, { form: 'mark', points: [{ x: 90, y: 150 }], across: null }), side: 'back' },
  ],
})
const cases: readonly { readonly name: string; readonly of: ReportQuestion }[] = [
  { name: 'long', of: long },
  { name: 'unsigned', of: question({ ...empty, findings: findings(4) }) },
  { name: 'german', of: german },
  { name: 'nothing', of: question({ ...empty, ...signed, note: 'Nothing was found.', workNumber: '', workTitle: '' }) },
  { name: 'back', of: behind },
  { name: 'large', of: question({ ...long.report }, { paper: 'A3' }) },
]

async function write(name: string, { pages }: ConditionPages): Promise<void> {
  await writePdf(file(name), { title: name, language: 'en', at, pages, picture: () => picture }, faces)
}

/** No text on another, none off the paper. */
function standsFree({ boxes }: ConditionPages, paper: Paper): void {
  const size = papers[paper]
  for (const [index, page] of boxes.entries()) {
    for (const [place, box] of page.entries()) {
      const { x, y, w, h, text } = box
      expect(x >= 0 && y >= 0 && x + w <= size.width && y + h <= size.height, `page ${index + 1}: ${text}`).toBe(true)
      for (const other of page.slice(place + 1)) {
        expect(boxesMeet(box, other), `page ${index + 1}: “${box.text}” on “${other.text}”`).toBe(false)
      }
    }
  }
}

/** Readers write spaces as they like. */
const bare = (text: string) => text.replace(/\s/gu, '')
const pagesRead = (name: string) =>
  run('pdftotext', ['-layout', file(name), '-'])
    .split('\f')
    .slice(0, -1)

describe.each(cases)('$name', ({ name, of }) => {
  test('stands free on its paper', () => standsFree(conditionPaper(of, faces), of.paper))

  withProgram('poppler (pdftotext)', 'reads the report', () => {
    test('every page says the work and which page of how many; every finding and photograph stands', async () => {
      const paper = conditionPaper(of, faces)
      await write(name, paper)
      const pages = pagesRead(name)
      expect(run('pdfinfo', [file(name)])).toContain(`Pages:           ${paper.pages.length}\n`)
      expect(pages.length).toBe(paper.pages.length)
      for (const [index, page] of pages.entries()) {
        expect(bare(page)).toContain(bare(of.report.workNumber))
        expect(page).toContain(`page ${index + 1} of ${pages.length}`)
      }
      const text = bare(run('pdftotext', ['-raw', file(name), '-']))
      for (const { id, third } of of.report.findings) {
        expect(text, id).toContain(bare(third))
      }
      for (const { number, side } of of.report.findings) {
        const drawn = paper.boxes[side === 'front' ? 0 : 1]?.map(box => box.name)
        expect(drawn).toContain(`mark ${number}`)
      }
      for (const [index, each] of of.report.photos.entries()) {
        expect(text).toContain(`${index + 1}${bare(each.shows)}`)
        expect(text).toContain(each.name)
      }
      for (const each of of.report.signatures) expect(text).toContain(`${bare(each.name)}${each.role},2031-03-14`)
    })
  })
})

test('a long note breaks over columns and loses nothing', async () => {
  const paper = conditionPaper(long, faces)
  const note = paper.boxes.flat().filter(({ name }) => name.startsWith('finding 4 note'))
  expect(bare(note.map(({ text }) => text).join(''))).toBe(bare(long.report.findings[3]?.note ?? ''))
})

test('60 numbers lie clear of one another on the face', () => {
  const rings = conditionPaper(long, faces).boxes[0]?.filter(({ name }) => name.startsWith('mark ')) ?? []
  expect(rings.length).toBe(60)
  const centres = rings.map(({ x, y, w, h }) => ({ x: x + w / 2, y: y + h / 2 }))
  for (const [index, a] of centres.entries()) {
    for (const b of centres.slice(index + 1))
      expect(Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y))).toBeGreaterThan(4.5)
  }
})

withProgram('poppler (pdftotext)', 'reads figures and what is missing', () => {
  test('in inches: 900 mm is 35 7/16 in, 600 mm is 23 5/8 in (25.4 mm an inch), the other system in brackets', async () => {
    await write('german', conditionPaper(german, faces))
    const text = bare(run('pdftotext', ['-raw', file('german'), '-']))
    expect(text).toContain('235/8in(600mm)high,357/16in(900mm)wide')
    // A mark that no rule was laid on has no size, the other 2 mm: 1/16 in.
    expect(text).toContain('Leinwandoberflächenspannungsverlustlowerleft')
    expect(text).toContain('tear,1/16in(2mm)across')
    expect(text).toContain('goesonfrom7oftheoutgoingreportof2030-11-02')
    expect(text).toContain('theincomingreportof2031-03-01')
    expect(text).toContain('Why:lamesureétaitfausse')
    expect(text).toContain('Thereisnopictureofit.')
  })

  test('the back has a page of its own, as seen from behind, on what was measured of it', async () => {
    await write('back', conditionPaper(behind, faces))
    const [front, back] = pagesRead('back')
    expect(front).not.toContain('as seen from behind')
    expect(bare(back ?? '')).toContain(
      bare('The back, as seen from behind. Millimetres from the left and the top edge'),
    )
    expect(bare(back ?? '')).toContain(bare('The back as it is measured now.'))
    expect(bare(front ?? '')).toContain(bare('on the back, upper left, 90 mm (3 9/16 in) from the left'))
  })

  test('a draft says what it lacks and leaves room to sign; a complete one says since when', async () => {
    await write('unsigned', conditionPaper(question({ ...empty, findings: findings(4) }), faces))
    const draft = run('pdftotext', ['-raw', file('unsigned'), '-'])
    expect(draft).toContain('A draft, not complete.')
    expect(bare(draft)).toContain('Nobodyhassignedthis.Ittakestwopeople.')
    expect(draft.split('name, role, date and time').length).toBe(3)
    await write('long', conditionPaper(long, faces))
    const complete = run('pdftotext', ['-raw', file('long'), '-'])
    expect(bare(complete)).toContain('Completesince2031-03-1416:20;nothingofitchanges.')
    expect(complete).not.toContain('name, role, date and time')
    expect(bare(complete)).toContain('a3f09c1be4d20718')
  })
})

/** The later report: the first finding as it was, the second longer, one gone, one more. */
const later: Report = {
  ...empty,
  id: 'r2',
  kind: 'outgoing',
  examinedAt: '2031-06-02T09:10:00.000Z',
  findings: [
    many[0],
    {
      ...many[1],
      points: [
        { x: 157, y: 76 },
        { x: 260, y: 76 },
      ],
      form: 'outline' as const,
    },
    { ...many[9], number: 3, points: [{ x: 800, y: 500 }], form: 'mark' as const },
  ].map((each, index) => finding(index, { ...(each as ConditionFindingTold), id: `l${index}`, number: index + 1 })),
}
const earlier: Report = { ...empty, ...signed, findings: many.slice(0, 3) }
const rules = { near: 10, grown: 3 }
const lines = compareReports(earlier.findings, later.findings, rules)
const compared = {
  lines: lines.map(each => ({
    outcome: each.outcome,
    before: each.before?.id ?? null,
    after: each.after?.id ?? null,
    by: each.by,
    remarks: [...each.remarks],
    text: `told: ${each.outcome}`,
  })),
  counts: { same: 1, grown: 1, new: 1, notSeen: 1 },
  ...rules,
}

describe('two reports against one another', () => {
  const paper = comparedPaper({ ...question(later), before: earlier, after: later, compared }, faces)

  test('stand free on their paper', () => standsFree(paper, 'A4'))

  withProgram('poppler (pdftotext)', 'reads the comparison', () => {
    test('every finding of either in one line, with the figures of both', async () => {
      await write('compared', paper)
      const pages = pagesRead('compared')
      expect(pages.length).toBe(2)
      for (const [index, page] of pages.entries()) {
        expect(page).toContain('L-2031.7.12')
        expect(page).toContain(`sheet ${index + 1} of 2`)
      }
      const table = pages[1]?.split('\n') ?? []
      const row = (outcome: string) => table.find(line => line.includes(`told: ${outcome}`)) ?? ''
      expect(row('same')).toMatch(/^\s*1\s+1\s+same\s+crackle/)
      // From 157 to 260 along a level line: 103 mm, 4 1/16 in.
      expect(row('grown')).toMatch(/2\s+2\s+grown\s+tear.*103 mm/)
      expect(row('new')).toMatch(/^\s*3\s+new/)
      expect(row('not seen')).toMatch(/^\s*3\s+not seen\s+loss/)
    })
  })
})
