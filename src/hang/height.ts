/**
 * Which height a work hangs to. Each rule names one point of the work and the height it comes to, above the floor at
 * x = 0: its centre, its top, its bottom, or the point a fraction of its height below its top where the eye shall fall.
 */
export type HeightRuleName = 'centre' | 'top' | 'bottom' | 'eye' | 'hand'

export interface HeightRule {
  readonly rule: HeightRuleName
  /** Height of the rule's point. By hand: of the centre. */
  readonly y: number
  /** For `eye`: the fraction of the height below the top; 1/2 is the centre. */
  readonly eyeFraction?: number | null | undefined
}

/** Height of the centre that a rule gives. `E + f H` is the top edge, so the centre is `E + (f − 1/2) H`. */
export function centreFromRule(rule: HeightRule, height: number): number {
  switch (rule.rule) {
    case 'top':
      return rule.y - height / 2
    case 'bottom':
      return rule.y + height / 2
    case 'eye':
      return rule.y + ((rule.eyeFraction ?? 0.5) - 0.5) * height
    default:
      return rule.y
  }
}

/** The rule's own height for a centre that is given: the way back. */
export function ruleFromCentre(rule: HeightRuleName, centreY: number, height: number, eyeFraction = 0.5): HeightRule {
  switch (rule) {
    case 'top':
      return { rule, y: centreY + height / 2 }
    case 'bottom':
      return { rule, y: centreY - height / 2 }
    case 'eye':
      return { rule, y: centreY - (eyeFraction - 0.5) * height, eyeFraction }
    default:
      return { rule, y: centreY }
  }
}
