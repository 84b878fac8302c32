/** Moments as the record's screen says and takes them: by the clock of this machine. */
export const moment = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
})

export const said = (at: string) => moment.format(new Date(at))

const two = (value: number) => String(value).padStart(2, '0')

/** As a field of date and time takes it: `2031-03-14T16:20`. */
export function inField(at: string): string {
  const date = new Date(at)
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
  return `${day}T${two(date.getHours())}:${two(date.getMinutes())}`
}

/** What stands in such a field as a moment; null while it says none. */
export function fromField(text: string): string | null {
  const date = new Date(text)
  return text === '' || Number.isNaN(date.getTime()) ? null : date.toISOString()
}

export const plural = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`
