/** A set of three for tests: works of the six of the sheets, side by side as one object. */
import type { PlacedWork } from '../../../src/contract/areas/walls.ts'
import { placed, six } from '../sheets/wall.ts'

/** Salt pans 480 × 620, Causeway 710 × 910 and Raking 540 × 540, 19 mm apart: 480 + 19 + 710 + 19 + 540 = 1 768. */
export function triptych(more: Partial<PlacedWork> = {}, keeps: '' | 'gaps' | 'centres' = 'gaps'): PlacedWork {
  const parts = six.slice(0, 3).map((given, index) => placed(given, index))
  const [first] = parts
  if (first === undefined || first.size === null) throw new Error('no part')
  return {
    ...first,
    placement: 'p9',
    work: 'w9',
    running: '12',
    title: 'Shore',
    size: { ...first.size, width: 1768, height: 910, part: 'overall' },
    mass: 19.2,
    back: null,
    x: 4000,
    centreY: 1480,
    set: {
      form: 'row',
      columns: null,
      gapX: 19,
      gapY: 0,
      keeps,
      parts: parts.map(({ work, number, title, size, mass, picture, back, fixing, keeper, lockTool, hooksApart }) => ({
        work,
        number,
        title,
        size,
        mass,
        picture,
        back,
        fixing,
        keeper,
        lockTool,
        hooksApart,
      })),
    },
    ...more,
  }
}
