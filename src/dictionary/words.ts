/**
 * What the tables and columns of a catalogue are called and mean, for whoever reads it without the program: the data
 * dictionary of what is taken out, and the words of its history. The rule of this folder: words alone, a file an area of
 * the model. A test asks that every column of the schema has its words and that no word speaks of a column that is gone.
 */

export interface Column {
  /** What people call it, in lower case. */
  readonly called: string
  /** What it means, where the name does not say it all; '' elsewhere. */
  readonly says: string
  /** Of figures: mm, kg, lx, degrees, hours …; '' where it has none. */
  readonly unit: string
  /** What follows from other columns is told by their changes. */
  readonly follows: boolean
}

export interface Table {
  /** One row of it, as people say it. */
  readonly one: string
  readonly says: string
  readonly columns: Readonly<Record<string, Column>>
  /** The column with the key of the record that a row is a part of; '' where it is a record by itself. */
  readonly within: string
}

export type Tables = Readonly<Record<string, Table>>

type Written = string | readonly [called: string, says: string] | readonly [called: string, says: string, unit: string]

/** Columns that mean the same wherever they are. */
const common: Readonly<Record<string, Written>> = {
  id: ['key', 'Names the row for good. Made on this machine, in the order of time.'],
  position: ['order', 'Rows stand in the order of this figure; its size says nothing.'],
  at: ['when', 'In UTC, ISO 8601.'],
  by: ['by whom', 'The name of who was at the desk.'],
  note: 'note',
  source: ['source', 'Where it is known from.'],
  raw: ['as written', 'The figure as somebody wrote it, in their unit.'],
  approximate: ['about', '1 where it was said to be about that.'],
  chosen: ['in force', '1 where a person chose this one over what the rule takes.'],
  hash: ['hash', 'SHA-256 of the contents, in hexadecimal.'],
  mime: ['kind of file', 'As a MIME type.'],
}

const following = 'Follows from '

function column(written: Written): Column {
  if (typeof written === 'string') return { called: written, says: '', unit: '', follows: false }
  const [called, says, unit = ''] = written
  return { called, says, unit, follows: says.startsWith(following) }
}

/** A table's words; columns that are named without words have those they have everywhere. Throws on one that has none. */
export function table(
  one: string,
  says: string,
  shared: readonly (keyof typeof common)[],
  columns: Readonly<Record<string, Written>>,
  within = '',
): Table {
  const all: Record<string, Column> = {}
  for (const name of shared) {
    const written = common[name]
    if (written === undefined) throw new Error(`“${name}” has no words of its own`)
    all[name] = column(written)
  }
  for (const [name, written] of Object.entries(columns)) all[name] = column(written)
  return { one, says, columns: all, within }
}

/** A figure in millimetres. */
export const mm = (called: string, says = ''): Written => [called, says, 'mm']
/** The key of a row of another table. */
export const of = (called: string, says = ''): Written => [called, says]
/** What is computed from other columns. */
export const follows = (called: string, from: string): Written => [called, `${following}${from}`]
