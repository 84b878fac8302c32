/** Bad measures: each is refused or found with what is wrong and what to measure again, and names its field. */
import { describe, expect, test } from 'vitest'
import { marksFor } from '../../../src/hang/marks.ts'
import { ask, codes, found, refused } from './ask.ts'
import { hook, question } from './sample.ts'

const rings = { left: { drop: 150, inset: 105 }, right: { drop: 150, inset: 105 } }
const work = { height: 910, width: 710, mass: 9.5 }

describe('refused, with the field and what to measure again', () => {
  test('rings wider apart than the frame', () => {
    const no = refused(() => ask('d-rings', { left: { drop: 150 }, right: { drop: 150 }, spacing: 800 }))
    expect(no).toMatchObject({ code: 'hangers-off-the-work', field: 'back.data.spacing' })
    expect(no.says).toContain('Check insets, spacing and width')
  })

  test('a wire shorter than its rings are apart', () => {
    const no = refused(() => ask('wire', { ...rings, wire: { by: 'length', length: 480 } }))
    expect(no).toMatchObject({ code: 'wire-too-short', field: 'back.data.wire.length' })
    expect(no.says).toContain('Measure it again')
  })

  test('hooks wider apart than the rings', () => {
    const no = refused(() => ask('wire', { ...rings, wire: { by: 'length', length: 540 } }, { hooksApart: 600 }))
    expect(no).toMatchObject({ code: 'wire-hooks-too-wide', field: 'hooksApart' })
    expect(no.says).toContain('smaller spacing')
  })

  test('no mass at all, and less', () => {
    for (const mass of [0, -2]) {
      const no = refused(() => marksFor(question({ work: { ...work, mass } })))
      expect(no).toMatchObject({ code: 'mass-not-positive', field: 'work.mass' })
      expect(no.says).toContain('Weigh it again')
    }
  })

  test('a drop longer than the work is high', () => {
    const no = refused(() => ask('d-rings', { left: { drop: 950, inset: 10 }, right: { drop: 150, inset: 10 } }))
    expect(no).toMatchObject({ code: 'drop-below-the-work', field: 'back.data.left.drop' })
    expect(no.says).toContain('Measure from the top edge')
  })

  test('negative insets, in the words of the form', () => {
    const no = refused(() => ask('d-rings', { left: { drop: 150, inset: 10 }, right: { drop: 150, inset: -5 } }))
    expect(no).toMatchObject({ code: 'back-invalid', field: 'back.data.right.inset' })
    expect(no.says).toBe(
      'Inset of the right ring: it can’t be less than 0. Measure it again. From the right edge to the middle of the ring.',
    )
    const zero = refused(() => ask('keyhole-plates', { ...rings, slot: 0 }))
    expect(zero.says).toContain('Width of the slot: it must be more than 0. Measure it again.')
  })

  test('what is missing is asked for by its name', () => {
    const no = refused(() => ask('security-hangers', rings))
    expect(no).toMatchObject({ code: 'back-invalid', field: 'back.data.lock' })
    expect(no.says).toMatch(/^Lock, up is not measured yet\. From the bottom edge/)
    expect(refused(() => ask('d-rings', { left: { drop: 150 } })).says).toMatch(
      /^Drop of the right ring is not measured/,
    )
  })

  test('a wire pulled below its rings, and a hook height above the top', () => {
    expect(refused(() => ask('wire', { ...rings, wire: { by: 'drop', drop: 160, apart: 0 } })).field).toBe(
      'back.data.wire.drop',
    )
    expect(refused(() => ask('wire', { ...rings, wire: { by: 'length', length: 900 } }, { hooksApart: 0 })).field).toBe(
      'hooksApart',
    )
  })

  test('no depth behind a stretcher bar, holes of a strip too far apart', () => {
    const bars = { left: { bar: 40 }, right: { bar: 40 } }
    expect(refused(() => ask('stretcher-bar', { ...bars, clearance: 4 })).field).toBe('back.data.clearance')
    expect(refused(() => ask('cleat', { drop: 60, length: 200, holes: 190 })).field).toBe('back.data.holes')
  })
})

