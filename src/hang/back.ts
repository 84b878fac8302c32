/**
 * What was measured on the back, on its way in. The back is mirrored: an inset on the left of the back is on the right
 * of the front. It is turned round here and nowhere else, by the names that every method's schema uses.
 */
import type * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import type { BackField } from './method.ts'

export type SeenFrom = 'front' | 'back'

/**
 * The same data seen from the other side: `left` and `right` change places at any depth, as names and as words, and
 * `ranges` are counted from the other edge.
 */
export function mirrorBack(data: unknown, width: number): unknown {
  if (data === 'left') return 'right'
  if (data === 'right') return 'left'
  if (!isObject(data)) return data
  const turned: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(data)) {
    if (key === 'left') turned.right = mirrorBack(value, width)
    else if (key === 'right') turned.left = mirrorBack(value, width)
    else if (key === 'ranges' && Array.isArray(value))
      turned.ranges = value.map(range => mirrorRange(range, width)).reverse()
    else turned[key] = mirrorBack(value, width)
  }
  return turned
}

function mirrorRange(range: unknown, width: number): unknown {
  if (!isObject(range)) return range
  const { from, to } = range
  if (typeof from !== 'number' || typeof to !== 'number') return range
  return { ...range, from: width - to, to: width - from }
}

function asFromFront(data: unknown, seenFrom: SeenFrom, width: number): unknown {
  return seenFrom === 'front' ? data : mirrorBack(data, width)
}

/**
 * What `use` makes of the data seen from the front. What it refuses names the measure as it was typed: seen from the
 * back, `back.data.right.drop` of the front is `back.data.left.drop` of the person who measured.
 */
export function useFromFront<T>(data: unknown, seenFrom: SeenFrom, width: number, use: (front: unknown) => T): T {
  try {
    return use(asFromFront(data, seenFrom, width))
  } catch (thrown) {
    if (seenFrom === 'front' || !(thrown instanceof Refusal) || thrown.field === undefined) throw thrown
    const { code, message, details } = thrown
    const field = fieldFromBack(thrown.field, data)
    throw new Refusal(code, message, { field, ...(details === undefined ? {} : { details }) })
  }
}

function fieldFromBack(field: string, data: unknown): string {
  const count = isObject(data) && Array.isArray(data.ranges) ? data.ranges.length : 0
  return field
    .replace(/^back\.data\.(left|right)\b/, (_, side) => `back.data.${side === 'left' ? 'right' : 'left'}`)
    .replace(/^back\.data\.ranges\.(\d+)/, (_, at) => `back.data.ranges.${count - 1 - Number(at)}`)
}

/**
 * Data that a method's schema accepts, or the refusal `back-invalid`: it names the measure, as `back.data.left.drop`,
 * and says with the form's own words what to measure again.
 */
export function readBack<S extends z.ZodType>(
  schema: S,
  data: unknown,
  fields: readonly BackField[] = [],
): z.output<S> {
  const read = schema.safeParse(data)
  if (read.success) return read.data
  const issue = read.error.issues[0]
  const field = ['back', 'data', ...(issue?.path ?? [])].join('.')
  throw new Refusal('back-invalid', issue === undefined ? 'The back is not measured.' : sayIssue(issue, fields), {
    field,
  })
}

/** What is wrong with one measure. A whole part that is missing is named by its first measure that is needed. */
function sayIssue(issue: z.core.$ZodIssue, fields: readonly BackField[]): string {
  const at = issue.path.join('.')
  const inside = fields.filter(field => field.path.join('.') === at || field.path.join('.').startsWith(`${at}.`))
  // Part of a list, such as where the first brace begins, is said of the whole list.
  const around = fields.find(field => at.startsWith(`${field.path.join('.')}.`))
  const field = inside.find(one => one.required) ?? inside[0] ?? around
  if (field === undefined) return `What was measured on the back cannot be read: ${at} ${issue.message}`
  const measureAgain = `${field.label}: ${wrongWith(issue)} Measure it again. ${field.hint}`
  return issue.code === 'invalid_type' ? `${field.label} is not measured yet. ${field.hint}` : measureAgain
}

function wrongWith(issue: z.core.$ZodIssue): string {
  if (issue.code === 'too_small')
    return issue.inclusive === true
      ? `it can’t be less than ${issue.minimum}.`
      : `it must be more than ${issue.minimum}.`
  if (issue.code === 'too_big') return `it can’t be more than ${issue.maximum}.`
  return `${issue.message}.`
}

/** The number at a path of half-typed data, or null. */
export function numberAt(data: unknown, path: readonly (string | number)[]): number | null {
  let here: unknown = data
  for (const key of path) {
    if (Array.isArray(here) && typeof key === 'number') here = here[key]
    else if (isObject(here) && typeof key === 'string') here = here[key]
    else return null
  }
  return typeof here === 'number' && Number.isFinite(here) ? here : null
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
