/**
 * Which works of the show a person looks at: of one lender, in one medium, that may receive so much light; and which
 * sections are folded. The frieze leaves out what is not looked at, walls show it pale.
 */
import type { FriezeWork } from './frieze-line.ts'

/** Light that works may receive, as it is spoken of. Common practice, no source. */
export const lightClasses = [
  { key: 'low', words: 'to 50 lux', holds: (limit: number | null) => limit !== null && limit <= 50 },
  {
    key: 'middle',
    words: '51 to 200 lux',
    holds: (limit: number | null) => limit !== null && limit > 50 && limit <= 200,
  },
  { key: 'high', words: 'above 200 lux', holds: (limit: number | null) => limit !== null && limit > 200 },
  { key: 'unsaid', words: 'not said', holds: (limit: number | null) => limit === null },
] as const
export type LightKey = (typeof lightClasses)[number]['key']

class Strip {
  lender = $state<string | null>(null)
  medium = $state<string | null>(null)
  light = $state<LightKey | null>(null)
  folded = $state.raw<ReadonlySet<string>>(new Set())

  readonly filters = $derived(this.lender !== null || this.medium !== null || this.light !== null)

  looksAt(work: Pick<FriezeWork, 'lender' | 'medium' | 'lightLimit'>): boolean {
    if (this.lender !== null && work.lender !== this.lender) return false
    if (this.medium !== null && work.medium !== this.medium) return false
    return this.light === null || (lightClasses.find(one => one.key === this.light)?.holds(work.lightLimit) ?? true)
  }

  fold(section: string): void {
    const next = new Set(this.folded)
    if (!next.delete(section)) next.add(section)
    this.folded = next
  }

  showAll(): void {
    this.lender = null
    this.medium = null
    this.light = null
  }
}

export const strip = new Strip()
