/** Visual weight: works on a face, one work in pieces, pictures read. */
import type { weightArea } from '../../../src/contract/areas/weight.ts'
import type { ExamplesOf } from './types.ts'

const nothing = { lightness: 0, colour: 0, detail: 0, right: 0, up: 0 }

export const weightExamples: ExamplesOf<keyof typeof weightArea> = {
  'wall.weights': {
    answered: [
      {
        about: 'a work by its picture on white',
        input: known => ({ exhibition: known.show, face: known.northFace }),
        output: known => ({
          wallColour: '#FFFFFF',
          works: [
            // Half-clear green, on white #7FFF7F or so (L* 90.63), in a frame that nobody gave a colour.
            {
              placement: known.pansPlace,
              area: 0.2976,
              lightness: 0.068008,
              colour: 0.282433,
              detail: 0,
              hand: 1,
              weight: 0.401891,
              right: 0,
              up: 0,
              from: 'picture',
              tone: 90.63,
            },
            {
              placement: known.causewayPlace,
              area: 0.6461,
              ...nothing,
              hand: 1,
              weight: 0.6461,
              from: 'area',
              tone: null,
            },
          ],
          axes: [{ kind: 'middle', label: '', x: 4570, from: 0, to: 9140 }],
          pictures: { toRead: 0, unreadable: 0 },
        }),
      },
    ],
    refused: [
      {
        about: 'a face that is not there',
        input: known => ({ exhibition: known.show, face: known.show }),
        code: 'not-found',
        field: 'face',
      },
    ],
  },
  'work.weightSeen': {
    answered: [
      {
        about: 'a work without a picture: the pieces of its frame and one more, each its area',
        input: known => ({ work: known.causeway, exhibition: null, face: null }),
        output: () => ({
          width: 710,
          height: 910,
          picture: null,
          band: 55,
          weight: { area: 0.6461, ...nothing, hand: 1, weight: 0.6461, from: 'area' },
          pieces: [
            { x: 0, y: 427.5, width: 710, height: 55, times: 1 },
            { x: 0, y: -427.5, width: 710, height: 55, times: 1 },
            { x: -327.5, y: 0, width: 55, height: 800, times: 1 },
            { x: 327.5, y: 0, width: 55, height: 800, times: 1 },
            { x: 0, y: 0, width: 600, height: 800, times: 1 },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a work that is not there',
        input: known => ({ work: known.show, exhibition: null, face: null }),
        code: 'not-found',
        field: 'work',
      },
    ],
  },
  'picture.weigh': {
    answered: [
      {
        about: 'that all are read',
        input: known => ({ exhibition: known.show }),
        output: () => ({ read: 0, unreadable: 0 }),
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
}
