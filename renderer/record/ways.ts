/**
 * The registrar's screens by the first word of their address, in the order in which they stand above one another. One is
 * there once its part of the program is; each is given what follows the first word as `subject`.
 */
import type { Component } from 'svelte'

type Module = { readonly default: Component<{ subject: string | null }> }

const found: Readonly<Record<string, Module>> = import.meta.glob<Module>(
  [
    './RecordScreen.svelte',
    '../loans/LoansScreen.svelte',
    '../insured/InsuredScreen.svelte',
    '../condition/ConditionScreen.svelte',
    '../damage/DamageScreen.svelte',
    '../light/LightScreen.svelte',
    '../leaving/LeavingScreen.svelte',
    '../numbers/NumbersScreen.svelte',
    '../climate/ClimateScreen.svelte',
    '../planned/PlannedScreen.svelte',
  ],
  { eager: true },
)

export const recordWays = [
  { key: 'record', word: 'Places', screen: found['./RecordScreen.svelte']?.default },
  { key: 'planned', word: 'Planned', screen: found['../planned/PlannedScreen.svelte']?.default },
  { key: 'numbers', word: 'Numbers', screen: found['../numbers/NumbersScreen.svelte']?.default },
  { key: 'loans', word: 'Loans', screen: found['../loans/LoansScreen.svelte']?.default },
  { key: 'insured', word: 'Insured', screen: found['../insured/InsuredScreen.svelte']?.default },
  { key: 'condition', word: 'Condition', screen: found['../condition/ConditionScreen.svelte']?.default },
  { key: 'damage', word: 'Damage', screen: found['../damage/DamageScreen.svelte']?.default },
  { key: 'light', word: 'Light', screen: found['../light/LightScreen.svelte']?.default },
  { key: 'climate', word: 'Climate', screen: found['../climate/ClimateScreen.svelte']?.default },
  { key: 'leaving', word: 'The end', screen: found['../leaving/LeavingScreen.svelte']?.default },
]

/** The registrar's screen at an address; undefined where it is none. */
export function recordWay(key: string): (typeof recordWays)[number] | undefined {
  return recordWays.find(way => way.key === key && way.screen !== undefined)
}
