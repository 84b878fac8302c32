/** The tables of a work’s whole file that say what light it received, what it may receive, and what meters showed. */
import type { LightLimit } from '../contract/areas/light.ts'
import type { Output } from '../contract/contract.ts'
import { byShow } from '../light/dose.ts'
import { askedBy, limitSaid, shareOf, violetSaid } from '../light/said.ts'
import { EMPTY, numberCell, type TableSheet, textCell } from './columns.ts'
import { number, text } from './crew-columns.ts'
import { type FileStyle, table } from './file-table.ts'

type Told = Output<'light.ledger'>

/** The strictest of each kind is the one that holds. */
function allowedTable({ budgets, levels, violets, sensitivity, most, spans }: Told, style: FileStyle): TableSheet {
  const limitRow = (what: string, unit: string, house: string) => (of: LightLimit) => [
    textCell(what),
    textCell(askedBy(of.asked, house)),
    textCell(`${of.most} ${unit} at most`),
    EMPTY,
    textCell(limitSaid(of, unit, style.day)),
    textCell(of.asked === null ? '' : of.asked.said),
  ]
  return table(
    'Light it may receive',
    [
      text('what', 'Of', 16),
      text('who', 'Asked by', 22),
      text('most', 'At most', 18),
      text('share', 'Used', 7),
      text('state', 'How it stands', 34),
      text('said', 'In the words of the loan', 28),
    ],
    [
      ...budgets.map(of => [
        textCell('light in a year'),
        textCell(askedBy(of.asked, `the house, ${sensitivity} sensitivity`)),
        textCell(`${of.luxHours} lx h in any 365 days`),
        textCell(`${Math.round(shareOf(most, of) * 100)} %`),
        textCell(endOf(of, spans.length, style)),
        textCell(of.asked === null ? '' : of.asked.said),
      ]),
      ...levels.map(limitRow('level', 'lx', 'the house')),
      ...(spans.length === 0 ? [] : violets.map(limitRow('ultraviolet', 'µW/lm', 'the house'))),
    ],
    {
      ...(budgets.length === 0 && sensitivity !== 'none'
        ? { lines: ['No budget: nobody has said how sensitive to light it is.'] }
        : {}),
    },
  )
}

function endOf({ ends, endsIfLonger }: Told['budgets'][number], known: number, { day }: FileStyle): string {
  if (known === 0) return 'no hours lit are known'
  if (ends !== null) return `ends on ${day(ends)}`
  return endsIfLonger === null ? 'holds' : `holds; a longer show would end it on ${day(endsIfLonger)}`
}

function inAll({ spans, ever, violet, unknownHours }: Told): string[] {
  const shows = byShow(spans).map(({ title, luxHours }) => `${title} ${Math.round(luxHours)} lx h`)
  const uv = violetSaid(violet)
  return [
    `Until today ${Math.round(ever)} lx h${unknownHours > 0 ? `, and ${unknownHours} h at a level that nobody knows` : ''}. With what is planned: ${shows.join(', ')}.`,
    ...(uv === '' ? [] : [`Ultraviolet until today: ${uv}.`]),
  ]
}

export function lightTables(told: Output<'light.ledger'>, style: FileStyle): readonly TableSheet[] {
  const { spans, readings } = told
  return [
    allowedTable(told, style),
    table(
      'Light received',
      [
        text('first', 'From', 14),
        text('last', 'Until', 14),
        text('show', 'Show', 24),
        text('where', 'Where', 22),
        text('basis', 'Level is', 8),
        number('lux', 'Level (lx)', 8, '0.#'),
        number('hours', 'Hours lit', 8, '0.0'),
        number('unknown', 'Hours of unknown level', 10, '0.0'),
        number('dose', 'Lux-hours', 10),
        number('uv', 'UV (µW/lm)', 8, '0.#'),
        number('uvHours', 'Hours UV was read', 9, '0.0'),
        number('uvDose', 'UV (mWh/m²)', 12, '0.#'),
      ],
      spans.map(of => [
        textCell(style.day(of.first)),
        textCell(style.day(of.last)),
        textCell(of.title),
        textCell(of.words),
        textCell(of.basis),
        numberCell(of.lux),
        numberCell(of.hours),
        of.unknownHours === 0 ? EMPTY : numberCell(of.unknownHours),
        numberCell(Math.round(of.luxHours)),
        numberCell(of.uv),
        of.uvHours === 0 ? EMPTY : numberCell(of.uvHours),
        of.uvHours === 0 ? EMPTY : numberCell(of.uvDose),
      ]),
      {
        none: 'No hours lit are known of it.',
        ...(spans.length === 0 ? {} : { lines: inAll(told) }),
      },
    ),
    table(
      'Readings of light',
      [
        text('at', 'When', 16),
        number('lux', 'Level (lx)', 8, '0.#'),
        text('points', 'Points (lx)', 18),
        number('uv', 'UV (µW/lm)', 8, '0.#'),
        number('area', 'UV (mW/m²)', 8, '0.##'),
        text('meter', 'Meter', 16),
        text('by', 'Recorded by', 18),
        text('note', 'Note', 24),
      ],
      readings.map(of => [
        textCell(style.moment(of.at)),
        numberCell(of.lux),
        textCell(of.points.join(', ')),
        numberCell(of.uv),
        numberCell(of.uvArea),
        textCell(of.meter),
        textCell(of.recordedBy),
        textCell(
          [of.note, of.struck === null ? '' : `struck by ${of.struck.by}: ${of.struck.why}`]
            .filter(each => each !== '')
            .join('; '),
        ),
      ]),
    ),
  ]
}
