/**
 * What a spreadsheet shows in a cell whose number format makes a date or a unit of it: `2-Jan` of a date, `61 cm` of
 * 61 formatted as `0 "cm"`. Month names are English, as the built-in formats give them.
 */

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']

/** The first section of a number format without colours, conditions, locales, padding and written-out words. */
function bareFormat(format: string): string {
  return (format.split(';')[0] ?? '')
    .replace(/\[[^\]]*\]/g, '')
    .replace(/"[^"]*"|\\.|_.|\*./g, '')
    .toLowerCase()
}

/** Whether a number format shows a day, a month or a year. `General`, fractions and written-out units do not. */
export function isDateFormat(format: string): boolean {
  const bare = bareFormat(format)
  return bare !== 'general' && /[dy]|m/.test(bare) && !/[0#?]/.test(bare.replace(/\.0+$/, ''))
}

/** A date as its format shows it; ISO 8601 where the format tells nothing. */
export function shownDate(date: Date, format: string): string {
  const day = date.getUTCDate()
  const month = date.getUTCMonth()
  const year = date.getUTCFullYear()
  const bare = (format.split(';')[0] ?? '')
    .replace(/\[[^\]]*\]/g, '')
    .replace(/_.|\*./g, '')
    .replace(/\\(.)/g, '$1')
    .replace(/"([^"]*)"/g, '$1')
  if (!/[dmy]/i.test(bare)) return date.toISOString().slice(0, 10)
  return bare
    .replace(/d{1,4}|m{1,5}|y{1,4}|h{1,2}(?::m{1,2})?(?::s{1,2})?(?:\s*am\/pm)?/gi, token => {
      switch (token.toLowerCase()) {
        case 'd':
          return String(day)
        case 'dd':
          return String(day).padStart(2, '0')
        case 'ddd':
          return (weekdays[date.getUTCDay()] ?? '').slice(0, 3)
        case 'dddd':
          return weekdays[date.getUTCDay()] ?? ''
        case 'm':
          return String(month + 1)
        case 'mm':
          return String(month + 1).padStart(2, '0')
        case 'mmm':
          return (months[month] ?? '').slice(0, 3)
        case 'mmmm':
          return months[month] ?? ''
        case 'mmmmm':
          return (months[month] ?? '').slice(0, 1)
        case 'y':
        case 'yy':
          return String(year % 100).padStart(2, '0')
        case 'yyy':
        case 'yyyy':
          return String(year)
        default:
          return ''
      }
    })
    .trim()
}

/** A number as a spreadsheet keeps it, with 15 figures. */
export function shownNumber(value: number): string {
  return String(Number(value.toPrecision(15)))
}

/** The unit that a number format writes after its number, such as `cm` of `0.0 "cm"`. */
export function formatUnit(format: string): string {
  const first = format.split(';')[0] ?? ''
  const written = /(?:"([^"]*)"|((?:\\.)+))\s*$/.exec(first)
  const words = (written?.[1] ?? written?.[2]?.replace(/\\/g, '') ?? '').trim()
  return /^(?:mm|cm|m|in\.?|inch(?:es)?|kg|g|lbs?\.?|lux|lx|''|”|″)$/i.test(words) ? words : ''
}
