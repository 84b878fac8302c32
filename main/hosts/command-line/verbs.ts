/** The verbs. Each is a few calls of the contract; none knows more than the contract does. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { z } from 'zod'
import { sheetKind } from '../../../src/contract/areas/sheets.ts'
import { contract } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { createCatalogue } from '../../database/catalogue.ts'
import { makeFolder, refuseUnreadable } from '../../files/named-places.ts'
import { clockFrom } from '../../services/clock.ts'
import { call, callByName, exhibitionNamed, knownExhibition, knownLoan, knownWork, withCatalogue } from './asked.ts'
import { give, handlesIn, takeAll, withHandles } from './files.ts'
import { loanPapers, makeLoanPapers, makeSheets, notOfShow } from './papers.ts'
import type { Terminal } from './run.ts'
import { type Line, type VerbForm, WrongUsage } from './words.ts'

interface Verb {
  readonly form: VerbForm
  readonly does: string
  /** What to print; nothing where the verb prints by itself. */
  readonly run: (line: Line, terminal: Terminal) => Promise<unknown>
}

function needed(line: Line, option: string): string {
  const value = line.options[option]
  if (value === undefined) throw new WrongUsage(`--${option} is needed.`)
  return value
}

function readJson(text: string, called = 'The input'): unknown {
  try {
    return JSON.parse(text)
  } catch {
    throw new Refusal('bad-json', `${called} is not JSON.`)
  }
}

function readJsonFile(file: string): unknown {
  refuseUnreadable(file)
  return readJson(readFileSync(file, 'utf8').replace(/^\uFEFF/, ''), file)
}

