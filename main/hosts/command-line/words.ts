/** What stands on the line: verb, plain words, `--option value`. Anything else is wrong usage, exit status 2. */
import { parseArgs } from 'node:util'

export class WrongUsage extends Error {
  override readonly name = 'WrongUsage'
}

export interface VerbForm {
  readonly words: readonly string[]
  /** How many of the words may be left out, from the end. */
  readonly optional?: number
  readonly options?: readonly string[]
  /** Options that may be given more than once. */
  readonly many?: readonly string[]
}

export interface Line {
  readonly words: readonly string[]
  readonly options: Readonly<Record<string, string>>
  readonly many: Readonly<Record<string, readonly string[]>>
}

export function readLine(verb: string, form: VerbForm, args: readonly string[]): Line {
  const many = form.many ?? []
  const known = [...(form.options ?? []), ...many]
  let parsed: ReturnType<typeof parseArgs>
  try {
    parsed = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: Object.fromEntries(
        known.map(option => [option, { type: 'string' as const, multiple: many.includes(option) }]),
      ),
    })
  } catch (error) {
    throw new WrongUsage(`${error instanceof Error ? error.message : String(error)} ${usage(verb, form)}`)
  }
  const { positionals, values } = parsed
  if (positionals.length > form.words.length || positionals.length < form.words.length - (form.optional ?? 0)) {
    throw new WrongUsage(usage(verb, form))
  }
  const options: Record<string, string> = {}
  const lists: Record<string, string[]> = {}
  for (const [option, value] of Object.entries(values)) {
    if (typeof value === 'string') options[option] = value
    else if (Array.isArray(value)) lists[option] = value.filter(each => typeof each === 'string')
  }
  return { words: positionals, options, many: lists }
}

export function usage(verb: string, form: VerbForm): string {
  const must = form.words.length - (form.optional ?? 0)
  const words = form.words.map((word, index) => (index < must ? `<${word}>` : `[${word}]`))
  const options = [...(form.options ?? []), ...(form.many ?? [])].map(option => `[--${option} …]`)
  return `Usage: hangwright ${[verb, ...words, ...options].join(' ')}`
}
