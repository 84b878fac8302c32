/**
 * Do the sizes of one work agree with each other, with its image and with its weight? The rule it keeps: each check
 * says what it found with its figures and changes nothing. Bounds are practice of framers and registrars (common
 * practice, no source; the weights per area from memory).
 */
import { formatLength } from './format.ts'
import { formatMass } from './mass.ts'
import type { Part, Sizes, Statement } from './statement.ts'

export interface SizeFinding {
  readonly code:
    | 'framed-smaller'
    | 'sight-larger-than-frame'
    | 'sight-larger'
    | 'sheet-smaller-than-sight'
    | 'frame-narrow'
    | 'frame-wide'
    | 'aspect'
    | 'mass-light'
    | 'mass-heavy'
  readonly text: string
  /** Millimetres, kilograms, and shares of 1. */
  readonly figures: Readonly<Record<string, number>>
}

export interface SizesToCheck {
  readonly framed?: Sizes
  /** The work without its frame. */
  readonly unframed?: Sizes
  /** A sheet of paper, which may float inside the sight size. */
  readonly sheet?: Sizes
  readonly sight?: Sizes
  readonly massKg?: number
  /** Width over height of the image. */
  readonly imageAspect?: number
}

/** Width of frame seen from the front, per side. */
export const FRAME_WIDTH_MM = { least: 10, most: 200 } as const
/** The image's aspect may differ from the work's by this share. */
export const ASPECT_TOLERANCE = 0.02
/** kg/m² of a bare canvas; kg/m² of 3 mm glass and a heavy back; kg per metre of a heavy moulding. From memory. */
export const MASS_BOUNDS = { leastPerM2: 0.7, mostPerM2: 7.5 + 6, mostPerMetre: 4 } as const

/** Listed sizes are rounded to a millimetre. */
const ROUNDING_MM = 1

export function checkSizes(work: SizesToCheck): readonly SizeFinding[] {
  const unframed = work.unframed ?? work.sheet
  return [
    ...checkFrame(work.framed, unframed),
    ...checkSight(work),
    ...checkAspect(unframed ?? work.sight, work.imageAspect),
    ...checkMass(work.framed ?? unframed, work.massKg),
  ]
}

/** The same checks on a statement that was read. */
export function checkStatement(statement: Statement, imageAspect?: number): readonly SizeFinding[] {
  const named = (...names: readonly Part[]) =>
    names.flatMap(name => statement.parts.find(part => part.part === name) ?? [])[0]
  const [framed, unframed, sheet, sight] = [
    named('framed'),
    named('support', 'unnamed', 'image'),
    named('sheet'),
    named('sight'),
  ]
  return checkSizes({
    ...(framed ? { framed } : {}),
    ...(unframed ? { unframed } : {}),
    ...(sheet ? { sheet } : {}),
    ...(sight ? { sight } : {}),
    ...(statement.mass ? { massKg: statement.mass.kg } : {}),
    ...(imageAspect === undefined ? {} : { imageAspect }),
  })
}

const DIRECTIONS = ['height', 'width'] as const

function checkFrame(framed: Sizes | undefined, unframed: Sizes | undefined): readonly SizeFinding[] {
  return DIRECTIONS.flatMap((field): SizeFinding[] => {
    const [outer, inner] = [framed?.[field], unframed?.[field]]
    if (outer === undefined || inner === undefined) return []
    const figures = { framed: outer, unframed: inner }
    if (outer < inner - ROUNDING_MM) {
      const text = `The ${field} with frame, ${print(outer)}, is less than without, ${print(inner)}.${turnedHint(framed, unframed)} Measure the work.`
      return [{ code: 'framed-smaller', text, figures }]
    }
    const width = (outer - inner) / 2
    const text = `By the ${field} the frame would be ${print(width)} wide on each side. Check which size is which.`
    if (width < FRAME_WIDTH_MM.least) return [{ code: 'frame-narrow', text, figures: { ...figures, frame: width } }]
    return width > FRAME_WIDTH_MM.most ? [{ code: 'frame-wide', text, figures: { ...figures, frame: width } }] : []
  })
}

