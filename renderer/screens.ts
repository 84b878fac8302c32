/** The screens by the first word of the address. A screen is shown once its part of the program is there. */
import type { Component } from 'svelte'

type Module = { readonly default: Component<Record<string, unknown>> }

const found: Readonly<Record<string, Module>> = import.meta.glob<Module>(
  [
    './plan/PlanScreen.svelte',
    './rooms/RoomsScreen.svelte',
    './sequence/SequenceScreen.svelte',
    './walls/WallsScreen.svelte',
    './papers/PapersScreen.svelte',
    './crew/CrewScreen.svelte',
    './works/WorkPage.svelte',
    './import/ImportFlow.svelte',
    './fixings/FixingsScreen.svelte',
    './bring-in/BringInPlan.svelte',
  ],
  { eager: true },
)

export const planScreen = found['./plan/PlanScreen.svelte']?.default
export const roomsScreen = found['./rooms/RoomsScreen.svelte']?.default
export const sequenceScreen = found['./sequence/SequenceScreen.svelte']?.default
export const wallsScreen = found['./walls/WallsScreen.svelte']?.default
export const papersScreen = found['./papers/PapersScreen.svelte']?.default
export const crewScreen = found['./crew/CrewScreen.svelte']?.default
export const workPage = found['./works/WorkPage.svelte']?.default
export const importFlow = found['./import/ImportFlow.svelte']?.default
export const fixingsScreen = found['./fixings/FixingsScreen.svelte']?.default
export const bringInPlan = found['./bring-in/BringInPlan.svelte']?.default
