/**
 * The hardware list right to the screw, for every hanging method: what the list counts is held against the marks, hole
 * by hole, on random works. Fixings per work: table "fixings per work" of the trade, from memory.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { hardwareOf } from '../../../src/crew/hardware.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import type { MarksAnswer } from '../../../src/hang/marks-shape.ts'
import { methodKeys } from '../../../src/hang/method-keys.ts'
import { hung } from '../hang/backs.ts'

/** The keeper has a name of its own, so that the list tells it from what carries. */
function answersOf(method: (typeof methodKeys)[number]): readonly MarksAnswer[] {
  return fc.sample(hung(method), { seed: 17, numRuns: 40 }).map(question => {
    const kind = method === 'security-hangers' ? 'lock' : 'screw'
    const keeper = { name: 'keeper', kind, holeOffset: 0, ratedKg: 10 } as const
    return marksFor({ ...question, keeper })
  })
}

/** How often each fixing goes into wall or rail, by the marks alone. */
function byMarks(answers: readonly MarksAnswer[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const mark of answers.flatMap(answer => answer.marks)) {
    if (mark.on === 'floor') continue
    counts.set(mark.fixing.name, (counts.get(mark.fixing.name) ?? 0) + 1)
  }
  return counts
}

describe.each(methodKeys.map(key => [key] as const))('%s', method => {
  const answers = answersOf(method)
  const made = hardwareOf(
    answers.map((answer, index) => ({
      id: `w${index}`,
      face: 'f',
      wallType: 'plywood',
      needs: answer.needs,
      fixings: [...new Set(answer.marks.map(mark => mark.fixing.name))],
      holes: answer.marks
        .filter(mark => mark.on === 'wall')
        .map(({ fixing, does, onStud, backed }) => ({
          fixing: fixing.name,
          kind: fixing.kind,
          keeps: does === 'keeps',
          onStud,
          backed,
        })),
      locks: answer.locks.length,
    })),
    [],
    0,
    1,
  )

  test('counts as many fixings as there are marks for them', () => {
    const counted = byMarks(answers)
    if (method === 'cleat') {
      // One pair a work; its wall part has as many screws as the edge shows.
      const screws = answers.reduce((sum, answer) => sum + (answer.cleat?.screws.length ?? 0), 0)
      expect(made.lines.find(line => line.what === 'cleat')?.needed).toBe(answers.length)
      expect(made.lines.find(line => line.what === 'screw for the wall part')?.needed ?? 0).toBe(screws)
      return
    }
    if (method === 'picture-rail') {
      // As many hooks as there are places on the rail: cables that run to one point share it.
      const hooks = answers.map(({ hangers }) => new Set(hangers.map(({ from }) => from.x.toFixed(3))).size || 2)
      expect(made.lines.find(line => line.what === 'rail hook')?.needed).toBe(
        hooks.reduce((sum, each) => sum + each, 0),
      )
      return
    }
    for (const [name, count] of counted) {
      expect([name, made.lines.find(line => line.what === name)?.needed ?? 0]).toEqual([name, count])
    }
  })

  test('counts its locks alike by register, marks and list', () => {
    expect(made.locks.agree).toBe(true)
    expect(made.locks.byMarks).toBe(method === 'security-hangers' ? answers.length : 0)
  })

  test('needs nothing less than once', () => {
    for (const line of made.lines) expect(line.needed).toBeGreaterThan(0)
  })
})
