/** The fields that the forms of several methods share: a measure, a choice, a pair of hangers, the screws of rings. */
import type { BackField } from './method.ts'

/** A measure: a length that may be left out, unless `more` says otherwise. */
export function measureField(
  path: BackField['path'],
  label: string,
  hint: string,
  more: Partial<Pick<BackField, 'kind' | 'unit' | 'required'>> = {},
): BackField {
  return { path, label, hint, kind: 'length', required: false, ...more }
}

/** One of several, by value and word; one must be chosen. */
export function choiceField(
  path: BackField['path'],
  label: string,
  hint: string,
  choices: NonNullable<BackField['choices']>,
): BackField {
  return { path, label, hint, kind: 'choice', choices, required: true }
}

/** Both sides' drop and inset; `at` where the pair is not at the top of the data. */
export function pairFields(what: string, dropHint: string, at: readonly string[] = []): readonly BackField[] {
  return (['left', 'right'] as const).flatMap(side => [
    measureField([...at, side, 'drop'], `Drop of the ${side} ${what}`, dropHint, { required: true }),
    measureField(
      [...at, side, 'inset'],
      `Inset of the ${side} ${what}`,
      `From the ${side} edge to the middle of the ${what}.`,
    ),
  ])
}

export function spacingField(what: string, at: readonly string[] = []): BackField {
  return measureField(
    [...at, 'spacing'],
    `Between the ${what}s`,
    `From the middle of one ${what} to the middle of the other, measured on the work.`,
  )
}

export const ringScrewField = measureField(
  ['ringScrew'],
  'Screws of the rings',
  'Their length under the head: they must stay inside the frame’s depth.',
)
