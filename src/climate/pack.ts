/**
 * Readings of a day as three short texts, small enough for years of a reading every five minutes and plain enough for
 * any program: whole numbers, each told by its difference from the one before; `5x287` is the same difference 287
 * times, `-` a reading without this quantity. Seconds of the day, hundredths of °C and of per cent.
 */
import type { Series } from './series.ts'

export const secondsOfDay = 86_400
/** Values are kept as hundredths. */
export const perUnit = 100

export interface PackedDay {
  /** Days since 1 January 1970, UTC. */
  readonly day: number
  readonly seconds: string
  readonly celsius: string
  readonly humidity: string
  readonly count: number
}

function write(values: readonly (number | null)[]): string {
  const words: string[] = []
  let [last, same, times] = [0, '', 0]
  const flush = () => {
    if (times > 0) words.push(times > 1 ? `${same}x${times}` : same)
  }
  for (const value of values) {
    const word = value === null ? '-' : String(value - last)
    if (value !== null) last = value
    if (word === same) {
      times++
      continue
    }
    flush()
    same = word
    times = 1
  }
  flush()
  return words.join(' ')
}

/** The whole numbers of one text. */
export function numbersOf(text: string): (number | null)[] {
  const values: (number | null)[] = []
  let last = 0
  for (const part of text === '' ? [] : text.split(' ')) {
    const cut = part.indexOf('x')
    const word = cut < 0 ? part : part.slice(0, cut)
    const times = cut < 0 ? 1 : Number(part.slice(cut + 1))
    const step = Number(word)
    for (let i = 0; i < times; i++) {
      if (word !== '-') last += step
      values.push(word === '-' ? null : last)
    }
  }
  return values
}

const hundredths = (value: number | null) => (value === null ? null : Math.round(value * perUnit))
const whole = (value: number | null) => (value === null ? null : value / perUnit)

/** A series cut into days of UTC. Values are kept to a hundredth, moments to a second. */
export function packed({ at, celsius, humidity }: Series): PackedDay[] {
  const days: PackedDay[] = []
  for (let from = 0; from < at.length; ) {
    const day = Math.floor((at[from] ?? 0) / secondsOfDay)
    let to = from
    while (to < at.length && Math.floor((at[to] ?? 0) / secondsOfDay) === day) to++
    days.push({
      day,
      seconds: write(at.slice(from, to).map(each => each - day * secondsOfDay)),
      celsius: write(celsius.slice(from, to).map(hundredths)),
      humidity: write(humidity.slice(from, to).map(hundredths)),
      count: to - from,
    })
    from = to
  }
  return days
}

/** The series of days that are in order; of one day several parts may come, from one file after another. */
export function unpacked(days: readonly Omit<PackedDay, 'count'>[]): Series {
  const all: { at: number[]; celsius: (number | null)[]; humidity: (number | null)[] } = {
    at: [],
    celsius: [],
    humidity: [],
  }
  let [ordered, last] = [true, Number.NEGATIVE_INFINITY]
  for (const { day, ...texts } of days) {
    const seconds = numbersOf(texts.seconds)
    const [celsius, humidity] = [numbersOf(texts.celsius), numbersOf(texts.humidity)]
    for (let i = 0; i < seconds.length; i++) {
      const at = day * secondsOfDay + (seconds[i] ?? 0)
      ordered &&= at > last
      last = at
      all.at.push(at)
      all.celsius.push(whole(celsius[i] ?? null))
      all.humidity.push(whole(humidity[i] ?? null))
    }
  }
  if (ordered) return all
  const order = [...all.at.keys()].sort((a, b) => (all.at[a] ?? 0) - (all.at[b] ?? 0))
  return {
    at: order.map(i => all.at[i] ?? 0),
    celsius: order.map(i => all.celsius[i] ?? null),
    humidity: order.map(i => all.humidity[i] ?? null),
  }
}
