/**
 * The marks of a set: each part is asked by itself, with its own back and fixings, at its place in the set; then all of
 * them are one answer, so that holes, loads, hardware, labels and late changes count a set as the one object it is.
 * Along the wall a set's marks run from its left edge, each rounded once.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Mark, MarksAnswer, WorkingLine } from '../hang/marks-shape.ts'
import type { PlainStep, Term } from '../hang/method.ts'
import { minus, type Printed, plus, print, printedText, printFrom, type Steps } from '../hang/printing.ts'
import { mainMarks, slotOf } from '../hang/steps.ts'
import { floorAt } from '../hang/wall.ts'
import { sumOf, writeStep } from '../hang/working.ts'
import type { MarksOrWhy } from './marks-of-face.ts'
import type { PartPlace } from './parts-of-set.ts'

/** One part of a set with its own marks, or why it has none. */
export interface PartMarks {
  readonly letter: string
  /** The part as a placed work of its own. */
  readonly placed: PlacedWork
  readonly marks: MarksOrWhy
}

/** What a hand hangs: the parts of a set with their marks, else the work with its own and no letter. */
export function handsOf(work: PlacedWork, marks: MarksOrWhy): readonly PartMarks[] {
  return marks.parts ?? [{ letter: '', placed: work, marks }]
}

/** The same with what is known of the marks: null where there are none. */
export function answersOf(work: PlacedWork, marks: MarksOrWhy | undefined) {
  if (marks === undefined) return [{ placed: work, answer: null }]
  return handsOf(work, marks).map(({ placed, marks: own }) => ({ placed, answer: 'answer' in own ? own.answer : null }))
}

/** Two routes along the set agree to this. mm. */
const ROUTES_AGREE = 0.1

/** A part's answer with its place in the set: running from the left edge, the same from the right, down from the top. */
export function withRunning(
  answer: MarksAnswer,
  set: PlacedWork,
  place: PartPlace,
  places: readonly PartPlace[],
  steps: Steps,
): MarksAnswer {
  const whole = { width: set.size?.width ?? 0, height: set.size?.height ?? 0 }
  const index = places.indexOf(place)
  const left = running('set-left', 'from the set’s left edge', fromLeft(set, places, index))
  const right = running('set-right', 'the same from its right edge', fromRight(set, places, index, whole.width))
  const { top, bottom } = place.laid
  const down = running('set-top', 'below the set’s top edge', [
    { op: '+', mm: (top + bottom) / 2 },
    { op: '−', mm: bottom - top, over: 2 },
  ])
  const setLeft = print(set.x - whole.width / 2, steps)
  const marks = mainMarks(answer.marks).map(mark =>
    printedLine(
      {
        key: `set-x-${slotOf(mark)}`,
        label: `${mark.side === 'middle' ? 'mark' : `${mark.side} mark`} from the set’s left edge`,
        terms: [
          { op: '+', mm: left.value },
          { op: '+', mm: mark.fromLeft },
        ],
        value: left.value + mark.fromLeft,
      },
      minus(mark.printed.x, setLeft),
      steps,
    ),
  )
  const difference = left.value - right.value
  return {
    ...answer,
    working: [
      ...answer.working,
      printedLine(left, print(left.value, steps), steps),
      printedLine(right, print(right.value, steps), steps),
      printedLine(down, print(down.value, steps), steps),
      ...marks,
    ],
    secondRoute: [
      ...answer.secondRoute,
      {
        side: 'set',
        fromTop: left.value,
        fromBottom: right.value,
        difference,
        agrees: Math.abs(difference) <= ROUTES_AGREE,
      },
    ],
  }
}

function running(key: string, label: string, terms: readonly Term[]): PlainStep {
  return { key, label, terms, value: sumOf(terms) }
}

