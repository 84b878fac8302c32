/** Every procedure through every host: the same answer as written out, or the same refusal with its code and field. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import * as z from 'zod'
import type { Answer } from '../../main/hosts/answer.ts'
import { contract, type Name } from '../../src/contract/contract.ts'
import { type Call, copyOf, drivers, forget } from './drivers.ts'
import { examples } from './examples/all.ts'
import type { GivenFile } from './examples/types.ts'
import { type Known, makeFixture } from './fixture.ts'

let folder = ''
let file = ''
let known: Known

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-contract-'))
  const fixture = await makeFixture(folder)
  file = fixture.file
  known = fixture.known
}, 60_000)

afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The same calls through the three hosts, each on a copy of its own. */
async function everywhere(calls: readonly Call[], files: readonly GivenFile[]): Promise<Answer[]> {
  const answers: Answer[] = []
  for (const driver of drivers) {
    const copy = copyOf(file, folder)
    try {
      answers.push(alike(await driver.drive(copy, calls, files), copy.folder))
    } finally {
      forget(copy)
    }
  }
  return answers
}

/** What must differ between hosts is named: where the copy lies or goes, a handle’s chance, the host’s own name, an id made in a later process. */
function alike(answered: Answer, copyFolder: string): Answer {
  const text = JSON.stringify(answered)
    .replaceAll(JSON.stringify(copyFolder).slice(1, -1), '<folder>')
    .replace(/hangwright-elsewhere-\w+/g, 'hangwright-elsewhere-')
    .replace(/"handle":"[0-9a-f]{16}-/g, '"handle":"0000000000000000-')
    .replace(/"host":"(loopback|command line|desktop)"/g, '"host":"loopback"')
    .replace(/"key":"[0-9a-f]{8,}"/g, '"key":"<key>"')
  return JSON.parse(text)
}

/** Where calls before it were programs of their own, an id that `like` made says so: then made ids are held alike. */
function madeAlike(answered: Answer, like: Answer): Answer {
  if (!/:"(?:[a-z]+:)?t\d+n(w\d+x)?[0-9a-z]{6}"/.test(JSON.stringify(like))) return answered
  const made = /(?<=:"(?:[a-z]+[:/])?(?:\w+\/)?(?:term-)?)t(\d+n)?(w\d+x)?[0-9a-z]{6}(?=["/])/g
  // The hash of what a condition report says is also of its ids.
  const hashed = /"content":"[0-9a-f]{64}"/g
  // Nor does a program of its own know how often the one before it asked for the time.
  const recorded = /"(recordedAt|completeAt|written)":"[^"]+"/g
  const text = JSON.stringify(answered).replace(made, '<made>').replace(hashed, '"content":"<made>"')
  return JSON.parse(text.replace(recorded, '"$1":"<made>"'))
}

type PlainExample = {
  readonly about: string
  readonly files?: readonly GivenFile[]
  readonly first?: (known: Known) => readonly (readonly [Name, unknown])[]
  readonly input: (known: Known, earlier: readonly unknown[]) => unknown
}

function callsOf(name: string, example: PlainExample): Call[] {
  const first = example.first?.(known) ?? []
  return [
    ...first.map(([each, input]) => ({
      name: each,
      input: (earlier: readonly unknown[]) => (typeof input === 'function' ? input(earlier) : input),
    })),
    { name, input: (earlier: readonly unknown[]) => example.input(known, earlier) },
  ]
}

for (const [name, { answered, refused }] of Object.entries(examples)) {
  describe(name, () => {
    for (const example of answered) {
      test(`answers ${example.about}`, async () => {
        const [first, ...others] = await everywhere(callsOf(name, example), example.files ?? [])
        expect(first).toEqual({ ok: true, value: example.output(known) })
        for (const other of others) expect(madeAlike(other, other)).toEqual(madeAlike(first ?? other, other))
      })
    }
    for (const example of refused) {
      test(`refuses ${example.about}`, async () => {
        const [first, ...others] = await everywhere(callsOf(name, example), example.files ?? [])
        expect(first).toMatchObject({ ok: false, refusal: { code: example.code } })
        expect(first?.ok === false ? (first.refusal.field ?? null) : undefined).toBe(example.field)
        for (const other of others) expect(madeAlike(other, other)).toEqual(madeAlike(first ?? other, other))
      })
    }
  })
}

describe('the table itself', () => {
  test('shows every procedure as JSON Schema, both ways', () => {
    for (const [name, { input, output }] of Object.entries(contract)) {
      expect(z.toJSONSchema(input, { io: 'input' }), name).toHaveProperty('type')
      expect(() => z.toJSONSchema(output, { io: 'output' }), name).not.toThrow()
    }
  })

  test('takes strict objects alone', () => {
    for (const [name, { input }] of Object.entries(contract)) {
      expect(z.toJSONSchema(input, { io: 'input' }), name).toMatchObject({
        type: 'object',
        additionalProperties: false,
      })
    }
  })

  test('refuses a name that is none, also one that every object has', async () => {
    for (const name of ['no.such', '__proto__', 'toString']) {
      for (const answered of await everywhere([{ name, input: () => ({}) }], [])) {
        expect(answered).toMatchObject({ ok: false, refusal: { code: 'unknown-procedure' } })
      }
    }
  })

  test('refuses alike what JSON cannot carry', async () => {
    for (const bad of [null, 'text', 7, [], true]) {
      for (const answered of await everywhere([{ name: 'exhibition.list', input: () => bad }], [])) {
        expect(answered).toMatchObject({ ok: false, refusal: { code: 'bad-input' } })
      }
    }
  })
})
