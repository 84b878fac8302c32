/// <reference path="./packages.d.ts" />
/**
 * The entities a plan is drawn with, from their tags: straight pieces, blocks that are put in, words. Each entity is
 * taken apart by the library `dxf`; here curves become chords, and what is no line of a plan is counted and left out.
 */
import { process as arcOf } from 'dxf/lib/handlers/entity/arc.js'
import { process as insertOf } from 'dxf/lib/handlers/entity/insert.js'
import { process as lineOf } from 'dxf/lib/handlers/entity/line.js'
import { process as lwpolylineOf } from 'dxf/lib/handlers/entity/lwpolyline.js'
import { process as mtextOf } from 'dxf/lib/handlers/entity/mtext.js'
import { process as polylineOf } from 'dxf/lib/handlers/entity/polyline.js'
import { process as textOf } from 'dxf/lib/handlers/entity/text.js'
import { process as vertexOf } from 'dxf/lib/handlers/entity/vertex.js'
import { chordsOfArc, chordsOfBulge, type Gathering } from '../../../src/plan/pieces.ts'

export type Tag = readonly [code: number, value: string | number]

export interface Words {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly layer: number
}

export interface PutIn {
  readonly block: string
  readonly layer: number
  readonly x: number
  readonly y: number
  readonly scaleX: number
  readonly scaleY: number
  /** Radians, counterclockwise. */
  readonly turn: number
  readonly columns: number
  readonly rows: number
  readonly columnApart: number
  readonly rowApart: number
  /** Seen from behind: x is mirrored. */
  readonly mirrored: boolean
}

/** What a block, or the drawing itself, is made of. */
export interface Body {
  readonly pieces: Gathering
  readonly putIn: PutIn[]
  readonly words: Words[]
}

export interface Taking {
  readonly layer: (name: string) => number
  readonly words: (text: string) => string
  /** One that is no line of a plan, by its kind. */
  readonly leftOut: (kind: string) => void
}

/** What the library gives: the fields its handlers name, none of them certain. */
interface Entity {
  readonly layer?: string
  readonly paperSpace?: number
  readonly visible?: boolean
  readonly extrusionX?: number
  readonly extrusionY?: number
  readonly extrusionZ?: number
  readonly x?: number
  readonly y?: number
  readonly x2?: number
  readonly y2?: number
  readonly r?: number
  readonly startAngle?: number
  readonly endAngle?: number
  readonly start?: { readonly x?: number; readonly y?: number }
  readonly end?: { readonly x?: number; readonly y?: number }
  readonly vertices?: readonly Vertex[]
  readonly closed?: boolean
  readonly polygonMesh?: boolean
  readonly polyfaceMesh?: boolean
  readonly block?: string
  readonly scaleX?: number
  readonly scaleY?: number
  readonly rotation?: number
  readonly columnCount?: number
  readonly rowCount?: number
  readonly columnSpacing?: number
  readonly rowSpacing?: number
  readonly string?: string
  readonly hAlign?: number
  readonly vAlign?: number
}
interface Vertex {
  readonly x?: number
  readonly y?: number
  readonly bulge?: number
}

const handlers: Readonly<Record<string, (tags: readonly Tag[]) => unknown>> = {
  LINE: lineOf,
  LWPOLYLINE: lwpolylineOf,
  POLYLINE: polylineOf,
  VERTEX: vertexOf,
  ARC: arcOf,
  CIRCLE: arcOf,
  INSERT: insertOf,
  TEXT: textOf,
  ATTRIB: textOf,
  MTEXT: mtextOf,
}

/** Kinds whose tags are wanted at all. */
export function isTaken(kind: string): boolean {
  return Object.hasOwn(handlers, kind) || kind === 'SEQEND'
}

