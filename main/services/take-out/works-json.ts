/**
 * Works as JSON under the names of Spectrum's units of information, in the order of the catalogue. A unit that nobody
 * filled in is left out. Names from memory of Spectrum 5.1, but those of location, which the published page gives; the
 * definitions are not quoted. Damage and receipts have words of our own.
 */
import { kindOfNumber } from '../../../src/checklist/number-kinds.ts'
import type { NumberKind } from '../../../src/contract/areas/works-shape.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'
import { damageUnits, receiptUnits } from './record-units.ts'
import { byWork, filled, type OfWork, type Units } from './units.ts'

interface Work {
  readonly id: string
  readonly title: string
  readonly maker: string
  readonly date: string
  readonly medium: string
  readonly credit: string
  readonly kind: string
  readonly parts: number | null
  readonly objectName: string
  readonly titleTranslation: string
  readonly titleLanguage: string
  readonly inscriptions: string
  readonly subject: string
  readonly description: string
  readonly placeOfOrigin: string
  readonly distinguishing: string
  readonly department: string
  readonly note: string
  readonly handling: string
  readonly lender: string | null
  readonly mass: number | null
  readonly massAt: string | null
  readonly massBy: string | null
  readonly set: string | null
}

export function worksAsUnits(db: ReadHandle): readonly Units[] {
  const damages = byWork(damageUnits(db))
  const receipts = byWork(receiptUnits(db))
  const numbers = byWork(
    rows<OfWork & { kind: NumberKind; text: string; party: string | null }>(
      db,
      `SELECT work, work_number.kind, text, party.name AS party FROM work_number LEFT JOIN party ON party.id = party
       ORDER BY work_number.id`,
    ),
  )
  const sizes = byWork(
    rows<
      OfWork & {
        part: string
        height: number | null
        width: number | null
        depth: number | null
        diameter: number | null
        at: string
        by: string
        kind: string
        approximate: number
      }
    >(db, 'SELECT work, part, height, width, depth, diameter, at, by, kind, approximate FROM work_size ORDER BY id'),
  )
  const pictures = byWork(
    rows<OfWork & { hash: string; name: string }>(db, 'SELECT work, hash, name FROM picture ORDER BY position, id'),
  )
  const places = byWork(
    rows<OfWork & { at: string; words: string; spot: string; method: string; people: string }>(
      db,
      `SELECT moved.work, moved.at, movement.place_words AS words, movement.spot, movement.method, movement.people FROM moved
       JOIN movement ON movement.id = moved.movement WHERE moved.work IS NOT NULL AND movement.struck = 0
         AND NOT EXISTS (SELECT 1 FROM movement AS later WHERE later.corrects = movement.id)
       ORDER BY moved.at, moved.id`,
    ),
  )
  const conditions = byWork(
    rows<OfWork & { at: string; kind: string; examiner: string; note: string }>(
      db,
      `SELECT work, examined_at AS at, kind, examiner, note FROM condition_report
       WHERE EXISTS (SELECT 1 FROM condition_seal WHERE condition_seal.report = condition_report.id) ORDER BY examined_at, id`,
    ),
  )
  return rows<Work>(
    db,
    `SELECT work.id, work.title, work.maker, work.date_text AS date, work.medium, work.credit_line AS credit, work.kind,
       work.parts_count AS parts, work.note, work.handling, work.subject, work.inscriptions,
       work.description, work.distinguishing, work.department, work.object_name AS objectName,
       work.title_translation AS titleTranslation, work.title_language AS titleLanguage,
       work.place_of_origin AS placeOfOrigin, party.name AS lender, mass.kg AS mass, mass.at AS massAt,
       mass.by AS massBy, parent.title AS "set"
     FROM work LEFT JOIN party ON party.id = work.lender LEFT JOIN work AS parent ON parent.id = work.parent
     LEFT JOIN work_mass AS mass ON mass.id = (SELECT id FROM work_mass WHERE work_mass.work = work.id
       ORDER BY chosen DESC, kind = 'measured' DESC, at DESC LIMIT 1)
     ORDER BY work.sort_number, work.n`,
  ).map(work => {
    const known = numbers.get(work.id) ?? []
    const own = known.find(({ kind }) => kind === 'permanent')
    const dimensions = (sizes.get(work.id) ?? []).flatMap(size =>
      (['height', 'width', 'depth', 'diameter'] as const).flatMap(dimension => {
        const value = size[dimension]
        return value === null
          ? []
          : [
              filled({
                'Dimension measured part': size.part,
                Dimension: dimension,
                'Dimension value': value,
                'Dimension measurement unit': 'mm',
                'Dimension value qualifier': [size.approximate === 1 ? 'about' : '', size.kind]
                  .filter(Boolean)
                  .join(', '),
                'Dimension value date': size.at,
                'Dimension measurer': size.by,
              }),
            ]
      }),
    )
    const weight =
      work.mass === null
        ? []
        : [
            filled({
              'Dimension measured part': 'whole',
              Dimension: 'mass',
              'Dimension value': work.mass,
              'Dimension measurement unit': 'kg',
              'Dimension value date': work.massAt,
              'Dimension measurer': work.massBy,
            }),
          ]
    const moves = places.get(work.id) ?? []
    const last = moves.at(-1)
    return filled({
      key: work.id,
      'Object number': own?.text ?? '',
      'Other number': known
        .filter(one => one !== own)
        .map(({ kind, text, party }) =>
          filled({ 'Other number': text, 'Other number type': kindOfNumber(kind), 'Other number owner': party }),
        ),
      'Brief description': work.description,
      'Distinguishing features': work.distinguishing,
      'Object name': [work.objectName, work.kind].filter(Boolean),
      'Number of objects': work.parts,
      'Object name/title language': work.titleLanguage,
      'Responsible department/section': work.department,
      Title: work.title,
      'Title translation': work.titleTranslation,
      'Content - description': work.subject,
      'Inscription content': work.inscriptions,
      'Object production person': work.maker,
      'Object production date': work.date,
      'Object production place': work.placeOfOrigin,
      Material: work.medium,
      Dimensions: [...dimensions, ...weight],
      'Credit line': work.credit,
      Lender: work.lender,
      'Part of': work.set,
      Comments: work.note,
      'Handling recommendations': work.handling,
      Reproductions: (pictures.get(work.id) ?? []).map(({ hash, name }) =>
        filled({ 'Reproduction number': hash, 'Reproduction description': name }),
      ),
      'Current location': last === undefined ? '' : [last.words, last.spot].filter(Boolean).join(', '),
      'Location date': last?.at ?? '',
      Movements: moves.map(({ at, words, spot, method, people }) =>
        filled({
          'Location reference name': [words, spot].filter(Boolean).join(', '),
          'Movement date': at,
          'Movement method': method,
          'Movement contact': people,
        }),
      ),
      Conditions: (conditions.get(work.id) ?? []).map(({ at, kind, examiner, note }) =>
        filled({
          'Condition check reason': kind,
          'Condition check date': at,
          'Condition checker': examiner,
          'Condition note': note,
        }),
      ),
      Damage: (damages.get(work.id) ?? []).map(({ units }) => units),
      Receipts: (receipts.get(work.id) ?? []).map(({ units }) => units),
    })
  })
}
