/** What the demo's curator asks of its hang. One is broken as it hangs: the two floods stand side by side. */
import type { Input } from '../../../src/contract/contract.ts'
import type { RuleKind, Within } from '../../../src/sequence/hang-rule.ts'

export interface DemoRule {
  readonly kind: RuleKind
  readonly works: readonly string[]
  readonly room?: string
  readonly within?: Within
  readonly reason: string
}

export const rules: readonly DemoRule[] = [
  { kind: 'in this order', works: ['jars-i', 'jars-ii', 'jars-iii'], reason: 'states of one plate' },
  { kind: 'in this order', works: ['sand-i', 'sand-ii', 'sand-iii'], reason: 'three mornings' },
  { kind: 'not beside', works: ['flood-sallowford', 'weir-high'], reason: 'two floods in one look' },
  { kind: 'only on', works: ['whole-river'], room: 'Mill Room', reason: 'it was woven there' },
  { kind: 'one wall', works: ['new-bank', 'low-sun'], reason: '' },
  { kind: 'first', works: ['weir-low'], within: 'wall', reason: 'the title wall begins with it' },
]

/** How works of a section hang together where it is not side by side: the six locks are one block, as they hang. */
export const sectionHang: {
  readonly section: string
  readonly changes: Input<'section.update'>['changes']
} = {
  section: 'The working bank',
  changes: {
    hang: { was: 'row', to: 'grid' },
    columns: { was: 4, to: 3 },
    gapDown: { was: 80, to: 90 },
    gapAcross: { was: 80, to: 90 },
    alike: { was: 50, to: 10 },
  },
}
