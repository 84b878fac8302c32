/** Words of the contract that the demo's placements are written in. */
import type { Input } from '../../../src/contract/contract.ts'

type PlanChanges = Input<'wall.plan'>['changes']
export type Rule = NonNullable<PlanChanges['rule']>['to']
export type Viewer = NonNullable<PlanChanges['viewers']>['to'][number]
export type LabelSide = NonNullable<Input<'placement.update'>['changes']['labelSide']>['to']
