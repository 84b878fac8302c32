/** The tables of one work’s whole file that say what it is: facts, numbers, sizes, back, shows, pictures. */
import { numberKindWords } from '../checklist/number-kinds.ts'
import type { Output } from '../contract/contract.ts'
import { measuresSaid } from '../dictionary/change-said.ts'
import { workFacts } from '../model/work-facts.ts'
import { type Cell, EMPTY, numberCell, type TableSheet, textCell } from './columns.ts'
import { number, text } from './crew-columns.ts'
import { type FileStyle, lengths, table } from './file-table.ts'
import { lengthColumns } from './lengths-columns.ts'

export type FiledWork = Output<'work.get'>

const yes = (is: boolean, word: string): Cell => (is ? textCell(word) : EMPTY)

/** What is said of the work, and what nobody has said. */
export function factsTable({ facts, lenderName }: FiledWork): TableSheet {
  const said = (Object.keys(workFacts) as (keyof typeof workFacts)[]).map(key => {
    const value = key === 'lender' ? lenderName : facts[key]
    const unit = key === 'lightLimit' && value !== null ? ' lx' : ''
    return { word: workFacts[key].words, value: value === null || value === '' ? '' : `${value}${unit}` }
  })
  const unsaid = said.filter(({ value }) => value === '').map(({ word }) => word)
  return table(
    'What is said of it',
    [text('fact', 'Fact', 16), text('said', 'As it stands', 70)],
    said.flatMap(({ word, value }) => (value === '' ? [] : [[textCell(word), textCell(value)]])),
    unsaid.length === 0 ? {} : { lines: [`Nobody has said: ${unsaid.join(', ')}.`] },
  )
}

export function numbersTable({ numbers }: FiledWork): TableSheet {
  return table(
    'Numbers',
    [
      text('kind', 'Kind', 14),
      text('number', 'Number', 30),
      text('since', 'Since', 12),
      text('by', 'Written down by', 18),
      text('note', 'Note', 30),
    ],
    numbers.map(({ kind, text: of, since, by, note }) => [
      textCell(numberKindWords[kind]),
      textCell(of),
      textCell(since),
      textCell(by),
      textCell(note),
    ]),
    { none: 'It has no number.' },
  )
}

export function sizesTable({ sizes, masses }: FiledWork, style: FileStyle): readonly TableSheet[] {
  const sourced = [
    text('raw', 'As written', 22),
    text('kind', 'Origin', 10),
    text('source', 'Source', 20),
    text('by', 'By', 14),
    text('at', 'When', 12),
    text('about', 'About', 7),
    text('force', 'In force', 8),
  ]
  const from = (of: FiledWork['sizes'][number] | FiledWork['masses'][number]) => [
    textCell(of.raw),
    textCell(of.kind),
    textCell(of.source),
    textCell(of.by),
    textCell(of.at === '' ? '' : /T/.test(of.at) ? style.moment(of.at) : style.day(of.at)),
    yes(of.approximate, 'about'),
    yes(of.inForce, of.chosen ? 'chosen' : 'yes'),
  ]
  return [
    table(
      'Sizes',
      [
        text('part', 'Of', 10),
        text('label', 'Called', 12),
        ...lengthColumns('height', 'High', style.table),
        ...lengthColumns('width', 'Wide', style.table),
        ...lengthColumns('depth', 'Deep', style.table),
        ...lengthColumns('diameter', 'Across', style.table),
        number('count', 'How many'),
        ...sourced,
      ],
      sizes.map(of => [
        textCell(of.part),
        textCell(of.label),
        ...lengths([of.height, of.width, of.depth, of.diameter], style),
        of.count === 1 ? EMPTY : numberCell(of.count),
        ...from(of),
      ]),
      { none: 'Nobody has said how large it is.' },
    ),
    table(
      'Weights',
      [text('mass', 'Weighs', 12), ...sourced],
      masses.map(of => [textCell(style.mass(of.kg)), ...from(of)]),
      { none: 'Nobody has said what it weighs.' },
    ),
  ]
}

export function backsTable({ backs }: FiledWork, style: FileStyle): TableSheet {
  return table(
    'Its back, as measured',
    [
      text('at', 'When', 16),
      text('by', 'By', 14),
      text('method', 'Hangs by', 16),
      text('side', 'Seen from', 10),
      text('measures', 'Measures', 46),
      text('note', 'Note', 24),
    ],
    backs.map(({ at, by, method, seenFrom, data, note }) => [
      textCell(at === '' ? '' : style.moment(at)),
      textCell(by),
      textCell(method.replaceAll('-', ' ')),
      textCell(seenFrom),
      textCell(measuresSaid(data).join('; ')),
      textCell(note),
    ]),
    { none: 'Its back is not measured.' },
  )
}

export function showsTable({ entries, markNotes }: FiledWork, style: FileStyle): readonly TableSheet[] {
  return [
    table(
      'Shows',
      [text('show', 'Show', 34), text('running', 'No.', 6), text('where', 'On which wall', 30)],
      entries.map(({ exhibitionTitle, running, where }) => [
        textCell(exhibitionTitle),
        textCell(running),
        textCell(where === '' ? 'not placed' : where),
      ]),
      { none: 'It stands in no show.' },
    ),
    table(
      'Notes at its marks',
      [
        text('at', 'When', 16),
        text('by', 'By', 14),
        text('show', 'Show', 24),
        text('where', 'Where', 24),
        text('note', 'Note', 40),
      ],
      markNotes.map(({ at, by, exhibitionTitle, where, slot, note }) => [
        textCell(at === '' ? '' : style.moment(at)),
        textCell(by),
        textCell(exhibitionTitle),
        textCell(`${where}, ${slot}`),
        textCell(note),
      ]),
    ),
  ]
}

export function filesTable({ pictures, documents }: FiledWork, { moment }: FileStyle): TableSheet {
  return table(
    'Pictures and documents',
    [
      text('name', 'Name', 34),
      text('kind', 'Kind', 16),
      text('at', 'Since', 16),
      text('hash', 'SHA-256 of its bytes', 66),
    ],
    [
      ...pictures.map(({ name, widthPx, heightPx, hash }) => [
        textCell(name),
        textCell(widthPx === null ? 'picture' : `picture, ${widthPx} × ${heightPx} px`),
        EMPTY,
        textCell(hash),
      ]),
      ...documents.map(({ name, mime, at, hash }) => [
        textCell(name),
        textCell(mime),
        textCell(moment(at)),
        textCell(hash),
      ]),
    ],
    { none: 'It has neither.' },
  )
}
