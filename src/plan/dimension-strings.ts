/**
 * Dimension strings of a room, inside it along each wall, so that those of neighbours never lie over one another: the
 * whole length, and nearer the wall the stretches between openings. In pixels of a sheet at a scale, since text and
 * ticks keep their size however near one comes.
 */
import type { PlanWallRow } from '../contract/areas/plan.ts'
import { move, type Point, readable } from '../drawing/room-plan.ts'

export interface StringText {
  readonly wall: string
  /** The whole of the wall, which can be typed anew. */
  readonly whole: boolean
  readonly mm: number
  /** The stretch it measures, mm from the wall's left end. */
  readonly from: number
  readonly to: number
  /** The middle of its base line, pixels, and how it is turned, degrees. */
  readonly at: Point
  readonly turn: number
}

export interface Strings {
  /** Lines and ticks, as text of SVG paths. */
  readonly lines: string
  readonly ticks: string
  readonly texts: readonly StringText[]
}

/** From the face to the first string, to the second, and from a string to its figures; pixels. */
const near = 18
const far = 38
const letters = 5.8

/**
 * @param scale pixels for a millimetre
 * @param say writes a length, to know how long its figures are
 */
export function stringsOf(walls: readonly PlanWallRow[], scale: number, say: (mm: number) => string): Strings {
  const lines: string[] = []
  const ticks: string[] = []
  const texts: StringText[] = []
  for (const wall of walls) {
    const from: Point = [wall.from[0] * scale, wall.from[1] * scale]
    const run = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]) * scale
    if (run < 46) continue
    const along: Point = [((wall.to[0] - wall.from[0]) * scale) / run, ((wall.to[1] - wall.from[1]) * scale) / run]
    const into: Point = [-along[1], along[0]]
    const put = (x: number, deep: number) => move(move(from, along, (x / wall.length) * run), into, deep)
    const turn = readable(along)
    // Figures stand above their string as it is read, on whichever side of it that is.
    const radians = (turn * Math.PI) / 180
    const side = into[0] * Math.sin(radians) - into[1] * Math.cos(radians) > 0 ? 4 : -4
    const stops = stopsOf(wall)
    const strings =
      stops.length > 2
        ? [
            { deep: near, stops },
            { deep: far, stops: [0, wall.length] },
          ]
        : [{ deep: near, stops }]
    for (const { deep, stops: own } of strings) {
      const whole = own.length === 2
      lines.push(`M${text(put(0, deep))}L${text(put(wall.length, deep))}`)
      for (const [index, x] of own.entries()) {
        const at = put(x, deep)
        const slant: Point = [(along[0] + into[0]) * 3.2, (along[1] + into[1]) * 3.2]
        ticks.push(`M${text([at[0] - slant[0], at[1] - slant[1]])}L${text([at[0] + slant[0], at[1] + slant[1]])}`)
        const next = own[index + 1]
        if (next === undefined) continue
        const room = ((next - x) / wall.length) * run
        if (!whole && say(next - x).length * letters > room) continue
        texts.push({
          wall: wall.id,
          whole,
          mm: next - x,
          from: x,
          to: next,
          at: put((x + next) / 2, deep + side),
          turn,
        })
      }
    }
  }
  return { lines: lines.join(''), ticks: ticks.join(''), texts }
}

/** How far a figure's box reaches beyond its letters, above and below its base line, pixels. */
const [beyond, above, below] = [5, 13, 5]

/** The box of a figure about its base line, before it is turned: half its width, and where it begins and ends. */
export function figureBox({ mm }: Pick<StringText, 'mm'>, say: (mm: number) => string) {
  return { half: (say(mm).length * letters) / 2 + beyond, top: -above, bottom: below }
}

/** The figure under a point of the sheet, pixels as `stringsOf` has them. */
export function figureAt(texts: readonly StringText[], [x, y]: Point, say: (mm: number) => string): StringText | null {
  const found = texts.find(text => {
    const { half, top, bottom } = figureBox(text, say)
    const turn = (text.turn * Math.PI) / 180
    const [dx, dy] = [x - text.at[0], y - text.at[1]]
    const along = dx * Math.cos(turn) + dy * Math.sin(turn)
    const down = dy * Math.cos(turn) - dx * Math.sin(turn)
    return Math.abs(along) <= half && down >= top && down <= bottom
  })
  return found ?? null
}

function stopsOf(wall: PlanWallRow): readonly number[] {
  const cuts = wall.openings.flatMap(({ x, width }) => [x, x + width]).filter(x => x > 0 && x < wall.length)
  return [0, ...[...new Set(cuts)].sort((a, b) => a - b), wall.length]
}

const text = ([x, y]: Point) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`
