/** What a sheet of a room's air says in words: what it is held to, and what came of it. */
import type { LimitKey } from '../climate/limits.ts'
import { degrees, lasting, percent, span } from '../climate/said.ts'
import type { ClimateQuestion } from './climate-question.ts'

type Write = (value: number) => string

const bandSaid = (low: number | null, high: number | null, write: Write) =>
  low === null
    ? high === null
      ? ''
      : `at most ${write(high)}`
    : high === null
      ? `at least ${write(low)}`
      : `${write(low)} to ${write(high)}`

/** One sentence: both bands, both spans, whose they are. */
export function limitsSaid({ limits, own, why, imperial }: ClimateQuestion): string {
  const warm: Write = value => degrees(value, imperial)
  const changes: readonly (readonly [string, number | null, Write])[] = [
    ['humidity', limits.humidityChange, percent],
    ['temperature', limits.celsiusChange, value => span(value, imperial)],
  ]
  const parts = [
    ['relative humidity', bandSaid(limits.humidityLow, limits.humidityHigh, percent)],
    ['temperature', bandSaid(limits.celsiusLow, limits.celsiusHigh, warm)],
    ...changes.map(([word, value, write]) => [
      `span of ${word} in 24 h`,
      value === null ? '' : `at most ${write(value)}`,
    ]),
  ].flatMap(([word, said]) => (said === '' ? [] : [`${word} ${said}`]))
  const whose =
    own.length === 0
      ? 'house rules'
      : own.length === 6
        ? 'the room’s own'
        : `${own.map(key => ownWords[key]).join(', ')}: the room’s own; the others: house rules`
  return `Held to ${parts.join('; ')} (${[whose, why].filter(each => each !== '').join('; ')}).`
}

const ownWords: Readonly<Record<LimitKey, string>> = {
  humidityLow: 'lowest humidity',
  humidityHigh: 'highest humidity',
  humidityChange: 'span of humidity',
  celsiusLow: 'lowest temperature',
  celsiusHigh: 'highest temperature',
  celsiusChange: 'span of temperature',
}

/** One line a logger. */
export function summarySaid({ loggers, imperial, when }: ClimateQuestion): string[] {
  return loggers.map(({ told }) => {
    const { logger, humidity, celsius, hoursKnown, hoursOut, outCount, gapCount } = told
    const known = lasting(hoursKnown * 3600)
    const warm: Write = value => degrees(value, imperial)
    return [
      `${logger}: ${when(told.first)} to ${when(told.last)}, ${told.count} readings.`,
      humidity === null
        ? ''
        : `Relative humidity ${percent(humidity.least)} to ${percent(humidity.most)}, mean ${percent(humidity.mean)}.`,
      celsius === null
        ? ''
        : `Temperature ${warm(celsius.least)} to ${warm(celsius.most)}, mean ${warm(celsius.mean)}.`,
      outCount === 0
        ? `Never beyond a limit in ${known}.`
        : `Beyond a limit for ${lasting(hoursOut * 3600)} of ${known}, ${outCount === 1 ? 'once' : `${outCount} times`}.`,
      gapCount === 0 ? '' : `${gapCount} ${gapCount === 1 ? 'gap' : 'gaps'} of which nothing is known.`,
    ]
      .filter(each => each !== '')
      .join(' ')
  })
}
