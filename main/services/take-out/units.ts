/** Units of information as works.json writes them: by name, without what is empty, work by work. */

export type Units = Record<string, unknown>

export interface OfWork {
  readonly work: string
}

export const byWork = <R extends OfWork>(all: readonly R[]): ReadonlyMap<string, readonly R[]> =>
  Map.groupBy(all, each => each.work)

export function filled(units: Readonly<Record<string, unknown>>): Units {
  return Object.fromEntries(
    Object.entries(units).filter(
      ([, value]) => value !== null && value !== '' && !(Array.isArray(value) && value.length === 0),
    ),
  )
}
