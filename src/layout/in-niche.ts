/** A work at the back of a niche: how deep that is, how far the work stays behind the wall or stands out of it, its room. */
import type { Finding } from '../contract/shared.ts'
import { right, top } from '../geometry/rect.ts'
import type { Opening } from '../hang/wall.ts'
import type { DeepRect } from './standing-out.ts'

type Say = (mm: number) => string
const SLACK = 1e-6

interface NicheRules {
  /** Room for a hand between the work and the sides, as between two works. */
  readonly minimumGap: number
  readonly liftOn: number
}

/** Findings of a work that lies wholly within the niche. mm. */
export function nicheFindings(
  work: DeepRect,
  niche: Opening,
  called: string,
  rules: NicheRules,
  say: Say,
): readonly Finding[] {
  const about = (severity: Finding['severity'], code: string, text: string, figures: Finding['figures']): Finding => ({
    severity,
    code,
    subject: { kind: 'placement', id: work.id },
    text,
    figures: { opening: niche.id, ...figures },
  })
  const sides = [
    { side: 'left', margin: work.x - niche.x },
    { side: 'right', margin: right(niche) - right(work) },
  ]
    .filter(({ margin }) => margin < rules.minimumGap - SLACK)
    .map(({ side, margin }) =>
      about(
        'settle',
        'near-niche-side',
        `${work.name} is ${say(Math.max(0, margin))} from the ${side} side of the ${called}; a hand wants ${say(rules.minimumGap)}, as between two works.`,
        { side, margin, least: rules.minimumGap },
      ),
    )
  const free = Math.max(0, top(niche) - top(work))
  const lift =
    free < rules.liftOn - SLACK
      ? [
          about(
            'settle',
            'no-room-to-lift-on',
            `${work.name} has ${say(free)} above it in the ${called}; lifting it on takes ${say(rules.liftOn)}.`,
            { free, liftOn: rules.liftOn },
          ),
        ]
      : []
  const depth = niche.depth ?? null
  return [
    ...sides,
    ...lift,
    about(
      'fits',
      'in-niche',
      `${work.name} hangs at the back of the ${called}${deepSaid(depth, work.depth ?? null, say)}.`,
      {
        depth,
        workDepth: work.depth ?? null,
      },
    ),
  ]
}

function deepSaid(niche: number | null, work: number | null, say: Say): string {
  if (niche === null) return '; how deep that is nobody has measured'
  const deep = `, ${say(niche)} deep`
  if (work === null) return deep
  const behind = niche - work
  if (Math.abs(behind) <= SLACK) return `${deep}, and is flush with the wall`
  return behind > 0
    ? `${deep}, and stays ${say(behind)} behind the wall`
    : `${deep}, and stands ${say(-behind)} out of it`
}
