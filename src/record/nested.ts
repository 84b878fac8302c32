/**
 * Places within places at one moment: what is in a crate is where the crate is. The rule it keeps: a thing is told
 * through every place around it, and no ring of crates leads it round for ever.
 */
export interface Standing {
  /** The place that it is directly in. */
  readonly place: string
  readonly words: string
}

/** Where a crate or a vehicle stands, by its key. */
export type Crates = Pick<ReadonlyMap<string, { readonly place: string }>, 'get'>

/** The places around, the innermost first; what has no entry in `standing` does not move. */
export function placesAround(place: string, standing: Crates): string[] {
  const around: string[] = []
  for (let at: string | undefined = place; at !== undefined && !around.includes(at); at = standing.get(at)?.place)
    around.push(at)
  return around
}

/** Whether putting `thing` into `place` would put it into itself. */
export function insideItself(thing: string, place: string, standing: Crates): boolean {
  return placesAround(place, standing).includes(thing)
}

/** `Crate 5, in Van 1, at Store 2`: the way from the thing outwards. */
export function aroundWords(around: readonly string[], wordsOf: (place: string) => string): string {
  const [first, ...rest] = around.map(wordsOf)
  if (first === undefined) return ''
  return [first, ...rest.map((words, at) => `${at === rest.length - 1 ? 'at' : 'in'} ${words}`)].join(', ')
}
