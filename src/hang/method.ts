/**
 * What a hanging method is. A method is one file: what is measured on the back and in which words a form asks for it,
 * where a drawing of the back shows each measure, where the work bears, what must be bought, what can go wrong and what
 * can still be put right. A new method is one such file and one line in `methods.ts`.
 *
 * Everything a method sees is as seen from the FRONT; `mirrorBack` in `back.ts` has turned it round before. For that,
 * its schema uses these names at any depth: `left` and `right` for what comes in pairs or is measured from that edge,
 * the words `left` and `right` for a side that is chosen, `ranges` for stretches `{from, to}` from the left edge.
 */
import type * as z from 'zod'
import type { Point } from '../geometry/rect.ts'
import { readBack } from './back.ts'
import type { FixingShape } from './fixing-shapes.ts'
import type { WallFacts } from './wall.ts'
import type { WireAnswer } from './wire.ts'

export interface WorkSize {
  readonly height: number
  readonly width: number
}

/** The work as it hangs: outer size with frame, mass, and where its mass is, from the left edge seen from the front. */
export interface WorkFacts extends WorkSize {
  readonly depth?: number | null | undefined
  readonly mass?: number | null | undefined
  readonly massFromLeft?: number | null | undefined
}

/** One kind of fixing. A row of the catalogue's fixings can be passed as it is. */
export interface Fixing {
  readonly name: string
  readonly kind: FixingShape
  /** From bearing point to hole, up positive: +k for a nail hook, −radius for a shank, +q for a cleat's edge. */
  readonly holeOffset: number
  /** kg as the maker says for a stated wall type; null where nobody has said. */
  readonly ratedKg: number | null
  readonly wallType?: string | undefined
  readonly shank?: number | null | undefined
  readonly length?: number | null | undefined
  /** Diameter of its head, for a slot that it must pass. */
  readonly head?: number | null | undefined
}

/** One measure on the back, for a form. `path` leads to its value in the method's data. */
export interface BackField {
  readonly path: readonly (string | number)[]
  readonly label: string
  readonly hint: string
  /** `number` is a plain figure in the unit that the field names, such as `g/m²`. */
  readonly kind: 'length' | 'mass' | 'count' | 'number' | 'choice'
  readonly unit?: string
  readonly choices?: readonly { readonly value: string; readonly label: string }[]
  readonly required: boolean
}

/**
 * A drawing of the back, seen from the side that the data was measured from (left is left as measured), mm from the
 * work's left and top edges, y down. It draws what is there: half-typed data gives the usual places and no values.
 */
export interface BackDrawing {
  readonly rings: readonly Point[]
  readonly lines: readonly {
    readonly kind: 'wire' | 'bar' | 'cleat' | 'plate' | 'shelf'
    readonly points: readonly Point[]
  }[]
  readonly blocks: readonly { readonly kind: 'brace'; readonly from: number; readonly to: number }[]
  /** Dimension lines: each is one field, drawn from a to b, so that a person types where the measure is. */
  readonly dimensions: readonly {
    readonly path: readonly (string | number)[]
    readonly from: Point
    readonly to: Point
    readonly value: number | null
  }[]
}

/** How a method is asked for its marks. */
export interface HangQuestion {
  readonly work: WorkFacts
  /** Centre of the work on the wall. */
  readonly centre: Point
  readonly wall: WallFacts
  /** Between the hooks or nails where the method leaves that free; 0 one hook; null the method's own choice. */
  readonly hooksApart: number | null
  readonly fixing: Fixing
  /** What keeps the work where it hangs (a lock, a plate's screw); null where nobody has chosen it or nothing does. */
  readonly keeper: Fixing | null
  readonly rules: HangRules
  /** False while a back is looked at before it has a place: nothing is said of a wall then. */
  readonly placed: boolean
  /** A mass in the reader's unit, for sentences. */
  readonly sayKg: (kg: number) => string
  /** A length in the reader's unit, for sentences. */
  readonly say: (mm: number) => string
}

