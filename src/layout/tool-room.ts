/**
 * Room for the tool: beside a work whose lock is turned from below or from a side, and round screws beside its frame,
 * the wall must be free while it is locked and when it comes down. What takes that room is a finding with its figures;
 * a neighbour that can hang later is an order to keep, two that bar each other cannot hang so.
 */
import type { Finding } from '../contract/shared.ts'
import type { Point, Rect } from '../geometry/rect.ts'
import { distanceToPoint, overlap, right, top } from '../geometry/rect.ts'
import type { MarksAnswer } from '../hang/marks-shape.ts'
import type { WallFacts } from '../hang/wall.ts'
import { highestFloor } from '../hang/wall.ts'
import type { HungRect } from './findings.ts'

/** House rules, mm; what each says stands in `src/model/crew-rules.ts`. */
export interface ToolRules {
  /** Beside the work, where nobody measured the tool. */
  readonly lockRoom: number
  /** Width of the hand that turns it. */
  readonly handRoom: number
  /** All round a screw beside the frame. */
  readonly driverRoom: number
}

/** What must be free of the wall while one lock or screw is turned. */
export interface ToolArea {
  /** Its mark: `lock`, `lower left plate`. */
  readonly name: string
  readonly from: 'below' | 'left' | 'right' | 'round'
  readonly room: number
  readonly measured: boolean
  readonly at: Point
  readonly rect: Rect
}

export interface ToolWork {
  readonly rect: HungRect
  readonly areas: readonly ToolArea[]
}

const SLACK = 1e-6

/**
 * Areas of one work. A lock's is as wide as a hand and as deep as its tool reaches out from behind the work; a screw
 * beside the frame has a square of the driver's room. What lies behind the work needs none. mm.
 */
export function toolAreas(
  { marks, locks, method }: Pick<MarksAnswer, 'marks' | 'locks' | 'method'>,
  work: Rect,
  rules: ToolRules,
): readonly ToolArea[] {
  const turned = locks.flatMap(({ name, at, from, room }): readonly ToolArea[] => {
    const deep = room ?? rules.lockRoom
    if (deep <= SLACK) return []
    return [
      { name, from, room: deep, measured: room !== null, at, rect: lockArea(work, at, from, deep, rules.handRoom) },
    ]
  })
  const locked = new Set(locks.map(lock => lock.name))
  // A shelf is on the wall before its work comes.
  const beside =
    method === 'shelf' ? [] : marks.filter(({ on, name }) => on === 'wall' && !(name !== null && locked.has(name)))
  const screws = beside
    .filter(({ hole }) => distanceToPoint(work, hole) > SLACK)
    .map(({ name, hole, side }): ToolArea => {
      const room = rules.driverRoom
      const rect = { x: hole.x - room, y: hole.y - room, width: 2 * room, height: 2 * room }
      return { name: name ?? `${side} plate`, from: 'round', room, measured: false, at: hole, rect }
    })
  return [...turned, ...screws]
}

function lockArea(work: Rect, at: Point, from: 'below' | 'left' | 'right', deep: number, hand: number): Rect {
  if (from === 'below') return { x: at.x - hand / 2, y: work.y - deep, width: hand, height: deep }
  const x = from === 'left' ? work.x - deep : right(work)
  return { x, y: at.y - hand / 2, width: deep, height: hand }
}

interface Check {
  readonly works: readonly ToolWork[]
  readonly wall: Pick<WallFacts, 'length' | 'floor' | 'keepClears'>
  readonly say: (mm: number) => string
}

/** Findings of every work's tools on one wall. mm. */
export function toolFindings(works: readonly ToolWork[], wall: Check['wall'], say: Check['say']): readonly Finding[] {
  const check: Check = { works, wall, say }
  return works.flatMap(work =>
    work.areas.flatMap(area => [
      ...works.flatMap(other => (other === work ? [] : byNeighbour(work, area, other, check))),
      ...wall.keepClears.flatMap(item => byThing(work, area, item, check)),
      ...byEnd(work, area, check),
    ]),
  )
}

