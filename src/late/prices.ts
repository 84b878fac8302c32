/**
 * What consequences of a late change weigh against each other. Common practice, no source: a hung work is moved last of
 * all; a hole costs more than carrying a work along; gaps count, but less than holes.
 */
import type { Prices } from './late-shape.ts'

export const latePrices: Prices = {
  hungMoved: 1000,
  newHole: 30,
  deadHole: 20,
  moved: 10,
  label: 5,
  gapSpreadPerMm: 0.2,
  endsPerMm: 0.1,
  offLinePerMm: 0.5,
}
