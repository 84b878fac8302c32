/** What the papers of condition are asked with, and how they write lengths. */
import type { Report } from '../contract/areas/condition-shape.ts'
import { formatBoth } from '../measure/format.ts'
import { type Side, sides } from '../record/condition/shape.ts'
import { faceOfSide } from '../record/condition/sides.ts'
import type { FaceDrawn } from './condition-face.ts'
import type { Units } from './figures.ts'
import type { Paper } from './shapes.ts'

/** Another report that this one names. */
export interface OtherReport {
  readonly kind: Report['kind']
  readonly examinedAt: string
}

export interface ReportQuestion {
  readonly report: Report
  /** The report that this one sets right, and the one that sets this right; null for none. */
  readonly corrects: OtherReport | null
  readonly correctedBy: OtherReport | null
  /** For a finding that goes on from an earlier one, what it goes on from, by its own id. */
  readonly follows: ReadonlyMap<string, OtherReport & { readonly number: number }>
  /** Whether a picture can be drawn, by its hash. */
  readonly shown: (hash: string) => boolean
  readonly units: Units
  readonly paper: Paper
  /** A moment in words. */
  readonly when: (at: string) => string
  /** Who made the paper when. */
  readonly made: string
}

/** A length as the paper's reader has it, the other system in brackets: `112 mm (4 7/16 in)`. */
export function lengthIn({ unit, steps }: Units): (mm: number) => string {
  return mm => formatBoth(mm, { unit, fraction: steps.fraction, decimals: unit === 'cm' ? 1 : 0 }).text
}

/** The first figures of a hash, in fours: enough to hold two papers against one another. */
export const hashShort = (hash: string) => (hash.slice(0, 16).match(/.{4}/g) ?? []).join(' ')

/** The sides that a report has something to draw on: besides the front those with findings, and a pictured back. */
export function sidesOf({ backPicture, findings }: Pick<Report, 'backPicture' | 'findings'>): readonly Side[] {
  const found = new Set(findings.map(({ side }) => side))
  return sides.filter(side => side === 'front' || found.has(side) || (side === 'back' && backPicture !== null))
}

/** A side of the work as it is drawn: its picture where one can be shown, else the back as it was measured. */
export function drawnSide(report: Report, side: Side, shown: (hash: string) => boolean): FaceDrawn {
  const { picture, backPicture, behind, opening, findings } = report
  const hash = side === 'front' ? picture : side === 'back' ? backPicture : null
  const pictured = hash !== null && shown(hash) ? hash : null
  return {
    ...(faceOfSide(report, side) ?? { width: report.width, height: report.height }),
    opening: side === 'frame' ? opening : null,
    findings: findings.filter(each => each.side === side),
    picture: pictured,
    behind: side === 'back' && pictured === null ? behind : null,
  }
}
