/** How long a crate stays shut after a move, so that what is in it comes to the climate slowly (common practice, no source). */

/** When it may be opened: its hours after it came; both moments as ISO text. */
export function opensAt(came: string, holdHours: number): string {
  return new Date(Date.parse(came) + holdHours * 3_600_000).toISOString()
}
