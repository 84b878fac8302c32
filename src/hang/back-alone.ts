/**
 * What the back of a work says by itself, before the work has a place on a wall: where it bears, how its wire stands,
 * whether its measures agree. The rule it keeps: nothing of a wall speaks here, so the wall is as large as the work.
 */
import { type SeenFrom, useFromFront } from './back.ts'
import { sayIn, sayKgIn } from './marks.ts'
import type { LengthUnit } from './marks-shape.ts'
import type { HangRules, MethodAnswer, PlainFigure, WorkFacts } from './method.ts'
import { methodOf } from './methods.ts'
import { defaultSteps, type Steps } from './printing.ts'
import { defaultHangRules } from './rules.ts'

export interface BackQuestion {
  readonly method: string
  readonly seenFrom: SeenFrom
  readonly data: unknown
  readonly work: WorkFacts
  /** mm between hooks or nails where the method leaves that free; null for the method's own choice. */
  readonly hooksApart?: number | null
  readonly rules?: Partial<HangRules>
  readonly unit?: LengthUnit
  readonly steps?: Steps
}

export type BackAlone = Pick<
  MethodAnswer,
  'bearings' | 'spacing' | 'spacingFromInsets' | 'wire' | 'findings' | 'cautions'
> & { readonly figures: readonly PlainFigure[] }

/**
 * Bearings in mm from the work's left and top edges as seen from the front, the solved wire, and what speaks against
 * the measures. Refuses as the method does, naming the measure (`back.data.left.drop`).
 */
export function backAlone(question: BackQuestion): BackAlone {
  const { work, seenFrom } = question
  const method = methodOf(question.method)
  const { bearings, spacing, spacingFromInsets, wire, findings, cautions, figures } = useFromFront(
    question.data,
    seenFrom,
    work.width,
    back =>
      method.answer(back, {
        work,
        centre: { x: work.width / 2, y: work.height / 2 },
        wall: {
          length: work.width,
          height: work.height,
          wallType: '',
          datum: null,
          floor: [],
          skirting: null,
          studFirst: null,
          studSpacing: null,
          backingFrom: 0,
          backingTo: work.height,
          openings: [],
          keepClears: [],
        },
        hooksApart: question.hooksApart ?? null,
        keeper: null,
        fixing: { name: 'fixing', kind: method.fixings[0] ?? 'hook', holeOffset: 0, ratedKg: null },
        rules: { ...defaultHangRules, ...question.rules },
        placed: false,
        sayKg: sayKgIn(question.unit ?? 'mm'),
        say: sayIn(question.unit ?? 'mm', question.steps ?? defaultSteps),
      }),
  )
  return { bearings, spacing, spacingFromInsets, wire, findings, cautions, figures: figures ?? [] }
}
