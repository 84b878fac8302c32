import { expect, test } from 'vitest'
import { names } from '../../../src/drawing/notes.ts'

test('a sentence names a work by its number as a word of its own, never by a part of a figure', () => {
  for (const [text, called, is] of [
    ['HL 1: Nobody has measured its back yet.', 'HL 1', true],
    ['24 hangs 30 mm over 25.', '25', true],
    ['Leave 25 mm to 24.', '24', true],
    ['HL 12 hangs too near.', 'HL 1', false],
    ['It is 1\u2009385 mm off.', '1', false],
    ['It is 1\u2009385 mm off.', '385', false],
    ['It weighs 2.5 kg.', '2', false],
    ['B. 7 (a) hangs here.', '7 (a)', true],
    ['Nothing is near.', '', false],
  ] as const) {
    expect([text, called, names(text, called)]).toEqual([text, called, is])
  }
})
