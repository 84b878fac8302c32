/** The order of a table's rows as the reader wants them: by any column, up or down; what is unknown comes last. */
type Value = string | number | null

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

export class Sorting<T, K extends string> {
  key = $state<K | null>(null)
  down = $state(false)
  private readonly columns: Readonly<Record<K, (row: T) => Value>>

  constructor(columns: Readonly<Record<K, (row: T) => Value>>) {
    this.columns = columns
  }

  /** The first time up, then down, then as the rows came. */
  by(key: K): void {
    if (this.key !== key) {
      this.key = key
      this.down = false
    } else if (!this.down) this.down = true
    else this.key = null
  }

  how(key: K): 'ascending' | 'descending' | 'none' {
    return this.key !== key ? 'none' : this.down ? 'descending' : 'ascending'
  }

  sorted(rows: readonly T[]): readonly T[] {
    const { key } = this
    if (key === null) return rows
    const of = this.columns[key]
    const turn = this.down ? -1 : 1
    return rows.toSorted((a, b) => {
      const [one, other] = [of(a), of(b)]
      if (one === null || other === null) return one === other ? 0 : one === null ? 1 : -1
      if (typeof one === 'number' && typeof other === 'number') return (one - other) * turn
      return collator.compare(String(one), String(other)) * turn
    })
  }
}
