/** How the sections of a show hang, and what becomes of their works with it. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { wants } from '../../../src/sequence/capacity.ts'
import { rulesOf } from '../rules.ts'
import type { Reading } from '../service.ts'
import { knownOf } from './question.ts'
import { hungUnits } from './units.ts'

type Section = Output<'sequence.sections'>['sections'][number]

export function sections(reading: Reading, { exhibition }: Received<'sequence.sections'>): Output<'sequence.sections'> {
  const known = knownOf(reading, exhibition)
  const { question, formed } = known
  const rule = rulesOf(reading.db)
  const house = { lowest: Number(rule('stackLowest')), highest: Number(rule('stackHighest')) }
  const within = new Set(formed.flatMap(unit => unit.entries))
  return {
    sections: question.sections.map(({ id, title, hang, own }) => {
      const works = question.works.filter(work => work.section === id)
      const free = works.filter(work => !work.stays)
      const units = formed.filter(unit => unit.section === id)
      const alone = free.flatMap(({ entry, width }) => (within.has(entry) ? [] : (width ?? [])))
      return {
        section: id,
        title,
        works: works.length,
        hang: hang.hang,
        rows: hang.rows,
        columns: hang.columns,
        align: hang.align,
        gapDown: hang.gapDown,
        gapAcross: hang.gapAcross,
        alike: hang.alike,
        ...own,
        house,
        units: units.map(({ entries, width, height }) => ({ works: [...entries], width, height })),
        wants: wants([...units.map(({ width }) => width), ...alone], question.gap),
        inRow: wants(
          free.flatMap(({ width }) => width ?? []),
          question.gap,
        ),
        outside: outsideOf(known, id),
      }
    }),
  }
}

/** Of what hangs in stacks and grids today, the works whose edges are too low or too high. */
function outsideOf(known: ReturnType<typeof knownOf>, section: string): Section['outside'] {
  const stands = new Map(known.question.walls.flatMap(({ works }) => works.map(work => [work.entry, work] as const)))
  const heights = new Map(known.question.works.map(({ entry, height }) => [entry, height ?? 0] as const))
  return hungUnits(known)
    .filter(unit => unit.section === section)
    .flatMap(({ entries, hang }) =>
      entries.flatMap((entry): Section['outside'] => {
        const [centre, height] = [stands.get(entry)?.centreY ?? 0, heights.get(entry) ?? 0]
        const [bottom, top] = [centre - height / 2, centre + height / 2]
        if (top > hang.highest + 0.5) return [{ entry, edge: 'high', at: top }]
        return bottom < hang.lowest - 0.5 ? [{ entry, edge: 'low', at: bottom }] : []
      }),
    )
}
