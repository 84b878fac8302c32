/** Terms of light, light in a year and ultraviolet, against what is planned and what a meter showed. */
import { daySaid } from '../../light/day.ts'
import { broken, holds, type LentWork, type TermTold, unknown } from './planned.ts'
import type { Term } from './term.ts'

const short = (value: number) => String(Math.round(value * 10) / 10)

/** A meter's word counts over the plan's: it may be broken by either, it holds by what there is. lx */
export function lightTerm({ high }: Term, { hung, reading }: LentWork): TermTold {
  const most = high ?? 0
  const planned = hung?.plannedLux ?? null
  if (reading !== null && reading.lux > most)
    return broken(
      `The meter showed ${short(reading.lux)} lx on ${daySaid(reading.day)}, ${short(reading.lux - most)} lx too much.`,
      {
        most,
        read: reading.lux,
      },
    )
  if (planned !== null && planned > most)
    return broken(`${hung?.wall ?? ''} is planned at ${short(planned)} lx, ${short(planned - most)} lx too much.`, {
      most,
      planned,
    })
  if (planned !== null) return holds(`${hung?.wall ?? ''} is planned at ${short(planned)} lx.`, { most, planned })
  if (reading !== null)
    return holds(`The meter showed ${short(reading.lux)} lx on ${daySaid(reading.day)}.`, { most, read: reading.lux })
  return unknown(
    hung === null
      ? 'It stands on no wall yet, and no meter has read it.'
      : `No level is planned for ${hung.wall}, and no meter has read it.`,
  )
}

/** Lux-hours of the fullest 365 days in a row. Hours of unknown level can only add to them. */
export function doseTerm({ high }: Term, { dose }: LentWork): TermTold {
  const most = high ?? 0
  if (dose === null) return unknown('No hours lit are known of it.')
  const figures = { most, dose: Math.round(dose.most) }
  if (dose.most > most)
    return broken(
      `Its fullest year has ${Math.round(dose.most)} lx h, ${Math.round(dose.most - most)} lx h too much.`,
      figures,
    )
  if (dose.unknownHours > 0)
    return unknown(
      `${short(dose.unknownHours)} hours lit at a level that nobody knows are not among its ${Math.round(dose.most)} lx h.`,
    )
  return holds(`Its fullest year has ${Math.round(dose.most)} lx h.`, figures)
}

/** µW/lm, by the newest reading of it alone: no plan says it. */
export function uvTerm({ high }: Term, { violet }: LentWork): TermTold {
  const most = high ?? 0
  if (violet === null) return unknown('No meter has read its ultraviolet.')
  const figures = { most, read: violet.uv }
  if (violet.uv > most)
    return broken(
      `The meter showed ${short(violet.uv)} µW/lm on ${daySaid(violet.day)}, ${short(violet.uv - most)} too much.`,
      figures,
    )
  return holds(`The meter showed ${short(violet.uv)} µW/lm on ${daySaid(violet.day)}.`, figures)
}