/** Whether the frame would fit if one of the two sizes were turned. */
function turnedHint(framed: Sizes | undefined, unframed: Sizes | undefined): string {
  if (framed?.height === undefined || framed.width === undefined) return ''
  if (unframed?.height === undefined || unframed.width === undefined) return ''
  const fits = framed.height >= unframed.width && framed.width >= unframed.height
  return fits ? ' Height and width of one of them may be swapped.' : ''
}

function checkSight(work: SizesToCheck): readonly SizeFinding[] {
  return DIRECTIONS.flatMap((field): SizeFinding[] => {
    const sight = work.sight?.[field]
    if (sight === undefined) return []
    const [framed, unframed, sheet] = [work.framed?.[field], work.unframed?.[field], work.sheet?.[field]]
    const found: SizeFinding[] = []
    if (framed !== undefined && sight > framed + ROUNDING_MM) {
      const text = `The sight ${field}, ${print(sight)}, is more than that of the frame, ${print(framed)}. Measure the work.`
      found.push({ code: 'sight-larger-than-frame', text, figures: { sight, framed } })
    }
    if (unframed !== undefined && sight > unframed + ROUNDING_MM) {
      const text = `The sight ${field}, ${print(sight)}, is more than the work's own, ${print(unframed)}. Measure the work.`
      found.push({ code: 'sight-larger', text, figures: { sight, unframed } })
    }
    if (sheet !== undefined && sight > sheet + ROUNDING_MM) {
      const text = `The sheet's ${field}, ${print(sheet)}, is less than the sight size, ${print(sight)}. Is the sheet floated on its mount?`
      found.push({ code: 'sheet-smaller-than-sight', text, figures: { sight, sheet } })
    }
    return found
  })
}

function checkAspect(sizes: Sizes | undefined, imageAspect: number | undefined): readonly SizeFinding[] {
  if (sizes?.height === undefined || sizes.width === undefined || imageAspect === undefined) return []
  // No image is a thousand times as long as it is wide; such a figure is a fault of the file.
  if (!(imageAspect > 1e-3 && imageAspect < 1e3)) return []
  const aspect = sizes.width / sizes.height
  const difference = Math.abs(aspect / imageAspect - 1)
  if (difference <= ASPECT_TOLERANCE + 1e-9) return []
  const turned = Math.abs(1 / aspect / imageAspect - 1) <= ASPECT_TOLERANCE ? ' Height and width may be swapped.' : ''
  const text = `The image is ${imageAspect.toFixed(2)} times as wide as high, the size ${aspect.toFixed(2)} times.${turned} Check the size, or whether the image is cropped.`
  return [{ code: 'aspect', text, figures: { imageAspect, aspect, difference } }]
}

/** For flat works only: what is deeper than 200 mm is no picture. */
function checkMass(sizes: Sizes | undefined, kg: number | undefined): readonly SizeFinding[] {
  if (sizes?.height === undefined || sizes.width === undefined || kg === undefined || (sizes.depth ?? 0) > 200)
    return []
  const [height, width] = [sizes.height / 1000, sizes.width / 1000]
  const least = MASS_BOUNDS.leastPerM2 * height * width
  const most = MASS_BOUNDS.mostPerM2 * height * width + MASS_BOUNDS.mostPerMetre * 2 * (height + width)
  if (kg >= least && kg <= most) return []
  const light = kg < least
  const bound = light ? least : most
  const size = `${print(sizes.height)} × ${print(sizes.width)}`
  const text = `${mass(kg)} is ${light ? 'little' : 'much'} for a work of ${size}: ${light ? 'at least' : 'at most'} ${mass(bound)} would be expected. Weigh it, or check the unit.`
  return [{ code: light ? 'mass-light' : 'mass-heavy', text, figures: { mass: kg, [light ? 'least' : 'most']: bound } }]
}

function print(mm: number): string {
  return formatLength(mm, { unit: 'mm', decimals: 0 })
}

function mass(kg: number): string {
  return formatMass(kg, { unit: 'kg', decimals: 1 })
}
