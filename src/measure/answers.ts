/**
 * Puts a person's answer into a statement that was read. The rule it keeps: an answer changes only what it was asked
 * about, and the statement stays plain data.
 */
import { readDimensions } from './dimensions.ts'
import { hangingPart } from './hanging.ts'
import type { Option, ReadOptions, ReadPart, Statement } from './statement.ts'

/**
 * The statement once `option` has answered its question at `index`. An index without a question leaves it as it is.
 * @param options those the statement was read with; an answer that is a text is read with them
 */
export function answerQuestion(
  statement: Statement,
  index: number,
  option: Option,
  options: ReadOptions = {},
): Statement {
  const question = statement.questions[index]
  if (!question) return statement
  if (option.text !== undefined) return readDimensions(option.text, options)
  const questions = statement.questions.filter(one => one !== question)
  const parts = statement.parts.map((part, place) => (place === question.index ? answered(part, option) : part))
  const mass = option.kg === undefined ? statement.mass : { kg: option.kg, raw: question.piece, approximate: false }
  return { ...statement, ...(mass ? { mass } : {}), parts, questions, hanging: hangingPart(parts, questions) }
}

function answered(part: ReadPart, option: Option): ReadPart {
  return {
    ...part,
    ...option.values,
    // The unit of one measure that did not agree says nothing about the others.
    ...(option.unit !== undefined && part.unit === null ? { unit: option.unit } : {}),
    ...(option.part === undefined ? {} : { part: option.part, label: part.label === '' ? option.label : part.label }),
    ...(option.count === undefined ? {} : { count: option.count }),
  }
}