/** What stands before a part: parts and gaps in a row of kept gaps, else its centre line. */
function fromLeft({ set }: PlacedWork, places: readonly PartPlace[], index: number): readonly Term[] {
  const at = places[index]?.laid
  if (at === undefined) return []
  if (set?.form === 'row' && set.keeps !== 'centres') {
    if (index === 0) return [{ op: '+', mm: 0 }]
    const widths = places.slice(0, index).map(({ laid }) => laid.right - laid.left)
    const [first = 0] = widths
    if (widths.every(width => Math.abs(width - first) < 1e-9)) return [{ op: '+', mm: first + set.gapX, times: index }]
    return widths.flatMap((width): Term[] => [
      { op: '+', mm: width },
      { op: '+', mm: set.gapX },
    ])
  }
  return [
    { op: '+', mm: (at.left + at.right) / 2 },
    { op: '−', mm: at.right - at.left, over: 2 },
  ]
}

/**
 * The whole width less what stands after the part, and less the part itself: from sizes, gaps and columns alone, so that
 * a set laid wrongly shows. Kept gaps run over the widest part of each column, kept centres over equal distances.
 */
function fromRight({ set }: PlacedWork, places: readonly PartPlace[], index: number, width: number): readonly Term[] {
  const at = places[index]
  if (at === undefined || set === null) return []
  const wide = ({ part }: PartPlace) => part.size?.width ?? 0
  const inColumn = (column: number) => places.filter(({ laid }) => laid.column === column)
  if (set.keeps !== 'centres') {
    const columns = 1 + Math.max(...places.map(({ laid }) => laid.column))
    const widest = (column: number) => Math.max(...inColumn(column).map(wide))
    const after = Array.from({ length: columns - 1 - at.laid.column }, (_, more) => at.laid.column + 1 + more)
    const slack = widest(at.laid.column) - wide(at)
    return [
      { op: '+', mm: width },
      ...after.flatMap((column): Term[] => [
        { op: '−', mm: widest(column) },
        { op: '−', mm: set.gapX },
      ]),
      ...(slack > 0 ? [{ op: '−', mm: slack, over: 2 } as const] : []),
      { op: '−', mm: wide(at) },
    ]
  }
  const beside = places.flatMap(one =>
    places
      .filter(({ laid }) => laid.row === one.laid.row && laid.column === one.laid.column + 1)
      .map(next => [one, next]),
  )
  const apart = set.gapX + Math.max(0, ...beside.map(pair => pair.reduce((sum, one) => sum + wide(one) / 2, 0)))
  const reach = (one: PartPlace) => one.laid.column * apart + wide(one) / 2
  const last = places.reduce((most, one) => (reach(one) > reach(most) ? one : most), at)
  const columns = last.laid.column - at.laid.column
  return [
    { op: '+', mm: width },
    { op: '−', mm: wide(last), over: 2 },
    ...(columns === 0 ? [] : [{ op: columns > 0 ? '−' : '+', mm: apart, times: Math.abs(columns) } as const]),
    { op: '−', mm: wide(at), over: 2 },
  ]
}

/** A sum written out, with what stands on paper as its value. */
function printedLine(step: PlainStep, value: Printed, steps: Steps): WorkingLine {
  const written = writeStep(step)
  return {
    ...written,
    mm: { ...written.mm, value: printedText(value, 'mm', steps) },
    in: { ...written.in, value: printedText(value, 'in', steps) },
  }
}

/** All parts as one answer; the first thing that is missing, with the part it is missing of. */
export function joinParts(
  { wall }: Pick<Elevation, 'wall'>,
  set: PlacedWork,
  parts: readonly PartMarks[],
  steps: Steps,
): MarksOrWhy {
  const answers: { readonly letter: string; readonly answer: MarksAnswer }[] = []
  for (const { letter, marks } of parts) {
    if ('problem' in marks) return { problem: `Part ${letter}: ${marks.problem}`, parts }
    answers.push({ letter, answer: marks.answer })
  }
  const [first] = answers
  if (first === undefined || set.size === null) return { problem: 'The set has no parts yet.', parts }
  return { answer: joined(answers, first.answer, set, set.size, floorAt(wall.floor, set.x), steps), parts }
}

