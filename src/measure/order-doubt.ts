/**
 * Reasons to doubt that the first of two bare figures is the height: the image is turned the other way, or it is a
 * size that photographers write with the width first. The rule it keeps: a doubt is asked about, never acted on.
 */
import type { Dim } from './measures.ts'
import type { Field, Sizes } from './statement.ts'
import { toMillimetres } from './units.ts'

/** Sizes that photographers name with the width first, in inches. Common practice, no source. */
const PAPER_FORMATS: ReadonlySet<string> = new Set(
  '4x6 5x7 8x10 11x14 12x16 16x20 20x24 20x30 24x30 24x36 30x40 40x60'.split(' '),
)

export interface OrderDoubt {
  readonly text: string
  readonly swappedFirst: boolean
}

/** Whether the image, or a photographer's habit, speaks against height first. */
export function orderDoubt(
  dims: readonly Dim[],
  fields: readonly Field[],
  hasUnit: boolean,
  imageAspect: number | undefined,
): OrderDoubt | undefined {
  const [first, second] = dims
  if (!first || !second || fields[0] !== 'height' || fields[1] !== 'width') return undefined
  const [a, b] = [first, second].map(dim =>
    dim.unit === undefined ? dim.value.num / dim.value.den : toMillimetres(dim.value, dim.unit),
  )
  if (
    a === undefined ||
    b === undefined ||
    a <= 0 ||
    b <= 0 ||
    (first.unit === undefined) !== (second.unit === undefined)
  ) {
    // 24 x 36 in: both count the same unit although only one says so.
    const [top, side] = [first.value.num / first.value.den, second.value.num / second.value.den]
    return imageAspect !== undefined && turned(side / top, imageAspect) ? imageDoubt(imageAspect) : undefined
  }
  if (imageAspect !== undefined) return turned(b / a, imageAspect) ? imageDoubt(imageAspect) : undefined
  if (hasUnit || !PAPER_FORMATS.has(`${a}x${b}`)) return undefined
  return {
    text: `${a} × ${b} is a size that photographers write with the width first. Which is the height?`,
    swappedFirst: false,
  }
}

function imageDoubt(imageAspect: number): OrderDoubt {
  const shape = imageAspect < 1 ? 'taller than wide' : 'wider than tall'
  return {
    text: `The image is ${shape}, the size read as height × width is not. Which is the height?`,
    swappedFirst: true,
  }
}

/** Two aspects (width over height) lie on different sides of the square, each by more than 2 %. */
export function turned(aspect: number, imageAspect: number): boolean {
  // No image is a thousand times as long as it is wide; such a figure is a fault of the file.
  if (!(imageAspect > 1e-3 && imageAspect < 1e3) || !Number.isFinite(aspect)) return false
  return (aspect > 1.02 && imageAspect < 1 / 1.02) || (aspect < 1 / 1.02 && imageAspect > 1.02)
}

export function contradicts(values: Sizes, imageAspect: number): boolean {
  return values.height !== undefined && values.width !== undefined && turned(values.width / values.height, imageAspect)
}
