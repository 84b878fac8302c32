/** To a millionth of a millimetre: what adding and turning leave beyond it is no measure. */
export function clean(mm: number): number {
  const rounded = Math.round(mm * 1e6) / 1e6
  return rounded === 0 ? 0 : rounded
}
