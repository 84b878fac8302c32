/**
 * A plan read from a DXF: its straight pieces by layer, its words, its unit. One pass over the file; blocks are kept as
 * they are written and spread out at the end.
 */
import { Refusal } from '../../../src/contract/refusal.ts'
import { type DrawingUnit, unitOfCode } from '../../../src/plan/drawing-units.ts'
import { gatherPieces, type Pieces } from '../../../src/plan/pieces.ts'
import { type Body, entityTaker, isTaken, type Tag, type Words } from './entities.ts'
import { type Block, limits, spreadBlocks, tooManyPieces } from './spread.ts'
import { readTags, type Watch } from './tags.ts'
import { alphabetOf, decoded, plainWords } from './words.ts'

export interface DrawingLayer {
  readonly name: string
  /** Switched off or frozen in the drawing. */
  readonly off: boolean
}

export interface Drawing {
  /** `$ACADVER`; '' where it says none. */
  readonly version: string
  /** Null where it says none that a plan is drawn in. */
  readonly unit: DrawingUnit | null
  readonly layers: readonly DrawingLayer[]
  readonly pieces: Pieces
  readonly words: readonly Words[]
  /** Sentences on what was left out. */
  readonly remarks: readonly string[]
}

/** More tags than any one entity of a plan has. */
const mostTags = 400_000
/** A layer's place is kept in two bytes; no drawing of a house has so many. */
const mostLayers = 10_000
const longestName = 255

/** Refuses `not-dxf`, `binary-dxf`, `damaged-dxf`, `drawing-too-large`, `no-lines`. */
export function readDxf(path: string, watch: Watch): Drawing {
  const layers = layerTable()
  const leftOut = new Map<string, number>()
  const header = { version: '', codepage: '', units: 0 }
  let alphabet = alphabetOf('')
  const taker = entityTaker({
    layer: layers.of,
    words: text => plainWords(decoded(text, alphabet)).slice(0, 500),
    // Of blocks only what is put in would count, and a file brings many that are not.
    leftOut: kind => section === 'ENTITIES' && leftOut.set(kind, (leftOut.get(kind) ?? 0) + 1),
  })
  const whole = emptyBody()
  const blocks = new Map<string, Block>()
  let section = ''
  let kind = ''
  let tags: Tag[] = []
  let variable = ''
  let block: { readonly tags: Tag[]; readonly body: Body } | null = null

  function closeEntity(): void {
    if (section === 'HEADER' || kind === '') return
    if (section === 'TABLES' && kind === 'LAYER') layers.declare(tags, alphabet)
    if (section === 'BLOCKS') {
      if (kind === 'BLOCK') block = { tags, body: emptyBody() }
      else if (kind === 'ENDBLK') keepBlock()
      else if (block !== null) taker.take(kind, tags, block.body)
    }
    if (section === 'ENTITIES') taker.take(kind, tags, whole)
    if (whole.pieces.count() > limits.pieces) throw tooManyPieces()
  }

  function keepBlock(): void {
    taker.end()
    if (block === null) return
    const of = (code: number) => block?.tags.find(tag => tag[0] === code)?.[1]
    blocks.set(
      String(of(2) ?? '')
        .trim()
        .toLowerCase(),
      {
        body: block.body,
        x: Number(of(10) ?? 0) || 0,
        y: Number(of(20) ?? 0) || 0,
      },
    )
    block = null
  }

  function headerTag(code: number, value: string): void {
    if (code === 9) variable = value.trim()
    else if (variable === '$ACADVER' && code === 1) header.version = value.trim()
    else if (variable === '$DWGCODEPAGE' && code === 3) alphabet = alphabetOf(value)
    else if (variable === '$INSUNITS' && code === 70) header.units = Number(value)
  }

  let naming = false
  readTags(
    path,
    (code, value, line) => {
      if (code === 0) {
        closeEntity()
        const what = value.trim()
        naming = what === 'SECTION'
        if (what === 'SECTION' || what === 'ENDSEC') {
          taker.end()
          section = ''
          kind = ''
        } else kind = what
        tags = []
        return
      }
      if (naming && code === 2) {
        section = value.trim()
        naming = false
        return
      }
      if (section === 'HEADER') return headerTag(code, value)
      if (!wanted(section, kind)) return
      if (tags.length >= mostTags) {
        throw new Refusal('damaged-dxf', `The ${kind} at line ${line} has no end. Export the plan as DXF again.`, {
          field: 'handle',
          details: { line },
        })
      }
      tags.push([code, asValue(code, value)])
    },
    watch,
  )
  closeEntity()
  taker.end()
  const zero = layers.of('0')
  const spread = spreadBlocks(whole, blocks, zero, () => watch(1, 1))
  const pieces = whole.pieces.all()
  if (pieces.count === 0) {
    throw new Refusal(
      'no-lines',
      `There is no line in this drawing that a plan could be made of.${countsOf(leftOut, ' It has ')}`,
      { field: 'handle' },
    )
  }
  return {
    version: header.version,
    unit: unitOfCode(header.units),
    layers: layers.all(),
    pieces,
    words: whole.words,
    remarks: remarksOf(leftOut, spread.tooDeep, spread.missing),
  }
}