function about(
  { rect }: ToolWork,
  severity: Finding['severity'],
  code: string,
  text: string,
  figures: Finding['figures'],
): Finding {
  return { severity, code, subject: { kind: 'placement', id: rect.id }, text, figures }
}

/** What is free between the work's edge, or the screw, and something beside it. */
function freeTo({ rect }: ToolWork, area: ToolArea, other: Rect): number {
  switch (area.from) {
    case 'below':
      return rect.y - top(other)
    case 'left':
      return rect.x - right(other)
    case 'right':
      return other.x - right(rect)
    case 'round':
      return distanceToPoint(other, area.at)
  }
}

const away = { below: 'down', left: 'left', right: 'right', round: 'away' } as const
const sides = { below: 'below it', left: 'on its left', right: 'on its right' } as const

/** As a finding begins: what is turned, and the room it needs. */
function needs({ rect }: ToolWork, { name, from, room }: ToolArea, say: Check['say']): string {
  return from === 'round'
    ? `The screw of ${rect.name}’s ${name} needs ${say(room)} all round for the driver`
    : `The tool for the ${name} of ${rect.name} needs ${say(room)} ${sides[from]}`
}

function byNeighbour(work: ToolWork, area: ToolArea, other: ToolWork, { say }: Check): readonly Finding[] {
  if (!overlap(area.rect, other.rect)) return []
  const free = Math.max(0, freeTo(work, area, other.rect))
  const short = area.room - free
  if (short <= SLACK) return []
  const mutual = other.areas.some(each => overlap(each.rect, work.rect))
  const [mine, theirs] = [work.rect.name, other.rect.name]
  const move = `move ${theirs} ${say(short)} ${away[area.from]}`
  const done = area.from === 'round' ? 'screw it fast' : 'lock it'
  const text = mutual
    ? `${needs(work, area, say)} and ${theirs} leaves ${say(free)}; ${mine} bars the tool of ${theirs} too, so neither can hang first: ${move}.`
    : `${needs(work, area, say)} and ${theirs} leaves ${say(free)}: hang ${mine} first and ${done}, or ${move}.`
  const figures = { with: other.rect.id, what: area.name, from: area.from, room: area.room, free, short, mutual }
  return [about(work, mutual ? 'stop' : 'settle', 'tool-room-taken', text, figures)]
}

function byThing(
  work: ToolWork,
  area: ToolArea,
  item: WallFacts['keepClears'][number],
  { say }: Check,
): readonly Finding[] {
  if (!overlap(area.rect, item)) return []
  const free = Math.max(0, freeTo(work, area, item))
  const called = item.label === '' ? item.kind : item.label
  const text = `${needs(work, area, say)} and the ${called} leaves ${say(free)}: look whether the tool turns over it, or move ${work.rect.name}.`
  const figures = { keepClear: item.id, what: area.name, from: area.from, room: area.room, free }
  return [about(work, 'settle', 'tool-room-barred', text, figures)]
}

/** Floor and ends of the wall. Where the tool was measured, the marks themselves say so. */
function byEnd(work: ToolWork, area: ToolArea, { wall, say }: Check): readonly Finding[] {
  if (area.measured) return []
  const { rect } = area
  const floor = highestFloor(wall, rect.x, right(rect))
  const over = [
    { end: 'floor', by: floor - rect.y, asked: area.from === 'below' || area.from === 'round' },
    { end: 'wall’s left end', by: -rect.x, asked: area.from === 'left' || area.from === 'round' },
    { end: 'wall’s right end', by: right(rect) - wall.length, asked: area.from === 'right' || area.from === 'round' },
  ]
  return over
    .filter(({ by, asked }) => asked && by > SLACK)
    .map(({ end, by }) => {
      const free = Math.max(0, area.room - by)
      const text = `${needs(work, area, say)} and the ${end} leaves ${say(free)}.`
      return about(work, 'settle', 'tool-room-short', text, { what: area.name, end, room: area.room, free })
    })
}
