/** Each rule of hanging: a mark or a finding follows it, and would not if the rule went unread. */
import { describe, expect, test } from 'vitest'
import { marksFor } from '../../../src/hang/marks.ts'
import type { MarksQuestion } from '../../../src/hang/marks-shape.ts'
import type { HangRules } from '../../../src/hang/method.ts'
import { defaultHangRules } from '../../../src/hang/rules.ts'
import { plainWall, question } from './sample.ts'

const codes = (asked: MarksQuestion, rules: Partial<HangRules> = {}) =>
  marksFor({ ...asked, rules }).findings.map(found => found.code)

const back = (method: string, data: MarksQuestion['back']['data']): MarksQuestion['back'] => ({
  method,
  seenFrom: 'front',
  data,
})

const side = { drop: 180, inset: 105 }
/** Rings 500 apart, 540 of wire: legs of 28.1° on hooks 200 apart, the wire 100 below the top. */
const onWire = question({
  work: { height: 640, width: 710, mass: 11 },
  back: back('wire', { left: side, right: side, wire: { by: 'length', length: 540 } }),
  hooksApart: 200,
})
const onBar = question({
  work: { height: 900, width: 1200, mass: 6 },
  back: back('stretcher-bar', { left: { bar: 19 }, right: { bar: 19 }, ranges: [{ from: 395, to: 450 }] }),
  fixings: [{ name: 'Nail', kind: 'nail', holeOffset: -1.5, ratedKg: 10, shank: 3 }],
})
const onCleat = question({
  back: back('cleat', { drop: 120, length: 600 }),
  fixings: [{ name: 'Cleat', kind: 'cleat', holeOffset: 0, ratedKg: 60 }],
})
const uneven = question({
  back: back('d-rings', { left: { drop: 140, inset: 55 }, right: { drop: 143, inset: 55 }, spacing: 602 }),
})

