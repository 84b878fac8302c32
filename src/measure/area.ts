/** Floor areas as printed: square metres to a tenth, or whole square feet. A foot is 0.3048 m exactly (NIST SP 811, from memory). */
const SQUARE_FOOT = 0.3048 ** 2

/** `squareMetres` in the system that lengths are shown in, with its unit. */
export function formatArea(squareMetres: number, system: 'metric' | 'imperial'): string {
  return system === 'imperial' ? `${Math.round(squareMetres / SQUARE_FOOT)} ft²` : `${squareMetres.toFixed(1)} m²`
}
