/**
 * The third host of the contract. It prints one JSON value on standard output and nothing else; a refusal is the last
 * line of standard error. Exit status: 0 done, 1 refused, 2 wrong usage.
 */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ClockStart } from '../../services/clock.ts'
import { verbs } from './verbs.ts'
import { readLine, usage, WrongUsage } from './words.ts'

export interface Terminal {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  readonly readIn: () => Promise<string>
  /** For tests: where time and ids begin, and answers held against their schemas. */
  readonly clock?: ClockStart
  readonly checksOutput?: boolean
}

export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<number> {
  const [name = '', ...rest] = args
  const verb = Object.hasOwn(verbs, name) ? verbs[name] : undefined
  if (verb === undefined) {
    const all = Object.entries(verbs).map(([each, { form, does }]) => `  ${usage(each, form).slice(7)}\n      ${does}`)
    terminal.err(`${name === '' ? 'Say what to do.' : `There is no verb “${name}”.`}\n${all.join('\n')}\n`)
    return 2
  }
  try {
    const value = await verb.run(readLine(name, verb.form, rest), terminal)
    if (value !== undefined) terminal.out(`${JSON.stringify(value)}\n`)
    return 0
  } catch (error) {
    if (error instanceof WrongUsage) {
      terminal.err(`${error.message}\n`)
      return 2
    }
    if (error instanceof Refusal) {
      terminal.err(`${JSON.stringify(error.toJson())}\n`)
      return 1
    }
    terminal.err(`${error instanceof Error ? error.stack : String(error)}\n`)
    terminal.err(
      `${JSON.stringify({ code: 'fault', message: 'Something went wrong in the program. Nothing was changed.' })}\n`,
    )
    return 1
  }
}
