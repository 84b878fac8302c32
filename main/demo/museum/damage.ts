/**
 * What is damaged in the demo: one frame that lost a chip on its way, told, signed for and closed; one whose joint has
 * opened since it came, of which the owner has not been told. Days count back from today. All of it is invented.
 */
import type { Input } from '../../../src/contract/contract.ts'
import type { CloseUp } from '../pictures/close-up.ts'
import { type Finding, moved } from './record.ts'

export interface DemoPhoto extends CloseUp {
  readonly shows: string
  readonly daysAgo: number
}

type Word = Pick<Input<'damage.say'>, 'kind' | 'whom' | 'how' | 'said'> & { readonly daysAgo: number }

export interface DemoDamage extends Pick<Input<'damage.add'>, 'how' | 'circumstances' | 'reporter'> {
  readonly work: string
  /** The report in which it is seen, of which the photographs are: one of the record's, or one of its own. */
  readonly seenIn:
    | 'check'
    | { readonly kind: 'incoming'; readonly packing: string; readonly findings: readonly Finding[] }
  readonly found: number
  /** Number of the finding that its photographs show. */
  readonly finding: number
  readonly photos: readonly DemoPhoto[]
  readonly words: readonly Word[]
  /** Why it was closed; null for one that is open. */
  readonly closed: string | null
}

const hour = 1 / 24

export const damages: readonly DemoDamage[] = [
  {
    work: 'two-kilns',
    seenIn: {
      kind: 'incoming',
      packing: 'Crate 4, slot 3: corner blocks, soft wrap; dry, indicator white. The blocks sat loose.',
      findings: [
        {
          side: 'frame',
          form: 'mark',
          term: 'frame.chip',
          age: 'new',
          severity: 'marked',
          stable: 'stable',
          at: [[0.974, 0.993]],
          across: 18,
          note: 'Lower edge beside the joint; bare lime wood, the chip lies in the slot.',
        },
      ],
    },
    found: moved.opened,
    reporter: 'Dov Hasterley',
    how: 'struck the slot when the crate was set down, as the courier takes it',
    circumstances: 'Seen when Crate 4 was opened, before the work was touched. The chip lay below it in the slot.',
    finding: 1,
    photos: [
      {
        key: 'two-kilns-corner',
        wood: 'lime',
        field: 150,
        open: 0,
        chip: 18,
        daysAgo: moved.opened - 0.2 * hour,
        shows: 'Lower right corner in its slot, rule beside it.',
      },
      {
        key: 'two-kilns-corner-near',
        wood: 'lime',
        field: 75,
        open: 0,
        chip: 18,
        daysAgo: moved.opened - 0.25 * hour,
        shows: 'The bare wood, nearer.',
      },
    ],
    words: [
      {
        kind: 'owner told',
        daysAgo: moved.opened - 2.5 * hour,
        whom: 'Lisbet Quarrell',
        how: 'telephone, photographs by mail',
        said: 'Wants it kept as it is until it is back; no filling.',
      },
      {
        kind: 'insurer told',
        daysAgo: moved.opened - 5 * hour,
        whom: 'Indemnity desk, certificate 31/117',
        how: 'mail',
        said: 'No claim is made.',
      },
      {
        kind: 'action',
        daysAgo: moved.opened - 6 * hour,
        whom: 'Dov Hasterley',
        said: 'Chip in a labelled bag in the work’s folder; corner padded, the work left in its slot.',
      },
    ],
    closed: 'Its owner takes it as it is; the chip goes back with the work.',
  },
  {
    work: 'quay-evening',
    seenIn: 'check',
    found: 5,
    reporter: 'Petra Sollen',
    how: '',
    circumstances: 'Seen at the check in the rack: the joint stood 2 mm open when it came and is 6 mm open now.',
    finding: 3,
    photos: [
      {
        key: 'quay-evening-joint',
        wood: 'walnut',
        field: 150,
        open: 6,
        chip: 0,
        daysAgo: 5,
        shows: 'Lower right joint, from the front.',
      },
      {
        key: 'quay-evening-joint-near',
        wood: 'walnut',
        field: 75,
        open: 6,
        chip: 0,
        daysAgo: 5,
        shows: 'The same, nearer: 6 mm at the outer edge.',
      },
    ],
    words: [],
    closed: null,
  },
]
