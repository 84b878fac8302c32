/** Measures of a back between a form and the method's own schema: by path, nested, and only what the schema knows. */
import type { BackField, HangMethod } from '../../src/hang/method.ts'

export type Path = readonly (string | number)[]
export type Value = number | string

export function keyOf(path: Path): string {
  return path.join('.')
}

type Branch = { [key: string]: unknown } | unknown[]

function isBranch(value: unknown): value is Branch {
  return typeof value === 'object' && value !== null
}

function put(root: Branch, path: Path, value: unknown): void {
  let here = root
  for (const [at, key] of path.entries()) {
    if (at === path.length - 1) Reflect.set(here, key, value)
    else {
      let next: unknown = Reflect.get(here, key)
      if (!isBranch(next)) {
        next = typeof path[at + 1] === 'number' ? [] : {}
        Reflect.set(here, key, next)
      }
      if (isBranch(next)) here = next
    }
  }
}

/** Nested data from values by path. */
export function nested(values: Iterable<readonly [Path, Value]>): Record<string, unknown> {
  const data: Record<string, unknown> = {}
  for (const [path, value] of values) put(data, path, value)
  return data
}

/** Every number and word of nested data, by the key of its path. */
export function flat(data: unknown, path: Path = []): Map<string, Value> {
  if (typeof data === 'number' || typeof data === 'string') return new Map([[keyOf(path), data]])
  if (!isBranch(data)) return new Map()
  const entries: [string | number, unknown][] = Array.isArray(data) ? [...data.entries()] : Object.entries(data)
  return new Map(entries.flatMap(([key, value]) => [...flat(value, [...path, key])]))
}

function unknownKeys(method: HangMethod, data: unknown): readonly string[] {
  const read = method.schema.safeParse(data)
  if (read.success) return []
  return read.error.issues.flatMap(issue =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map(key => keyOf([...issue.path.map(part => (typeof part === 'symbol' ? '' : part)), key]))
      : [],
  )
}

/** The fields that belong together under the choices made: the schema says which it would not know. */
export function fieldsInUse(method: HangMethod, choices: ReadonlyMap<string, Value>): readonly BackField[] {
  const probe = nested(
    method.fields
      .filter(field => keyOf(field.path) !== 'ranges')
      .map(field => [field.path, field.kind === 'choice' ? (choices.get(keyOf(field.path)) ?? '') : 1]),
  )
  const unknown = new Set(unknownKeys(method, probe))
  return method.fields.filter(field => !unknown.has(keyOf(field.path)))
}
