/**
 * Sentences beside what they are about. Each note is a small block of lines with a leader to its work; no block covers
 * a work, a line's label or another block, and what finds no room is left to the list under the drawing.
 */
import type { Finding } from '../contract/shared.ts'
import type { Point, Rect } from '../geometry/rect.ts'
import { overlap, right, top } from '../geometry/rect.ts'
import { THIN_SPACE } from '../measure/format.ts'

export interface NoteWanted {
  readonly key: string
  /** The work's rectangle on the screen, y down. */
  readonly about: Rect
  readonly width: number
  readonly height: number
}

export interface NotePlaced {
  readonly key: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** From the block to the work. */
  readonly leader: readonly Point[]
}

const clear = 7

/** Numbers keep their units and their fractions: no line breaks between them. */
export function unbroken(text: string): string {
  return text
    .replace(/(\d) (\d+\/\d+)/g, '$1\u00a0$2')
    .replace(/([\d/]) (mm|cm|m|in|ft|kg|lb|lux)\b/g, '$1\u00a0$2')
    .replaceAll(THIN_SPACE, `\u2060${THIN_SPACE}\u2060`)
}

/** Whether a sentence names a work by its number, such as `24` or `HL 1`, as a word of its own and no part of a figure. */
export function names(text: string, called: string): boolean {
  const number = called.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)
  return called !== '' && new RegExp(String.raw`(?<![\p{L}\d.,]|\d\s)${number}(?![\p{L}\d]|[\s.,]\d)`, 'u').test(text)
}

/** The sentence before the ways out of it, and the ways. */
export function headAndWays(text: string): { readonly head: string; readonly ways: string } {
  const at = text.search(/[:.] /)
  if (at < 0) return { head: text.replace(/\.$/, ''), ways: '' }
  return { head: text.slice(0, at), ways: text.slice(at + 2).replace(/\.$/, '') }
}

/** Lines of at most `most` pixels, broken at plain spaces alone. */
export function wrap(text: string, most: number, width: (text: string) => number): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && width(longer) > most) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return line === '' ? lines : [...lines, line]
}

/** Places notes one after the other, nearest free place first: over the works, then under them. Screen pixels, y down. */
export function placeNotes(wanted: readonly NoteWanted[], taken: readonly Rect[], field: Rect): readonly NotePlaced[] {
  const blocks: Rect[] = [...taken]
  const placed: NotePlaced[] = []
  for (const note of wanted) {
    const spot = bestSpot(note, blocks, placed, field)
    if (spot === null) continue
    const leader = leaderTo(spot, note)
    blocks.push(...leaderRects(leader))
    blocks.push({
      x: spot.x - clear,
      y: spot.y - clear,
      width: note.width + 2 * clear,
      height: note.height + 2 * clear,
    })
    placed.push({ key: note.key, x: spot.x, y: spot.y, leader, width: note.width, height: note.height })
  }
  return placed
}

function bestSpot(note: NoteWanted, blocks: readonly Rect[], notes: readonly NotePlaced[], field: Rect): Point | null {
  const { about, width, height } = note
  const middle = about.x + about.width / 2
  const columns = [
    middle - width - 14,
    middle + 14,
    middle - width / 2,
    about.x - width - 40,
    right(about) + 40,
    middle - 1.6 * width,
    middle + 0.6 * width,
  ]
  let best: { readonly at: Point; readonly cost: number } | null = null
  for (const wantedX of columns) {
    const x = Math.min(Math.max(wantedX, field.x), right(field) - width)
    for (let y = field.y; y + height <= top(field); y += 6) {
      const block = { x, y, width, height }
      const down = y > about.y ? 40 : 0
      const cost = Math.abs(x + width / 2 - middle) + Math.abs(y + height / 2 - about.y) + down
      if (best !== null && cost >= best.cost) continue
      if (blocks.some(other => overlap(block, other))) continue
      const leader = leaderRects(leaderTo({ x, y }, note))
      if (notes.some(other => leader.some(part => overlap(part, other)))) continue
      best = { at: { x, y }, cost }
    }
  }
  return best === null ? null : best.at
}

/** The ground that a leader takes, so that no other note stands on it. */
function leaderRects(leader: readonly Point[]): readonly Rect[] {
  return leader.slice(1).map((to, index) => {
    const from = leader[index] ?? to
    return {
      x: Math.min(from.x, to.x) - 3,
      y: Math.min(from.y, to.y),
      width: Math.abs(from.x - to.x) + 6,
      height: Math.abs(from.y - to.y),
    }
  })
}

function leaderTo(at: Point, { about, width, height }: NoteWanted): readonly Point[] {
  const below = at.y > about.y
  const foot = { x: about.x + about.width / 2, y: below ? about.y + about.height : about.y }
  // Straight over or under the work the leader leaves the block's edge; else its side, and never crosses its lines.
  const inside = Math.min(Math.max(foot.x, at.x + 8), at.x + width - 8)
  if (Math.abs(inside - foot.x) < 30) return [{ x: inside, y: below ? at.y - 3 : at.y + height + 3 }, foot]
  const side = foot.x > at.x ? at.x + width + 4 : at.x - 4
  const out = side > at.x ? side + 7 : side - 7
  const level = at.y + 7
  return [{ x: side, y: level }, { x: out, y: level }, foot]
}

const order = { stop: 0, settle: 1, fits: 2 } as const

/** What wants a person, worst first; the rest is good news. */
export function troubles(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(found => found.severity !== 'fits').sort((a, b) => order[a.severity] - order[b.severity])
}