/** House rules of hanging; what each says, its default and its source stand in `src/model/house-rules.ts`. */
export interface HangRules {
  /** share × factor ≤ rating. */
  readonly houseFactor: number
  /** Wire legs under this angle pull too hard; degrees. */
  readonly leastWireAngle: number
  /** A wire this far below the top edge hides its hooks. */
  readonly hookHidden: number
  /** Drops or spacings that differ by more than this are measured again. */
  readonly measureTolerance: number
  readonly dropTolerance: number
  /** Fraction of the width in from each side, for nails under a stretcher bar. */
  readonly nailsIn: number
  readonly clearOfBrace: number
  /** How much shorter the wall part of a cleat is, and how far its screws are apart at most. */
  readonly cleatShorter: number
  readonly screwsApart: number
  readonly markFromEnd: number
  /** To the side of a switch or outlet, for its cable. */
  readonly besideService: number
  /** Thickness of a wall's face, and how much a nail or screw finds behind it at least. */
  readonly boardFace: number
  readonly plasterFace: number
  readonly leastBehind: number
  /** Beyond either, two people or more. */
  readonly onePersonKg: number
  readonly onePersonSize: number
  /** Beyond it only by a lifting plan. */
  readonly liftingPlanKg: number
}

export interface Bearing {
  readonly side: 'left' | 'middle' | 'right'
  /** It carries the work, or only keeps it where it hangs: a lock, a plate's screw. Only what carries shares the load. */
  readonly does: 'carries' | 'keeps'
  /** What a person calls the mark where `left mark` does not say it, such as `lock`; else null. */
  readonly name: string | null
  /** Where its fixing goes: into the wall, over the rail, or it stands on the floor. Only the wall gets a hole. */
  readonly on: 'wall' | 'rail' | 'floor'
  /** Seen from the front. */
  readonly fromLeft: number
  /** Below the top edge; of a thing measured from the bottom edge, the height less that measure. */
  readonly drop: number
  /** Which edge it was measured from, and so how the working is written. */
  readonly from: 'top' | 'bottom'
}

export interface PlainFinding {
  readonly severity: 'stop' | 'settle' | 'fits'
  readonly code: string
  readonly text: string
  readonly figures: Readonly<Record<string, number | string | boolean | null>>
}

/** A term of a sum shown line by line. A plain number carries no unit, such as the 2 of "910 / 2". */
export type Term =
  | { readonly op: '+' | '−'; readonly mm: number }
  | { readonly op: '+' | '−'; readonly mm: number; readonly over: number }
  | { readonly op: '+' | '−'; readonly mm: number; readonly times: number }

export interface PlainStep {
  readonly key: string
  readonly label: string
  readonly terms: readonly Term[]
  readonly value: number
}

/** A need for the hardware list: what goes into the wall, what goes with the work, and tools that a team has once. */
export interface Need {
  readonly what: string
  readonly count: number
  readonly per: 'wall' | 'work' | 'team'
}

/** Anything else a method works out, shown with its unit under the marks: a cable's length, a tipping angle. */
export interface PlainFigure {
  readonly key: string
  readonly label: string
  readonly value: number
  readonly unit: 'mm' | 'kg' | 'N' | 'Nm' | '°' | 'kg/m' | 'kg/m²' | ''
  /** How it came about, in words or as a formula with its figures; empty where the label says it. */
  readonly working: string
}

/** A lock, by the name of its mark. */
export interface Lock {
  readonly name: string
  readonly type: string
  readonly tool: string
  /** The side of the work that its tool comes in from. */
  readonly from: 'below' | 'left' | 'right'
  /** What must stay free on that side for the tool; null where nobody measured it. mm. */
  readonly room: number | null
}

/** A cable, rod or chain on the wall, from where it hangs to what it holds. Points of the wall's plane. */
export interface Hanger {
  readonly from: Point
  readonly to: Point
  readonly length: number
}

