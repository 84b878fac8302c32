/** What the demo's logger read: three weeks of a reading every ten minutes, a damp day and a night at the limit in them. */
export const air = { name: 'river room.csv', logger: 'Logger 3', room: 'River Room', days: 21 } as const

const step = 600
const perDay = 86_400 / step

const turn = (i: number, period: number) => Math.sin((2 * Math.PI * i) / period)
/** The last figure of a sensor, neither even nor by chance: the demo is the same each time. */
const tremble = (i: number) => (((i * 7919) % 97) / 97 - 0.5) * 0.5

/** The file as the logger's program writes it; the last reading is before `today`. */
export function airCsv(today: string, daysAgo: number): string {
  const last = Math.floor((Date.parse(today) / 1000 - daysAgo * 86_400) / step) * step
  const count = air.days * perDay
  const rows = [`${air.logger};;`, 'Time;Temperature °C;Relative humidity %']
  for (let i = 0; i < count; i++) {
    const day = i / perDay
    // Its battery was changed on the tenth day.
    if (day > 9.4 && day < 9.6) continue
    const damp = day > 12.5 && day < 13.4 ? 11 * Math.sin(((day - 12.5) / 0.9) * Math.PI) : 0
    const humidity = 51 + 1.8 * turn(i, perDay * 9) + 1.2 * turn(i, perDay) + damp + tremble(i)
    const shown = day > 17.1 && day < 17.5 ? 60 + tremble(i * 7) : humidity
    const celsius = 20.4 + 0.5 * turn(i + 30, perDay * 7) + 0.6 * turn(i - 40, perDay) + tremble(i + 11) / 2
    const time = new Date((last - (count - 1 - i) * step) * 1000).toISOString().replace('.000', '')
    rows.push(`${time};${celsius.toFixed(1)};${shown.toFixed(1)}`)
  }
  return `${rows.join('\r\n')}\r\n`
}
