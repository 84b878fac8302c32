/** How the works of a section hang together: side by side in one row, in stacks, or in grids of like frames. mm. */
export const sectionHangs = ['row', 'stacks', 'grid'] as const
export const stackAligns = ['axis', 'left', 'right'] as const
/** No more above one another, or side by side in one grid. */
export const mostRows = 6
export const mostColumns = 12

export interface SectionHang {
  readonly hang: (typeof sectionHangs)[number]
  /** At most so many above one another; of a grid's columns at most so many. */
  readonly rows: number
  readonly columns: number
  /** What of a stack stands on one upright line: the middles or an edge. A work of a grid is in the middle of its cell. */
  readonly align: (typeof stackAligns)[number]
  readonly gapDown: number
  readonly gapAcross: number
  /** Widths of a stack differ by no more; of a grid heights too. */
  readonly alike: number
  /** Edges of a stack or grid stay between these, above the floor. */
  readonly lowest: number
  readonly highest: number
}
