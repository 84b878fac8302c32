/**
 * The crew's papers as tables: hardware in total and box by box, the order up and down, what is patched. The rule they
 * keep: every number is the one that the plan shows; what a person ticks has a column of its own.
 */
import type { CrewHardware, CrewOrders } from '../contract/areas/crew.ts'
import type { LockRegister } from '../contract/areas/marks.ts'
import { fluidOunces, squareFeet } from '../measure/amounts.ts'
import { type Cell, EMPTY, numberCell, type SheetColumn, type TableSheet, textCell } from './columns.ts'
import type { LengthUnit } from './figures.ts'

interface Head {
  readonly exhibitionTitle: string
  readonly lines: readonly string[]
}

/** A column that a person ticks or writes into; its key begins with `tick`. */
export function isTick(column: SheetColumn): boolean {
  return column.key.startsWith('tick')
}

function text(key: string, heading: string, width: number): SheetColumn {
  return { key, heading, field: 'ignore', part: null, unit: null, width, format: null }
}

function number(key: string, heading: string, width = 7, format = '0'): SheetColumn {
  return { ...text(key, heading, width), format }
}

const titleCell = (title: string): Cell => (title === '' ? EMPTY : { kind: 'title', text: title })
const tags = (list: readonly number[]) => textCell(list.join(', '))

/** What comes from a running number: a number where it is one. */
function running(of: string): Cell {
  return /^[1-9]\d{0,8}$/.test(of) ? numberCell(Number(of)) : textCell(of)
}

export function hardwareSheets({ exhibitionTitle, lines }: Head, hardware: CrewHardware): readonly TableSheet[] {
  const { locks } = hardware
  const percent = Math.round(hardware.spare * 1000) / 10
  const sheets: TableSheet[] = [
    {
      name: 'In total',
      title: `${exhibitionTitle}: hardware`,
      lines: [
        ...lines,
        `Spares: ${percent} % of each, rounded up. What nobody has counted in stock is taken as none.`,
        ...(locks.byMarks === 0 && locks.byWorks === 0
          ? []
          : [
              locks.agree
                ? `Locks: ${locks.byWorks} by the works, ${locks.byMarks} by the marks on the walls. Two people count them.`
                : `LOCKS DO NOT AGREE: ${locks.byWorks} by the works, ${locks.byMarks} by the marks on the walls.`,
            ]),
        ...(hardware.lines.length === 0
          ? ['Nothing yet: measure the backs of the works and choose what they hang on.']
          : []),
      ],
      columns: [
        text('what', 'What', 34),
        number('needed', 'Needed'),
        number('spare', 'Spare'),
        number('stock', 'In stock'),
        number('get', 'To get'),
        text('bit', 'Drill bit', 12),
        text('tool', 'Tool', 12),
        text('tick', 'Counted', 9),
        text('tickAgain', 'Counted again', 9),
        text('note', 'Note', 26),
      ],
      rows: hardware.lines.map(line => [
        textCell(line.what),
        numberCell(line.needed),
        numberCell(line.spare),
        numberCell(line.inStock),
        numberCell(line.toGet),
        textCell(line.bit),
        textCell(line.tool),
        EMPTY,
        EMPTY,
        textCell(
          line.chosen
            ? line.secondCount === null
              ? ''
              : `lock: ${line.secondCount} by the marks, two people count`
            : 'not chosen yet',
        ),
      ]),
    },
    {
      name: 'Boxes',
      title: `${exhibitionTitle}: a box for each wall`,
      lines: [...lines, 'Each box holds exactly what hangs from its wall; spares lie in a box of their own.'],
      columns: [
        text('wall', 'Box', 24),
        text('what', 'What', 40),
        number('count', 'Count'),
        number('works', 'Works'),
        text('tick', 'Packed', 9),
        text('tickBack', 'Left over', 9),
      ],
      rows: hardware.boxes.flatMap(box =>
        box.lines.map(line => [
          textCell(box.faceName),
          textCell(line.what),
          numberCell(line.count),
          numberCell(line.works),
          EMPTY,
          EMPTY,
        ]),
      ),
    },
  ]
  if (hardware.bits.length > 0) {
    sheets.push({
      name: 'Drill bits',
      title: `${exhibitionTitle}: drill bits`,
      lines,
      columns: [text('bit', 'Drill bit', 20), text('for', 'For', 70), text('tick', 'On the trolley', 10)],
      rows: hardware.bits.map(({ bit, fixings }) => [textCell(bit), textCell(fixings.join(', ')), EMPTY]),
    })
  }
  if (hardware.unknown.length > 0) {
    sheets.push({
      name: 'Not known yet',
      title: `${exhibitionTitle}: not in the hardware yet`,
      lines: [...lines, 'These works are on a wall, but what they need is not known.'],
      columns: [...workColumns, text('why', 'Why', 60)],
      rows: hardware.unknown.map(work => [...workCells(work), textCell(work.why)]),
    })
  }
  return sheets
}

