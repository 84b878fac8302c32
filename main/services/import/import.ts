/** The services of lists from outside, by the names of their procedures. */
import type { ServicesOf } from '../service.ts'
import { answer, ask, letters, listed, mapping, questions, runs } from './questions.ts'
import { accept, preview } from './take.ts'

export const importServices: ServicesOf<
  | 'import.preview'
  | 'import.accept'
  | 'import.questions'
  | 'import.answer'
  | 'import.ask'
  | 'import.letters'
  | 'import.listed'
  | 'import.mapping'
  | 'import.runs'
> = {
  'import.preview': preview,
  'import.accept': accept,
  'import.questions': questions,
  'import.answer': answer,
  'import.ask': ask,
  'import.letters': letters,
  'import.listed': listed,
  'import.mapping': mapping,
  'import.runs': runs,
}
