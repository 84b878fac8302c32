/** All works of the demo that the house has entered itself, in the order of the show. */
import type { DemoWork } from './work-shape.ts'
import { aboveTheWeir } from './works-above.ts'
import { workingBank } from './works-bank.ts'
import { dyedInTheStream } from './works-cloth.ts'
import { afterTheFlood } from './works-flood.ts'
import { sixLocks } from './works-locks.ts'
import { longWall } from './works-long-wall.ts'
import { inSets } from './works-sets.ts'
import { posters, things } from './works-things.ts'

export const works: readonly DemoWork[] = [
  ...longWall,
  ...aboveTheWeir,
  ...workingBank,
  ...sixLocks,
  ...dyedInTheStream,
  ...afterTheFlood,
  ...posters,
  ...things,
  ...inSets,
]
