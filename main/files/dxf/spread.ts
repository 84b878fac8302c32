/**
 * Blocks put in, spread out into pieces of the drawing: nested, scaled, turned, mirrored, in rows and columns. What a
 * few lines of a file can multiply into has its limits: depth, how often, how many pieces.
 */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Body, PutIn, Words } from './entities.ts'

export const limits = {
  /** Blocks within blocks. */
  depth: 16,
  /** Times that blocks are put in, all together. */
  putIn: 1_000_000,
  /** Straight pieces of the whole drawing: 150 MB. */
  pieces: 4_000_000,
  words: 50_000,
} as const

export interface Block {
  readonly body: Body
  readonly x: number
  readonly y: number
}

/** x′ = a x + c y + e, y′ = b x + d y + f. */
type Way = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

export interface Spread {
  /** Blocks that hold themselves, or go deeper than any plan does: left out there. */
  readonly tooDeep: ReadonlySet<string>
  readonly missing: ReadonlySet<string>
}

/**
 * Puts into `whole` all that its blocks are. A block's layer "0" is the layer it is put in on (DXF reference, BLOCK).
 * Refuses `drawing-too-large`.
 */
export function spreadBlocks(
  whole: Body,
  blocks: ReadonlyMap<string, Block>,
  layerZero: number,
  watch: (done: number) => void,
): Spread {
  const tooDeep = new Set<string>()
  const missing = new Set<string>()
  const within: string[] = []
  let count = 0

  function put(insert: PutIn, before: Way | null, above: number): void {
    const key = insert.block.toLowerCase()
    const block = blocks.get(key)
    if (block === undefined) {
      missing.add(insert.block)
      return
    }
    if (within.length >= limits.depth || within.includes(key)) {
      tooDeep.add(insert.block)
      return
    }
    const layer = insert.layer === layerZero && before !== null ? above : insert.layer
    within.push(key)
    for (let row = 0; row < insert.rows; row++) {
      for (let column = 0; column < insert.columns; column++) {
        count += 1
        if (count > limits.putIn) throw tooLarge(`blocks put in more than ${limits.putIn.toLocaleString('en')} times`)
        if (count % 1000 === 0) watch(count)
        spread(block, wayOf(insert, block, row, column, before), layer)
      }
    }
    within.pop()
  }

  function spread({ body }: Block, way: Way, layer: number): void {
    const [a, b, c, d, e, f] = way
    const { xy, layer: layers, count: pieces } = body.pieces.all()
    if (whole.pieces.count() + pieces > limits.pieces) throw tooManyPieces()
    for (let at = 0; at < pieces; at++) {
      const [x1, y1, x2, y2] = [xy[at * 4] ?? 0, xy[at * 4 + 1] ?? 0, xy[at * 4 + 2] ?? 0, xy[at * 4 + 3] ?? 0]
      const own = layers[at] ?? layerZero
      whole.pieces.add(
        a * x1 + c * y1 + e,
        b * x1 + d * y1 + f,
        a * x2 + c * y2 + e,
        b * x2 + d * y2 + f,
        own === layerZero ? layer : own,
      )
    }
    for (const word of body.words) {
      if (whole.words.length >= limits.words) break
      const { text, x, y } = word
      const own = word.layer === layerZero ? layer : word.layer
      const put: Words = { text, x: a * x + c * y + e, y: b * x + d * y + f, layer: own }
      whole.words.push(put)
    }
    for (const inner of body.putIn) put(inner, way, layer)
  }

  for (const insert of whole.putIn) put(insert, null, insert.layer)
  return { tooDeep, missing }
}

/** Rows and columns are turned with the block but not scaled with it. */
function wayOf(insert: PutIn, block: Block, row: number, column: number, before: Way | null): Way {
  const [cos, sin] = [Math.cos(insert.turn), Math.sin(insert.turn)]
  const { scaleX, scaleY } = insert
  const [a, b, c, d] = [cos * scaleX, sin * scaleX, -sin * scaleY, cos * scaleY]
  const [acrossX, acrossY] = [column * insert.columnApart, row * insert.rowApart]
  const e = insert.x + cos * acrossX - sin * acrossY - a * block.x - c * block.y
  const f = insert.y + sin * acrossX + cos * acrossY - b * block.x - d * block.y
  const own: Way = insert.mirrored ? [-a, b, -c, d, -e, f] : [a, b, c, d, e, f]
  if (before === null) return own
  const [A, B, C, D, E, F] = before
  return [
    A * own[0] + C * own[1],
    B * own[0] + D * own[1],
    A * own[2] + C * own[3],
    B * own[2] + D * own[3],
    A * own[4] + C * own[5] + E,
    B * own[4] + D * own[5] + F,
  ]
}

export function tooManyPieces(): Refusal {
  return tooLarge(`more than ${limits.pieces.toLocaleString('en')} lines`)
}

function tooLarge(what: string): Refusal {
  return new Refusal(
    'drawing-too-large',
    `This drawing has ${what}. Export the storey alone, or only the layers with walls. Nothing was taken from it.`,
    { field: 'handle' },
  )
}