function emptyBody(): Body {
  return { pieces: gatherPieces(16), putIn: [], words: [] }
}

function wanted(section: string, kind: string): boolean {
  if (section === 'ENTITIES') return isTaken(kind)
  if (section === 'BLOCKS') return kind === 'BLOCK' || isTaken(kind)
  return section === 'TABLES' && kind === 'LAYER'
}

/** Numbers by the ranges of group codes that the reference gives; names and words stay text. */
function asValue(code: number, value: string): string | number {
  if ((code >= 10 && code < 60) || (code >= 210 && code < 240)) return Number.parseFloat(value)
  if (code >= 60 && code < 100) return Number.parseInt(value, 10)
  return code === 8 || code === 2 || code === 0 ? value.trim() : value
}

function layerTable() {
  const places = new Map<string, number>()
  const names: string[] = []
  const off: boolean[] = []
  let alphabet = alphabetOf('')
  function of(raw: string): number {
    const known = places.get(raw)
    if (known !== undefined) return known
    const name = decoded(raw, alphabet).slice(0, longestName)
    // Names of layers are the same whatever their case.
    const place = places.get(name.toLowerCase()) ?? names.length
    if (place === names.length) {
      if (place >= mostLayers)
        throw new Refusal('drawing-too-large', `This drawing has more than ${mostLayers} layers.`)
      names.push(name)
      off.push(false)
      places.set(name.toLowerCase(), place)
    }
    places.set(raw, place)
    return place
  }
  return {
    of,
    declare(tags: readonly Tag[], given: string): void {
      alphabet = given
      const at = (code: number) => tags.find(tag => tag[0] === code)?.[1]
      const name = at(2)
      if (typeof name !== 'string') return
      const hidden = Number(at(62) ?? 7) < 0 || (Number(at(70) ?? 0) & 1) !== 0
      off[of(name)] = hidden
    },
    all: () => names.map((name, at) => ({ name, off: off[at] === true })),
  }
}

/** Kinds that are no lines on any plan: nobody misses them. */
const quiet = new Set(['VIEWPORT', 'ATTDEF', 'POINT', 'SEQEND', 'VERTEX'])

function countsOf(leftOut: ReadonlyMap<string, number>, before: string): string {
  const kinds = [...leftOut].filter(([kind]) => !quiet.has(kind)).sort((a, b) => b[1] - a[1])
  if (kinds.length === 0) return ''
  return `${before}${kinds
    .slice(0, 6)
    .map(([kind, count]) => `${count} × ${kind}`)
    .join(', ')}${kinds.length > 6 ? ' and others' : ''}.`
}

function remarksOf(
  leftOut: ReadonlyMap<string, number>,
  tooDeep: ReadonlySet<string>,
  missing: ReadonlySet<string>,
): readonly string[] {
  const names = (set: ReadonlySet<string>) =>
    `${[...set].slice(0, 5).join(', ')}${set.size > 5 ? ` and ${set.size - 5} more` : ''}`
  return [
    countsOf(leftOut, 'Left out, as no straight line or arc: '),
    tooDeep.size === 0 ? '' : `Blocks that hold themselves, or lie too deep, are left out there: ${names(tooDeep)}.`,
    missing.size === 0 ? '' : `Blocks that the file does not have are left out: ${names(missing)}.`,
  ].filter(text => text !== '')
}
