/** The words of a condition report as blocks: what it is, each finding, what is missing, who signed. */
import type { Report } from '../contract/areas/condition-shape.ts'
import { isDot } from '../record/condition/pen.ts'
import { judgedSaid, placeSaid, sizeSaid, titles } from '../record/condition/say.ts'
import { ringAt } from './condition-face.ts'
import { hashShort, lengthIn, type OtherReport, type ReportQuestion } from './condition-question.ts'
import { type Block, type Line, type WordsStyle, wordLines } from './flow.ts'
import { factLines, lineToSign } from './flow-words.ts'
import { ink } from './ink.ts'
import type { TextMeasure } from './shapes.ts'
import { sign } from './sketch.ts'

/** Where the words of a finding begin, beside its number, mm. */
const indent = 7
/** Of a signature's field, mm: as the screen's, 1000 to 320. */
const signWidth = 50
const signHeight = 16
const signPen = 0.35

const quiet: WordsStyle = { colour: ink.ink2, size: 2.9 }

const otherSaid = ({ kind, examinedAt }: OtherReport, when: ReportQuestion['when']) =>
  `the ${titles[kind].toLowerCase()} of ${when(examinedAt)}`

/** Examined where, when, by whom; size, packing, note; how it stands and what that lacks. */
export function factBlocks(question: ReportQuestion, width: number, measure: TextMeasure): readonly Block[] {
  const { report, when, units, corrects, correctedBy } = question
  const length = lengthIn(units)
  const facts: readonly (readonly [string, string])[] = [
    ['Examined', when(report.examinedAt)],
    ['By', report.examiner],
    ['Where', report.place],
    ['Size', `${length(report.height)} high, ${length(report.width)} wide`],
    ['As a whole', report.overall],
    ['Packing', report.packing],
    ['Note', report.note],
    ['Sets right', corrects === null ? '' : `${otherSaid(corrects, when)}. Why: ${report.why}`],
    ['Set right', correctedBy === null ? '' : `by ${otherSaid(correctedBy, when)}: read that one`],
    ['Contents', hashShort(report.content)],
  ]
  return [factLines(facts, width, measure), standingBlock(question, width, measure)]
}

/** A line with ● or ▲ before its first words. */
function signed(block: Block, severity: 'fits' | 'settle'): Block {
  const [first, ...more] = block
  if (first === undefined) return []
  const marked: Line = {
    height: first.height,
    draw: (sketch, x, y) => {
      sketch.add(sign(severity, x + 1.3, y + 2, 2.2))
      first.draw(sketch, x, y)
    },
  }
  return [marked, ...more]
}

function standingBlock({ report, when }: ReportQuestion, width: number, measure: TextMeasure): Block {
  const words = (name: string, text: string) => wordLines(name, text, width, measure, { indent: 4 })
  if (report.completeAt !== null) {
    return signed(words('complete', `Complete since ${when(report.completeAt)}; nothing of it changes.`), 'fits')
  }
  const lacks = report.lacks.flatMap(({ text }, at) => signed(words(`lack ${at}`, text), 'settle'))
  const draft = wordLines('draft', 'A draft, not complete.', width, measure, { face: 'strong' })
  return lacks.length === 0
    ? signed(words('ready', 'Signed by two, not made complete yet.'), 'settle')
    : [...draft, ...lacks]
}

