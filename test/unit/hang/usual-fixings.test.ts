/** The usual kinds of fixing: generic, unrated, one at least for whatever a method hangs on or is kept by. */
import { expect, test } from 'vitest'
import { fixingShapes } from '../../../src/hang/fixing-shapes.ts'
import { methods } from '../../../src/hang/methods.ts'
import { usualFixings, usualMissing } from '../../../src/hang/usual-fixings.ts'

test('no usual fixing says what it holds, in any word', () => {
  for (const fixing of usualFixings) {
    expect(fixing).not.toHaveProperty('ratedKg')
    expect(`${fixing.name} ${fixing.note}`).not.toMatch(/\d\s*(kg|lb|N\b)/)
  }
})

test('every shape, and so every method, finds one', () => {
  const shapes = new Set(usualFixings.map(fixing => fixing.kind))
  expect([...shapes].sort()).toEqual([...fixingShapes].sort())
  for (const { fixings, keepers } of methods) {
    for (const kind of [...fixings, ...keepers]) expect(shapes).toContain(kind)
  }
})

test('a work bears on top of the shank: the hole of screws and nails is half a shank lower', () => {
  for (const { kind, holeOffset, shank } of usualFixings) {
    if (kind === 'screw' || kind === 'nail') expect(holeOffset).toBe(-(shank ?? 0) / 2)
  }
})

test('what is there already, in any case of letters, is not offered again', () => {
  expect(new Set(usualFixings.map(fixing => fixing.name)).size).toBe(usualFixings.length)
  expect(usualMissing([' Nail 3.1 × 50 ']).map(fixing => fixing.name)).not.toContain('nail 3.1 × 50')
  expect(usualMissing(usualFixings.map(fixing => fixing.name))).toEqual([])
})
