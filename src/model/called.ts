/** What people call a work on a drawing, in one place for screen, sheet and findings. */

/** Its running number, else its number, else its title. */
export function calledOn(work: { readonly running: string; readonly number: string; readonly title: string }): string {
  return [work.running, work.number, work.title].find(text => text !== '') ?? 'A work'
}
