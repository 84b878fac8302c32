/**
 * What is said of the way that a thing takes: a sentence for whoever moves it, a few words for a sheet. Lengths are said
 * by the function that is given, in the unit of whoever reads.
 */
import { listed } from '../sequence/rule-sentence.ts'
import type { KnownWay, Passage, Passed } from './carry-way.ts'
import type { Box, Fit } from './fit.ts'

type Length = (mm: number) => string

/** Why nothing is told of a way. `none`: the plan joins the two ends by nothing. */
export type Untold = 'outside' | 'no-size' | 'none'

export interface Ends {
  /** Where it begins and ends, in words. */
  readonly from: string
  readonly to: string
}

const how: Readonly<Record<Fit, string>> = {
  upright: 'passes upright through',
  turned: 'passes only turned on the diagonal of the floor through',
  tipped: 'passes only laid on a side through',
  leaning: 'passes only slantwise, from corner to corner, through',
  no: 'does not pass through',
}
const behindIt: Readonly<Record<KnownWay['by'], string>> = {
  plan: '',
  beyond: ' What lies beyond the rooms the plan does not show.',
  unsaid: ' The plan does not say where its doorways lead.',
}
const shortly: Readonly<Record<Fit, string>> = {
  upright: 'upright',
  turned: 'turned on the diagonal of the floor',
  tipped: 'laid on a side',
  leaning: 'slantwise',
  no: 'does not pass by the plan',
}

/** `50 mm too large`, `nothing to spare`, `250 mm to spare`. */
export function marginSaid({ fit, over, spare }: Pick<Passed, 'fit' | 'over' | 'spare'>, length: Length): string {
  if (fit === 'no') return `${length(over)} too large`
  return spare === 0 ? 'nothing to spare' : `${length(spare)} to spare`
}

/** Height first; a depth of nothing is not said. */
const boxSaid = ({ width, height, depth }: Box, length: Length): string =>
  `${length(height)} × ${length(width)}${depth === 0 ? '' : ` × ${length(depth)}`}`

function passageSaid({ width, height, depth }: Passage, length: Length): string {
  return depth === null ? `${length(height)} high and ${length(width)} wide` : boxSaid({ width, height, depth }, length)
}

/** The whole sentence: how it passes, through what, and which is the tightest. `tightest`: of the way, where it has one. */
export function waySaid(
  { name, box }: { readonly name: string; readonly box: Box },
  { through, by }: Pick<KnownWay, 'through' | 'by'>,
  tightest: Passed,
  length: Length,
): string {
  const names = listed(through.map(({ passage }) => passage.words))
  const figures = `${passageSaid(tightest.passage, length)}: ${marginSaid(tightest, length)}.`
  const rest = through.length === 1 ? `, ${figures}` : `. The tightest is ${tightest.passage.words}, ${figures}`
  const best =
    tightest.fit === 'no' && through.length > 1
      ? 'does not pass by any way that is known; the best is through'
      : how[tightest.fit]
  return `${name}, ${boxSaid(box, length)}, ${best} ${names}${rest}${behindIt[by]}`
}

/** Why no way is told, in a sentence. */
export function untoldSaid(why: Untold, name: string, kind: 'work' | 'crate', { from, to }: Ends): string {
  if (why === 'outside') return `${name} is in no room of the plan on this way, so the plan tells nothing of it.`
  if (why === 'none') {
    return `The plan knows no way for ${name} from ${from} to ${to}: no doorways or lifts join them.`
  }
  const lacks = kind === 'crate' ? 'outer height, width and depth' : 'height and width'
  return `How ${name} passes is not known: its ${lacks} are not said.`
}

/** A way as the contract tells it, as far as a sheet speaks of it. */
export interface ToldWay {
  readonly told: 'way' | 'same' | Untold
  readonly fit: Fit | null
  readonly through: readonly (Pick<Passed, 'fit' | 'over' | 'spare'> & { readonly words: string })[]
  readonly tightest: number | null
}

/**
 * For a row of a list: `upright: by the doorway out of Hall, 250 mm to spare`, and of several the tightest alone, since
 * handlers measure that one; empty where no room was left or entered.
 */
export function shortWay({ told, fit, through, tightest }: ToldWay, length: Length): string {
  if (told === 'none') return 'no way known to the plan'
  const tight = through[tightest ?? -1]
  if (fit === null || tight === undefined) return ''
  const margin = marginSaid(tight, length)
  const which = through.length === 1 ? tight.words : `${through.length} doorways or lifts, the tightest ${tight.words}`
  return `${shortly[fit]}: by ${which}, ${margin}`
}