/** Takes entities one after another; the vertices of an old polyline come as entities of their own. */
export function entityTaker(taking: Taking) {
  let open: { readonly head: Entity; readonly vertices: Vertex[]; readonly into: Body } | null = null

  function closePolyline(): void {
    if (open !== null) outline(open.head, open.vertices, open.into)
    open = null
  }

  /** On a plane that is not the page's: turned over is mirrored, tilted is no plan. */
  function mirrorOf({ extrusionX = 0, extrusionY = 0, extrusionZ = 1 }: Entity): number | null {
    if (Math.abs(extrusionX) > 1e-9 || Math.abs(extrusionY) > 1e-9) return null
    return extrusionZ < 0 ? -1 : 1
  }

  function outline(head: Entity, vertices: readonly Vertex[], into: Body): void {
    const mirror = mirrorOf(head)
    if (mirror === null || head.polygonMesh === true || head.polyfaceMesh === true) {
      taking.leftOut('POLYLINE in space')
      return
    }
    const layer = taking.layer(head.layer ?? '0')
    const sides = head.closed === true ? vertices.length : vertices.length - 1
    for (let at = 0; at < sides; at++) {
      const { x: x1 = NaN, y: y1 = NaN, bulge = 0 } = vertices[at] ?? {}
      const { x: x2 = NaN, y: y2 = NaN } = vertices[(at + 1) % vertices.length] ?? {}
      chordsOfBulge(x1 * mirror, y1, x2 * mirror, y2, bulge * mirror, (ax, ay, bx, by) =>
        into.pieces.add(ax, ay, bx, by, layer),
      )
    }
  }

  function arc(entity: Entity, circle: boolean, into: Body): void {
    const mirror = mirrorOf(entity)
    const { x = NaN, y = NaN, r = NaN, startAngle = 0, endAngle = 0 } = entity
    if (mirror === null || !(r > 0)) {
      taking.leftOut(circle ? 'CIRCLE in space' : 'ARC in space')
      return
    }
    const layer = taking.layer(entity.layer ?? '0')
    const turn = 2 * Math.PI
    const sweep = circle ? turn : (((endAngle - startAngle) % turn) + turn) % turn || turn
    chordsOfArc(x, y, r, circle ? 0 : startAngle, sweep, (ax, ay, bx, by) =>
      into.pieces.add(ax * mirror, ay, bx * mirror, by, layer),
    )
  }

  function insert(entity: Entity, into: Body): void {
    const mirror = mirrorOf(entity)
    if (mirror === null || entity.block === undefined) {
      taking.leftOut('INSERT in space')
      return
    }
    into.putIn.push({
      block: entity.block,
      layer: taking.layer(entity.layer ?? '0'),
      x: entity.x ?? 0,
      y: entity.y ?? 0,
      scaleX: entity.scaleX ?? 1,
      scaleY: entity.scaleY ?? 1,
      turn: ((entity.rotation ?? 0) * Math.PI) / 180,
      columns: Math.max(1, entity.columnCount ?? 1),
      rows: Math.max(1, entity.rowCount ?? 1),
      columnApart: entity.columnSpacing ?? 0,
      rowApart: entity.rowSpacing ?? 0,
      mirrored: mirror < 0,
    })
  }

  function words(entity: Entity, into: Body): void {
    const text = taking.words(entity.string ?? '')
    // What is not set from its left foot stands at its second point.
    const aligned = (entity.hAlign ?? 0) !== 0 || (entity.vAlign ?? 0) !== 0
    const x = aligned ? (entity.x2 ?? entity.x) : entity.x
    const y = aligned ? (entity.y2 ?? entity.y) : entity.y
    if (text === '' || x === undefined || y === undefined || !Number.isFinite(x + y)) return
    const mirror = mirrorOf(entity) ?? 1
    into.words.push({ text, x: x * mirror, y, layer: taking.layer(entity.layer ?? '0') })
  }

  function take(kind: string, tags: readonly Tag[], into: Body): void {
    if (kind === 'SEQEND') {
      closePolyline()
      return
    }
    if (kind !== 'VERTEX') closePolyline()
    const handler = handlers[kind]
    if (handler === undefined) {
      taking.leftOut(kind)
      return
    }
    const entity = handler(tags) as Entity // the fields above are what its handlers name
    if (kind === 'VERTEX') {
      // 16: a control point of a curve's frame, which is not drawn.
      const frame = tags.some(([code, value]) => code === 70 && (Number(value) & 16) !== 0)
      if (!frame) open?.vertices.push(entity)
      return
    }
    // The library has `visible` only where it is said.
    if (entity.paperSpace === 1 || entity.visible === false) return
    switch (kind) {
      case 'LINE': {
        const { start = {}, end = {} } = entity
        into.pieces.add(start.x ?? NaN, start.y ?? NaN, end.x ?? NaN, end.y ?? NaN, taking.layer(entity.layer ?? '0'))
        return
      }
      case 'LWPOLYLINE':
        outline(entity, entity.vertices ?? [], into)
        return
      case 'POLYLINE':
        open = { head: entity, vertices: [], into }
        return
      case 'ARC':
      case 'CIRCLE':
        arc(entity, kind === 'CIRCLE', into)
        return
      case 'INSERT':
        insert(entity, into)
        return
      default:
        words(entity, into)
        return
    }
  }

  return { take, end: closePolyline }
}