describe('found, not refused', () => {
  test('a mark off the wall stops', () => {
    const off = found(ask('d-rings', rings, { centre: { x: 100, y: 1480 } }), 'mark-off-wall')
    expect(off.severity).toBe('stop')
    expect(found(ask('d-rings', rings, { centre: { x: 2000, y: 3500 } }), 'mark-off-wall').text).toContain(
      'not on the wall',
    )
  })

  test('an unknown rating and an unknown mass never pass', () => {
    const unrated = ask('d-rings', rings, { fixings: [{ ...hook, ratedKg: null }] })
    expect(found(unrated, 'rating-unknown').text).toContain('look at its packet')
    expect(unrated.loads?.holds).toBeNull()
    const unweighed = ask('d-rings', rings, { work: { height: 910, width: 710 } })
    expect(found(unweighed, 'mass-unknown').severity).toBe('settle')
    expect(codes(unweighed)).not.toContain('load-holds')
  })

  test('ring screws as long as the frame is deep', () => {
    const deep = { ...work, depth: 20 }
    expect(found(ask('d-rings', { ...rings, ringScrew: 20 }, { work: deep }), 'ring-screw-too-long').severity).toBe(
      'stop',
    )
    expect(codes(ask('d-rings', { ...rings, ringScrew: 16 }, { work: deep }))).not.toContain('ring-screw-too-long')
    const wired = { ...rings, wire: { by: 'drop', drop: 90, apart: 0 }, ringScrew: 25 }
    expect(codes(ask('wire', wired, { work: deep }))).toContain('ring-screw-too-long')
  })

  test('a nail against the depth of the bar', () => {
    const bars = { left: { bar: 40 }, right: { bar: 40 }, clearance: 18 }
    const nail = { name: 'nail', kind: 'nail', holeOffset: -1.5, ratedKg: 20, shank: 3 } as const
    const hang = (length: number) => ask('stretcher-bar', bars, { fixings: [{ ...nail, length }] })
    // 18 − 5 stands out, 25 at least in the wall: 38.
    expect(codes(hang(38))).not.toContain('screw-too-short')
    expect(found(hang(35), 'screw-too-short').text).toContain('22 mm in the wall')
    expect(hang(38).figures.find(one => one.key === 'stands-out')?.value).toBe(13)
  })

  test('no room to lift a cleat on under the ceiling, which may slope', () => {
    const bar = { drop: 60, length: 500 }
    const hang = (y: number, ceiling?: readonly (readonly [number, number])[]) =>
      ask('cleat', bar, { centre: { x: 2000, y }, wall: { ...question({}).wall, ceiling } })
    // The wall is 3 450 high; the work's top stands 455 above its centre.
    expect(codes(hang(3450 - 455 - 25))).not.toContain('no-room-to-lift')
    expect(found(hang(3450 - 455 - 24), 'no-room-to-lift').figures.free).toBeCloseTo(24, 9)
    // 3 000 at the left end and 2 000 at 4 000: over its right corner at 2 355 there are 2 411.25.
    const slope = [
      [0, 3000],
      [4000, 2000],
    ] as const
    expect(found(hang(1950, slope), 'no-room-to-lift').figures.ceiling).toBeCloseTo(2411.25, 9)
    expect(codes(hang(1930, slope))).not.toContain('no-room-to-lift')
    const slots = { ...rings, slide: 20 }
    expect(codes(ask('keyhole-plates', slots, { centre: { x: 2000, y: 3450 - 455 - 19 } }))).toContain(
      'no-room-to-lift',
    )
  })

  test('a metal strip: holes on studs, and a stud between its holes', () => {
    const wall = { ...question({}).wall, studFirst: 0, studSpacing: 400 }
    const strip = { drop: 60, length: 600, wallLength: 580, holes: 100, depth: 8 }
    // Centred at 2 000: holes at 1 750 to 2 250 by 100: none on the stud at 2 000.
    const between = ask('cleat', strip, { wall, centre: { x: 2000, y: 1480 } })
    expect(between.cleat?.screws.map(screw => screw.x)).toEqual([1750, 1850, 1950, 2050, 2150, 2250])
    expect(found(between, 'stud-between-holes').figures.first).toBe(2000)
    // Studs at 1 800 and 2 200 both meet a hole when the strip is 50 to the left of there.
    const wide = { ...wall, studFirst: 50, studSpacing: 200 }
    const on = ask('cleat', strip, { wall: wide, centre: { x: 2000, y: 1480 } })
    expect(on.cleat?.screws).toEqual([
      { x: 1850, onStud: true, printed: { mm: 1850, inches: 72.8125 } },
      { x: 2050, onStud: true, printed: { mm: 2050, inches: 80.6875 } },
      { x: 2250, onStud: true, printed: { mm: 2250, inches: 88.5625 } },
    ])
    expect(codes(on)).not.toContain('stud-between-holes')
  })
})
