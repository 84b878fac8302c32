/** Pure computations. Expected figures follow the worked scenarios and the 3-4-5 triangle. */
import { expect } from 'vitest'
import type { computationsArea } from '../../../src/contract/areas/computations.ts'
import type { ExamplesOf } from './types.ts'

/** Rings 400 apart at 1 800 and 2 200, studs at 1 830 and 2 230, no rating for the bare wall. */
const betweenStuds = {
  work: { height: 600, width: 500, mass: 6 },
  back: {
    method: 'd-rings',
    seenFrom: 'front' as const,
    data: { left: { drop: 100, inset: 50 }, right: { drop: 100, inset: 50 } },
  },
  centre: { x: 2000, y: 1480 },
  wall: {
    length: 9140,
    height: 3450,
    wallType: 'drywall',
    datum: 1480,
    floor: [],
    skirting: null,
    studFirst: 230,
    studSpacing: 400,
    backingFrom: null,
    backingTo: null,
    openings: [],
    keepClears: [],
  },
  fixings: [{ name: 'hook', kind: 'hook' as const, holeOffset: 14, ratedKg: null }],
}

const wallOfLabels = {
  length: 9140,
  height: 3450,
  wallType: 'plaster',
  datum: null,
  floor: [],
  skirting: null,
  studFirst: null,
  studSpacing: null,
  backingFrom: null,
  backingTo: null,
  openings: [],
  keepClears: [],
}
const hung = { y: 1170, width: 480, height: 620, holes: [] }

