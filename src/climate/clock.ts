/**
 * A logger's clock as moments. A zone is an offset that never changes, as `+01:00`, or a name of the IANA time zone
 * database, whose summer time makes one hour of autumn twice and one of spring never.
 */
const quarter = 900
const day = 86_400

/** Whether it is an offset or a zone that is known here. */
export function isZone(zone: string): boolean {
  if (fixedOffset(zone) !== null) return true
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone })
    return true
  } catch {
    return false
  }
}

function fixedOffset(zone: string): number | null {
  const found = /^([+-])(\d\d):(\d\d)$/.exec(zone)
  if (found === null) return null
  const [, sign, hours, minutes] = found
  const seconds = Number(hours) * 3600 + Number(minutes) * 60
  return seconds > 14 * 3600 ? null : sign === '-' ? -seconds : seconds
}

/** Seconds that clocks of the zone are ahead of UTC, by moments; what was asked once is known. */
export function offsetsOf(zone: string): (moment: number) => number {
  const fixed = fixedOffset(zone)
  if (fixed !== null) return () => fixed
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    ...{ year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: 'numeric' },
  })
  const known = new Map<number, number>()
  // Clocks change at a whole quarter of an hour, so none is asked twice.
  const exactly = (moment: number) => {
    const from = Math.floor(moment / quarter) * quarter
    let found = known.get(from)
    if (found === undefined) {
      const part = Object.fromEntries(format.formatToParts(from * 1000).map(({ type, value }) => [type, Number(value)]))
      const { year = 0, month = 1, day: date = 1, hour = 0, minute = 0 } = part
      found = Date.UTC(year, month - 1, date, hour, minute) / 1000 - from
      known.set(from, found)
    }
    return found
  }
  return moment => {
    const from = Math.floor(moment / day) * day
    const [first, last] = [exactly(from), exactly(from + day)]
    return first === last ? first : exactly(moment)
  }
}

/** The moments at which clocks of the zone show `local` (seconds as if it were UTC): none, one or two, in order. */
export function momentsOf(local: number, offsetAt: (moment: number) => number): number[] {
  const [before, after] = [offsetAt(local - day), offsetAt(local + day)]
  const tried = before === after ? [local - before] : [local - before, local - after]
  return tried.filter(moment => offsetAt(moment) === local - moment).sort((a, b) => a - b)
}
