/** Each rule of a hang as one sentence of the trade, and what became of it. */
import type { HangRule, Within } from './hang-rule.ts'

export interface NamedWork {
  /** Running number in the show; empty for none. */
  readonly running: string
  readonly title: string
}

/** "a, b and c" */
export function listed(words: readonly string[], joint: 'and' | 'or' | 'nor' = 'and'): string {
  const last = words.at(-1) ?? ''
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joint} ${last}`
}

/** "No 12", "Nos 12 and 14", "No 12 and Salt pans": works without a number by their titles. */
export function namedWorks(works: readonly NamedWork[]): string {
  const numbered = works.filter(work => work.running !== '').map(work => work.running)
  const others = works
    .filter(work => work.running === '')
    .map(work => (work.title === '' ? 'an untitled work' : work.title))
  const nos = numbered.length === 0 ? [] : [`${numbered.length === 1 ? 'No' : 'Nos'} ${listed(numbered)}`]
  return listed([...nos, ...others])
}

export interface SaidRule {
  readonly kind: HangRule['kind']
  readonly works: readonly NamedWork[]
  /** With their words: "on Room 1, north", "in Room 2". */
  readonly places: readonly string[]
  readonly within: Within | null
  /** Title of the section that a work leads. */
  readonly section: string
  /** Lux, of a work's limit. */
  readonly limit: number | null
}

/** More works of one light limit are counted, not named. */
const manyWorks = 8

export function ruleSentence({ kind, works, places, within, section, limit }: SaidRule): string {
  const many = kind === 'light' && works.length > manyWorks
  const named = many ? `${works.length} works` : capital(namedWorks(works))
  const one = works.length === 1
  const [hang, stay, do_] = one ? ['hangs', 'stays', 'does'] : ['hang', 'stay', 'do']
  switch (kind) {
    case 'stays':
      return `${named} ${stay} ${listed(places, 'or') || 'where it hangs'}.`
    case 'side by side':
      return `${named} hang side by side, on one wall.`
    case 'in this order':
      return `${named} hang side by side in this order, from the left.`
    case 'one wall':
      return `${named} hang on one wall.`
    case 'not beside':
      return works.length === 2 ? `${named} do not hang side by side.` : `No two of ${named} hang side by side.`
    case 'not facing':
      return works.length === 2 ? `${named} do not face each other.` : `No two of ${named} face each other.`
    case 'only on':
      return `${named} ${hang} only ${listed(places, 'or')}.`
    case 'not on':
      return `${named} ${do_} not hang ${listed(places, 'or')}.`
    case 'axis':
      return `${named} ${hang} ${listed(places, 'or')}.`
    case 'light':
      return `${named} ${hang} where no more than ${limit ?? 0} lux are planned.`
    case 'first':
    case 'last':
      return `${named} is the ${kind} ${whereLed(within, places, section)}.`
  }
}

function whereLed(within: Within | null, places: readonly string[], section: string): string {
  if (within === 'wall') return 'on its wall'
  if (within === 'room') return listed(places, 'or')
  return within === 'section' ? `of ${section}` : 'of the show'
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/**
 * What can't hold together, with its members and what to do.
 *
 * @param limited whether a light limit is among them: it is not switched off
 */
export function contradictionSentence(says: readonly string[], limited: boolean): string {
  const quoted = says.map(text => `“${text.replace(/\.$/, '')}”`)
  const cure = limited
    ? 'A light limit gives way to a lower level or a named exception alone; switch another off or change it.'
    : 'Switch one of them off or change it.'
  if (quoted.length === 1)
    return `${quoted[0]} can’t be kept by itself. ${limited ? cure : 'Switch it off, change it, or free what stands in its way.'}`
  const rest = quoted.length === 2 ? 'without either the other can' : 'without any one of them the rest can'
  return `${listed(quoted)} can’t ${quoted.length === 2 ? 'both' : 'all'} be kept; ${rest}. ${cure}`
}