/** Each finding: number, word and size, where it lies, how it is taken to be, what else is said. */
export function findingBlocks(question: ReportQuestion, width: number, measure: TextMeasure): readonly Block[] {
  const { report, units, when, follows } = question
  const length = lengthIn(units)
  return report.findings.map(finding => {
    const { number } = finding
    const name = `finding ${number}`
    const word = finding.word === '' ? 'a finding without a word' : finding.word
    const photos = report.photos.flatMap(({ findings }, at) => (findings.includes(finding.id) ? [at + 1] : []))
    const before = follows.get(finding.id)
    const size = sizeSaid(finding, length)
    const [first, ...more] = [
      ...wordLines(name, `${word}${size === '' ? '' : `, ${size}`}`, width, measure, { face: 'strong', indent }),
      ...wordLines(`${name} place`, placeSaid(finding, length), width, measure, { ...quiet, indent }),
      ...wordLines(`${name} judged`, judgedSaid(finding), width, measure, { indent }),
      ...wordLines(`${name} note`, finding.note, width, measure, { indent }),
      ...wordLines(
        `${name} before`,
        before === undefined ? '' : `goes on from ${before.number} of ${otherSaid(before, when)}`,
        width,
        measure,
        { ...quiet, indent },
      ),
      ...wordLines(
        `${name} photographs`,
        photos.length === 0 ? '' : `${photos.length === 1 ? 'photograph' : 'photographs'} ${photos.join(', ')}`,
        width,
        measure,
        { ...quiet, indent },
      ),
    ]
    if (first === undefined) return []
    const numbered: Line = {
      height: first.height,
      draw: (sketch, x, y) => {
        sketch.add(ringAt({ x: x + 2.4, y: y + 2.1 }))
        sketch.text(`number ${number}`, x + 2.4, y + 3.05, 2.7, 'figure', String(number), { anchor: 'middle' })
        first.draw(sketch, x, y)
      },
    }
    return [numbered, ...more]
  })
}

/** Every signature drawn, with name, role and time; where two are wanting, room to sign on the paper itself. */
export function signatureBlocks(question: ReportQuestion, width: number, measure: TextMeasure): readonly Block[] {
  const { report, when } = question
  const drawn = report.signatures.map((one, at): Block => {
    const name = `signature ${at}`
    const says = `${one.role}, ${when(one.at)}`
    const counts = one.counts
      ? `signed contents ${hashShort(report.content)}`
      : `counts no more: the report was changed since, or ${one.role} signed anew`
    return [
      { height: signHeight, draw: (sketch, x, y) => sketch.add(strokesAt(one.strokes, x, y, one.counts)) },
      { height: 0.8, draw: (sketch, x, y) => sketch.line(x, y, x + signWidth, y, 0.15, ink.ink3) },
      ...wordLines(`${name} name`, one.name, width, measure, { face: 'strong' }),
      ...wordLines(`${name} role`, says, width, measure),
      ...wordLines(`${name} counts`, counts, width, measure, quiet),
    ]
  })
  const missing = report.completeAt === null ? Math.max(0, 2 - report.signatures.filter(one => one.counts).length) : 0
  const empty = Array.from({ length: missing }, (_, at) =>
    lineToSign(`to sign ${at}`, ['name, role, date and time'], width, measure, { line: signWidth }),
  )
  const says = 'What is signed by hand here is not in the record: sign in the catalogue too.'
  return [...drawn, ...(missing === 0 ? [] : [wordLines('by hand', says, width, measure, quiet)]), ...empty]
}

/** A line of no length leaves nothing on paper: as long as it is wide. */
function spot([x = 0, y = 0]: readonly number[]): readonly number[] {
  const half = ((signPen / signWidth) * 1000) / 2
  return [x - half, y, x + half, y]
}

/** The strokes of a signature as one path, from a field 1000 wide and 320 high. */
function strokesAt(strokes: Report['signatures'][number]['strokes'], x: number, y: number, counts: boolean) {
  const scale = signWidth / 1000
  const d = strokes
    .map(stroke => (isDot(stroke) ? spot(stroke) : stroke))
    .flatMap(stroke =>
      Array.from({ length: Math.floor(stroke.length / 2) }, (_, at) => {
        const [across = 0, down = 0] = stroke.slice(2 * at, 2 * at + 2)
        return `${at === 0 ? 'M' : 'L'} ${(x + across * scale).toFixed(2)} ${(y + down * scale).toFixed(2)}`
      }),
    )
    .join(' ')
  return { kind: 'path', d, stroke: counts ? ink.ink : ink.line, width: signPen } as const
}
