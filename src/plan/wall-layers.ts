/**
 * Which layers of a drawing are walls, guessed from their names in the languages that plans come in. A guess that a
 * person sees and changes: nothing is taken by it alone.
 */
const walls = /wall|\bwand|wände|waende|mauer|\bmur|muro|mur[ae]|paret|pared|seina|vägg|vaeg|muur/iu
/** What lies on or in a wall and is none. */
const others = /text|txt|dim|bem|cote|hatch|patt|schraff|furn|möb|moeb|grid|achs|axe|symb/iu

export interface CountedLayer {
  readonly name: string
  readonly off: boolean
  readonly lines: number
}

/** The places of the layers that look like walls; of a drawing with one layer, that one. */
export function wallLayers(layers: readonly CountedLayer[]): readonly number[] {
  const drawn = layers.flatMap(({ lines, off }, at) => (lines > 0 && !off ? [at] : []))
  if (drawn.length === 1) return drawn
  return drawn.filter(at => {
    const name = (layers[at]?.name ?? '').replaceAll(/[_-]/g, ' ')
    return walls.test(name) && !others.test(name)
  })
}
