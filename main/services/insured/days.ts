/** Sums of a period, day by day, and which groups are over a limit in it. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { against } from '../../../src/insurance/limits.ts'
import { dateOf } from '../../../src/light/day.ts'
import type { Reading } from '../service.ts'
import { gather } from './gather.ts'
import { empty, head, sumsOf, told } from './told.ts'

export function daysTold(reading: Reading, input: Received<'insured.days'>): Output<'insured.days'> {
  const gathered = gather(reading, input)
  const { first, last, limits, limitsTold, into, places } = gathered
  const { group = 'all' } = input
  const sums = sumsOf(gathered)
  const own = new Map(sums.get(group)?.map(sum => [sum.day, sum]))
  const days = Array.from({ length: last - first + 1 }, (_, at) => {
    const sum = own.get(first + at) ?? empty(first + at)
    const held = against(limits, group, sum, into)
    const known = held.flatMap(({ minor }) => (minor === null ? [] : [minor]))
    const limit = known.length === 0 ? null : Math.min(...known)
    return { day: dateOf(sum.day), ...told(sum), limit, over: held.some(({ verdict }) => verdict === 'over') }
  })
  const over = [...sums].flatMap(([one, all]) =>
    limits.flatMap(limit => {
      const found = all.flatMap(sum => {
        const [held] = against([limit], one, sum, into)
        return held?.verdict === 'over' ? [{ day: sum.day, over: held.over }] : []
      })
      const [start] = found
      if (start === undefined) return []
      const { words } = places.groupWords(one)
      const source = limitsTold.get(limit.id)?.source ?? ''
      const most = Math.max(...found.map(each => each.over))
      return [{ group: one, words, source, day: dateOf(start.day), days: found.length, over: most }]
    }),
  )
  return {
    ...head(gathered),
    days,
    over: over.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : b.over - a.over)),
  }
}
