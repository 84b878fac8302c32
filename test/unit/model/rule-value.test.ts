import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type HouseRule, houseRules } from '../../../src/model/house-rules.ts'
import { type RuleStyle, readRule, ruleProblem, sayRule } from '../../../src/model/rule-value.ts'

const rules: readonly (readonly [string, HouseRule])[] = Object.entries(houseRules)
const metric: RuleStyle = { length: { unit: 'mm' }, mass: 'kg' }
const inches: RuleStyle = { length: { unit: 'in', fraction: 16 }, mass: 'lb' }

describe('the house rules', () => {
  test.each(rules)('%s has words for all that a person asks of it, and its own value keeps its bounds', (_, rule) => {
    expect(rule.says).toMatch(/\.$/)
    expect(rule.reason).toMatch(/\.$/)
    expect(rule.source.length).toBeGreaterThan(5)
    expect(ruleProblem(rule, rule.value)).toBeNull()
  })

  test.each(rules)('%s is read again as it is shown', (_, rule) => {
    const shown = sayRule(rule, rule.value, metric)
    const typed = 'choices' in rule ? String(rule.value) : shown
    const read = readRule(rule, typed, metric)
    if (!read.ok) throw new Error(`${shown}: ${read.message}`)
    if (typeof rule.value === 'number') expect(Number(read.value)).toBeCloseTo(rule.value, 6)
    else expect(read.value).toBe(rule.value)
  })
})

describe('a value', () => {
  test.each([
    [houseRules.nailsIn, '1/4', metric, 0.25],
    [houseRules.nailsIn, '0,3', metric, 0.3],
    [houseRules.nailsIn, '25 %', metric, 0.25],
    [houseRules.nailsIn, '⅓ of the width', metric, 1 / 3],
    [houseRules.leastWireAngle, '35°', metric, 35],
    [houseRules.leastWireAngle, '42.5 degrees', metric, 42.5],
    [houseRules.houseFactor, '5 ×', metric, 5],
    // The inch and the pound are exact by definition.
    [houseRules.centreLine, '58', inches, 1473.2],
    [houseRules.centreLine, '1,45 m', inches, 1450],
    [houseRules.onePersonKg, '50', inches, 22.6796185],
    [houseRules.onePersonKg, '25 kg', inches, 25],
  ] as const)('of “%s” is read from “%s”', (rule, text, style, value) => {
    const read = readRule(rule, text, style)
    expect(read.ok ? read.value : read.message).toBeCloseTo(value, 9)
  })

  test.each([
    [houseRules.nailsIn, '1/2', 'This rule takes a figure from 0.05 of its width to 0.45 of its width.'],
    [houseRules.nailsIn, 'a third', '“a third” is no figure.'],
    [houseRules.nailsIn, '12 mm', '“mm” does not belong to this figure.'],
    [houseRules.nailsIn, '', '“” is no figure.'],
    [houseRules.leastWireAngle, '90', 'This rule takes a figure from 1° to 89°.'],
    [houseRules.leastWireAngle, '30 %', '“%” does not belong to this figure.'],
    [houseRules.sheetStepMm, '0', 'This rule takes a figure from 0.1 mm to 10 mm.'],
    [houseRules.onePersonKg, '0', 'This rule takes a figure from 1 kg to 100 kg.'],
    [houseRules.heightRule, 'nose', 'This rule is one of these: centre, top, bottom, eye.'],
  ] as const)('is refused: %#', (rule, text, message) => {
    expect(readRule(rule, text, metric)).toEqual({ ok: false, message })
  })

  test('is said in the reader’s units', () => {
    const words = (style: RuleStyle) =>
      ([houseRules.hookHidden, houseRules.nailsIn, houseRules.onePersonKg, houseRules.heightRule] as const).map(rule =>
        sayRule(rule, rule.value, style),
      )
    expect(words(metric)).toEqual(['50.8 mm', '1/3 of its width', '30 kg', 'its centre'])
    expect(words(inches)).toEqual(['2 in', '1/3 of its width', '66.14 lb', 'its centre'])
  })

  test('in tenths of a millimetre comes back as it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3000, max: 40_000 }), tenths => {
        const read = readRule(houseRules.centreLine, sayRule(houseRules.centreLine, tenths / 10, metric), metric)
        expect(read).toEqual({ ok: true, value: tenths / 10 })
      }),
    )
  })
})
