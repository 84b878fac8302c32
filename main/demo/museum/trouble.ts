/**
 * What is wrong in the demo on purpose, each with the finding that must show it. Whoever changes the demo keeps these:
 * they are what a first look at the program learns from.
 */
export interface Trouble {
  readonly work: string
  readonly wall: string | null
  /** Code of the finding. */
  readonly code: string
  /** A figure that the finding must carry. */
  readonly figure?: readonly [name: string, value: number]
  readonly says: string
}

export const troubles: readonly Trouble[] = [
  {
    work: 'flood-sallowford',
    wall: 'long north',
    code: 'differs-from-list',
    figure: ['width', 52],
    says: 'It came in a frame 52 mm wider than its list says.',
  },
  {
    work: 'flood-sallowford',
    wall: 'long north',
    code: 'in-keep-clear',
    figure: ['inside', 26],
    says: 'The row was planned on listed widths; half of the 52 mm stands inside the thermostat’s margin.',
  },
  {
    work: 'whole-river',
    wall: 'mill slant',
    code: 'too-wide',
    figure: ['over', 120],
    says: 'The tapestry was promised this wall before anybody measured either.',
  },
  {
    work: 'pump-house',
    wall: 'mill south',
    code: 'light-over-limit',
    figure: ['over', 150],
    says: 'A print of 50 lux on a wall planned for paintings.',
  },
  {
    work: 'what-floated',
    wall: 'mill east',
    code: 'rating-unknown',
    says: 'A hook from the old stock: nobody knows what it holds.',
  },
  {
    work: 'high-street',
    wall: 'mill south',
    code: 'mark-off-backing',
    says: 'Its lock comes below the ply, between two studs: bare board.',
  },
  {
    work: 'lock-model',
    wall: 'mill west',
    code: 'floor-slopes',
    says: 'The floor falls along the old brick: a shelf measured from it hangs low.',
  },
  {
    work: 'bleaching',
    wall: 'river south',
    code: 'term-barrier',
    says: 'Its lender wants a barrier before it, and none is planned.',
  },
  {
    work: 'quay-evening',
    wall: 'river south',
    code: 'term-glazing',
    says: 'Its lender wants it glazed, and it came without.',
  },
]
