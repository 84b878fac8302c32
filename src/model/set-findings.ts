/** What the parts of a set leave to settle, apart from any wall. */
import type { SetFacts } from '../contract/areas/sets.ts'
import type { Finding } from '../contract/shared.ts'
import { laySet } from '../layout/set.ts'
import type { SetAnswer } from '../layout/set-shape.ts'
import { letterOf } from './parts-of-set.ts'

export interface SizedPart {
  readonly work: string
  readonly title: string
  /** Outer size, mm. */
  readonly size: { readonly width: number; readonly height: number } | null
}

/** The set laid both ways; null while a part has no size, or where nothing differs. */
export function bothWays(
  facts: SetFacts,
  parts: readonly SizedPart[],
): { readonly gaps: SetAnswer; readonly centres: SetAnswer } | null {
  if (parts.length === 0 || parts.some(part => part.size === null)) return null
  const sizes = parts.map(({ work, size }) => ({ id: work, width: size?.width ?? null, height: size?.height ?? null }))
  const gaps = laySet({ ...facts, keeps: 'gaps', parts: sizes })
  return gaps.differ ? { gaps, centres: laySet({ ...facts, keeps: 'centres', parts: sizes }) } : null
}

/** One way in words and figures: how far apart the gaps, or the centres, are then. */
export function saysOf({ gapsX, gapsY, centresX, centresY, width, height }: SetAnswer, say: (mm: number) => string) {
  const span = (one: SetAnswer['gapsX']) =>
    one === null ? '' : one.most - one.least < 0.05 ? say(one.least) : `${say(one.least)} to ${say(one.most)}`
  const both = (x: SetAnswer['gapsX'], y: SetAnswer['gapsX']) =>
    [x === null ? '' : `${span(x)} along`, y === null ? '' : `${span(y)} down`].filter(text => text !== '').join(', ')
  return {
    gaps: both(gapsX, gapsY),
    centres: both(centresX, centresY),
    size: `${say(height)} × ${say(width)}`,
  }
}

export function setFindings(
  set: string,
  facts: SetFacts,
  parts: readonly SizedPart[],
  say: (mm: number) => string,
): Finding[] {
  const subject = { kind: 'work', id: set }
  const sizeless = parts.flatMap((part, index) =>
    part.size === null ? [[letterOf(index), part.title].filter(text => text !== '').join(', ')] : [],
  )
  if (sizeless.length > 0) {
    const text = `A part of the set has no size yet: ${sizeless.join('; ')}. Measure it with its frame.`
    return [{ severity: 'settle', code: 'part-without-size', subject, text, figures: { parts: sizeless.length } }]
  }
  if (facts.keeps !== '') return []
  const ways = bothWays(facts, parts)
  if (ways === null) return []
  const [gaps, centres] = [saysOf(ways.gaps, say), saysOf(ways.centres, say)]
  const text = `Parts differ in size. Keep the gaps (${gaps.gaps}; centres ${gaps.centres}), or keep the centres (${centres.centres}; gaps ${centres.gaps})? Until somebody says, the gaps are kept.`
  return [
    {
      severity: 'settle',
      code: 'set-keeps-unsaid',
      subject,
      text,
      figures: {
        width: ways.gaps.width,
        height: ways.gaps.height,
        orWidth: ways.centres.width,
        orHeight: ways.centres.height,
      },
    },
  ]
}
