/**
 * The geometry of a set: several works as one object, with inner gaps that nothing on the wall may stretch. The rules
 * it keeps: the centres of a row are on one level line, those of a column on one plumb line. Where parts differ, one
 * thing stays equal, along and down alike:
 * - gaps: the clear gap between neighbours; in a grid between the widest parts of two columns, the tallest of two rows.
 * - centres: the distance of centres, so wide that the closest two parts are as far apart as the gap says.
 * Marks run from the set's own left and top edge, each rounded once: from part to part the roundings would add up.
 */
import { Refusal } from '../contract/refusal.ts'
import { defaultSteps, print } from '../hang/printing.ts'
import type { SetAnswer, SetQuestion } from './set-shape.ts'

interface Part {
  readonly id: string
  readonly width: number
  readonly height: number
  readonly row: number
  readonly column: number
}

type Keeps = 'gaps' | 'centres'
type Along = 'x' | 'y'

/**
 * Lays the parts of a set; gaps are kept where nobody has said what to keep. Refuses `set-empty`, `part-twice`,
 * `part-without-size`, `gap-negative`, `grid-without-columns`, each with its field. mm.
 */
export function laySet(question: SetQuestion): SetAnswer {
  const parts = checked(question)
  const { gapX, gapY, keeps = '' } = question
  const steps = question.steps ?? defaultSteps
  const kept: Keeps = keeps === '' ? 'gaps' : keeps
  const at = placed(parts, gapX, gapY, kept)
  const other = placed(parts, gapX, gapY, kept === 'gaps' ? 'centres' : 'gaps')
  const differ = at.parts.some((part, index) => {
    const there = other.parts[index]
    return there === undefined || Math.abs(part.left - there.left) > 1e-6 || Math.abs(part.top - there.top) > 1e-6
  })
  return {
    width: at.width,
    height: at.height,
    rows: 1 + Math.max(...parts.map(part => part.row)),
    columns: 1 + Math.max(...parts.map(part => part.column)),
    parts: at.parts.map(part => ({
      ...part,
      printed: {
        left: print(part.left, steps),
        right: print(part.right, steps),
        top: print(part.top, steps),
        bottom: print(part.bottom, steps),
      },
    })),
    gapsX: spanOf(beside(at.parts, 'x').map(([a, b]) => b.left - a.right)),
    gapsY: spanOf(beside(at.parts, 'y').map(([a, b]) => b.top - a.bottom)),
    centresX: spanOf(beside(at.parts, 'x').map(([a, b]) => (b.left + b.right - a.left - a.right) / 2)),
    centresY: spanOf(beside(at.parts, 'y').map(([a, b]) => (b.top + b.bottom - a.top - a.bottom) / 2)),
    differ,
  }
}

/** Whether these figures can lay any set at all. Refuses `gap-negative`, `grid-without-columns`. */
export function checkForm({
  form,
  columns,
  gapX,
  gapY,
}: Pick<SetQuestion, 'form' | 'columns' | 'gapX' | 'gapY'>): void {
  for (const [field, gap] of [
    ['gapX', gapX],
    ['gapY', gapY],
  ] as const) {
    if (!(gap >= 0)) {
      throw new Refusal('gap-negative', 'Parts of a set do not overlap: a gap is 0 or more.', {
        field,
        details: { gap },
      })
    }
  }
  if (form === 'grid' && (columns == null || !(columns >= 1))) {
    throw new Refusal('grid-without-columns', 'Say how many columns the grid has.', { field: 'columns' })
  }
}

function checked(question: SetQuestion): readonly Part[] {
  const { form, columns, parts } = question
  if (parts.length === 0) throw new Refusal('set-empty', 'A set has parts. Name them.', { field: 'parts' })
  checkForm(question)
  const known = new Set<string>()
  return parts.map(({ id, width, height }, index) => {
    if (known.has(id)) {
      throw new Refusal('part-twice', 'This part is in the set already.', { field: `parts.${index}`, details: { id } })
    }
    known.add(id)
    if (width === null || height === null) {
      throw new Refusal('part-without-size', 'A part of the set has no size yet. Measure it with its frame.', {
        field: `parts.${index}`,
        details: { id },
      })
    }
    const wide = form === 'row' ? parts.length : form === 'column' ? 1 : (columns ?? 1)
    return { id, width, height, row: Math.floor(index / wide), column: index % wide }
  })
}

interface Laid {
  readonly id: string
  readonly row: number
  readonly column: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

function placed(
  parts: readonly Part[],
  gapX: number,
  gapY: number,
  keeps: Keeps,
): { readonly width: number; readonly height: number; readonly parts: readonly Laid[] } {
  const across = lines(parts, 'x', gapX, keeps)
  const down = lines(parts, 'y', gapY, keeps)
  const at = parts.map(part => ({
    part,
    left: (across[part.column] ?? 0) - part.width / 2,
    top: (down[part.row] ?? 0) - part.height / 2,
  }))
  // The set begins where its first part does, not where a column or row would.
  const left = Math.min(...at.map(one => one.left))
  const top = Math.min(...at.map(one => one.top))
  const laid = at.map(one => ({
    id: one.part.id,
    row: one.part.row,
    column: one.part.column,
    left: one.left - left,
    right: one.left - left + one.part.width,
    top: one.top - top,
    bottom: one.top - top + one.part.height,
  }))
  return {
    width: Math.max(...laid.map(part => part.right)),
    height: Math.max(...laid.map(part => part.bottom)),
    parts: laid,
  }
}

/** Where the centre lines of the columns (`x`) or the rows (`y`) are. */
function lines(parts: readonly Part[], along: Along, gap: number, keeps: Keeps): readonly number[] {
  const line = (part: Part) => (along === 'x' ? part.column : part.row)
  const size = (part: Part) => (along === 'x' ? part.width : part.height)
  const count = 1 + Math.max(...parts.map(line))
  if (keeps === 'centres') {
    const closest = Math.max(0, ...beside(parts, along).map(([a, b]) => (size(a) + size(b)) / 2))
    return Array.from({ length: count }, (_, index) => index * (closest + gap))
  }
  const most = Array.from({ length: count }, (_, index) =>
    Math.max(...parts.filter(part => line(part) === index).map(size)),
  )
  let edge = 0
  return most.map(wide => {
    const centre = edge + wide / 2
    edge += wide + gap
    return centre
  })
}

/** Neighbours along a row or down a column. */
function beside<P extends { readonly row: number; readonly column: number }>(
  parts: readonly P[],
  along: Along,
): readonly (readonly [P, P])[] {
  const at = new Map(parts.map(part => [`${part.row} ${part.column}`, part]))
  return parts.flatMap(part => {
    const next = at.get(along === 'x' ? `${part.row} ${part.column + 1}` : `${part.row + 1} ${part.column}`)
    return next === undefined ? [] : [[part, next] as const]
  })
}

function spanOf(figures: readonly number[]): SetAnswer['gapsX'] {
  return figures.length === 0 ? null : { least: Math.min(...figures), most: Math.max(...figures) }
}