/**
 * A section through wall, fixing and frame, mm: x out of the wall from its face (the wall is negative), y up from the
 * bearing point. Drawn to scale from what was measured; what was not stands at its usual size.
 */
export interface SectionDrawing {
  readonly parts: readonly {
    readonly kind: 'frame' | 'bar' | 'hanger' | 'fixing' | 'wire' | 'spacer' | 'work' | 'shelf'
    readonly points: readonly Point[]
    readonly closed: boolean
  }[]
  readonly dimensions: readonly {
    readonly label: string
    readonly from: Point
    readonly to: Point
    readonly value: number | null
  }[]
  /** Where the fixing meets the work, and where it goes into the wall. */
  readonly bearing: Point
  readonly hole: Point | null
}

/** The wall part of a cleat: a level edge from x to x, with its screws along it. */
export interface CleatEdge {
  readonly from: number
  readonly to: number
  readonly sidePlay: number
  readonly screws: readonly { readonly x: number; readonly onStud: boolean }[]
}

export interface MethodAnswer {
  readonly bearings: readonly Bearing[]
  /** Measured between the hangers; null where only the insets were measured. */
  readonly spacing: number | null
  /** The same from the insets and the width; null where they were not measured. */
  readonly spacingFromInsets: number | null
  readonly wire: WireAnswer | null
  readonly cleat: CleatEdge | null
  /** x of what carries, from the work's left edge, when it is not the bearing points themselves. */
  readonly carriers: readonly number[]
  /** What the fixings carry where it is not just the work: a shelf with it, a sheet by its weight. */
  readonly carried?: { readonly mass: number | null; readonly massAt: number }
  readonly locks?: readonly Lock[]
  /** How the load is shared: by moments about the mass, or each the same (a wire slides until it is). */
  readonly sharing: 'moments' | 'even'
  readonly steps: readonly PlainStep[]
  readonly figures?: readonly PlainFigure[]
  readonly hangers?: readonly Hanger[]
  readonly findings: readonly PlainFinding[]
  readonly needs: readonly Need[]
  readonly cautions: readonly string[]
}

/** A method as the rest of the program sees it: its data is checked inside. */
export interface HangMethod {
  readonly key: string
  readonly name: string
  /** One sentence: how such a work hangs. */
  readonly does: string
  /** What is measured, as seen from the front. */
  readonly schema: z.ZodType
  readonly fields: readonly BackField[]
  /** Fixings that suit it, best first; empty where nothing is fixed to a wall. */
  readonly fixings: readonly FixingShape[]
  /** Shapes of what keeps the work, besides what carries it; empty where the method has no such part. */
  readonly keepers: readonly FixingShape[]
  /** What can still be put right when the work hangs. */
  readonly adjust: readonly string[]
  /** How exact it is in practice. */
  readonly accuracy: string
  /** How it comes down again, step by step. */
  readonly comesDown: readonly string[]
  /** Minutes for two technicians, least and most, without its share of the wall's set-up. From memory; a house rule. */
  readonly minutes: readonly [number, number]
  /** A section through wall, fixing and frame, from half-typed data too. */
  readonly section: (
    data: unknown,
    work: WorkSize & { readonly depth?: number | null },
    fixing: Fixing,
  ) => SectionDrawing
  readonly draw: (data: unknown, work: WorkSize) => BackDrawing
  /** Throws a `Refusal` for data that its schema or its geometry refuses. */
  readonly answer: (data: unknown, question: HangQuestion) => MethodAnswer
}

interface MethodOf<S extends z.ZodType> extends Omit<HangMethod, 'schema' | 'answer'> {
  readonly schema: S
  readonly answer: (data: z.output<S>, question: HangQuestion) => MethodAnswer
}

/** Makes a method from its typed parts: what reaches `answer` has passed the schema. */
export function defineMethod<S extends z.ZodType>(parts: MethodOf<S>): HangMethod {
  return { ...parts, answer: (data, question) => parts.answer(readBack(parts.schema, data, parts.fields), question) }
}