function joined(
  parts: readonly { readonly letter: string; readonly answer: MarksAnswer }[],
  first: MarksAnswer,
  set: PlacedWork,
  size: { readonly width: number; readonly height: number },
  floorAtCentre: number,
  steps: Steps,
): MarksAnswer {
  const all = <T>(of: (answer: MarksAnswer, letter: string) => readonly T[]): T[] =>
    parts.flatMap(({ letter, answer }) => of(answer, letter))
  const edges = {
    left: set.x - size.width / 2,
    right: set.x + size.width / 2,
    top: set.centreY + size.height / 2,
    bottom: set.centreY - size.height / 2,
  }
  const { datum, lineAtCentre } = first.printed
  const leftEdge = print(edges.left, steps)
  const top = plus(datum, printFrom(edges.top, datum, steps))
  const width = print(size.width, steps)
  const height = print(size.height, steps)
  const names = [...new Set(parts.map(({ answer }) => answer.methodName))]
  return {
    method: first.method,
    methodName: `Set of ${parts.length}: ${names.join(', ')}`,
    edges,
    datum: first.datum,
    floorAtCentre,
    marks: all(({ marks }, letter) => marks.map((mark): Mark => ({ ...mark, name: `${letter} ${slotOf(mark)}` }))),
    printed: {
      datum,
      leftEdge,
      width,
      rightEdge: plus(leftEdge, width),
      height,
      top,
      bottom: minus(top, height),
      lineAtCentre,
      bearingAtCentre: first.printed.bearingAtCentre,
      between: null,
    },
    working: [],
    secondRoute: all(({ secondRoute }, letter) =>
      secondRoute.map(route => ({ ...route, side: `${letter} ${route.side}` })),
    ),
    spacing: null,
    level: null,
    wire: null,
    cleat: null,
    figures: all(({ figures }, letter) =>
      figures.map(one => ({ ...one, key: `${letter}-${one.key}`, label: `${letter}: ${one.label}` })),
    ),
    hangers: all(answer => answer.hangers),
    locks: all(({ locks }, letter) => locks.map(lock => ({ ...lock, name: `${letter} ${lock.name}` }))),
    loads: loadsOf(parts.map(({ answer }) => answer)),
    findings: all(({ findings }, letter) => findings.map(one => ({ ...one, text: `Part ${letter}: ${one.text}` }))),
    cautions: [...new Set(all(answer => answer.cautions))],
    needs: needsOf(all(answer => answer.needs)),
    adjust: [...new Set(all(answer => answer.adjust))],
    comesDown: [...new Set(all(answer => answer.comesDown))],
    accuracy: first.accuracy,
  }
}

/** Every share of every part; one fixing gone is judged within its part, so the worst part speaks. */
function loadsOf(answers: readonly MarksAnswer[]): MarksAnswer['loads'] {
  const found = answers.map(answer => answer.loads)
  const known = found.flatMap(loads => (loads === null ? [] : [loads]))
  const [first] = known
  if (first === undefined || known.length < found.length) return null
  const gone = known.flatMap(({ oneGone }) => (oneGone === null ? [] : [oneGone]))
  const all = (judged: readonly (boolean | null)[]) =>
    judged.includes(false) ? false : judged.includes(null) ? null : true
  return {
    massKg: known.reduce((sum, loads) => sum + loads.massKg, 0),
    massN: known.reduce((sum, loads) => sum + loads.massN, 0),
    houseFactor: first.houseFactor,
    rule: first.rule,
    shares: known.flatMap(loads => loads.shares),
    oneGone: gone.find(one => one.holds === false) ?? gone.find(one => one.holds === null) ?? gone[0] ?? null,
    holds: all(known.map(loads => loads.holds)),
  }
}

/** What parts need adds up; a tool serves them one after the other. */
function needsOf(needs: MarksAnswer['needs']): MarksAnswer['needs'] {
  const counts = new Map<string, MarksAnswer['needs'][number]>()
  for (const need of needs) {
    const key = `${need.per} ${need.what}`
    const count = counts.get(key)?.count ?? 0
    counts.set(key, { ...need, count: need.per === 'team' ? Math.max(count, need.count) : count + need.count })
  }
  return [...counts.values()]
}