const workColumns: readonly SheetColumn[] = [
  text('wall', 'Room and wall', 20),
  text('running', 'No.', 5),
  text('number', 'Work number', 13),
  text('title', 'Title', 26),
]

function workCells(work: {
  readonly faceName: string
  readonly running: string
  readonly number: string
  readonly title: string
}): readonly Cell[] {
  return [textCell(work.faceName), running(work.running), textCell(work.number), titleCell(work.title)]
}

export function orderSheets({ exhibitionTitle, lines }: Head, orders: CrewOrders): readonly TableSheet[] {
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
        ...workCells(work),
        numberCell(work.people),
        textCell(work.equipment === '' ? (work.class === 'alone' ? 'by one' : work.class) : work.equipment),
        textCell(work.access ?? ''),
        tags(work.after),
        EMPTY,
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
        text('tool', 'Lock’s tool', 12),
        text('after', 'After tags', 9),
        text('method', 'How it hangs', 18),
        text('tick', 'Down', 7),
      ],
      rows: orders.down.map((work, index) => [
        numberCell(index + 1),
        numberCell(work.tag),
        ...workCells(work),
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
  ]
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
  { exhibitionTitle, lines }: Head,
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
        ...orders.patches.map(patch => [textCell(patch.faceName), ...cells(patch), EMPTY]),
        ...(orders.patches.length > 1 ? [[textCell('In all'), ...cells(orders.total), EMPTY]] : []),
      ],
    },
  ]
}

/** Where every lock is, what opens it, whether it is shut. Places as `place` says them, which names the unit too. */
export function lockSheets(
  { exhibitionTitle, lines }: Head,
  { locks }: LockRegister,
  say: { readonly place: (mm: number) => string; readonly unit: string; readonly time: (at: string) => string },
): readonly TableSheet[] {
  return [
    {
      name: 'Lock register',
      title: `${exhibitionTitle}: register of locks`,
      lines: [
        ...lines,
        'This says how works come off: it lies where the tools are kept, and only there.',
        ...(locks.length === 0 ? ['No lock is planned.'] : []),
      ],
      columns: [
        text('work', 'Work', 22),
        text('wall', 'Room and wall', 22),
        text('which', 'Which', 11),
        text('x', `From the left end (${say.unit})`, 11),
        text('y', `Above the floor (${say.unit})`, 11),
        text('type', 'Type', 22),
        text('tool', 'Tool', 16),
        text('shut', 'Shut, by whom', 22),
        text('tick', 'Shut', 7),
        text('tickOpen', 'Opened', 8),
      ],
      rows: locks.map(lock => [
        textCell(lock.name),
        textCell(`${lock.room}, ${lock.wall}`),
        textCell(lock.called),
        textCell(say.place(lock.x)),
        textCell(say.place(lock.y)),
        textCell(lock.fixing === '' ? 'not chosen yet' : lock.fixing),
        textCell(lock.tool === '' ? 'not said yet' : lock.tool),
        textCell(
          lock.locked === null ? '' : [say.time(lock.locked.at), lock.locked.by].filter(each => each !== '').join(', '),
        ),
        EMPTY,
        EMPTY,
      ]),
    },
  ]
}
