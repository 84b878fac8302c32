/** The works of a show as the checklist lists them: in order, with the size in force of every part. */
import { type ListPart, parts } from '../../../src/checklist/fields.ts'
import { valueOn } from '../../../src/insurance/value.ts'
import type { Day } from '../../../src/light/day.ts'
import { inForce, type SourcedFact } from '../../../src/model/in-force.ts'
import { writeAmount } from '../../../src/money/write.ts'
import type { ChecklistWork, Measured } from '../../../src/sheets/checklist.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Facts, factsOf } from '../insured/facts.ts'
import { wallCalled } from '../rooms/called.ts'
import { rows } from '../sql.ts'

interface Stored {
  readonly id: string
  readonly running: string
  readonly status: string
  readonly section: string | null
  readonly room: string | null
  readonly wall: string | null
  readonly title: string
  readonly maker: string
  readonly date_text: string
  readonly medium: string
  readonly credit_line: string
  readonly lender: string | null
  readonly kind: string
  readonly object_name: string
  readonly title_translation: string
  readonly title_language: string
  readonly inscriptions: string
  readonly subject: string
  readonly description: string
  readonly place_of_origin: string
  readonly distinguishing: string
  readonly department: string
  readonly sensitivity: string
  readonly light_limit: number | null
  readonly uv_limit: number | null
  readonly glazing: string
  readonly not_beside: string
  readonly loan_terms: string
  readonly handling: string
  readonly note: string
  readonly method: string
  readonly mass: number | null
  readonly picture: string | null
}

interface StoredSize extends Measured {
  readonly work: string
  readonly part: string
  readonly kind: 'listed' | 'measured'
  readonly at: string
  readonly chosen: number
}

const inShow = 'FROM entry WHERE entry.exhibition = :exhibition'

/** `today`: the day whose value of each work is told. */
export function checklistWorks(db: ReadHandle, exhibition: string, today: Day): readonly ChecklistWork[] {
  const works = rows<Stored>(
    db,
    `SELECT work.id, entry.running, entry.status, section.title AS section, room.name AS room, ${wallCalled} AS wall,
      work.title, work.maker, work.date_text, work.medium, work.credit_line, party.name AS lender, work.kind,
      work.object_name, work.title_translation, work.title_language, work.inscriptions, work.subject, work.description,
      work.place_of_origin, work.distinguishing, work.department,
      work.sensitivity, work.light_limit, work.uv_limit, work.glazing, work.not_beside, work.loan_terms, work.handling,
      work.note, work.method, work.mass, work.picture
     FROM entry JOIN work ON work.id = entry.work
     LEFT JOIN party ON party.id = work.lender LEFT JOIN section ON section.id = entry.section
     LEFT JOIN placement ON placement.entry = entry.id LEFT JOIN face ON face.id = placement.face
     LEFT JOIN wall ON wall.id = face.wall LEFT JOIN room ON room.id = wall.room
     WHERE entry.exhibition = :exhibition
     ORDER BY section.position IS NULL, section.position, entry.position, entry.id`,
    { exhibition },
  )
  const numbers = numbersOf(db, exhibition)
  const sizes = sizesOf(db, exhibition)
  const facts = factsOf(db, { exhibition })
  return works.map(work => {
    const number = (kind: string) => numbers.get(`${work.id} ${kind}`) ?? ''
    return {
      texts: {
        running: work.running,
        permanent: number('permanent'),
        lenderNumber: number('lender'),
        loan: number('loan'),
        entryNumber: number('entry'),
        exhibitionNumber: number('exhibition'),
        formerNumber: number('former'),
        maker: work.maker,
        title: work.title,
        date: work.date_text,
        medium: work.medium,
        method: work.method,
        lender: work.lender ?? '',
        credit: work.credit_line,
        value: worthOf(facts, work.id, today),
        kind: work.kind,
        objectName: work.object_name,
        titleTranslation: work.title_translation,
        titleLanguage: work.title_language,
        inscriptions: work.inscriptions,
        subject: work.subject,
        description: work.description,
        placeOfOrigin: work.place_of_origin,
        distinguishing: work.distinguishing,
        department: work.department,
        section: work.section ?? '',
        place: [work.room, work.wall].filter(part => part !== null && part !== '').join(', '),
        status: work.status,
        sensitivity: work.sensitivity,
        glazing: work.glazing,
        handling: work.handling,
        loanTerms: work.loan_terms,
        notBeside: work.not_beside,
        note: work.note,
      },
      picture: work.picture,
      lightLimit: work.light_limit,
      uvLimit: work.uv_limit,
      mass: work.mass,
      sizes: sizes.get(work.id) ?? {},
    }
  })
}

function worthOf(facts: Facts, work: string, today: Day): string {
  const { value } = valueOn(facts.agreed(work), facts.valued(work), today, 'unsaid')
  // Three figures behind one mark may be thousands to whoever reads it: KWD 12.5, not 12.500.
  return value === null ? '' : writeAmount(value).replace(/(\.\d{1,2})0+$/u, '$1')
}

/** The first number of each kind, by work and kind. */
function numbersOf(db: ReadHandle, exhibition: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  const stored = rows<{ work: string; kind: string; text: string }>(
    db,
    `SELECT work, kind, text FROM work_number WHERE work IN (SELECT work ${inShow}) ORDER BY id`,
    { exhibition },
  )
  for (const { work, kind, text } of stored) if (!found.has(`${work} ${kind}`)) found.set(`${work} ${kind}`, text)
  return found
}

function sizesOf(db: ReadHandle, exhibition: string): ReadonlyMap<string, Partial<Record<ListPart, Measured>>> {
  const stored = rows<StoredSize>(
    db,
    `SELECT work, part, kind, at, chosen, height, width, depth, diameter FROM work_size
     WHERE work IN (SELECT work ${inShow}) ORDER BY at, id`,
    { exhibition },
  )
  const byWork = Map.groupBy(stored, size => size.work)
  return new Map(
    [...byWork].map(([work, all]) => {
      const known: Partial<Record<ListPart, Measured>> = {}
      for (const part of parts) {
        const facts = all
          .filter(size => size.part === part)
          .map(size => ({ ...size, chosen: size.chosen === 1 }) satisfies SourcedFact & Measured)
        const fact = inForce(facts)
        if (fact === undefined) continue
        const { height, width, depth, diameter } = fact
        known[part] = { height, width, depth, diameter }
      }
      return [work, known]
    }),
  )
}
