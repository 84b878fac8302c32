/** The end of a show. */
import type { leavingArea } from '../../../src/contract/areas/leaving.ts'
import { leavingSteps } from '../../../src/record/leaving.ts'
import type { ExamplesOf } from './types.ts'

const arrived = (known: { readonly pans: string; readonly room: string }) =>
  ['movement.add', { works: [known.pans], to: known.room, at: '2031-03-02T09:10:00.000Z', by: 'Tamsin Oake' }] as const

const left = {
  running: '',
  lender: 'Quay Collection',
  lent: true,
  cameIn: '',
  report: null,
  damage: [],
}
const steps = (down: boolean) => leavingSteps.map(step => ({ step, done: down && step === 'off its wall' }))
const nowhere = {
  where: '',
  steps: steps(false),
  next: 'off its wall' as const,
  lacks: [{ code: 'nowhere', stops: false, text: 'No movement of it is on record: nobody can say where it is.' }],
}

export const leavingExamples: ExamplesOf<keyof typeof leavingArea> = {
  'leaving.list': {
    answered: [
      {
        about: 'a work that was brought in, and two of which no movement is on record',
        first: known => [arrived(known)],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          lines: [
            {
              ...left,
              id: known.pans,
              number: 'L-1.1',
              title: 'Salt pans',
              where: 'Room 1',
              steps: steps(true),
              next: 'looked at',
              lacks: [{ code: 'no-report', stops: false, text: 'Its outgoing report is made before it is wrapped.' }],
            },
            { ...left, id: known.causeway, number: 'L-1.2', title: 'Causeway', ...nowhere },
            { ...left, id: known.raking, number: 'L-1.3', title: 'Raking', ...nowhere },
          ],
          crates: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a show that there is not',
        input: () => ({ exhibition: 'zzzzzz' }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
}
