/**
 * A receipt on paper: the works with their condition and crate, and beside them who lends to whom, day and place, and
 * a line to sign for each of the two. What is signed on it is kept as paper; the record is the catalogue's.
 */
import type { ReceiptTold } from '../contract/areas/receipts.ts'
import type { LoanWay, ReceiptKind } from '../loan/receipts/receipt.ts'
import { type Block, type Column, flow, type Line, wordLines } from './flow.ts'
import { factLines, headed, heading, lineToSign } from './flow-words.ts'
import { ink } from './ink.ts'
import { drawFrame, footHeight, headHeight, margin } from './page-frame.ts'
import { type Page, type Paper, papers, type TextMeasure } from './shapes.ts'
import { newSketch } from './sketch.ts'

export interface ReceiptQuestion {
  readonly receipt: ReceiptTold
  readonly loan: { readonly number: string; readonly partyName: string; readonly way: LoanWay; readonly period: string }
  /** The numbers of the receipt that it sets right and of the one that sets it right; '' for none. */
  readonly corrects: string
  readonly correctedBy: string
  readonly paper: Paper
  readonly day: (day: string) => string
  /** A moment in words. */
  readonly when: (at: string) => string
  readonly made: string
}

const titles: Readonly<Record<LoanWay, Readonly<Record<ReceiptKind, string>>>> = {
  in: {
    received: 'Works received on loan from',
    sent: 'Works returned to',
    acknowledged: 'Works acknowledged as back by',
  },
  out: {
    received: 'Works received back from',
    sent: 'Works lent and sent to',
    acknowledged: 'Works acknowledged as received by',
  },
}

/** Between two columns, mm. */
const gap = 8
/** Where a work begins beside its count, mm. */
const indent = 9

export function receiptPaper(question: ReceiptQuestion, measure: TextMeasure): readonly Page[] {
  const { receipt, loan } = question
  const size = papers[question.paper]
  const width = (size.width - 2 * margin - gap) / 3
  const bottom = size.height - footHeight
  const left: Column = { x: margin, top: headHeight, bottom }
  const right: Column = { x: margin + 2 * width + gap, top: headHeight, bottom }
  const count = receipt.works.length === 1 ? 'One work' : `${receipt.works.length} works`
  const works = headed(heading('works', count, 2 * width, measure), workBlocks(receipt, 2 * width, measure))
  // Two flows, so that the works run on under themselves and the signatures stay beside the first of them.
  const flows = [flow(works, () => [left]), flow(beside(question, width, measure), () => [right])]
  const pages = Math.max(...flows.map(each => each.length))
  return Array.from({ length: pages }, (_, page) => {
    const sketch = newSketch(measure)
    for (const { line, x, y } of flows.flatMap(each => each[page] ?? [])) line.draw(sketch, x, y)
    drawFrame(sketch, size, {
      number: receipt.number,
      named: { name: `${titles[loan.way][receipt.kind]} ${loan.partyName}` },
      about: `Loan ${loan.number}${loan.period === '' ? '' : `, ${loan.period}`}; ${question.day(receipt.day)}`,
      page: `page ${page + 1} of ${pages}`,
      made: question.made,
      hash: '',
    })
    return { width: size.width, height: size.height, shapes: sketch.shapes }
  })
}

function workBlocks({ works }: ReceiptTold, width: number, measure: TextMeasure): readonly Block[] {
  return works.map((work, at) => {
    const name = `work ${at + 1}`
    const title = work.title === '' ? 'Untitled' : work.title
    const quiet = { colour: ink.ink2, size: 2.9, indent }
    const [first, ...more] = [
      ...wordLines(`${name} title`, title, width, measure, { face: 'title', size: 3.6, indent }),
      ...wordLines(`${name} number`, work.number, width, measure, { face: 'figure', size: 3.1, indent }),
      ...wordLines(`${name} condition`, work.condition === '' ? '' : `Condition: ${work.condition}`, width, measure, {
        indent,
      }),
      ...wordLines(`${name} crate`, work.crate === '' ? '' : `In ${work.crate}`, width, measure, quiet),
    ]
    if (first === undefined) return []
    const counted: Line = {
      height: first.height,
      draw: (sketch, x, y) => {
        sketch.text(name, x + indent - 3, y + 3.5, 3.1, 'figure', String(at + 1), { anchor: 'end', colour: ink.ink3 })
        first.draw(sketch, x, y)
      },
    }
    const rule: Line = {
      height: 1.6,
      draw: (sketch, x, y) => sketch.line(x, y + 1.4, x + width, y + 1.4, 0.1, ink.line),
    }
    return [counted, ...more, rule]
  })
}

function beside(question: ReceiptQuestion, width: number, measure: TextMeasure): readonly Block[] {
  const { receipt, loan, corrects, correctedBy, day, when } = question
  const facts = [
    ['Day', day(receipt.day)],
    ['Place', receipt.place],
    ['Lent', `${loan.way === 'in' ? 'by' : 'to'} ${loan.partyName}`],
    ['Note', receipt.note],
    ['Recorded', `${when(receipt.recordedAt)}, ${receipt.recordedBy}`],
    ['Sets right', corrects === '' ? '' : `receipt ${corrects}. Why: ${receipt.why}`],
    ['Set right', correctedBy === '' ? '' : `by receipt ${correctedBy}: read that one`],
  ] as const
  const struck = receipt.struck
    ? [wordLines('struck', `It says that receipt ${corrects} never was.`, width, measure)]
    : []
  const sides = [
    ['Handed over by', receipt.handedBy],
    ['Received by', receipt.receivedBy],
  ] as const
  return [
    factLines(facts, width, measure),
    ...struck,
    ...sides.flatMap(([says, name]) =>
      headed(heading(says, says, width, measure), [
        [
          ...wordLines(`${says} name`, name, width, measure),
          ...lineToSign(`${says} line`, [name === '' ? 'name, signature, date' : 'signature, date'], width, measure, {
            line: width,
          }),
        ],
      ]),
    ),
  ]
}
