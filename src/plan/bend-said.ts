/** What becomes of a wall between two rooms when it is moved, in words for whoever moves it. */
import type { BendWall, Bent } from './bend.ts'
import type { Alone, Deed } from './bend-both.ts'

type Say = (mm: number) => string

const listed = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

/** `north and south become 4.80 m, west 4.01 m`; empty where no wall changes its length by what is told. */
export function lengthsSaid(walls: readonly BendWall[], bent: Bent & { readonly ok: true }, say: Say): string {
  const by = new Map<string, string[]>()
  for (const [at, { name, length }] of walls.entries()) {
    const told = say(bent.lengths[at] ?? length)
    if (told !== say(length)) by.set(told, [...(by.get(told) ?? []), name])
  }
  return [...by]
    .map(([told, names], at) => `${listed(names)}${at > 0 ? '' : names.length > 1 ? ' become' : ' becomes'} ${told}`)
    .join(', ')
}

/** What one side moved by itself makes of the wall; the second part where that cannot be. */
export function aloneSaid(
  alone: Alone,
  was: number | null,
  say: Say,
): { readonly can: boolean; readonly says: string } {
  if (alone.is === 'through') {
    const left =
      alone.left < 0 ? 'this side would come through the other' : `only ${say(alone.left)} of wall would be left`
    return { can: false, says: `By itself it cannot go so far: ${left}.` }
  }
  if (alone.is === 'parted') {
    const why = alone.why === 'far' ? 'its sides would lie too far apart' : 'its sides would no longer be parallel'
    return {
      can: true,
      says: `By itself it is no longer one wall: ${why}. They are parted, and so are their doorways.`,
    }
  }
  if (alone.thickness === null || was === null)
    return { can: true, says: 'By itself it makes the wall thicker or thinner; how thick it is nobody has measured.' }
  if (alone.thickness === was) return { can: true, says: `By itself it leaves the wall ${say(was)} thick.` }
  const than = alone.thickness > was ? 'thicker' : 'thinner'
  return { can: true, says: `By itself it makes the wall ${than}: ${say(alone.thickness)}, not ${say(was)}.` }
}

/** `moved` or `turned`, `move` or `turn`. */
export const deedSaid = (deed: Deed | null) =>
  deed?.is === 'turn' ? ({ done: 'turned', doing: 'turn' } as const) : ({ done: 'moved', doing: 'move' } as const)
