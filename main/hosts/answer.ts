/**
 * One call in, one answer out, the same through every host: the name is looked up, the input goes through its schema,
 * and a refusal comes back as data. Only JSON text crosses, so that NaN, dates and proxies are refused alike.
 */
import { z } from 'zod'
import { contract, isName, type Name } from '../../src/contract/contract.ts'
import { Refusal, type RefusalJson } from '../../src/contract/refusal.ts'
import type { Host } from './host.ts'

export type Answer =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly refusal: RefusalJson }

const envelope = z.strictObject({
  name: z.string().max(100),
  input: z.json(),
  job: z.string().max(64).optional(),
})

/** The field of the first problem, as a path like `walls.2.length`, and what was expected there. */
export function badInput(error: z.ZodError): Refusal {
  const [issue] = error.issues
  if (issue === undefined) return new Refusal('bad-input', 'The input is not as expected.')
  const unknown = issue.code === 'unrecognized_keys' ? issue.keys[0] : undefined
  const field = [...issue.path.map(String), ...(unknown === undefined ? [] : [unknown])].join('.')
  const message =
    unknown === undefined
      ? `${field === '' ? 'The input' : field}: ${issue.message}.`
      : `${field}: there is no such field here.`
  return new Refusal('bad-input', message, field === '' ? {} : { field })
}

export function readEnvelope(text: string): { name: string; input: unknown; job: string | undefined } {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    throw new Refusal('bad-json', 'A call is one JSON object: {"name": …, "input": …}.')
  }
  const parsed = envelope.safeParse(value)
  if (!parsed.success) throw badInput(parsed.error)
  return { name: parsed.data.name, input: parsed.data.input, job: parsed.data.job }
}

export async function answer(host: Host, name: string, input: unknown, job?: string): Promise<Answer> {
  try {
    if (!isName(name)) {
      throw new Refusal('unknown-procedure', `There is no procedure “${name}”. “procedures” lists them all.`)
    }
    const parsed = contract[name].input.safeParse(input)
    if (!parsed.success) throw badInput(parsed.error)
    const value = await host.run(name, parsed.data, job)
    if (host.checksOutput) checkOutput(name, value)
    return { ok: true, value }
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, refusal: error.toJson() }
    host.report(error)
    return {
      ok: false,
      refusal: { code: 'fault', message: 'Something went wrong in the program. Nothing was changed.' },
    }
  }
}

function checkOutput(name: Name, value: unknown): void {
  const parsed = contract[name].output.safeParse(value)
  if (!parsed.success) throw new Error(`${name} answers what its schema does not allow: ${parsed.error.message}`)
}

/** The same for hosts that carry text. */
export async function answerText(host: Host, text: string): Promise<string> {
  let call: ReturnType<typeof readEnvelope>
  try {
    call = readEnvelope(text)
  } catch (error) {
    if (error instanceof Refusal) return JSON.stringify({ ok: false, refusal: error.toJson() })
    throw error
  }
  return JSON.stringify(await answer(host, call.name, call.input, call.job))
}
