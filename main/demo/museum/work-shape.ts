/** How a work of the demo is written down, so that its data read as a checklist does. */
import type { Input } from '../../../src/contract/contract.ts'
import type { Medium } from '../pictures/media.ts'
import type { PaletteName } from '../pictures/palettes.ts'
import type { SceneName } from '../pictures/render.ts'
import type { Way } from './backs.ts'
import type { FixingKey } from './fixings.ts'
import type { LenderKey, makers } from './house.ts'

export type NumberKind = Input<'work.addNumber'>['kind']

export type Known = Partial<
  Record<
    | 'objectName'
    | 'titleTranslation'
    | 'titleLanguage'
    | 'inscriptions'
    | 'subject'
    | 'description'
    | 'placeOfOrigin'
    | 'distinguishing'
    | 'department',
    string
  >
>

export interface DemoWork {
  readonly key: string
  /** Index of the section. */
  readonly section: 0 | 1 | 2 | 3
  readonly title: string
  readonly maker: keyof typeof makers
  readonly date: string
  readonly medium: string
  readonly kind: NonNullable<Input<'work.add'>['kind']>
  readonly lender: LenderKey
  /** The owner's own number: permanent for the house's works, the lender's number for others. */
  readonly number: string
  readonly more?: readonly (readonly [NumberKind, string])[]
  /** Canvas, sheet or cloth, as the picture shows it: height × width, mm. */
  readonly image: readonly [height: number, width: number]
  /** With its frame: height × width × depth, mm; null where it hangs without one. */
  readonly framed: readonly [height: number, width: number, depth: number] | null
  /** Out from the wall, of what hangs or stands without a frame, mm. */
  readonly depth?: number
  /** What the list said of the frame, where the tape says otherwise. */
  readonly listed?: readonly [height: number, width: number, depth: number]
  /** Whether somebody has been at it with a tape. */
  readonly measured: boolean
  readonly kg: number | null
  readonly weighed?: boolean
  readonly glazing: 'none' | 'glass' | 'acrylic' | 'laminated'
  readonly lux: number | null
  readonly sensitivity: 'high' | 'medium' | 'low' | 'none'
  readonly hangs: Way | null
  readonly fixing?: FixingKey
  /** What keeps it besides, and the tool that opens it. */
  readonly keeper?: FixingKey
  readonly lockTool?: string
  readonly picture: readonly [medium: Medium, scene: SceneName, palette: PaletteName]
  /** What it is known by, of the facts that have no place of their own here. */
  readonly known?: Known
  readonly note?: string
  readonly handling?: string
  readonly loanTerms?: string
  readonly notBeside?: string
}
