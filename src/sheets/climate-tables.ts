/** The air of a room as tables: stretches beyond limits, days, hours (in the workbook alone), and the files it is from. */
import { byTime, type Figures, type Slot } from '../climate/by-time.ts'
import { limitWords } from '../climate/said.ts'
import { FAHRENHEIT_IN_KELVIN, fahrenheit } from '../measure/temperature.ts'
import type { ClimateQuestion } from './climate-question.ts'
import { limitsSaid } from './climate-words.ts'
import {
  type Cell,
  EMPTY,
  numberCell,
  type SheetColumn,
  type TableSheet,
  textCell,
  withoutEmptyColumns,
} from './columns.ts'
import { number, text } from './crew-columns.ts'

const rounded = (value: number, decimals: number) => Number(value.toFixed(decimals))
const oneDecimal = (value: number) => numberCell(rounded(value, 1))

/** All for the workbook; `forPaper` leaves the hours out, which would be a page a day. */
export function climateTables(question: ClimateQuestion, forPaper: boolean): readonly TableSheet[] {
  const slots = forPaper ? [slotTable(question, 'Days')] : [slotTable(question, 'Days'), slotTable(question, 'Hours')]
  return [stretches(question), ...slots, files(question)].map(withoutEmptyColumns)
}

function stretches({ room, period, made, loggers, imperial, when, ...rest }: ClimateQuestion): TableSheet {
  const warm = (value: number) => (imperial ? fahrenheit(value) : value)
  const rows = loggers.flatMap(({ told }) =>
    told.out.map(({ limit, from, until, worst, worstAt, times, hoursBeyond }): readonly Cell[] => {
      const humid = limit.startsWith('humidity')
      const own =
        limit === 'celsiusChange' ? worst * (imperial ? FAHRENHEIT_IN_KELVIN : 1) : humid ? worst : warm(worst)
      const unit = humid ? '%' : limit === 'celsiusChange' && !imperial ? 'K' : imperial ? '°F' : '°C'
      return [
        textCell(told.logger),
        textCell(limitWords[limit]),
        textCell(when(from)),
        textCell(when(until)),
        numberCell(rounded((Date.parse(until) - Date.parse(from)) / 3_600_000, 2)),
        numberCell(rounded(hoursBeyond, 2)),
        numberCell(times),
        oneDecimal(own),
        textCell(limit.endsWith('Change') ? `${unit} within 24 h` : unit),
        textCell(when(worstAt)),
      ]
    }),
  )
  const left = loggers.reduce((sum, { told }) => sum + told.outCount - told.out.length, 0)
  const joined = loggers.some(({ told }) => told.outApart > told.outCount)
  const all = { room, period, made, loggers, imperial, when, ...rest }
  return {
    name: 'Beyond limits',
    title: `${room}: beyond limits, ${period}`,
    lines: [
      made,
      limitsSaid(all),
      ...(rows.length === 0 ? ['Never beyond a limit as far as is known.'] : []),
      ...(joined ? ['Times close together are told as one; the hours beyond are those beyond alone.'] : []),
      ...(left === 0 ? [] : [`${left} more are left out: take a shorter period.`]),
    ],
    grouped: true,
    columns: [
      text('logger', 'Logger', 11),
      text('what', 'Beyond', 18),
      text('from', 'From', 23),
      text('until', 'Until', 23),
      number('hours', 'Hours', 8, '0.00'),
      number('beyond', 'Hours beyond', 8, '0.00'),
      number('times', 'Times', 6),
      number('worst', 'Worst', 7, '0.0'),
      text('unit', '', 11),
      text('when', 'When', 23),
    ],
    rows,
  }
}

function slotTable(question: ClimateQuestion, name: 'Days' | 'Hours'): TableSheet {
  const { room, period, made, loggers, imperial, when, days, hours } = question
  const edges = name === 'Days' ? days.map(({ at }) => at) : hours
  const words = new Map(days.map(({ at, words }) => [at, words]))
  const iso = (at: number) => new Date(at * 1000).toISOString()
  const begins = (at: number) =>
    name === 'Days' ? (when(iso(at)).split(',')[0] ?? words.get(at) ?? '') : when(iso(at))
  const warm = (figures: Figures | null): Figures | null => {
    if (figures === null || !imperial) return figures
    return { least: fahrenheit(figures.least), mean: fahrenheit(figures.mean), most: fahrenheit(figures.most) }
  }
  const cells = (figures: Figures | null) =>
    figures === null ? [EMPTY, EMPTY, EMPTY] : [figures.least, figures.mean, figures.most].map(oneDecimal)
  const row = (logger: string, { from, count, humidity, celsius }: Slot): readonly Cell[] => [
    textCell(logger),
    textCell(begins(from)),
    ...cells(humidity),
    ...cells(warm(celsius)),
    numberCell(count),
  ]
  const three = (key: string, called: string): SheetColumn[] => [
    number(`${key}Least`, `${called}, least`, 9, '0.0'),
    number(`${key}Mean`, `${called}, mean`, 9, '0.0'),
    number(`${key}Most`, `${called}, most`, 9, '0.0'),
  ]
  return {
    name,
    title: `${room}: ${name === 'Days' ? 'day by day' : 'hour by hour'}, ${period}`,
    lines: [made, 'Means are by time: a reading counts until the next one, three usual steps at most.'],
    grouped: true,
    columns: [
      text('logger', 'Logger', 12),
      text('begins', name === 'Days' ? 'Day' : 'Hour', 19),
      ...three('humidity', 'RH %'),
      ...three('celsius', imperial ? '°F' : '°C'),
      number('count', 'Readings', 9),
    ],
    rows: loggers.flatMap(({ series, told }) => byTime(series, edges).map(slot => row(told.logger, slot))),
  }
}

function files({ room, made, files: all, when }: ClimateQuestion): TableSheet {
  return {
    name: 'Files',
    title: `${room}: loggers’ files on record`,
    lines: [made],
    columns: [
      text('name', 'File', 22),
      text('logger', 'Logger', 12),
      number('count', 'Readings', 13),
      text('first', 'First reading', 19),
      text('last', 'Last reading', 19),
      text('by', 'Brought in by', 18),
      text('when', 'When', 19),
      text('told', 'Left out or settled', 30),
      text('withdrawn', 'Withdrawn', 24),
    ],
    rows: all.map(({ name, logger, count, first, last, recordedBy, recordedAt, told, withdrawn }) => [
      textCell(name),
      textCell(logger),
      numberCell(count),
      textCell(when(first)),
      textCell(when(last)),
      textCell(recordedBy),
      textCell(when(recordedAt)),
      textCell(told.join(' ')),
      textCell(withdrawn === null ? '' : `by ${withdrawn.by}: ${withdrawn.why}`),
    ]),
  }
}
