import { describe, expect, test } from 'vitest'
import { marksFor } from '../../../src/hang/marks.ts'
import { ratingOn, ratingToAsk } from '../../../src/hang/rating.ts'
import type { WallFacts } from '../../../src/hang/wall.ts'
import { ceilingAt, studsBetween, toNearestJoint, toNearestStud } from '../../../src/hang/wall.ts'
import { hook, plainWall, question, screw } from './sample.ts'

// Left mark at 2 067, right at 2 667, holes at 1 809.
const marksOn = (wall: Partial<WallFacts>, fixing = { ...hook, ratedKg: null as number | null }) =>
  marksFor(question({ wall: { ...plainWall, ...wall }, fixings: [fixing] }))
const found = (wall: Partial<WallFacts>, code: string) => marksOn(wall).findings.filter(one => one.code === code)

describe('what is behind a mark', () => {
  test('studs found one by one stand in place of the comb', () => {
    const wall = { ...plainWall, studFirst: 0, studSpacing: 400, studs: [2700, 2060] }
    expect(studsBetween(wall, 0, 9140)).toEqual([2060, 2700])
    expect(toNearestStud(wall, 2067)).toBe(-7)
    const { marks } = marksOn(wall)
    expect(marks.map(mark => mark.onStud)).toEqual([true, false])
    expect(marks.map(mark => mark.toStud)).toEqual([-7, 33])
  })

  test('a mark between studs says which, and the way to the nearest', () => {
    const [one] = found({ studs: [2060, 2600, 2700] }, 'mark-off-backing')
    expect(one?.figures).toMatchObject({ side: 'right', toStud: 33, studBefore: 2600, studAfter: 2700 })
    expect(one?.text).toContain('between the studs at 2\u2009600 mm and 2\u2009700 mm')
  })

  test('nearer than the rule to a joint', () => {
    expect(toNearestJoint({ joints: [1220, 2440] }, 2067)).toBe(373)
    const [one, ...more] = found({ joints: [2085] }, 'mark-near-joint')
    expect(more).toEqual([])
    expect(one?.figures).toEqual({ side: 'left', toJoint: 18, joint: 2085, least: 25 })
    expect(found({ joints: [2067 + 25] }, 'mark-near-joint')).toEqual([])
  })

  test('over a ceiling that falls, under the skirting on a floor that rises', () => {
    const ceiling = [
      [0, 3000],
      [9140, 0],
    ] as const
    expect(ceilingAt({ ceiling, height: 3450 }, 4570)).toBe(1500)
    expect(ceilingAt({ height: 3450 }, 4570)).toBe(3450)
    const over = found({ ceiling: [[0, 1800]] }, 'mark-over-ceiling')
    expect(over.map(one => one.figures.over)).toEqual([9, 9])
    expect(over[0]?.severity).toBe('stop')
    const floor = [
      [2000, 0],
      [3000, 1000],
    ] as const
    // Floor 67 and 667 under the marks.
    const low = found({ floor, skirting: 1200 }, 'mark-on-skirting')
    expect(low.map(one => one.figures)).toEqual([{ side: 'right', height: 1809 - 667, skirting: 1200 }])
  })
})

describe('the rating that counts', () => {
  const ratings = [
    { wallType: 'brick', ratedKg: 8, source: 'packet' },
    { wallType: 'plaster', ratedKg: null, source: 'packet: not in plaster' },
  ]
  test('its own wall’s, else one for any wall, else none', () => {
    expect(ratingOn({ ratedKg: 20, wallType: 'drywall', ratings }, 'brick')).toEqual({ ratedKg: 8, wallType: 'brick' })
    expect(ratingOn({ ratedKg: 20, wallType: 'drywall', ratings }, 'drywall').ratedKg).toBe(20)
    expect(ratingOn({ ratedKg: 20, wallType: '', ratings }, 'concrete').ratedKg).toBe(20)
    expect(ratingOn({ ratedKg: 20, wallType: '', ratings }, 'plaster').ratedKg).toBeNull()
    expect(ratingOn({ ratedKg: 20, wallType: 'drywall', ratings }, 'concrete')).toEqual({
      ratedKg: null,
      wallType: 'drywall',
    })
    expect(ratingOn({ ratedKg: null, ratings }, 'concrete')).toEqual({ ratedKg: null, wallType: 'brick' })
    expect(ratingToAsk({ ratedKg: null, ratings }, 'concrete')).toEqual({ ratedKg: 8, wallType: 'brick' })
    expect(ratingToAsk({ ratedKg: 20, wallType: '', ratings }, 'plaster').ratedKg).toBeNull()
    expect(ratingToAsk({ ratedKg: null }, 'brick')).toEqual({ ratedKg: null, wallType: '' })
  })

  test('a rating for another wall never passes a load', () => {
    const answer = marksOn({ wallType: 'brick' }, { ...hook, wallType: 'drywall' })
    const codes = answer.findings.map(one => one.code)
    expect(codes).toContain('rating-other-wall')
    expect(codes).not.toContain('load-holds')
    expect(answer.loads?.holds).toBeNull()
    expect(answer.findings.find(one => one.code === 'rating-other-wall')?.figures).toEqual({
      ratedFor: 'drywall',
      wall: 'brick',
      neededKg: 19,
    })
    expect(marksOn({}, { ...hook, wallType: 'drywall' }).loads?.holds).toBe(true)
  })

  test('a screw that is too short for what is behind the face', () => {
    const short = marksOn({ studs: [2067, 2667] }, { ...screw, length: 30 })
    expect(short.findings.filter(one => one.code === 'fixing-too-short').map(one => one.figures)).toEqual([
      { side: 'left', length: 30, face: 12.7, behind: 30 - 12.7, least: 18 },
    ])
    for (const length of [31, 60]) {
      const codes = marksOn({ studs: [2067, 2667] }, { ...screw, length }).findings.map(one => one.code)
      expect(codes).not.toContain('fixing-too-short')
    }
    // Nothing behind it to reach.
    expect(marksOn({}, { ...screw, length: 30 }).findings.map(one => one.code)).not.toContain('fixing-too-short')
  })
})
