/** The services of drawings from outside, by the names of their procedures. */
import type { ServicesOf } from '../service.ts'
import { read } from './read.ts'
import { take } from './take.ts'

export const drawingServices: ServicesOf<'drawing.read' | 'drawing.take'> = {
  'drawing.read': read,
  'drawing.take': take,
}
