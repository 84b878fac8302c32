/** The visitor's order, and walls named many at once. */
import type { routeArea } from '../../../src/contract/areas/route.ts'
import type { ExamplesOf } from './types.ts'

export const routeExamples: ExamplesOf<keyof typeof routeArea> = {
  'route.set': {
    answered: [
      {
        about: 'that the order was saved',
        input: known => ({ exhibition: known.show, order: { was: [], to: [known.eastFace, known.northFace] } }),
        output: () => ({ saved: ['order'], clashes: [] }),
      },
      {
        about: 'a clash with the order that somebody else set meanwhile',
        first: known => [['route.set', { exhibition: known.show, order: { was: [], to: [known.eastFace] } }]],
        input: known => ({ exhibition: known.show, order: { was: [], to: [known.northFace] } }),
        output: known => ({
          saved: [],
          clashes: [
            {
              code: 'clash',
              id: known.show,
              field: 'order',
              was: [],
              yours: [known.northFace],
              theirs: [known.eastFace],
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a wall that is in it twice',
        input: known => ({ exhibition: known.show, order: { was: [], to: [known.northFace, known.northFace] } }),
        code: 'twice',
        field: 'order.to.1',
      },
      {
        about: 'a face that is not there',
        input: known => ({ exhibition: known.show, order: { was: [], to: [known.northFace, 'nothing'] } }),
        code: 'not-found',
        field: 'order.to.1',
      },
      {
        about: 'a closed show',
        input: known => ({ exhibition: known.closed, order: { was: [], to: [known.northFace] } }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
    ],
  },
  'wall.rename': {
    answered: [
      {
        about: 'that both have their names',
        input: known => ({
          walls: [
            { id: known.north, name: { was: 'north', to: 'north wall' } },
            { id: known.east, name: { was: 'east', to: 'east wall' } },
          ],
        }),
        output: () => ({ saved: ['name'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a wall that is not there',
        input: known => ({
          walls: [
            { id: known.north, name: { was: 'north', to: 'north wall' } },
            { id: 'nothing', name: { was: 'west', to: 'west wall' } },
          ],
        }),
        code: 'not-found',
        field: 'walls.1.id',
      },
    ],
  },
}