describe('a rule of hanging is followed:', () => {
  test('the least angle of a wire', () => {
    expect(codes(onWire)).toContain('wire-flat')
    expect(codes(onWire, { leastWireAngle: 28 })).not.toContain('wire-flat')
    const flat = marksFor({ ...onWire, rules: { leastWireAngle: 40 } }).findings.find(one => one.code === 'wire-flat')
    expect(flat?.text).toContain('give 40.0°')
    expect(flat?.figures.least).toBe(40)
  })

  test('how far below the top edge a wire hides its hooks', () => {
    expect(codes(onWire)).not.toContain('hook-shows')
    expect(codes(onWire, { hookHidden: 101 })).toContain('hook-shows')
  })

  test('how far two ways to one spacing may differ', () => {
    // 710 − 55 − 55 is 600 and 602 was measured.
    expect(codes(uneven)).toContain('spacing-differs')
    expect(codes(uneven, { measureTolerance: 2 })).not.toContain('spacing-differs')
    expect(marksFor(uneven).spacing?.agrees).toBe(false)
    expect(marksFor({ ...uneven, rules: { measureTolerance: 2 } }).spacing?.agrees).toBe(true)
  })

  test('how far two drops may differ, and the floor be off level', () => {
    expect(codes(uneven)).toContain('drops-differ')
    expect(codes(uneven, { dropTolerance: 3 })).not.toContain('drops-differ')
    const sloping = question({
      wall: {
        ...plainWall,
        floor: [
          [0, 0],
          [4734, 20],
        ],
      },
    })
    expect(codes(sloping)).toContain('floor-slopes')
    expect(codes(sloping, { dropTolerance: 10 })).not.toContain('floor-slopes')
  })

  test('how far in nails stand under a bar, and how far from a brace', () => {
    const fromLeft = (rules: Partial<HangRules>) =>
      marksFor({ ...onBar, rules }).marks.map(mark => Math.round(mark.fromLeft * 10) / 10)
    // A third of 1 200 is 400, within the brace at 395: 10 and half of 3 before it.
    expect(fromLeft({})).toEqual([383.5, 800])
    expect(fromLeft({ clearOfBrace: 20 })).toEqual([373.5, 800])
    expect(fromLeft({ nailsIn: 1 / 4 })).toEqual([300, 900])
    expect(codes(onBar)).toContain('nail-moved-off-brace')
    expect(codes(onBar, { nailsIn: 1 / 4 })).not.toContain('nail-moved-off-brace')
  })

  test('how much shorter the wall part of a cleat is, and how far its screws are apart', () => {
    const cleat = (rules: Partial<HangRules>) => marksFor({ ...onCleat, rules }).cleat
    const length = (rules: Partial<HangRules>) => (cleat(rules)?.to ?? 0) - (cleat(rules)?.from ?? 0)
    expect(length({})).toBeCloseTo(600 - 19.05, 9)
    expect(length({ cleatShorter: 25.4 })).toBeCloseTo(600 - 25.4, 9)
    expect(cleat({ cleatShorter: 25.4 })?.sidePlay).toBeCloseTo(12.7, 9)
    // 530.95 between the outer screws: in fifths under 127 apart, in thirds under 180.
    expect(cleat({})?.screws).toHaveLength(6)
    expect(cleat({ screwsApart: 180 })?.screws).toHaveLength(4)
  })

  test('how far a hole stays from the end of a wall, and beside a switch', () => {
    const near = question({ centre: { x: 355 - 30, y: 1480 } })
    // The left ring is 25 in from a left edge at −30.
    expect(codes(near)).not.toContain('mark-near-end')
    expect(codes(near, { markFromEnd: 26 })).toContain('mark-near-end')
    const beside = question({
      wall: {
        ...plainWall,
        keepClears: [
          { id: 's', kind: 'switch', label: '', reason: '', x: 2097, y: 1000, width: 80, height: 80, margin: 0 },
        ],
      },
    })
    // The left hole is at 2 367 − 355 + 55 = 2 067, 30 beside the switch.
    expect(codes(beside)).not.toContain('mark-in-line-with-services')
    expect(codes(beside, { besideService: 30 })).toContain('mark-in-line-with-services')
  })

  test('how thick the face of a wall is, and how much a screw finds behind it', () => {
    const screwed = (wallType: string) =>
      question({
        wall: { ...plainWall, wallType, backingFrom: 0, backingTo: 4000 },
        fixings: [{ name: 'Screw', kind: 'screw', holeOffset: 0, ratedKg: 20, length: 32 }],
      })
    // 32 − 12.7 is 19.3 behind a board, 32 − 22 is 10 behind plaster; wanted are 18.
    expect(codes(screwed('drywall'))).not.toContain('fixing-too-short')
    expect(codes(screwed('drywall'), { boardFace: 15 })).toContain('fixing-too-short')
    expect(codes(screwed('drywall'), { leastBehind: 20 })).toContain('fixing-too-short')
    expect(codes(screwed('plaster'))).toContain('fixing-too-short')
    expect(codes(screwed('plaster'), { plasterFace: 14 })).not.toContain('fixing-too-short')
    expect(codes(screwed('concrete'))).not.toContain('fixing-too-short')
  })

  test('the factor on what a fixing is rated for', () => {
    const loads = (rules: Partial<HangRules>) => codes(question({}), rules)
    // 9.5 kg on two: 4.75 each, times 4 is 19 of 22.7.
    expect(loads({})).toContain('load-holds')
    expect(loads({ houseFactor: 5 })).toContain('load-exceeds')
  })

  test('what one person carries alone', () => {
    const said = (rules: Partial<HangRules>) =>
      marksFor(question({ rules })).cautions.find(caution => caution.startsWith('Two people or more'))
    expect(said({})).toBeUndefined()
    expect(said({ onePersonKg: 9 })).toContain('heavier than 9 kg')
    expect(said({ onePersonSize: 900 })).toContain('larger than 0.9 m')
  })

  test('what nobody lifts without a plan', () => {
    const said = (rules: Partial<HangRules>) => marksFor(question({ rules })).cautions.join(' ')
    expect(said({})).not.toContain('lifting plan')
    expect(said({ liftingPlanKg: 9 })).toContain('Above 9 kg a competent person makes the lifting plan.')
  })

  test('and there is no rule of hanging that this page forgot', () => {
    const tried = ['leastWireAngle', 'hookHidden', 'measureTolerance', 'dropTolerance', 'nailsIn', 'clearOfBrace']
    tried.push('cleatShorter', 'screwsApart', 'markFromEnd', 'besideService', 'houseFactor')
    tried.push('onePersonKg', 'onePersonSize', 'boardFace', 'plasterFace', 'leastBehind', 'liftingPlanKg')
    expect(Object.keys(defaultHangRules).sort()).toEqual(tried.sort())
  })
})
