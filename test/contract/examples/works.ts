/** Works, their measures, numbers, files, and lenders. */
import type { worksArea } from '../../../src/contract/areas/works.ts'
import type { workListArea } from '../../../src/contract/areas/works-list.ts'
import { type Known, onePixel } from '../fixture.ts'
import { anyHandle, anyId, anyMoment, type ExamplesOf } from './types.ts'

/** As the list has it. */
const raking = (known: Known) => ({
  id: known.raking,
  number: 'L-1.3',
  title: 'Raking',
  maker: 'unknown maker',
  dateText: '',
  medium: 'gelatin silver print',
  kind: 'photograph',
  lender: 'Quay Collection',
  size: {
    height: 540,
    width: 540,
    depth: null,
    diameter: null,
    part: 'framed',
    kind: 'measured',
    at: anyMoment,
  },
  mass: 3.1,
  method: '',
  lightLimit: null,
  sensitivity: '',
  picture: null,
  questions: 0,
  entry: null,
  parts: [],
  partOf: null,
  differs: null,
})

export const worksExamples: ExamplesOf<keyof typeof worksArea | keyof typeof workListArea> = {
  'work.list': {
    answered: [
      {
        about: 'works found by a word, with their place',
        input: known => ({ search: 'causew', exhibition: known.show }),
        output: known => ({
          total: 1,
          offset: 0,
          works: [
            {
              id: known.causeway,
              number: 'L-1.2',
              title: 'Causeway',
              maker: 'Ada Ruel',
              dateText: '',
              medium: 'oil on canvas',
              kind: 'painting',
              lender: 'Quay Collection',
              size: {
                height: 910,
                width: 710,
                depth: null,
                diameter: null,
                part: 'framed',
                kind: 'measured',
                at: anyMoment,
              },
              mass: 9.5,
              method: 'd-rings',
              lightLimit: null,
              sensitivity: '',
              picture: null,
              questions: 0,
              entry: {
                id: known.causewayEntry,
                section: known.shore,
                running: '',
                status: 'wanted',
                where: { face: known.northFace, name: 'Room 1 north', place: 2 },
              },
              parts: [],
              partOf: null,
              differs: null,
            },
          ],
        }),
      },
      {
        about: 'a work found by its number in another spelling',
        input: () => ({ search: 'l-1.3' }),
        output: known => ({
          total: 1,
          offset: 0,
          works: [raking(known)],
        }),
      },
      {
        about: 'a work found by what is written on it',
        first: known => [
          ['work.update', { id: known.raking, changes: { inscriptions: { was: '', to: 'Stamped “Quay 1904”.' } } }],
        ],
        input: () => ({ search: 'stamp quay' }),
        output: known => ({
          total: 1,
          offset: 0,
          works: [raking(known)],
        }),
      },
      {
        about: 'nothing for a search in the index’s own syntax',
        input: () => ({ search: 'title:"x" AND (' }),
        output: () => ({ total: 0, offset: 0, works: [] }),
      },
      {
        about: 'the works that nobody has placed',
        input: known => ({ exhibition: known.show, settle: 'unplaced' }),
        output: known => ({
          total: 1,
          offset: 0,
          works: [
            {
              id: known.raking,
              number: 'L-1.3',
              title: 'Raking',
              maker: 'unknown maker',
              dateText: '',
              medium: 'gelatin silver print',
              kind: 'photograph',
              lender: 'Quay Collection',
              size: {
                height: 540,
                width: 540,
                depth: null,
                diameter: null,
                part: 'framed',
                kind: 'measured',
                at: anyMoment,
              },
              mass: 3.1,
              method: '',
              lightLimit: null,
              sensitivity: '',
              picture: null,
              questions: 0,
              entry: { id: known.rakingEntry, section: known.shore, running: '', status: 'wanted', where: null },
              parts: [],
              partOf: null,
              differs: null,
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a sort that there is not', input: () => ({ sort: 'beauty' }), code: 'bad-input', field: 'sort' },
    ],
  },
  'work.counts': {
    answered: [
      {
        about: 'the counts beside the list',
        input: known => ({ exhibition: known.show }),
        output: known => ({
          works: 3,
          frames: 1730,
          wall: 28680,
          lenders: [{ id: known.lender, name: 'Quay Collection', works: 3 }],
          kinds: [
            { kind: 'painting', works: 1 },
            { kind: 'photograph', works: 1 },
            { kind: 'print', works: 1 },
          ],
          questions: 0,
          differs: 0,
          unmeasured: 0,
          unplaced: 1,
        }),
      },
    ],
    refused: [
      { about: 'an id that is none', input: () => ({ exhibition: '../x' }), code: 'bad-input', field: 'exhibition' },
    ],
  },
  'work.get': {
    answered: [
      {
        about: 'everything about one work',
        input: known => ({ id: known.causeway }),
        output: known => ({
          id: known.causeway,
          facts: {
            title: 'Causeway',
            maker: 'Ada Ruel',
            dateText: '',
            medium: 'oil on canvas',
            creditLine: '',
            lender: known.lender,
            kind: 'painting',
            objectName: '',
            titleTranslation: '',
            titleLanguage: '',
            inscriptions: '',
            subject: '',
            description: '',
            placeOfOrigin: '',
            distinguishing: '',
            department: '',
            sensitivity: '',
            lightLimit: null,
            glazing: '',
            frameColour: '',
            handWeight: null,
            notBeside: '',
            loanTerms: '',
            handling: '',
            note: '',
          },
          lenderName: 'Quay Collection',
          numbers: [{ id: anyId, kind: 'lender', text: 'L-1.2', since: '', by: '', note: '' }],
          sizes: [
            {
              id: known.causewaySize,
              part: 'framed',
              label: '',
              height: 910,
              width: 710,
              depth: null,
              diameter: null,
              count: 1,
              unit: 'mm',
              raw: '910 x 710 mm',
              kind: 'measured',
              source: '',
              by: '',
              at: anyMoment,
              approximate: false,
              chosen: false,
              inForce: true,
            },
          ],
          masses: [
            {
              id: known.causewayMass,
              kg: 9.5,
              raw: '9.5 kg',
              kind: 'measured',
              source: '',
              by: '',
              at: anyMoment,
              approximate: false,
              chosen: false,
              inForce: true,
            },
          ],
          backs: [
            {
              id: anyId,
              method: 'd-rings',
              data: { left: { drop: 140, inset: 55 }, right: { drop: 140, inset: 55 }, spacing: 600 },
              seenFrom: 'back',
              by: '',
              at: anyMoment,
              note: '',
            },
          ],
          pictures: [],
          documents: [],
          size: {
            height: 910,
            width: 710,
            depth: null,
            diameter: null,
            part: 'framed',
            kind: 'measured',
            at: anyMoment,
          },
          mass: 9.5,
          entries: [
            {
              id: known.causewayEntry,
              exhibition: known.show,
              exhibitionTitle: 'Low Water',
              running: '',
              where: 'Room 1 north',
            },
          ],
          markNotes: [],
          set: null,
          partOf: null,
          questions: 0,
          findings: [],
        }),
      },
    ],
    refused: [{ about: 'a work that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'work.add': {
    answered: [
      {
        about: 'the new work with its entry',
        input: known => ({
          title: 'Ebb',
          maker: 'Ada Ruel',
          exhibition: known.show,
          section: known.boats,
          number: { kind: 'loan', text: 'L 9' },
        }),
        output: () => ({ id: anyId, entry: anyId }),
      },
    ],
    refused: [
      {
        about: 'a lender that is not there',
        input: () => ({ title: 'x', lender: 'zzzzzz' }),
        code: 'not-found',
        field: 'lender',
      },
      {
        about: 'into a closed show',
        input: known => ({ title: 'x', exhibition: known.closed }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
    ],
  },
  'work.update': {
    answered: [
      {
        about: 'which field went through and which clashed',
        input: known => ({
          id: known.pans,
          changes: {
            medium: { was: 'etching on paper', to: 'etching and drypoint' },
            dateText: { was: '1930', to: '1931' },
          },
        }),
        output: known => ({
          saved: ['medium'],
          clashes: [{ code: 'clash', id: known.pans, field: 'dateText', was: '1930', yours: '1931', theirs: '' }],
        }),
      },
    ],
    refused: [
      {
        about: 'a field without the value it was based on',
        input: known => ({ id: known.pans, changes: { title: { to: 'x' } } }),
        code: 'bad-input',
        field: 'changes.title.was',
      },
      {
        about: 'a work that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'work.updateMany': {
    answered: [
      {
        about: 'the work that was set and the one that clashed',
        input: known => ({
          works: [
            { id: known.pans, was: null },
            { id: known.raking, was: 200 },
          ],
          field: 'lightLimit',
          to: 50,
        }),
        output: known => ({
          saved: [known.pans],
          clashes: [{ code: 'clash', id: known.raking, field: 'lightLimit', was: 200, yours: 50, theirs: null }],
        }),
      },
    ],
    refused: [
      {
        about: 'a value that the field does not take',
        input: known => ({ works: [{ id: known.pans, was: '' }], field: 'kind', to: 'fresco' }),
        code: 'bad-input',
        field: 'to',
      },
    ],
  },
  'work.duplicate': {
    answered: [
      {
        about: 'the second work',
        input: known => ({ id: known.causeway }),
        output: () => ({ id: anyId, entry: null }),
      },
    ],
    refused: [{ about: 'a work that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'work.remove': {
    answered: [
      {
        about: 'that a work outside any show is removed',
        input: known => ({ id: known.loose }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a work that stands in a show',
        input: known => ({ id: known.pans }),
        code: 'still-in-a-show',
        field: 'id',
      },
    ],
  },
  'work.addNumber': {
    answered: [
      {
        about: 'the new number',
        input: known => ({ work: known.pans, kind: 'permanent', text: '1995.5.2a' }),
        output: () => ({ id: anyId }),
      },
      {
        about: 'a former number with what is known of it',
        input: known => ({
          work: known.pans,
          kind: 'former',
          text: '61/4',
          since: '1961',
          by: 'old card',
          note: 'on the back',
        }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a number without letter or figure',
        input: known => ({ work: known.pans, kind: 'loan', text: '---' }),
        code: 'bad-input',
        field: 'text',
      },
      {
        about: 'a day that no calendar has',
        input: known => ({ work: known.pans, kind: 'loan', text: 'L-2031.7', since: '2031-02-30' }),
        code: 'bad-input',
        field: 'since',
      },
      {
        about: 'a day in other words',
        input: known => ({ work: known.pans, kind: 'loan', text: 'L-2031.7', since: 'last spring' }),
        code: 'bad-input',
        field: 'since',
      },
      {
        about: 'a kind of number that there is not',
        input: known => ({ work: known.pans, kind: 'shelf', text: '4' }),
        code: 'bad-input',
        field: 'kind',
      },
    ],
  },
  'work.changeNumber': {
    answered: [
      {
        about: 'that the number is corrected',
        input: known => ({ id: known.pansNumber, changes: { text: { was: 'L-1.1', to: 'L-1.11' } } }),
        output: () => ({ saved: ['text'], clashes: [] }),
      },
      {
        about: 'that it is a former number, and since when; what somebody else changed comes back',
        input: known => ({
          id: known.pansNumber,
          changes: {
            kind: { was: 'lender', to: 'former' },
            since: { was: '', to: '1988-04' },
            text: { was: 'L-1.7', to: 'L-1.9' },
          },
        }),
        output: known => ({
          saved: ['kind', 'since'],
          clashes: [
            { code: 'clash', id: known.pansNumber, field: 'text', was: 'L-1.7', yours: 'L-1.9', theirs: 'L-1.1' },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a number that is not there',
        input: () => ({ id: 'zzzzzz', changes: { text: { was: 'a', to: 'b' } } }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'a number that would hold no letter and no figure',
        input: known => ({ id: known.pansNumber, changes: { text: { was: 'L-1.1', to: '--' } } }),
        code: 'bad-input',
        field: 'changes.text.to',
      },
    ],
  },
  'work.removeNumber': {
    answered: [
      { about: 'that the number is gone', input: known => ({ id: known.pansNumber }), output: () => ({ done: true }) },
    ],
    refused: [{ about: 'a number that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'work.addSize': {
    answered: [
      {
        about: 'the size that hangs from now on',
        input: known => ({
          work: known.loose,
          part: 'framed',
          height: 622.3,
          width: 933.45,
          raw: '24 1/2 x 36 3/4 in',
          kind: 'listed',
          source: 'list of 3 March',
        }),
        output: () => ({
          id: anyId,
          hanging: {
            height: 622.3,
            width: 933.45,
            depth: null,
            diameter: null,
            part: 'framed',
            kind: 'listed',
            at: anyMoment,
          },
        }),
      },
      {
        about: 'the size that a statement says, as typed',
        input: known => ({ work: known.loose, part: 'framed', raw: '24 1/2 x 36 3/4 in', kind: 'measured' }),
        output: () => ({
          id: anyId,
          hanging: {
            height: 622.3,
            width: 933.45,
            depth: null,
            diameter: null,
            part: 'framed',
            kind: 'measured',
            at: anyMoment,
          },
        }),
      },
    ],
    refused: [
      {
        about: 'a statement that leaves a question',
        input: known => ({ work: known.pans, part: 'framed', raw: '61 x 91.5', kind: 'listed' }),
        code: 'not-clear',
        field: 'raw',
      },
      {
        about: 'a size without a figure',
        input: known => ({ work: known.pans, part: 'framed', raw: '', kind: 'measured' }),
        code: 'bad-input',
        field: 'height',
      },
      {
        about: 'a height below nothing',
        input: known => ({ work: known.pans, part: 'framed', height: -5, raw: '', kind: 'measured' }),
        code: 'bad-input',
        field: 'height',
      },
    ],
  },
  'work.addStatement': {
    answered: [
      {
        about: 'two parts and a weight in one edit',
        input: known => ({
          work: known.loose,
          part: 'framed',
          raw: 'image 24 x 30 cm; framed 40 x 50 cm; 4 kg',
          kind: 'listed',
        }),
        output: () => ({
          sizes: [anyId, anyId],
          mass: anyId,
          hanging: {
            height: 400,
            width: 500,
            depth: null,
            diameter: null,
            part: 'framed',
            kind: 'listed',
            at: anyMoment,
          },
        }),
      },
      {
        about: 'a part that the statement does not name, as a person understood it',
        input: known => ({
          work: known.loose,
          part: 'sheet',
          raw: '24 x 30',
          kind: 'measured',
          sizes: [{ part: 'sheet', height: 240, width: 300 }],
        }),
        output: () => ({
          sizes: [anyId],
          mass: null,
          hanging: {
            height: 240,
            width: 300,
            depth: null,
            diameter: null,
            part: 'sheet',
            kind: 'measured',
            at: anyMoment,
          },
        }),
      },
    ],
    refused: [
      {
        about: 'a statement that leaves a question',
        input: known => ({
          work: known.loose,
          part: 'framed',
          raw: 'image 24 x 30; framed 40 x 50',
          kind: 'listed',
        }),
        code: 'not-clear',
        field: 'raw',
      },
      {
        about: 'a part without a figure',
        input: known => ({ work: known.loose, part: 'framed', raw: '', kind: 'listed', sizes: [{ part: 'framed' }] }),
        code: 'bad-input',
        field: 'sizes.0.height',
      },
    ],
  },
  'work.chooseSize': {
    answered: [
      {
        about: 'the size that hangs now',
        input: known => ({ id: known.pansSize, chosen: true }),
        output: () => ({
          hanging: {
            height: 620,
            width: 480,
            depth: null,
            diameter: null,
            part: 'framed',
            kind: 'measured',
            at: anyMoment,
          },
        }),
      },
    ],
    refused: [
      {
        about: 'a size that is not there',
        input: () => ({ id: 'zzzzzz', chosen: true }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'work.addMass': {
    answered: [
      {
        about: 'the new mass',
        input: known => ({ work: known.loose, kg: 6.8038855, raw: '15 lb', kind: 'listed' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'no mass at all',
        input: known => ({ work: known.pans, kg: 0, raw: '', kind: 'measured' }),
        code: 'bad-input',
        field: 'kg',
      },
    ],
  },
  'work.chooseMass': {
    answered: [
      {
        about: 'that it is chosen',
        input: known => ({ id: known.pansMass, chosen: true }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a mass that is not there',
        input: () => ({ id: 'zzzzzz', chosen: true }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'work.setBack': {
    answered: [
      {
        about: 'the back as recorded',
        input: known => ({
          work: known.pans,
          method: 'd-rings',
          seenFrom: 'front',
          data: { left: { drop: 95, inset: 40 }, right: { drop: 95, inset: 40 } },
        }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a measure that the method needs',
        input: known => ({ work: known.pans, method: 'd-rings', seenFrom: 'back', data: { left: { drop: 95 } } }),
        code: 'back-invalid',
        field: 'back.data.right',
      },
    ],
  },
  'work.addPicture': {
    answered: [
      {
        about: 'the picture as kept',
        files: [{ name: 'pans.png', bytes: onePixel }],
        input: known => ({ work: known.pans, handle: '$1' }),
        output: known => ({ id: anyId, hash: known.pansPictureHash, widthPx: 1, heightPx: 1 }),
      },
    ],
    refused: [
      {
        about: 'a file that is not here',
        input: known => ({ work: known.pans, handle: '0123456789abcdef-x.png' }),
        code: 'unknown-handle',
        field: 'handle',
      },
    ],
  },
  'work.removePicture': {
    answered: [
      {
        about: 'that the picture is gone',
        input: known => ({ id: known.pansPicture }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'a picture that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
  'work.addDocument': {
    answered: [
      {
        about: 'the document as kept',
        files: [{ name: 'terms.txt', bytes: new TextEncoder().encode('no daylight') }],
        input: known => ({ work: known.pans, handle: '$1' }),
        output: known => ({ id: anyId, hash: known.termsHash }),
      },
    ],
    refused: [
      {
        about: 'a work that is not there',
        files: [{ name: 'terms.txt', bytes: new TextEncoder().encode('no daylight') }],
        input: () => ({ work: 'zzzzzz', handle: '$1' }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'work.removeDocument': {
    answered: [
      { about: 'that the document is gone', input: known => ({ id: known.pansTerms }), output: () => ({ done: true }) },
    ],
    refused: [
      { about: 'a document that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
  'file.take': {
    answered: [
      {
        about: 'a handle for the kept file',
        input: known => ({ hash: known.termsHash ?? '', name: 'terms.txt' }),
        output: () => ({ handle: anyHandle, name: 'terms.txt' }),
      },
    ],
    refused: [
      {
        about: 'a file that the folder does not hold',
        input: () => ({ hash: '0'.repeat(64), name: 'x' }),
        code: 'not-found',
        field: 'hash',
      },
    ],
  },
}
