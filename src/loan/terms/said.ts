/** A term as a sentence: in the words of the agreement, or in ours where those are not written down. */
import { decimal, THIN_SPACE } from '../../measure/format.ts'
import { formatMass } from '../../measure/mass.ts'
import { moneySaid } from './money.ts'
import type { Term, TermKind } from './term.ts'

/** Choices of kinds that are told by them alone. */
export const choiceWords: Partial<Readonly<Record<TermKind, Readonly<Record<string, string>>>>> = {
  framing: {
    '': 'in its frame',
    none: 'without a frame',
    'frame-stays': 'neither unframed nor reframed',
    'glazing-stays': 'its glazing left in place',
  },
  security: {
    case: 'in a closed case',
    'out-of-reach': 'out of reach: in a case or behind a barrier',
    locked: 'on a locked fixing or in a case',
    watched: 'watched by staff while the room is open',
    alarm: 'under an alarm',
    'locked-room': 'in a room that is locked while it is not watched',
  },
  courier: {
    hanging: 'the lender’s courier is there when it is hung',
    'taking-down': 'the lender’s courier is there when it is taken down',
  },
}

/** A mass as agreements have it: kilograms, then pounds. */
export const massBoth = (kg: number): string =>
  `${formatMass(kg, { unit: 'kg' })} (${formatMass(kg, { unit: 'lb', decimals: 1 })})`

/** A length in the reader's unit. */
export type Say = (mm: number) => string

export function termSaid({ kind, low, high, choice, said }: Omit<Term, 'confirmed'>, say: Say): string {
  if (said.trim() !== '') return said.trim()
  const band = (write: (value: number) => string) =>
    low === null
      ? `at most ${write(high ?? 0)}`
      : high === null
        ? `at least ${write(low)}`
        : `${write(low)} to ${write(high)}`
  switch (kind) {
    case 'light':
      return `at most ${high ?? 0} lx`
    case 'dose':
      return `at most ${decimal(high ?? 0, 0, THIN_SPACE)} lx h in a year`
    case 'uv':
      return `at most ${high ?? 0} µW/lm of ultraviolet`
    case 'humidity':
      return `relative humidity ${band(value => `${value} %`)}`
    case 'temperature':
      return `temperature ${band(value => `${value} °C`)}`
    case 'glazing':
      return choice === 'none' ? 'no glazing' : choice === 'any' ? 'glazed' : `glazed with ${choice}`
    case 'fixing':
      return choice === '' ? 'on a locked fixing' : `hung by ${choice.replaceAll('-', ' ')}`
    case 'framing':
    case 'security':
    case 'courier':
      return choiceWords[kind]?.[choice] ?? choice
    case 'height':
      return `${low === null ? '' : `lower edge at least ${say(low)} above the floor`}${low !== null && high !== null ? ', ' : ''}${high === null ? '' : `upper edge at most ${say(high)} above it`}`
    case 'barrier':
      return `a barrier at least ${say(low ?? 0)} before it`
    case 'apart':
      return `not beside ${choice}`
    case 'handling':
      return `handled by ${choice} alone`
    case 'hung-width':
      return `as hung at most ${say(high ?? 0)} wide`
    case 'hung-height':
      return `as hung at most ${say(high ?? 0)} high`
    case 'hung-depth':
      return `as hung at most ${say(high ?? 0)} deep`
    case 'hung-mass':
      return `as hung at most ${massBoth(high ?? 0)}`
    case 'credit':
      return `credited as “${choice}”`
    default:
      return moneySaid(kind, high ?? 0, choice)
  }
}
