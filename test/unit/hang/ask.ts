/** Asks for marks by method and data, and catches a refusal with its code, field and sentence. */
import { Refusal } from '../../../src/contract/refusal.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import type { MarksAnswer, MarksQuestion } from '../../../src/hang/marks-shape.ts'
import type { MethodKey } from '../../../src/hang/method-keys.ts'
import { fixingFor } from './backs.ts'
import { question } from './sample.ts'

export function ask(
  method: MethodKey,
  data: object,
  changes: Partial<MarksQuestion> = {},
  seenFrom: 'front' | 'back' = 'front',
): MarksAnswer {
  return marksFor(
    question({
      fixings: fixingFor[method],
      ...changes,
      // JSON by construction: the tests' literals hold numbers, words and objects only.
      back: { method, seenFrom, data: data as MarksQuestion['back']['data'] },
    }),
  )
}

export function codes(answer: MarksAnswer): readonly string[] {
  return answer.findings.map(found => found.code)
}

export function found(answer: MarksAnswer, code: string): MarksAnswer['findings'][number] {
  const one = answer.findings.find(finding => finding.code === code)
  if (one === undefined) throw new Error(`no finding ${code} among ${codes(answer).join(', ')}`)
  return one
}

/** A figure of the answer by its key. */
export function figure(answer: MarksAnswer, key: string): number {
  const one = answer.figures.find(item => item.key === key)
  if (one === undefined) throw new Error(`no figure ${key} among ${answer.figures.map(item => item.key).join(', ')}`)
  return one.value
}

export function refused(act: () => unknown): {
  readonly code: string
  readonly field: string | undefined
  readonly says: string
} {
  try {
    act()
  } catch (error) {
    if (error instanceof Refusal) return { code: error.code, field: error.field, says: error.message }
    throw error
  }
  throw new Error('not refused')
}
