/**
 * The working, line by line, as a technician would write it on the wall. Each line is written in millimetres and in
 * inches. Inches are fractions where every figure is one to 1/32 in; else decimals, since a rounded fraction in the
 * middle of a sum would not add up.
 */
import { decimal, formatInchCount, formatLength, MINUS, THIN_SPACE } from '../measure/format.ts'
import type { WorkingLine } from './marks-shape.ts'
import type { PlainStep, Term } from './method.ts'
import { INCH } from './physics.ts'

export function writeStep(step: PlainStep): WorkingLine {
  const inches = [...step.terms.map(term => term.mm), step.value]
  const parts = inches.every(mm => isFraction(mm, 32)) ? 32 : null
  const asInches = (mm: number) =>
    parts === null ? decimal(mm / INCH, 3, THIN_SPACE) : formatInchCount(Math.round((mm * parts) / INCH), parts)
  return {
    key: step.key,
    label: step.label,
    mm: { expression: write(step.terms, asMillimetres), value: asMillimetres(step.value) },
    in: { expression: write(step.terms, asInches), value: asInches(step.value) },
  }
}

function asMillimetres(mm: number): string {
  return formatLength(mm, { unit: 'mm', decimals: 1, bare: true })
}

function write(terms: readonly Term[], say: (mm: number) => string): string {
  return terms
    .map((term, index) => {
      const figure = amount(term, say)
      if (index === 0) return term.op === '−' ? `${MINUS}${figure}` : figure
      return `${term.op} ${figure}`
    })
    .join(' ')
}

function amount(term: Term, say: (mm: number) => string): string {
  if ('over' in term) return `${say(term.mm)} / ${decimal(term.over, 3, THIN_SPACE)}`
  if ('times' in term) return `${decimal(term.times, 4, THIN_SPACE)} × ${say(term.mm)}`
  return say(term.mm)
}

/** The sum that the terms say, mm. */
export function sumOf(terms: readonly Term[]): number {
  let sum = 0
  for (const term of terms) {
    const size = 'over' in term ? term.mm / term.over : 'times' in term ? term.mm * term.times : term.mm
    sum += term.op === '−' ? -size : size
  }
  return sum
}

function isFraction(mm: number, parts: number): boolean {
  const count = (mm * parts) / INCH
  return Math.abs(count - Math.round(count)) < 1e-6
}
