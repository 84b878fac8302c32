import { describe, expect, test } from 'vitest'
import { type ColumnRole, shapeOf } from '../../../src/climate/columns.ts'
import { type LogChoices, LogReader } from '../../../src/climate/read-log.ts'

const open: LogChoices = { order: null, unit: null, zone: null }

function read(text: string, choices: Partial<LogChoices> = {}, said?: ReadonlyMap<number, ColumnRole>) {
  const rows = text.split('\n').map((line, i) => ({ row: i + 1, cells: line.split(';') }))
  const shape = shapeOf(rows, said)
  if (shape === null) throw new Error('no row of readings')
  const reader = new LogReader(shape)
  for (const { row, cells } of rows) reader.take(row, cells)
  return { shape, ...reader.read({ ...open, ...choices }) }
}

const at = (moment: string) => Date.parse(moment) / 1000

describe('what a file says by itself', () => {
  test('one column for the moment, its offset, lines above the table, decimal commas', () => {
    const found = read(
      'Logger 7\n;;\nTime;Temp (°C);RH (%)\n2031-03-10T11:00:00+01:00;20,1;51,25\n2031-03-10T11:05:00+01:00;20,2;50',
    )
    expect(found.asks).toEqual([])
    expect(found.shape.headingRow).toBe(3)
    expect(found.series).toEqual({
      at: [at('2031-03-10T10:00Z'), at('2031-03-10T10:05Z')],
      celsius: [20.1, 20.2],
      humidity: [51.25, 50],
    })
  })

  test('date and time in two columns, twelve hours, °F, the newest row first', () => {
    const found = read(
      'Date;Time;Temperature °F;Humidity\n13/03/2031;1:00 PM;68;40\n13/03/2031;12:00 PM;50;41\n13/03/2031;12:30 AM;59;42',
      { zone: '+00:00' },
    )
    expect(found.order).toBe('day first')
    expect(found.series.at).toEqual(['00:30', '12:00', '13:00'].map(time => at(`2031-03-13T${time}Z`)))
    expect(found.series.celsius.map(each => each?.toFixed(6))).toEqual(['15.000000', '10.000000', '20.000000'])
  })

  test('a dew point is no temperature, and one column of two is asked for', () => {
    const one = read('Zeit;Temperatur °C;Feuchte;Taupunkt °C\n2031-03-10 11:00;20;50;9', { zone: '+00:00' })
    expect(one.shape.columns.map(each => each.role)).toEqual(['moment', 'temperature', 'humidity', 'nothing'])
    const two = read('Time;Temp 1 °C;Temp 2 °C\n2031-03-10 11:00;20;21', { zone: '+00:00' })
    expect(two.shape.twice).toEqual(['temperature'])
  })

  test('commas that tear figures apart', () => {
    expect(
      shapeOf([
        { row: 1, cells: ['Time', 'Temp', 'RH'] },
        { row: 2, cells: ['2031-03-10 11:00', '20', '1', '51', '2'] },
      ])?.torn,
    ).toBe(true)
  })
})

describe('what is asked', () => {
  test('which of two small numbers is the month, until one date tells', () => {
    const small = 'Time;Temp °C\n03/04/2031 11:00;20'
    expect(read(small, { zone: '+00:00' }).asks).toEqual(['order'])
    expect(read(`${small}\n15/04/2031 11:00;20`, { zone: '+00:00' }).order).toBe('day first')
    expect(read(`${small}\n04/15/2031 11:00;20`, { zone: '+00:00' }).order).toBe('month first')
    expect(read(small, { zone: '+00:00', order: 'month first' }).series.at).toEqual([at('2031-03-04T11:00Z')])
  })

  test('the unit and the clock', () => {
    expect(read('Time;Temp\n2031-03-10 11:00;70').asks).toEqual(['unit', 'zone'])
  })

  test('the hour that never was', () => {
    // Clocks of Zurich went from 02:00 to 03:00 on 31 March 2024.
    const text = 'Time;RH\n2024-03-31 01:30;50\n2024-03-31 02:30;50\n2024-03-31 03:30;50'
    expect(read(text, { zone: 'Europe/Zurich' })).toMatchObject({ never: 1, asks: ['hour that never was'] })
    expect(read(text, { zone: '+01:00' })).toMatchObject({ never: 0, asks: [] })
  })
})

test('the hour of autumn that is there twice is told apart by its order', () => {
  // Clocks of Zurich went from 03:00 back to 02:00 on 27 October 2024.
  const times = ['01:30', '02:00', '02:30', '02:00', '02:30', '03:00']
  const rows = times.map((time, i) => `2024-10-27 ${time};${50 + i}`)
  const found = read(`Time;RH\n${rows.join('\n')}`, { zone: 'Europe/Zurich' })
  const hours = [
    '2024-10-26T23:30Z',
    '2024-10-27T00:00Z',
    '2024-10-27T00:30Z',
    '2024-10-27T01:00Z',
    '2024-10-27T01:30Z',
    '2024-10-27T02:00Z',
  ]
  expect(found.series.at).toEqual(hours.map(at))
  expect(found).toMatchObject({ twice: 4, unsure: 0 })
  const once = read(`Time;RH\n${rows.filter((_, i) => i !== 3 && i !== 4).join('\n')}`, { zone: 'Europe/Zurich' })
  expect(once).toMatchObject({ twice: 2, unsure: 2 })
})

test('rows out of order give the series of rows in order; of one moment the first row stays', () => {
  const rows = [
    '2031-03-04T11:20Z;20.5;50',
    '2031-03-04T11:00Z;20.0;-',
    '2031-03-04T11:00Z;20.0;-',
    '2031-03-04T11:20Z;20.6;50',
    '2031-03-04T11:10Z;20.1;52',
    '2031-03-05T11:10Z;20.2;51',
  ]
  const { series, repeats, contradictions } = read(`Moment;Temperature °C;Humidity %\n${rows.join('\n')}`)
  expect(series).toEqual({
    at: ['2031-03-04T11:00Z', '2031-03-04T11:10Z', '2031-03-04T11:20Z', '2031-03-05T11:10Z'].map(at),
    celsius: [20, 20.1, 20.5, 20.2],
    humidity: [null, 52, 50, 51],
  })
  expect([repeats, contradictions]).toEqual([1, 1])
})

test('bad rows are named and left out; repeats are counted', () => {
  const rows = [
    'Time;RH;Temp °C',
    '2031-03-10 11:00;50;20',
    '2031-03-10 11:05;900;20',
    'rubbish;50;20',
    '2031-03-10 25:00;50;20',
    '2031-03-10 11:10;fifty;20',
    '2031-02-30 11:10;50;20',
    '2031-03-10 11:15;50;300',
    '2031-03-10 11:20;;',
    '2031-03-10 11:00;50;20',
    '2031-03-10 11:00;51;20',
  ]
  const found = read(rows.join('\n'), { zone: '+00:00' })
  expect([...found.bad].sort((a, b) => a.row - b.row)).toEqual([
    { row: 3, words: 'a relative humidity of 900 % cannot be' },
    { row: 4, words: '“rubbish” is no date' },
    { row: 5, words: '“25:00” is no time' },
    { row: 6, words: '“fifty” is no humidity' },
    { row: 7, words: 'there is no such day in the calendar' },
    { row: 8, words: 'a temperature of 300 °C cannot be in a room' },
  ])
  expect(found).toMatchObject({ badCount: 6, empty: 1, repeats: 1, contradictions: 1 })
  expect(found.series.humidity).toEqual([50])
})
