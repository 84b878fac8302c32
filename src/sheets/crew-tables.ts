/**
 * The order up and down and what is patched, as tables. The rule they keep: every number is the one that the plan shows;
 * what a person ticks has a column of its own, and what the catalogue knows as done has its tick.
 */
import type { CrewOrders } from '../contract/areas/crew-shape.ts'
import { fluidOunces, squareFeet } from '../measure/amounts.ts'
import { type Cell, DONE, EMPTY, numberCell, type TableSheet, textCell, withoutEmptyColumns } from './columns.ts'
import { number, type TableHead, text, workCells, workColumns } from './crew-columns.ts'
import type { LengthUnit } from './figures.ts'

/** A set has no number of its own: then how many parts it has. */
const named = (work: CrewOrders['hanging'][number] | CrewOrders['down'][number]) =>
  workCells(work.number === '' && work.parts.length > 0 ? { ...work, number: `set of ${work.parts.length}` } : work)

const tags = (list: readonly number[]) => textCell(list.join(', '))

export function orderSheets({ exhibitionTitle, lines }: TableHead, orders: CrewOrders): readonly TableSheet[] {
  return [
    {
      name: 'Hanging order',
      title: `${exhibitionTitle}: hanging order`,
      lines: [
        ...lines,
        'The tag is on the back of the work. Heavy and large first, then what is farthest from the entrance.',
        ...(orders.hanging.length === 0 ? ['Nothing is on a wall yet.'] : []),
      ],
      columns: [
        number('tag', 'Tag', 5),
        ...workColumns,
        number('people', 'People'),
        text('lifted', 'Lifted', 16),
        text('access', 'Reached from', 10),
        text('after', 'After tags', 10),
        text('tick', 'Hung', 8),
      ],
      rows: orders.hanging.map(work => [
        numberCell(work.tag),
        ...named(work),
        numberCell(work.people),
        textCell(work.equipment === '' ? (work.class === 'alone' ? 'by one' : work.class) : work.equipment),
        textCell(work.access ?? ''),
        tags(work.after),
        work.state === 'planned' ? EMPTY : DONE,
      ]),
    },
    {
      name: 'Coming down',
      title: `${exhibitionTitle}: order of taking down`,
      lines: [...lines, 'Look at each work and write down its condition before it is touched.'],
      columns: [
        number('place', 'Place', 6),
        number('tag', 'Tag', 5),
        ...workColumns,
        number('people', 'People'),
        text('equipment', 'Equipment', 12),
        number('locks', 'Locks', 7),
        text('tool', 'Lock’s tool', 18),
        text('after', 'After tags', 9),
        text('method', 'How it hangs', 18),
        text('tick', 'Down', 7),
      ],
      rows: orders.down.map((work, index) => [
        numberCell(index + 1),
        numberCell(work.tag),
        ...named(work),
        numberCell(work.people),
        textCell(work.equipment),
        work.locks === 0 ? EMPTY : numberCell(work.locks),
        textCell(work.tool),
        tags(work.after),
        textCell(work.method),
        EMPTY,
      ]),
    },
    ...stepsSheet(exhibitionTitle, lines, orders),
  ].map(withoutEmptyColumns)
}

/** How works of each method come down, said once. */
function stepsSheet(title: string, lines: readonly string[], orders: CrewOrders): readonly TableSheet[] {
  const byMethod = Map.groupBy(
    orders.down.filter(work => work.method !== '' && work.steps.length > 0),
    work => `${work.method}\n${work.steps.join('\n')}`,
  )
  if (byMethod.size === 0) return []
  return [
    {
      name: 'How they come down',
      title: `${title}: how works come down`,
      lines,
      columns: [text('method', 'How it hangs', 20), text('steps', 'Step by step', 80), text('tags', 'Tags', 24)],
      rows: [...byMethod.values()].flatMap(works => {
        const [first] = works
        if (first === undefined) return []
        const steps = first.steps.map((step, index) => `${index + 1}. ${step}`).join(' ')
        return [[textCell(first.method), textCell(steps), tags(works.map(work => work.tag).sort((a, b) => a - b))]]
      }),
    },
  ]
}

export function patchSheets(
  { exhibitionTitle, lines }: TableHead,
  orders: CrewOrders,
  unit: LengthUnit,
): readonly TableSheet[] {
  const inches = unit === 'in'
  const round = (value: number, digits: number) => Number(value.toFixed(digits))
  const cells = (each: CrewOrders['total']): readonly Cell[] => [
    numberCell(each.made),
    numberCell(each.planned),
    numberCell(each.filled),
    numberCell(each.count),
    numberCell(round(inches ? fluidOunces(each.fillerMl) : each.fillerMl, inches ? 2 : 1)),
    numberCell(round(inches ? squareFeet(each.paintM2) : each.paintM2, 2)),
    numberCell(round(each.minutes, 0)),
  ]
  return [
    {
      name: 'Patch list',
      title: `${exhibitionTitle}: holes to fill`,
      lines: [
        ...lines,
        'Holes that were made count as they were made; a work without any counts as it is planned. Filler is twice the holes.',
        'Old paint and plaster may hold lead or asbestos: no sanding without the building’s survey.',
        ...(orders.patches.length === 0 ? ['No holes: nothing is on a wall yet.'] : []),
      ],
      columns: [
        text('wall', 'Room and wall', 26),
        number('made', 'Made', 8),
        number('planned', 'Planned', 8),
        number('filled', 'Filled already', 8),
        number('count', 'To fill', 8),
        number('filler', inches ? 'Filler (fl oz)' : 'Filler (ml)', 9, inches ? '0.00' : '0.0'),
        number('paint', inches ? 'Paint (ft²)' : 'Paint (m²)', 9, '0.00'),
        number('minutes', 'Minutes', 8),
        text('tick', 'Done', 8),
      ],
      rows: [
        ...orders.patches.map(patch => [textCell(patch.faceName), ...cells(patch), patch.count === 0 ? DONE : EMPTY]),
        ...(orders.patches.length > 1 ? [[textCell('In all'), ...cells(orders.total), EMPTY]] : []),
      ],
    },
  ]
}