export const verbs: Readonly<Record<string, Verb>> = {
  demo: {
    form: { words: ['catalogue'] },
    does: 'writes the demo catalogue to a new file',
    async run({ words: [file = ''] }, terminal) {
      const { writeDemo } = await import('../../demo/write.ts')
      return writeDemo(resolve(file), {
        ...clockFrom(terminal.clock),
        progress: (_done, _total, words) => terminal.err(`${words} …\n`),
      })
    },
  },
  new: {
    form: { words: ['catalogue'] },
    does: 'writes an empty catalogue',
    async run({ words: [file = ''] }, terminal) {
      createCatalogue(resolve(file), clockFrom(terminal.clock)).close()
      return { catalogue: resolve(file) }
    },
  },
  import: {
    form: { words: ['catalogue', 'file'], options: ['exhibition', 'lender', 'map', 'sheet'] },
    does: 'imports a checklist (.csv, .xlsx) into an exhibition',
    async run(line, terminal) {
      const [file = '', list = ''] = line.words
      const title = needed(line, 'exhibition')
      return withCatalogue(file, terminal, async host => {
        const exhibition = await exhibitionNamed(host, title)
        const { lender, map, sheet } = line.options
        return callByName(host, 'import.accept', {
          handle: give(host, list),
          // A show that is not there yet is made with the list, in the same edit: a refused list leaves none.
          ...(exhibition === undefined ? { exhibitionTitle: title } : { exhibition }),
          ...(lender === undefined ? {} : { lenderName: lender }),
          ...(sheet === undefined ? {} : { sheet }),
          ...(map === undefined ? {} : { mapping: readJsonFile(map) }),
        })
      })
    },
  },
  call: {
    form: { words: ['catalogue', 'procedure', 'JSON'], optional: 1, options: ['out'], many: ['file'] },
    does: 'calls any procedure; input as JSON or - for standard input; --file gives a file, its handle replaces "$1", "$2" …; made files go to --out',
    async run(line, terminal) {
      const [file = '', name = '', given] = line.words
      const text = given === '-' ? await terminal.readIn() : (given ?? '{}')
      const input = readJson(text)
      return withCatalogue(file, terminal, async host => {
        const handles = (line.many.file ?? []).map(each => give(host, each))
        const { out } = line.options
        if (out !== undefined) makeFolder(resolve(out), 'out')
        const value = await callByName(host, name, withHandles(input, handles))
        if (out !== undefined) takeAll(host, handlesIn(value), out)
        return value
      })
    },
  },
  procedures: {
    form: { words: [] },
    does: 'lists the contract: name, kind, input and output as JSON Schema',
    async run() {
      return Object.entries(contract).map(([name, { kind, does, input, output }]) => ({
        name,
        // What a caller must know: whether it changes anything, and whether it takes long.
        kind: kind === 'pure' || kind === 'desk' ? 'read' : kind,
        catalogue: kind !== 'pure' && kind !== 'desk',
        does,
        input: z.toJSONSchema(input, { io: 'input' }),
        output: z.toJSONSchema(output, { io: 'output' }),
      }))
    },
  },
  sheets: {
    form: { words: ['catalogue'], options: ['exhibition', 'loan', 'out', 'only', 'paper', 'unit', 'with', 'without'] },
    does: 'writes all sheets of an exhibition, or all papers of a loan, to a folder; --with values puts values on the checklist, --without values makes a copy of a loan’s file to give away',
    async run(line, terminal) {
      const [file = ''] = line.words
      const { only, paper, unit, loan } = line.options
      if (loan !== undefined && line.options.exhibition !== undefined) {
        throw new WrongUsage('Say --exhibition or --loan, not both.')
      }
      const title = loan === undefined ? needed(line, 'exhibition') : ''
      const out = needed(line, 'out')
      const kinds = loan === undefined ? sheetKind.options.filter(kind => !notOfShow.has(kind)) : loanPapers
      if (only !== undefined && !kinds.some(kind => kind === only)) {
        throw new WrongUsage(`--only takes one of: ${kinds.join(', ')}.`)
      }
      const [word, other] = loan === undefined ? (['with', 'without'] as const) : (['without', 'with'] as const)
      if (line.options[other] !== undefined || (line.options[word] ?? 'values') !== 'values') {
        throw new WrongUsage(
          `Beside --${loan === undefined ? 'exhibition' : 'loan'} stands --${word} values or nothing.`,
        )
      }
      const withValues = (line.options[word] === undefined) !== (loan === undefined)
      return withCatalogue(file, terminal, async host => {
        const wishes = {
          ...(paper === undefined ? {} : { paper }),
          ...(unit === undefined ? {} : { unit }),
        }
        const exhibition = loan === undefined ? await knownExhibition(host, title) : ''
        const lent = loan === undefined ? '' : await knownLoan(host, loan)
        // First of all: a sheet that cannot be saved must not count as a revision.
        makeFolder(resolve(out), 'out')
        const { files } = await (loan === undefined
          ? makeSheets(host, only, { ...wishes, exhibition }, withValues)
          : makeLoanPapers(host, only, { ...wishes, loan: lent }, withValues))
        const paths = takeAll(
          host,
          files.map(({ handle }) => handle),
          resolve(out),
        )
        return {
          files: files.map(({ kind, pages }, index) => ({
            kind,
            path: paths[index],
            ...(pages === null ? {} : { pages }),
          })),
        }
      })
    },
  },
  'on-day': {
    form: { words: ['catalogue', 'work'], options: ['day'] },
    does: 'tells of a work, by any of its numbers, where it was on a day, in which condition, under whose terms, with how much light behind it, who signed',
    async run({ words: [file = '', number = ''], options: { day } }, terminal) {
      return withCatalogue(file, terminal, async host =>
        callByName(host, 'work.onDay', { work: await knownWork(host, number), ...(day === undefined ? {} : { day }) }),
      )
    },
  },
  check: {
    form: { words: ['catalogue'], options: ['exhibition'] },
    does: 'checks the file, then lists every finding of the planning checks',
    async run(line, terminal) {
      const [file = ''] = line.words
      return withCatalogue(file, terminal, async host => {
        const { ok, integrity } = await call(host, 'catalogue.check', {})
        const asked = line.options.exhibition
        const shows =
          asked === undefined
            ? (await call(host, 'exhibition.list', {})).exhibitions.map(each => each.id)
            : [await knownExhibition(host, asked)]
        const findings = (await call(host, 'room.findings', {})).findings
        for (const exhibition of shows) findings.push(...(await call(host, 'finding.list', { exhibition })).findings)
        return { ok, integrity, findings }
      })
    },
  },
  backup: {
    form: { words: ['catalogue', 'file'] },
    does: 'makes a backup with its files folder, every hash verified',
    async run({ words: [file = '', to = ''] }, terminal) {
      return withCatalogue(file, terminal, async host => {
        const { backupTo } = await import('../../database/backup.ts')
        if (host.open === null) throw new Refusal('no-catalogue', 'Name the catalogue to back up.')
        const { catalogue } = host.open
        const progress = (_done: number, _total: number | null, words: string) => terminal.err(`${words} …\n`)
        return host.alone(() => backupTo(catalogue, resolve(to), { progress }))
      })
    },
  },
  serve: {
    form: { words: ['catalogue'], options: ['port'] },
    does: 'serves the catalogue on this machine; the first line says the address',
    async run(line, terminal) {
      const { serveUntilStopped } = await import('../loopback/serve.ts')
      const [file = ''] = line.words
      const port = line.options.port === undefined ? 0 : Number(line.options.port)
      if (!Number.isInteger(port) || port < 0 || port > 65535)
        throw new WrongUsage('--port takes a number up to 65535.')
      await serveUntilStopped({
        file: resolve(file),
        port,
        ...(terminal.clock === undefined ? {} : { clock: terminal.clock }),
        onAddress: address => terminal.out(`${JSON.stringify({ address })}\n`),
      })
      return undefined
    },
  },
}
