/** The words for the fixed choices of a work, in the order in which they are offered. */
import { entryStatus } from '../../src/contract/areas/exhibitions.ts'
import { glazing, sensitivity, workKind } from '../../src/contract/areas/works-shape.ts'

export type Choices = readonly (readonly [string, string])[]

function choices(values: readonly string[]): Choices {
  return values.map(value => [value, value === '' ? 'not said' : value] as const)
}

export const kindChoices = choices(workKind.options)
export const sensitivityChoices = choices(sensitivity.options)
export const glazingChoices = choices(glazing.options)
export const statusChoices = choices(entryStatus.options)
