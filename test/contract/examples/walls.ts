/** Works on walls: places, layouts, fixings, findings. */
import { expect } from 'vitest'
import type { wallsArea } from '../../../src/contract/areas/walls.ts'
import { usualFixings } from '../../../src/hang/usual-fixings.ts'
import { anyId, anyMoment, type ExamplesOf, unknownField } from './types.ts'

/** The id that an answer gave. */
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made

export const wallsExamples: ExamplesOf<keyof typeof wallsArea> = {
  'wall.elevation': {
    answered: [
      {
        about: 'everything on the wall',
        input: known => ({ exhibition: known.show, face: known.northFace }),
        output: known => ({
          exhibition: known.show,
          exhibitionTitle: 'Low Water',
          closed: false,
          room: { id: known.room, name: 'Room 1', labelLine: null },
          wall: {
            id: known.north,
            face: known.northFace,
            name: 'north',
            length: 9140,
            lengthText: '',
            height: 3450,
            heightText: '',
            wallType: 'drywall on ply',
            studFirst: null,
            studSpacing: null,
            backingFrom: null,
            backingTo: null,
            skirting: null,
            datum: null,
            angle: 90,
            floor: [],
            datumBy: '',
            studs: [],
            joints: [],
            ceiling: [],
            rail: [],
            railKgPerMetre: null,
            behindSeen: '',
            side: 'a',
            exhibition: null,
            thickness: null,
            from: [0, 0],
            to: [9140, 0],
            openings: [],
            keepClears: [
              {
                id: known.thermostat,
                kind: 'thermostat',
                x: 4300,
                y: 1400,
                width: 120,
                height: 120,
                margin: 150,
                label: '',
                reason: '',
                depth: null,
                reachable: false,
              },
            ],
          },
          plan: {
            centreLine: 1480,
            centreLineSet: 1480,
            ramp: [],
            centreLineFrom: 'house rule',
            rule: 'centre',
            eyeFraction: 0.5,
            plannedLux: null,
            visitorOrder: null,
            viewingDistance: null,
            viewers: [],
            colour: '',
            note: '',
          },
          rules: {
            centreLine: 1480,
            minimumGap: 75,
            minimumMargin: 150,
            liftOn: 25,
            sheetStepMm: 1,
            tools: { lockRoom: 300, handRoom: 100, driverRoom: 25 },
            hang: {
              houseFactor: 4,
              leastWireAngle: 30,
              hookHidden: 50.8,
              measureTolerance: 1,
              dropTolerance: 2,
              nailsIn: 1 / 3,
              clearOfBrace: 10,
              cleatShorter: 19.05,
              screwsApart: 127,
              markFromEnd: 25,
              besideService: 25,
              boardFace: 12.7,
              plasterFace: 22,
              leastBehind: 18,
              onePersonKg: 30,
              onePersonSize: 1500,
              liftingPlanKg: 150,
            },
            labels: {
              line: 1370,
              level: 'line',
              lowest: 1219.2,
              highest: 1701.8,
              gap: 60,
              clear: 40,
              type: 6.35,
              perLine: 45,
            },
            stacks: [],
          },
          works: [
            {
              placement: known.pansPlace,
              entry: known.pansEntry,
              work: known.pans,
              running: '',
              title: 'Salt pans',
              maker: 'Ada Ruel',
              dateText: '',
              medium: 'etching on paper',
              mass: 4.2,
              glazing: '',
              sensitivity: '',
              lightLimit: null,
              picture: known.pansPictureHash,
              keeper: null,
              lockTool: '',
              hooksApart: null,
              x: 1140,
              rule: 'face',
              y: null,
              state: 'planned',
              labelSide: '',
              set: null,
              label: {
                text: '',
                suggestion: 'Ada Ruel\nSalt pans\netching on paper',
                width: null,
                height: null,
                gap: null,
              },
              note: '',
              number: 'L-1.1',
              size: {
                height: 620,
                width: 480,
                depth: null,
                diameter: null,
                part: 'framed',
                kind: 'measured',
                at: anyMoment,
              },
              back: null,
              fixing: null,
              held: false,
              centreY: 1480,
            },
            {
              placement: known.causewayPlace,
              entry: known.causewayEntry,
              work: known.causeway,
              running: '',
              title: 'Causeway',
              maker: 'Ada Ruel',
              dateText: '',
              medium: 'oil on canvas',
              mass: 9.5,
              glazing: '',
              sensitivity: '',
              lightLimit: null,
              picture: null,
              keeper: null,
              lockTool: '',
              hooksApart: null,
              x: 2367,
              rule: 'face',
              y: null,
              state: 'planned',
              labelSide: '',
              set: null,
              label: {
                text: '',
                suggestion: 'Ada Ruel\nCauseway\noil on canvas',
                width: null,
                height: null,
                gap: null,
              },
              note: '',
              number: 'L-1.2',
              size: {
                height: 910,
                width: 710,
                depth: null,
                diameter: null,
                part: 'framed',
                kind: 'measured',
                at: anyMoment,
              },
              back: {
                method: 'd-rings',
                data: { left: { drop: 140, inset: 55 }, right: { drop: 140, inset: 55 }, spacing: 600 },
                seenFrom: 'back',
              },
              fixing: {
                id: known.hook,
                name: 'two-nail hook, 50 lb',
                kind: 'hook',
                holeOffset: 14,
                ratedKg: 22.7,
                wallType: 'drywall on ply',
                shank: null,
                length: null,
                head: null,
                bit: '',
                tool: '',
                source: '',
                note: '',
                ratings: [],
              },
              held: false,
              centreY: 1480,
            },
          ],
          made: [],
          layouts: [{ id: known.layout, name: 'first hang', at: anyMoment, by: '', works: 2 }],
          settled: [
            {
              id: known.settled,
              code: 'no-marks',
              subject: known.pansPlace,
              figures: '{}',
              reason: 'measured on Friday',
              by: '',
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a wall that is not there',
        input: known => ({ exhibition: known.show, face: 'zzzzzz' }),
        code: 'not-found',
        field: 'face',
      },
      {
        about: 'a show that is not there',
        input: known => ({ exhibition: 'zzzzzz', face: known.northFace }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'wall.plan': {
    answered: [
      {
        about: 'which fields were saved',
        input: known => ({
          exhibition: known.show,
          face: known.northFace,
          changes: {
            plannedLux: { was: null, to: 50 },
            viewers: { was: [], to: [{ kind: 'wheelchair', share: 0.2 }] },
          },
        }),
        output: () => ({ saved: ['plannedLux', 'viewers'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a colour that is none',
        input: known => ({
          exhibition: known.show,
          face: known.northFace,
          changes: { colour: { was: '', to: 'red' } },
        }),
        code: 'bad-input',
        field: 'changes.colour.to',
      },
    ],
  },
  'placement.put': {
    answered: [
      {
        about: 'the placements, as one edit',
        input: known => ({
          exhibition: known.show,
          places: [
            { entry: known.rakingEntry, face: known.northFace, x: 3624, rule: 'face', y: null, was: null },
            {
              entry: known.pansEntry,
              face: known.northFace,
              x: 1200,
              rule: 'top',
              y: 1800,
              was: { face: known.northFace, x: 1140, rule: 'face', y: null },
            },
          ],
        }),
        output: known => ({ placements: [anyId, known.pansPlace], clashes: [] }),
      },
      {
        about: 'hooks that somebody else set meanwhile: neither the hooks nor the place go through',
        first: known => [
          ['placement.update', { id: known.pansPlace, changes: { hooksApart: { was: null, to: 300 } } }],
        ],
        input: known => ({
          exhibition: known.show,
          places: [
            {
              entry: known.pansEntry,
              face: known.northFace,
              x: 1200,
              rule: 'face',
              y: null,
              was: { face: known.northFace, x: 1140, rule: 'face', y: null },
              hooksApart: { was: null, to: 250 },
            },
          ],
        }),
        output: known => ({
          placements: [],
          clashes: [{ code: 'clash', id: known.pansEntry, field: 'hooksApart', was: null, yours: 250, theirs: 300 }],
        }),
      },
      {
        about: 'a clash where a work stands elsewhere by now',
        input: known => ({
          exhibition: known.show,
          places: [
            {
              entry: known.pansEntry,
              face: known.northFace,
              x: 1200,
              rule: 'face',
              y: null,
              was: { face: known.northFace, x: 1000, rule: 'face', y: null },
            },
          ],
        }),
        output: known => ({
          placements: [],
          clashes: [
            {
              code: 'clash',
              id: known.pansEntry,
              field: 'place',
              was: { face: known.northFace, x: 1000, rule: 'face', y: null },
              yours: { face: known.northFace, x: 1200, rule: 'face', y: null },
              theirs: { face: known.northFace, x: 1140, rule: 'face', y: null },
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a work that is not in the show',
        input: known => ({
          exhibition: known.show,
          places: [{ entry: 'zzzzzz', face: known.northFace, x: 1, rule: 'face', y: null, was: null }],
        }),
        code: 'not-found',
        field: 'places.0.entry',
      },
      {
        about: 'to move a work that is held',
        first: known => [['placement.hold', { placements: [known.pansPlace], held: true }]],
        input: known => ({
          exhibition: known.show,
          places: [
            {
              entry: known.pansEntry,
              face: known.northFace,
              x: 1200,
              rule: 'face',
              y: null,
              was: { face: known.northFace, x: 1140, rule: 'face', y: null },
            },
          ],
        }),
        code: 'held',
        field: 'places.0',
      },
    ],
  },
  'placement.remove': {
    answered: [
      {
        about: 'how many came off the wall',
        input: known => ({ placements: [known.pansPlace] }),
        output: () => ({ removed: 1 }),
      },
    ],
    refused: [
      {
        about: 'a work that hangs',
        first: known => [['placement.setState', { placements: [known.pansPlace], to: 'level' }]],
        input: known => ({ placements: [known.pansPlace] }),
        code: 'hung',
        field: 'placements.0',
      },
    ],
  },
  'placement.update': {
    answered: [
      {
        about: 'that the fixing is chosen',
        input: known => ({
          id: known.pansPlace,
          changes: { fixing: { was: null, to: known.hook }, hooksApart: { was: null, to: 200 } },
        }),
        output: () => ({ saved: ['fixing', 'hooksApart'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a fixing that is not there',
        input: known => ({ id: known.pansPlace, changes: { fixing: { was: null, to: 'zzzzzz' } } }),
        code: 'not-found',
        field: 'changes.fixing.to',
      },
    ],
  },
  'placement.hold': {
    answered: [
      {
        about: 'how many were not held yet',
        input: known => ({ placements: [known.pansPlace, known.causewayPlace], held: true }),
        output: () => ({ changed: 2 }),
      },
    ],
    refused: [
      {
        about: 'a placement that is not there',
        input: () => ({ placements: ['zzzzzz'], held: true }),
        code: 'not-found',
        field: 'placements.0',
      },
    ],
  },
  'placement.steps': {
    answered: [
      {
        about: 'when it was hung',
        first: known => [['placement.setState', { placements: [known.pansPlace], to: 'hung' }]],
        input: known => ({ exhibition: known.show, face: known.northFace }),
        output: known => ({ steps: [{ placement: known.pansPlace, state: 'hung', at: anyMoment, by: '' }] }),
      },
    ],
    refused: [
      {
        about: 'a wall that is not there',
        input: known => ({ exhibition: known.show, face: 'zzzzzz' }),
        code: 'not-found',
        field: 'face',
      },
    ],
  },
  'placement.setState': {
    answered: [
      {
        about: 'how many hang now',
        input: known => ({ placements: [known.pansPlace], to: 'hung' }),
        output: () => ({ changed: 1 }),
      },
    ],
    refused: [
      {
        about: 'a state that there is not',
        input: known => ({ placements: [known.pansPlace], to: 'flying' }),
        code: 'bad-input',
        field: 'to',
      },
      {
        about: 'a check of what does not hang yet',
        input: known => ({ placements: [known.pansPlace], to: 'checked' }),
        code: 'not-hung',
        field: 'to',
      },
      {
        about: 'a check by nobody',
        first: known => [['placement.setState', { placements: [known.pansPlace], to: 'hung' }]],
        input: known => ({ placements: [known.pansPlace], to: 'checked' }),
        code: 'no-name',
        field: 'to',
      },
    ],
  },
  'layout.keep': {
    answered: [
      {
        about: 'the kept layout',
        input: known => ({ exhibition: known.show, face: known.northFace, name: 'second hang' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'an empty wall',
        input: known => ({ exhibition: known.show, face: known.eastFace, name: 'x' }),
        code: 'nothing-here',
        field: 'face',
      },
    ],
  },
  'layout.compare': {
    answered: [
      {
        about: 'where works stood then and stand now',
        first: known => [['placement.remove', { placements: [known.pansPlace] }]],
        input: known => ({ id: known.layout }),
        output: known => ({
          name: 'first hang',
          places: [
            {
              entry: known.pansEntry,
              running: '',
              title: 'Salt pans',
              kept: { x: 1140, centreY: 1480 },
              now: null,
              size: {
                height: 620,
                width: 480,
                depth: null,
                diameter: null,
                part: 'framed',
                kind: 'measured',
                at: anyMoment,
              },
            },
            {
              entry: known.causewayEntry,
              running: '',
              title: 'Causeway',
              kept: { x: 2367, centreY: 1480 },
              now: { x: 2367, centreY: 1480, here: true },
              size: {
                height: 910,
                width: 710,
                depth: null,
                diameter: null,
                part: 'framed',
                kind: 'measured',
                at: anyMoment,
              },
            },
          ],
        }),
      },
    ],
    refused: [{ about: 'a layout that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'layout.take': {
    answered: [
      {
        about: 'what came back',
        first: known => [['placement.remove', { placements: [known.pansPlace] }]],
        input: known => ({ id: known.layout }),
        output: () => ({ moved: 0, added: 1, takenOff: 0, stayed: [] }),
      },
    ],
    refused: [{ about: 'a layout that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'layout.remove': {
    answered: [
      { about: 'that it is forgotten', input: known => ({ id: known.layout }), output: () => ({ done: true }) },
    ],
    refused: [{ about: 'a layout that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'fixing.list': {
    answered: [
      {
        about: 'the library of fixings',
        input: () => ({}),
        output: known => ({
          fixings: [
            {
              id: known.hook,
              name: 'two-nail hook, 50 lb',
              kind: 'hook',
              holeOffset: 14,
              ratedKg: 22.7,
              wallType: 'drywall on ply',
              shank: null,
              length: null,
              head: null,
              bit: '',
              tool: '',
              source: '',
              note: '',
              ratings: [],
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'fixing.add': {
    answered: [
      {
        about: 'the new fixing',
        input: () => ({ name: 'screw 4.5 × 60', kind: 'screw', holeOffset: -2.25, ratedKg: null }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a rating below nothing',
        input: () => ({ name: 'x', kind: 'hook', holeOffset: 0, ratedKg: -1 }),
        code: 'bad-input',
        field: 'ratedKg',
      },
    ],
  },
  'fixing.addUsual': {
    answered: [
      {
        about: 'how many were added',
        input: () => ({}),
        output: () => ({ added: usualFixings.length }),
      },
      {
        about: 'none where all are there',
        first: () => [['fixing.addUsual', {}]],
        input: () => ({}),
        output: () => ({ added: 0 }),
      },
    ],
    refused: [unknownField],
  },
  'fixing.update': {
    answered: [
      {
        about: 'that the rating is set',
        input: known => ({ id: known.hook, changes: { ratedKg: { was: 22.7, to: 20 } } }),
        output: () => ({ saved: ['ratedKg'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a fixing that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'fixing.rate': {
    answered: [
      {
        about: 'that the packet’s figure for brick is kept',
        input: known => ({ id: known.hook, wallType: 'brick', ratedKg: 9, source: 'the packet', was: null }),
        output: () => ({ saved: ['ratedKg'], clashes: [] }),
      },
      {
        about: 'a clash where somebody else has written another figure',
        first: known => [['fixing.rate', { id: known.hook, wallType: 'brick', ratedKg: 9, source: 'the packet' }]],
        input: known => ({ id: known.hook, wallType: 'brick', ratedKg: 12, source: 'a trial', was: null }),
        output: known => ({
          saved: [],
          clashes: [{ code: 'clash', id: known.hook, field: 'ratedKg', was: null, yours: 12, theirs: 9 }],
        }),
      },
    ],
    refused: [
      {
        about: 'a rating that nobody said',
        input: known => ({ id: known.hook, wallType: 'brick', ratedKg: 9, source: ' ' }),
        code: 'bad-input',
        field: 'source',
      },
      {
        about: 'a fixing that is not there',
        input: () => ({ id: 'zzzzzz', wallType: 'brick', ratedKg: 9, source: 'the packet' }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'fixing.unrate': {
    answered: [
      {
        about: 'that it is taken back',
        first: known => [['fixing.rate', { id: known.hook, wallType: 'brick', ratedKg: 9, source: 'the packet' }]],
        input: known => ({ id: known.hook, wallType: 'brick' }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a rating that is not there',
        input: known => ({ id: known.hook, wallType: 'plaster' }),
        code: 'not-found',
        field: 'wallType',
      },
    ],
  },
  'fixing.copy': {
    answered: [
      {
        about: 'the copy',
        input: known => ({ id: known.hook, name: 'two-nail hook, 50 lb, black' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a fixing that is not there',
        input: () => ({ id: 'zzzzzz', name: 'another' }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'a copy without a name',
        input: known => ({ id: known.hook, name: '' }),
        code: 'bad-input',
        field: 'name',
      },
    ],
  },
  'fixing.remove': {
    answered: [
      {
        about: 'that it is gone once its work hangs on something else',
        first: known => [
          ['placement.update', { id: known.causewayPlace, changes: { fixing: { was: known.hook, to: null } } }],
        ],
        input: known => ({ id: known.hook }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a fixing that a work hangs on',
        input: known => ({ id: known.hook }),
        code: 'fixing-in-use',
        field: 'id',
      },
      { about: 'a fixing that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
  'fixing.uses': {
    answered: [
      {
        about: 'the hook that a work hangs on',
        input: known => ({ exhibition: known.show }),
        output: known => ({
          fixings: [
            {
              fixing: known.hook,
              inStock: null,
              works: 1,
              holes: 0,
              here: [
                {
                  placement: known.causewayPlace,
                  work: known.causeway,
                  title: 'Causeway',
                  face: known.northFace,
                  room: 'Room 1',
                  wall: 'north',
                  wallType: 'drywall on ply',
                  does: 'holds',
                },
              ],
            },
          ],
        }),
      },
      {
        about: 'no show, only the library',
        input: () => ({ exhibition: null }),
        output: known => ({ fixings: [{ fixing: known.hook, inStock: null, works: 1, holes: 0, here: [] }] }),
      },
    ],
    refused: [
      {
        about: 'a field that it does not know',
        input: () => ({ exhibition: null, nonsense: 1 }),
        code: 'bad-input',
        field: 'nonsense',
      },
    ],
  },
  'finding.list': {
    answered: [
      {
        about: 'what is to settle on a wall',
        input: known => ({ exhibition: known.show, face: known.northFace }),
        output: known => ({
          findings: [
            {
              severity: 'fits',
              code: 'load-holds',
              text: 'Each fixing carries 4.8 kg of 22.7 kg, with the house factor 4. If one fails, the rest holds 9.5 kg of 22.7 kg.',
              figures: {
                shareKg: 4.75,
                shareN: expect.closeTo(46.5815875, 6),
                neededKg: 19,
                ratedKg: 22.7,
                factor: 4,
                wholeKg: 9.5,
                leftKg: 22.7,
              },
              subject: { kind: 'placement', id: known.causewayPlace },
            },
          ],
        }),
      },
      {
        about: 'a work that no wall has yet, lent for a shorter time than its show is open',
        first: known => [
          ['loan.add', { party: known.lender, number: 'QC 7', first: '2031-04-03', last: '2031-06-30' }],
          ['loan.addWorks', (earlier: readonly unknown[]) => ({ loan: idOf(earlier[0]), works: [known.raking] })],
        ],
        input: known => ({ exhibition: known.show }),
        output: known =>
          expect.objectContaining({
            findings: expect.arrayContaining([
              {
                severity: 'settle',
                code: 'loan-begins-late',
                text: 'L-1.3 is lent from 3 April 2031 on, by loan QC 7 of Quay Collection; the show opens on 1 April 2031, 2 days before. Ask for an earlier beginning, or hang it later.',
                figures: { loan: anyId, first: '2031-04-03', opens: '2031-04-01', days: 2 },
                subject: { kind: 'work', id: known.raking },
              },
              {
                severity: 'settle',
                code: 'loan-ends-early',
                text: 'L-1.3 is lent until 30 June 2031, by loan QC 7 of Quay Collection; the show closes on 1 July 2031, one day later. Ask for a longer loan, or take it down before.',
                figures: { loan: anyId, last: '2031-06-30', closes: '2031-07-01', days: 1 },
                subject: { kind: 'work', id: known.raking },
              },
            ]),
          }),
      },
      {
        about: 'two works of one loan, told once',
        first: known => [
          ['loan.add', { party: known.lender, number: 'QC 7', last: '2031-06-30' }],
          [
            'loan.addWorks',
            (earlier: readonly unknown[]) => ({ loan: idOf(earlier[0]), works: [known.pans, known.raking] }),
          ],
        ],
        input: known => ({ exhibition: known.show }),
        output: known =>
          expect.objectContaining({
            findings: expect.arrayContaining([
              {
                severity: 'settle',
                code: 'loan-ends-early',
                text: '2 works are lent until 30 June 2031, by loan QC 7 of Quay Collection; the show closes on 1 July 2031, one day later. Ask for a longer loan, or take them down before.',
                figures: { loan: anyId, last: '2031-06-30', closes: '2031-07-01', days: 1 },
                subject: { kind: 'loan', id: anyId },
                works: [
                  {
                    id: known.pans,
                    called: 'L-1.1',
                    text: expect.stringMatching(/^L-1\.1 is lent until 30 June 2031/),
                  },
                  {
                    id: known.raking,
                    called: 'L-1.3',
                    text: expect.stringMatching(/^L-1\.3 is lent until 30 June 2031/),
                  },
                ],
              },
            ]),
          }),
      },
    ],
    refused: [
      { about: 'a show that is no id', input: () => ({ exhibition: '' }), code: 'bad-input', field: 'exhibition' },
    ],
  },
  'finding.settle': {
    answered: [
      {
        about: 'the settlement',
        input: known => ({
          code: 'near-end',
          subject: known.pansPlace,
          figures: '{"margin":100}',
          reason: 'the curator wants it there',
        }),
        output: () => ({ id: anyId }),
      },
      {
        about: 'that of two works that a loan says it alike of',
        input: known => ({
          code: 'loan-ends-early',
          subject: known.pans,
          also: [known.raking],
          figures: '{"days":1}',
          reason: 'the lender has promised two days more',
        }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'without a reason',
        input: () => ({ code: 'x', subject: 'y', figures: '{}', reason: ' ' }),
        code: 'bad-input',
        field: 'reason',
      },
      {
        about: 'figures that are no JSON',
        input: () => ({ code: 'x', subject: 'y', figures: '{', reason: 'z' }),
        code: 'bad-input',
        field: 'figures',
      },
    ],
  },
  'finding.unsettle': {
    answered: [
      { about: 'that it is taken back', input: known => ({ id: known.settled }), output: () => ({ done: true }) },
    ],
    refused: [
      { about: 'a settlement that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
      {
        about: 'one made with it that is not there',
        input: known => ({ id: known.settled, also: ['zzzzzz'] }),
        code: 'not-found',
        field: 'also.0',
      },
    ],
  },
}