export const computationsExamples: ExamplesOf<keyof typeof computationsArea> = {
  'measure.length': {
    answered: [
      {
        about: 'a length in both units',
        input: () => ({ text: '24 1/2 in' }),
        output: () => ({ mm: 622.3, unit: 'in', inferred: false, written: { mm: '622.3 mm', in: '24 1/2 in' } }),
      },
    ],
    refused: [
      { about: 'a text that is no length', input: () => ({ text: 'high' }), code: 'not-a-number', field: 'text' },
    ],
  },
  'measure.dimensions': {
    answered: [
      {
        about: 'two parts and the one that hangs',
        input: () => ({ text: 'framed: 31 7/8 x 48 1/16; sight 24 x 40' }),
        output: () => ({
          parts: [
            {
              part: 'framed',
              label: 'framed',
              count: 1,
              height: 809.625,
              width: 1220.7875,
              unit: 'in',
              unitStated: false,
              approximate: false,
              raw: '31 7/8 x 48 1/16',
              warnings: [{ code: 'unit-inferred', text: 'Inches, inferred from the fractions.' }],
              notes: [],
            },
            {
              part: 'sight',
              label: 'sight',
              count: 1,
              height: 609.6,
              width: 1016,
              unit: 'in',
              unitStated: false,
              approximate: false,
              raw: '24 x 40',
              warnings: [{ code: 'unit-inferred', text: 'Inches, inferred from the fractions.' }],
              notes: [],
            },
          ],
          questions: [],
          warnings: [],
          hanging: { index: 0, part: 'framed' },
        }),
      },
    ],
    refused: [
      {
        about: 'more than anybody writes in a cell',
        input: () => ({ text: 'x'.repeat(20_001) }),
        code: 'bad-input',
        field: 'text',
      },
    ],
  },
  'hang.nearest': {
    answered: [
      {
        about: 'the way to two studs, with what it costs',
        input: () => ({ marks: betweenStuds, others: [{ x: 0, y: 1200, width: 500, height: 500 }] }),
        output: () => ({
          clear: false,
          conflicts: ['mark-off-backing'],
          offers: [
            {
              dx: expect.closeTo(10.95, 6),
              hooksApart: null,
              hooksWere: null,
              cost: expect.closeTo(10.95, 6),
              gapLeft: { was: 1250, becomes: expect.closeTo(1260.95, 6) },
              gapRight: { was: 6890, becomes: expect.closeTo(6879.05, 6) },
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a work without a size',
        input: () => ({ marks: { ...betweenStuds, work: { height: 600, width: 0 } } }),
        code: 'bad-input',
        field: 'marks.work.width',
      },
    ],
  },
  'hang.withdrawal': {
    answered: [
      {
        about: 'what one nail 20 deep in softwood stands; information, not a rating',
        input: () => ({ gravity: 0.42, diameter: 3, into: 20 }),
        output: () => ({
          allowableN: expect.closeTo(65.2834, 1),
          allowableKg: expect.closeTo(6.657, 2),
          ultimateN: expect.closeTo(326.417, 0),
          ultimateKg: expect.closeTo(33.285, 1),
          says: expect.stringContaining('not a rating'),
        }),
      },
    ],
    refused: [
      {
        about: 'a nail that is not in the wood',
        input: () => ({ gravity: 0.42, diameter: 3, into: 0 }),
        code: 'bad-input',
        field: 'into',
      },
    ],
  },
  'hang.wire': {
    answered: [
      {
        about: 'the 3-4-5 wire: 60 apart, 100 long, one hook',
        input: () => ({ rings: 60, ringDrop: 50, wire: { by: 'length', length: 100 }, hooks: 0, mass: 10 }),
        output: () => ({
          rings: 60,
          ringDrop: 50,
          hooks: 0,
          length: 100,
          rise: 40,
          drop: 10,
          angle: expect.closeTo(53.130102354, 6),
          tensionFactor: 0.625,
          forces: {
            tensionN: expect.closeTo(61.2915625, 6),
            tensionKg: 6.25,
            ringInwardN: expect.closeTo(36.7749375, 6),
            ringInwardKg: expect.closeTo(3.75, 6),
            ringUpN: expect.closeTo(49.03325, 6),
            ringUpKg: 5,
            hookDownN: expect.closeTo(98.0665, 6),
            hookDownKg: 10,
            hookResultantN: expect.closeTo(98.0665, 6),
            hookResultantKg: 10,
            hookLean: 0,
            hookSidewaysN: 0,
            hookSidewaysKg: 0,
            hookGrippedN: expect.closeTo(98.0665, 6),
            hookGrippedKg: 10,
          },
          leastAngle: 30,
          steepEnough: true,
          hooksForLeastAngle: 0,
          plainSubtraction: null,
        }),
      },
    ],
    refused: [
      {
        about: 'a wire shorter than its rings are apart',
        input: () => ({ rings: 500, ringDrop: 180, wire: { by: 'length', length: 499 }, hooks: 200 }),
        code: 'wire-too-short',
        field: 'wire.length',
      },
    ],
  },
  'layout.row': {
    answered: [
      {
        about: 'six works between margins of 900 on 9 140, gap 632',
        input: () => ({
          from: 0,
          to: 9140,
          rule: { rule: 'margins', left: 900, right: 900 },
          works: [
            { id: 'A', width: 480 },
            { id: 'B', width: 710 },
            { id: 'C', width: 540 },
            { id: 'D', width: 960 },
            { id: 'E', width: 480 },
            { id: 'F', width: 1010 },
          ],
        }),
        output: () => ({
          fits: true,
          shortBy: 0,
          works: [
            { id: 'A', left: 900, right: 1380, centre: 1140 },
            { id: 'B', left: 2012, right: 2722, centre: 2367 },
            { id: 'C', left: 3354, right: 3894, centre: 3624 },
            { id: 'D', left: 4526, right: 5486, centre: 5006 },
            { id: 'E', left: 6118, right: 6598, centre: 6358 },
            { id: 'F', left: 7230, right: 8240, centre: 7735 },
          ],
          gaps: [900, 632, 632, 632, 632, 632, 900],
          filled: expect.closeTo(0.457330416, 6),
          cures: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a width of nothing',
        input: () => ({ from: 0, to: 1, rule: { rule: 'equal' }, works: [{ id: 'A', width: 0 }] }),
        code: 'bad-input',
        field: 'works.0.width',
      },
    ],
  },
  'layout.stack': {
    answered: [
      {
        about: 'two works about a height',
        input: () => ({
          works: [
            { id: 'A', height: 400 },
            { id: 'B', height: 300 },
          ],
          gap: 50,
          line: 1480,
        }),
        output: () => ({
          fits: true,
          shortBy: 0,
          cures: [],
          height: 750,
          top: 1855,
          bottom: 1105,
          works: [
            {
              id: 'A',
              top: 1855,
              bottom: 1455,
              centre: 1655,
              printed: {
                fromTop: { mm: 0, inches: 0 },
                toBottom: { mm: 400, inches: 15.75 },
                top: { mm: 1855, inches: 73.0625 },
                bottom: { mm: 1455, inches: 57.3125 },
              },
            },
            {
              id: 'B',
              top: 1405,
              bottom: 1105,
              centre: 1255,
              printed: {
                fromTop: { mm: 450, inches: 17.6875 },
                toBottom: { mm: 750, inches: 29.5 },
                top: { mm: 1405, inches: 55.3125 },
                bottom: { mm: 1105, inches: 43.5 },
              },
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'no work at all', input: () => ({ works: [], gap: 1, line: 1 }), code: 'bad-input', field: 'works' },
    ],
  },
  'layout.salon': {
    answered: [
      {
        about: 'two squares of 400 about a point: with a gap of 50 they are 850 wide',
        input: () => ({
          from: 0,
          to: 4000,
          bottom: 0,
          top: 3000,
          gap: 50,
          centre: { x: 2000, y: 1500 },
          works: ['a', 'b'].map(id => ({ id, width: 400, height: 400 })),
        }),
        output: () => ({
          fits: true,
          shortBy: 0,
          way: 'longer',
          cures: [],
          works: [
            { id: 'a', x: expect.any(Number), y: 1300 },
            { id: 'b', x: expect.any(Number), y: 1300 },
          ],
          box: { x: 1575, y: 1300, width: 850, height: 400 },
          nearest: { gap: 50, a: 'a', b: 'b' },
          widest: { gap: 50, a: 'a', b: 'b' },
          mean: 50,
        }),
      },
    ],
    refused: [
      {
        about: 'no height to hang in',
        input: () => ({
          from: 0,
          to: 4000,
          bottom: 900,
          top: 900,
          gap: 50,
          centre: { x: 2000, y: 900 },
          works: [{ id: 'a', width: 400, height: 400 }],
        }),
        code: 'span-empty',
        field: 'top',
      },
    ],
  },
  'layout.labels': {
    answered: [
      {
        about: 'a label in a gap that is 23 mm too narrow, and the side that does',
        input: () => ({
          wall: wallOfLabels,
          works: [
            { ...hung, id: 'a', name: '1', x: 900, side: 'right' as const, text: 'Weir' },
            { ...hung, id: 'b', name: '2', x: 1616, side: null, text: '' },
          ],
        }),
        // 900 + 480 + 60 = 1 440; one line: 1.35 × 6.35 + 15.875 = 24.4, cut to 25; centre 1 370. F28b of the practice.
        output: () => ({
          labels: [
            { id: 'a', side: 'right', x: 1440, y: 1357.5, width: 159, height: 25, lines: ['Weir'], better: 'left' },
          ],
          findings: [
            {
              severity: 'settle',
              code: 'label-gap-narrow',
              subject: { kind: 'placement', id: 'a' },
              text: 'The gap right of 1, to 2, is too narrow for its label by 23 mm. On the left it would stand free.',
              figures: { with: 'b', gap: 236, wants: 259, shortBy: 23, better: 'left' },
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a side that there is not',
        input: () => ({
          wall: wallOfLabels,
          works: [{ ...hung, id: 'a', name: '1', x: 900, side: 'above', text: '' }],
        }),
        code: 'bad-input',
        field: 'works.0.side',
      },
    ],
  },
  'layout.set': {
    answered: [
      {
        about: 'a diptych whose second part is smaller',
        input: () => ({
          form: 'row',
          gapX: 20,
          gapY: 0,
          parts: [
            { id: 'a', width: 400, height: 500 },
            { id: 'b', width: 380, height: 470 },
          ],
        }),
        output: () => ({
          width: 800,
          height: 500,
          rows: 1,
          columns: 2,
          parts: [
            {
              id: 'a',
              row: 0,
              column: 0,
              left: 0,
              right: 400,
              top: 0,
              bottom: 500,
              printed: {
                left: { mm: 0, inches: 0 },
                right: { mm: 400, inches: 15.75 },
                top: { mm: 0, inches: 0 },
                bottom: { mm: 500, inches: 19.6875 },
              },
            },
            {
              id: 'b',
              row: 0,
              column: 1,
              left: 420,
              right: 800,
              top: 15,
              bottom: 485,
              printed: {
                left: { mm: 420, inches: 16.5625 },
                right: { mm: 800, inches: 31.5 },
                top: { mm: 15, inches: 0.5625 },
                bottom: { mm: 485, inches: 19.125 },
              },
            },
          ],
          gapsX: { least: 20, most: 20 },
          gapsY: null,
          centresX: { least: 410, most: 410 },
          centresY: null,
          differ: false,
        }),
      },
    ],
    refused: [
      {
        about: 'a gap of less than nothing',
        input: () => ({ form: 'row', gapX: -5, gapY: 0, parts: [{ id: 'a', width: 400, height: 500 }] }),
        code: 'gap-negative',
        field: 'gapX',
      },
      {
        about: 'a grid without columns',
        input: () => ({ form: 'grid', gapX: 5, gapY: 5, parts: [{ id: 'a', width: 400, height: 500 }] }),
        code: 'grid-without-columns',
        field: 'columns',
      },
    ],
  },
  'layout.grid': {
    answered: [
      {
        about: 'a grid of two by one',
        input: () => ({
          columns: 2,
          rows: 1,
          width: 300,
          height: 400,
          gapX: 50,
          gapY: 50,
          centre: { x: 2000, y: 1480 },
          drop: 60,
        }),
        output: () => ({
          width: 650,
          height: 400,
          left: 1675,
          top: 1680,
          columns: [
            {
              left: 1675,
              centre: 1825,
              printedLeft: { mm: 1675, inches: 65.9375 },
              printedFromFirst: { mm: 0, inches: 0 },
            },
            {
              left: 2025,
              centre: 2175,
              printedLeft: { mm: 2025, inches: 79.75 },
              printedFromFirst: { mm: 350, inches: 13.75 },
            },
          ],
          rows: [
            {
              top: 1680,
              bottom: 1280,
              centre: 1480,
              bearing: 1620,
              printedTop: { mm: 1680, inches: 66.125 },
              printedFromFirst: { mm: 0, inches: 0 },
              printedBearing: { mm: 1620, inches: 63.75 },
            },
          ],
          cells: [
            { row: 0, column: 0, x: 1825, y: 1480 },
            { row: 0, column: 1, x: 2175, y: 1480 },
          ],
          chainDrift: { x: { mm: 0, inches: 0 }, y: { mm: 0, inches: 0 } },
        }),
      },
    ],
    refused: [
      {
        about: 'no column',
        input: () => ({ columns: 0, rows: 1, width: 1, height: 1, gapX: 0, gapY: 0, centre: { x: 0, y: 0 } }),
        code: 'bad-input',
        field: 'columns',
      },
    ],
  },
  'hang.marks': {
    answered: [
      {
        about: 'bearing points, holes, working and loads of a work on D-rings',
        input: () => ({
          work: { height: 910, width: 710, mass: 9.5 },
          back: {
            method: 'd-rings',
            seenFrom: 'back',
            data: { left: { drop: 140, inset: 55 }, right: { drop: 140, inset: 55 }, spacing: 600 },
          },
          centre: { x: 2367, y: 1480 },
          wall: {
            length: 9140,
            height: 3450,
            wallType: 'drywall on ply',
            datum: 1480,
            floor: [],
            skirting: null,
            studFirst: null,
            studSpacing: null,
            backingFrom: null,
            backingTo: null,
            openings: [],
            keepClears: [],
          },
          fixings: [{ name: 'two-nail hook', kind: 'hook', holeOffset: 14, ratedKg: 22.7, wallType: 'drywall on ply' }],
        }),
        output: () => ({
          method: 'd-rings',
          methodName: 'D-rings',
          edges: { left: 2012, right: 2722, top: 1935, bottom: 1025 },
          datum: 1480,
          floorAtCentre: 0,
          marks: [
            {
              side: 'left',
              does: 'carries',
              name: null,
              on: 'wall',
              from: 'top',
              fixing: { name: 'two-nail hook', kind: 'hook', holeOffset: 14, ratedKg: 22.7 },
              fromLeft: 55,
              drop: 140,
              bearing: { x: 2067, y: 1795 },
              hole: { x: 2067, y: 1809 },
              floorHere: 0,
              fromLine: 315,
              fromFloor: 1795,
              holeFromLine: 329,
              holeFromFloor: 1809,
              toStud: null,
              onStud: null,
              backed: null,
              printed: {
                x: { mm: 2067, inches: 81.375 },
                fromLine: { mm: 315, inches: 12.4375 },
                fromFloor: { mm: 1795, inches: 70.6875 },
                holeOffset: { mm: 14, inches: 0.5625 },
                holeFromLine: { mm: 329, inches: 13 },
                holeFromFloor: { mm: 1809, inches: 71.25 },
              },
            },
            {
              side: 'right',
              does: 'carries',
              name: null,
              on: 'wall',
              from: 'top',
              fixing: { name: 'two-nail hook', kind: 'hook', holeOffset: 14, ratedKg: 22.7 },
              fromLeft: 655,
              drop: 140,
              bearing: { x: 2667, y: 1795 },
              hole: { x: 2667, y: 1809 },
              floorHere: 0,
              fromLine: 315,
              fromFloor: 1795,
              holeFromLine: 329,
              holeFromFloor: 1809,
              toStud: null,
              onStud: null,
              backed: null,
              printed: {
                x: { mm: 2667, inches: 105 },
                fromLine: { mm: 315, inches: 12.4375 },
                fromFloor: { mm: 1795, inches: 70.6875 },
                holeOffset: { mm: 14, inches: 0.5625 },
                holeFromLine: { mm: 329, inches: 13 },
                holeFromFloor: { mm: 1809, inches: 71.25 },
              },
            },
          ],
          printed: {
            datum: { mm: 1480, inches: 58.25 },
            leftEdge: { mm: 2012, inches: 79.1875 },
            width: { mm: 710, inches: 27.9375 },
            rightEdge: { mm: 2722, inches: 107.125 },
            height: { mm: 910, inches: 35.8125 },
            top: { mm: 1935, inches: 76.1875 },
            bottom: { mm: 1025, inches: 40.375 },
            lineAtCentre: { mm: 1480, inches: 58.25 },
            bearingAtCentre: { mm: 1795, inches: 70.6875 },
            between: { mm: 600, inches: 23.625 },
          },
          working: [
            {
              key: 'bearing',
              label: 'bears at',
              mm: { expression: '1 480 + 910 / 2 − 140', value: '1 795' },
              in: { expression: '58.268 + 35.827 / 2 − 5.512', value: '70.669' },
            },
            {
              key: 'from-below',
              label: 'from below',
              mm: { expression: '1 025 + 770', value: '1 795' },
              in: { expression: '40.354 + 30.315', value: '70.669' },
            },
            {
              key: 'from-line',
              label: 'from the line',
              mm: { expression: '1 795 − 1 480', value: '315' },
              in: { expression: '70.669 − 58.268', value: '12.402' },
            },
            {
              key: 'hole',
              label: 'hole above the bearing point',
              mm: { expression: '1 795 + 14', value: '1 809' },
              in: { expression: '70.669 + 0.551', value: '71.22' },
            },
            {
              key: 'left-edge',
              label: 'left edge',
              mm: { expression: '2 367 − 710 / 2', value: '2 012' },
              in: { expression: '93.189 − 27.953 / 2', value: '79.213' },
            },
            {
              key: 'x-left',
              label: 'left mark',
              mm: { expression: '2 012 + 55', value: '2 067' },
              in: { expression: '79.213 + 2.165', value: '81.378' },
            },
            {
              key: 'x-right',
              label: 'right mark',
              mm: { expression: '2 067 + 600', value: '2 667' },
              in: { expression: '81.378 + 23.622', value: '105' },
            },
          ],
          secondRoute: [
            { side: 'left', fromTop: 1795, fromBottom: 1795, difference: 0, agrees: true },
            { side: 'right', fromTop: 1795, fromBottom: 1795, difference: 0, agrees: true },
          ],
          spacing: { measured: 600, fromInsets: 600, difference: 0, agrees: true },
          level: { apart: 600, error: 0, degrees: 0, corners: 0 },
          wire: null,
          cleat: null,
          figures: [],
          hangers: [],
          locks: [],
          loads: {
            massKg: 9.5,
            massN: 93.163175,
            houseFactor: 4,
            rule: 'share × 4 ≤ rating, and the whole ≤ the rest with one gone (framing trade, common practice)',
            shares: [
              { shareN: expect.closeTo(46.5815875, 6), shareKg: 4.75, neededKg: 19, ratedKg: 22.7, holds: true },
              { shareN: expect.closeTo(46.5815875, 6), shareKg: 4.75, neededKg: 19, ratedKg: 22.7, holds: true },
            ],
            oneGone: { wholeKg: 9.5, leftKg: 22.7, holds: true },
            holds: true,
          },
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
              subject: { kind: 'work', id: '' },
            },
          ],
          cautions: [
            'Measure the drop to the inside top of the ring, not to its screw.',
            'Somebody must look behind while a large frame is lowered: two people.',
            'Rated loads are the maker’s for a stated wall, and only as good as the installation; a fixing holds no more than the wall behind it.',
            'Look for pipes and cables before drilling; stop if a nail or screw resists oddly.',
            'Local codes and licensed practice decide; this is a help to planning, not a certificate.',
          ],
          needs: [
            { what: 'two-nail hook', count: 2, per: 'wall' },
            { what: 'bottom pad', count: 2, per: 'work' },
          ],
          adjust: [
            'Height: bend the hook a little, pack the screw with tape, or turn it.',
            'Sideways: almost nothing; a wrong spacing is drilled again.',
          ],
          comesDown: [
            'Two people: one lifts, one looks behind and frees the rings.',
            'Draw the fixings, fill the holes; the rings stay on the work unless the lender wants his own back.',
          ],
          accuracy: '±1 mm between the marks on screws, ±1.5 mm level',
        }),
      },
    ],
    refused: [
      {
        about: 'a method that there is not',
        input: () => ({
          work: { height: 1, width: 1 },
          back: { method: 'glue', seenFrom: 'back', data: {} },
          centre: { x: 0, y: 0 },
          wall: {
            length: 9140,
            height: 3450,
            wallType: '',
            datum: 1480,
            floor: [],
            skirting: null,
            studFirst: null,
            studSpacing: null,
            backingFrom: null,
            backingTo: null,
            openings: [],
            keepClears: [],
          },
          fixings: [{ name: 'x', kind: 'hook', holeOffset: 0, ratedKg: null }],
        }),
        code: 'method-unknown',
        field: 'back.method',
      },
    ],
  },
}
