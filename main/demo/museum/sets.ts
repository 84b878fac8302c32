/** Which works of the demo are one object on a wall, and how their parts stand to each other. */
import type { Input } from '../../../src/contract/contract.ts'

export type DemoSet = Pick<Required<Input<'set.make'>>, 'title' | 'form' | 'columns' | 'gapX' | 'gapY' | 'keeps'> & {
  readonly key: string
  /** Keys of its parts, in their order. */
  readonly parts: readonly string[]
}

export const sets: readonly DemoSet[] = [
  {
    key: 'ford',
    title: 'The ford',
    form: 'row',
    columns: null,
    gapX: 20,
    gapY: 0,
    keeps: 'gaps',
    parts: ['ford-left', 'ford-right'],
  },
  {
    key: 'gauge',
    title: 'Gauge at Sallowford, six readings',
    form: 'grid',
    columns: 2,
    gapX: 24,
    gapY: 24,
    // Its frames differ by a millimetre or three: equal centres keep the hooks on one line.
    keeps: 'centres',
    parts: ['gauge-i', 'gauge-ii', 'gauge-iii', 'gauge-iv', 'gauge-v', 'gauge-vi'],
  },
]
