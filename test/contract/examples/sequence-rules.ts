/** Rules of a hang: given, changed, contradicting, from light limits and notes. */
import type { sequenceRulesArea } from '../../../src/contract/areas/sequence-rules.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf } from './types.ts'

const apart = (known: Known) =>
  ['sequence.addRule', { exhibition: known.show, kind: 'not beside', works: [known.pans, known.causeway] }] as const
const says = 'Salt pans and Causeway do not hang side by side.'
const pans = (known: Known) => ({ work: known.pans, entry: known.pansEntry, running: '', title: 'Salt pans' })
const causeway = (known: Known) => ({
  work: known.causeway,
  entry: known.causewayEntry,
  running: '',
  title: 'Causeway',
})
const redTerm = {
  ...{ quoted: 'anything red', offers: [], limit: null, kept: '', rules: [], settled: null },
  asks: 'Which works of this show are “anything red”?',
}
const ruleOf = (earlier: readonly unknown[], at = 0) => (earlier[at] as { id: string }).id // the answer of an addRule

export const sequenceRulesExamples: ExamplesOf<keyof typeof sequenceRulesArea> = {
  'sequence.rules': {
    answered: [
      {
        about: 'a rule that is broken today, a light limit that no wall keeps a work from, a work held, a note',
        first: known => [
          apart(known),
          ['work.update', { id: known.raking, changes: { lightLimit: { was: null, to: 50 } } }],
          [
            'wall.plan',
            { exhibition: known.show, face: known.northFace, changes: { plannedLux: { was: null, to: 200 } } },
          ],
          ['work.update', { id: known.pans, changes: { notBeside: { was: '', to: 'anything red' } } }],
          ['placement.hold', { placements: [known.pansPlace], held: true }],
        ],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          rules: [
            {
              id: anyId,
              kind: 'not beside',
              works: [pans(known), causeway(known)],
              places: [],
              within: null,
              says,
              state: 'broken',
              why: 'Salt pans and Causeway on Room 1, north',
              from: 'given',
              reason: '',
              said: null,
            },
            {
              id: 'light:50',
              kind: 'light',
              works: [{ work: known.raking, entry: known.rakingEntry, running: '', title: 'Raking' }],
              places: [],
              within: null,
              says: 'Raking hangs where no more than 50 lux are planned.',
              state: 'open',
              why: '',
              from: 'light limit',
              reason: '',
              said: null,
            },
            {
              id: `held:${known.northFace}`,
              kind: 'held',
              works: [pans(known)],
              places: [{ kind: 'wall', id: known.northFace, name: 'Room 1, north' }],
              within: null,
              says: 'Salt pans is held where it hangs on Room 1, north.',
              state: 'held',
              why: '',
              from: 'wall',
              reason: '',
              said: null,
            },
          ],
          notes: [{ ...pans(known), field: 'notBeside', text: 'anything red', rules: [], terms: [redTerm] }],
          exceptions: [],
          contradiction: null,
          answered: true,
        }),
      },
      {
        about: 'loan terms sentence by sentence: offered as a rule or a limit, of no matter, asked, settled',
        first: known => [
          [
            'finding.settle',
            {
              ...{ code: 'loan-term', subject: known.pansEntry, reason: 'the lender waived it, letter of 3 March' },
              figures: JSON.stringify({ field: 'loanTerms', quoted: 'Not in the Room 1' }),
            },
          ],
          [
            'work.update',
            {
              id: known.pans,
              changes: {
                loanTerms: {
                  was: '',
                  to: 'Not beside Causeway. Max 50 lux; courier on arrival. Hang alone. Not in the Room 1',
                },
              },
            },
          ],
        ],
        input: known => ({ exhibition: known.show }),
        output: known => {
          const term = { offers: [], limit: null, asks: '', kept: '', rules: [], settled: null }
          return {
            rules: [],
            notes: [
              {
                ...{ ...pans(known), field: 'loanTerms', rules: [] },
                text: 'Not beside Causeway. Max 50 lux; courier on arrival. Hang alone. Not in the Room 1',
                terms: [
                  {
                    ...{ ...term, quoted: 'Not beside Causeway' },
                    offers: [{ kind: 'not beside', works: [known.pans, known.causeway], places: [], says }],
                  },
                  { ...term, quoted: 'Max 50 lux', limit: 50 },
                  { ...term, quoted: 'courier on arrival', kept: 'It is no matter of the hang.' },
                  {
                    ...{ ...term, quoted: 'Hang alone' },
                    asks: 'It speaks of where or how it hangs, in words that no rule is read from. What shall hold?',
                  },
                  {
                    ...{ ...term, quoted: 'Not in the Room 1' },
                    offers: [
                      {
                        ...{ kind: 'not on', works: [known.pans], says: 'Salt pans does not hang in Room 1.' },
                        places: [{ kind: 'room', id: known.room }],
                      },
                    ],
                    settled: { id: anyId, reason: 'the lender waived it, letter of 3 March', by: '' },
                  },
                ],
              },
            ],
            exceptions: [],
            contradiction: null,
            answered: true,
          }
        },
      },
      {
        about: 'that a rule and a light limit can’t hold together',
        first: known => [
          [
            'sequence.addRule',
            {
              ...{ exhibition: known.show, kind: 'only on', works: [known.raking] },
              places: [{ kind: 'wall', id: known.northFace }],
            },
          ],
          ['work.update', { id: known.raking, changes: { lightLimit: { was: null, to: 50 } } }],
          [
            'wall.plan',
            { exhibition: known.show, face: known.northFace, changes: { plannedLux: { was: null, to: 200 } } },
          ],
        ],
        input: known => ({ exhibition: known.show }),
        output: known => {
          const raking = { work: known.raking, entry: known.rakingEntry, running: '', title: 'Raking' }
          const still = { works: [raking], within: null, state: 'open' as const, why: '', reason: '', said: null }
          return {
            rules: [
              {
                ...still,
                id: anyId,
                kind: 'only on',
                places: [{ kind: 'wall', id: known.northFace, name: 'Room 1, north' }],
                says: 'Raking hangs only on Room 1, north.',
                from: 'given',
              },
              {
                ...still,
                id: 'light:50',
                kind: 'light',
                places: [],
                says: 'Raking hangs where no more than 50 lux are planned.',
                from: 'light limit',
              },
            ],
            notes: [],
            exceptions: [],
            contradiction: {
              rules: [anyId, 'light:50'],
              says: '“Raking hangs only on Room 1, north” and “Raking hangs where no more than 50 lux are planned” can’t both be kept; without either the other can. A light limit gives way to a lower level or a named exception alone; switch another off or change it.',
              minimal: true,
            },
            answered: true,
          }
        },
      },
    ],
    refused: [
      {
        about: 'a show that is not there',
        input: known => ({ exhibition: known.room }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'sequence.addRule': {
    answered: [
      {
        about: 'two that shall not hang side by side',
        input: known => ({ exhibition: known.show, kind: 'not beside', works: [known.pans, known.causeway] }),
        output: () => ({ id: anyId, says, contradiction: null }),
      },
      {
        about: 'one that stays on its wall',
        input: known => ({ exhibition: known.show, kind: 'stays', works: [known.pans] }),
        output: () => ({ id: anyId, says: 'Salt pans stays on Room 1, north.', contradiction: null }),
      },
    ],
    refused: [
      {
        about: 'one work that shall not be beside itself',
        input: known => ({ exhibition: known.show, kind: 'not beside', works: [known.pans, known.pans] }),
        code: 'bad-rule',
        field: 'works',
      },
      {
        about: 'a work that is not in the show',
        input: known => ({ exhibition: known.show, kind: 'not beside', works: [known.pans, known.loose] }),
        code: 'not-found',
        field: 'works.1',
      },
      {
        about: 'a sentence that the work does not say',
        first: known => [['work.update', { id: known.pans, changes: { loanTerms: { was: '', to: 'Max 50 lux' } } }]],
        input: known => ({
          ...{ exhibition: known.show, kind: 'not beside', works: [known.pans, known.causeway] },
          said: { work: known.pans, field: 'loanTerms', quoted: 'Max 80 lux' },
        }),
        code: 'not-said',
        field: 'said.quoted',
      },
      {
        about: 'a window for an axis, and a wall',
        input: known => ({
          ...{ exhibition: known.show, kind: 'axis', works: [known.pans] },
          places: [{ kind: 'wall', id: known.northFace }],
        }),
        code: 'bad-rule',
        field: 'places.0',
      },
      {
        about: 'the first of nothing',
        input: known => ({ exhibition: known.show, kind: 'first', works: [known.pans] }),
        code: 'bad-rule',
        field: 'within',
      },
      {
        about: 'one that hangs nowhere and shall stay there',
        input: known => ({ exhibition: known.show, kind: 'stays', works: [known.raking] }),
        code: 'not-hung',
        field: 'works',
      },
      {
        about: 'a closed show',
        input: known => ({ exhibition: known.closed, kind: 'stays', works: [known.pans] }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
    ],
  },
  'sequence.changeRule': {
    answered: [
      {
        about: 'that it is switched off, and a reason that somebody changed meanwhile',
        first: known => [apart(known)],
        input: (_, earlier) => ({
          id: ruleOf(earlier),
          changes: { inForce: { was: true, to: false }, reason: { was: 'the curator', to: 'both are dark' } },
        }),
        output: () => ({
          saved: ['inForce'],
          clashes: [
            { code: 'clash', id: anyId, field: 'reason', was: 'the curator', yours: 'both are dark', theirs: '' },
          ],
        }),
      },
      {
        about: 'that it names other works in another order, other places and a reason, as one edit',
        first: known => [
          [
            'sequence.addRule',
            {
              ...{ exhibition: known.show, kind: 'only on', works: [known.pans] },
              places: [{ kind: 'wall', id: known.northFace }],
            },
          ],
        ],
        input: (known, earlier) => ({
          id: ruleOf(earlier),
          changes: {
            works: { was: [known.pans], to: [known.causeway, known.pans] },
            places: { was: [{ kind: 'wall', id: known.northFace }], to: [{ kind: 'room', id: known.room }] },
            reason: { was: '', to: 'the only dry room' },
          },
        }),
        output: () => ({ saved: ['reason', 'works', 'places'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a rule that is not there',
        input: known => ({ id: known.room, changes: {} }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'too few works',
        first: known => [apart(known)],
        input: (known, earlier) => ({
          id: ruleOf(earlier),
          changes: { works: { was: [known.pans, known.causeway], to: [known.pans] } },
        }),
        code: 'bad-rule',
        field: 'changes.works',
      },
    ],
  },
  'sequence.removeRules': {
    answered: [
      {
        about: 'that it is gone',
        first: known => [apart(known)],
        input: (_, earlier) => ({ rules: [ruleOf(earlier)] }),
        output: () => ({ removed: 1 }),
      },
    ],
    refused: [
      {
        about: 'a rule that is not there',
        input: known => ({ rules: [known.room] }),
        code: 'not-found',
        field: 'rules.0',
      },
    ],
  },
  'sequence.exceptLight': {
    answered: [
      {
        about: 'an exception with its reason',
        first: known => [['work.update', { id: known.raking, changes: { lightLimit: { was: null, to: 50 } } }]],
        input: known => ({ entry: known.rakingEntry, reason: 'the lender agreed to 80 lux, letter of 3 March' }),
        output: () => ({ limit: 50 }),
      },
    ],
    refused: [
      {
        about: 'a work without a limit',
        input: known => ({ entry: known.rakingEntry, reason: 'the lender agreed' }),
        code: 'no-limit',
        field: 'entry',
      },
    ],
  },
}
