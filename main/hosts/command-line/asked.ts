/** How a verb asks a catalogue: a host of its own, calls of the contract, and what people call by a title or a number. */
import { resolve } from 'node:path'
import { normalNumber } from '../../../src/checklist/numbers.ts'
import type { Input, Name, Output } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { dataFolder } from '../../files/data-folder.ts'
import { answer } from '../answer.ts'
import { createHost, type Host } from '../host.ts'
import type { Terminal } from './run.ts'

function hostOf(terminal: Terminal): Host {
  const host = createHost({
    kind: 'command line',
    data: dataFolder(),
    ...(terminal.clock === undefined ? {} : { clock: terminal.clock }),
    checksOutput: terminal.checksOutput ?? false,
    report: error => terminal.err(`${error instanceof Error ? error.stack : String(error)}\n`),
  })
  let last = ''
  host.subscribe(event => {
    if (event.kind !== 'progress' || event.words === last) return
    last = event.words
    terminal.err(`${event.words} …\n`)
  })
  return host
}

export async function withCatalogue<T>(file: string, terminal: Terminal, work: (host: Host) => Promise<T>): Promise<T> {
  const host = hostOf(terminal)
  const stop = () => void host.close()
  process.once('SIGINT', stop)
  try {
    if (file !== '-') host.openFile(resolve(file))
    return await work(host)
  } finally {
    process.off('SIGINT', stop)
    await host.close()
  }
}

/** A call as any other host makes it: checked on the way in, its refusal thrown. */
export async function call<N extends Name>(host: Host, name: N, input: Input<N>): Promise<Output<N>> {
  return (await callByName(host, name, input)) as Output<N> // the service of that name gave it
}

export async function callByName(host: Host, name: string, input: unknown): Promise<unknown> {
  const answered = await answer(host, name, input)
  if (answered.ok) return answered.value
  const { code, message, ...more } = answered.refusal
  throw new Refusal(code, message, more)
}

export async function exhibitionNamed(host: Host, title: string): Promise<string | undefined> {
  const { exhibitions } = await call(host, 'exhibition.list', {})
  return exhibitions.find(each => each.title === title || each.id === title)?.id
}

export async function knownExhibition(host: Host, title: string): Promise<string> {
  const id = await exhibitionNamed(host, title)
  if (id === undefined) {
    throw new Refusal('not-found', `There is no exhibition “${title}” in this catalogue.`, { field: 'exhibition' })
  }
  return id
}

/** By its agreement’s number, however it is written, or by its key. Refuses `not-found`, and `not-one` with the lenders. */
export async function knownLoan(host: Host, number: string): Promise<string> {
  const { parties } = await call(host, 'loan.list', {})
  const loans = parties.flatMap(({ name, loans: own }) => own.map(each => ({ ...each, name })))
  const wanted = normalNumber(number)
  const found = loans.filter(each => each.id === number || normalNumber(each.number) === wanted)
  const [one] = found
  if (one === undefined) {
    throw new Refusal('not-found', `There is no loan “${number}” in this catalogue.`, { field: 'loan' })
  }
  if (found.length > 1) {
    const whose = found.map(({ id, name }) => `${id} of ${name}`).join(', ')
    throw new Refusal('not-one', `More than one loan has the number ${number}. Name it by its key: ${whose}.`, {
      field: 'loan',
    })
  }
  return one.id
}

/** By any of its numbers, or by its key. Refuses `not-found`, and `not-one` with their titles. */
export async function knownWork(host: Host, number: string): Promise<string> {
  const wanted = normalNumber(number)
  const { works } = await call(host, 'work.list', { search: number, limit: 50 })
  const found: { id: string; title: string }[] = []
  for (const { id, title } of works) {
    const { numbers } = await call(host, 'work.get', { id })
    if (numbers.some(({ text }) => normalNumber(text) === wanted)) found.push({ id, title })
  }
  const [one] = found
  if (found.length > 1) {
    const which = found.map(({ id, title }) => `${id} (${title})`).join(', ')
    throw new Refusal('not-one', `More than one work has the number ${number}. Name it by its key: ${which}.`, {
      field: 'work',
    })
  }
  if (one !== undefined) return one.id
  const byKey = await answer(host, 'work.get', { id: number })
  if (byKey.ok) return number
  throw new Refusal('not-found', `No work of this catalogue has the number “${number}”.`, { field: 'work' })
}
