/** The verbs. Each is a few calls of the contract; none knows more than the contract does. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { z } from 'zod'
import { type SheetFile, sheetKind } from '../../../src/contract/areas/sheets.ts'
import { contract, type Input, type Name, type Output } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { createCatalogue } from '../../database/catalogue.ts'
import { dataFolder } from '../../files/data-folder.ts'
import { makeFolder, refuseUnreadable } from '../../files/named-places.ts'
import { clockFrom } from '../../services/clock.ts'
import { answer } from '../answer.ts'
import { createHost, type Host } from '../host.ts'
import { give, handlesIn, takeAll, withHandles } from './files.ts'
import type { Terminal } from './run.ts'
import { type Line, type VerbForm, WrongUsage } from './words.ts'

interface Verb {
  readonly form: VerbForm
  readonly does: string
  /** What to print; nothing where the verb prints by itself. */
  readonly run: (line: Line, terminal: Terminal) => Promise<unknown>
}

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

async function withCatalogue<T>(file: string, terminal: Terminal, work: (host: Host) => Promise<T>): Promise<T> {
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
async function call<N extends Name>(host: Host, name: N, input: Input<N>): Promise<Output<N>> {
  return (await callByName(host, name, input)) as Output<N> // the service of that name gave it
}

async function callByName(host: Host, name: string, input: unknown): Promise<unknown> {
  const answered = await answer(host, name, input)
  if (answered.ok) return answered.value
  const { code, message, ...more } = answered.refusal
  throw new Refusal(code, message, more)
}

async function exhibitionNamed(host: Host, title: string): Promise<string | undefined> {
  const { exhibitions } = await call(host, 'exhibition.list', {})
  return exhibitions.find(each => each.title === title || each.id === title)?.id
}

async function knownExhibition(host: Host, title: string): Promise<string> {
  const id = await exhibitionNamed(host, title)
  if (id === undefined) {
    throw new Refusal('not-found', `There is no exhibition “${title}” in this catalogue.`, { field: 'exhibition' })
  }
  return id
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
    form: { words: ['catalogue'], options: ['exhibition', 'out', 'only', 'paper', 'unit'] },
    does: 'writes all sheets of an exhibition to a folder',
    async run(line, terminal) {
      const [file = ''] = line.words
      const title = needed(line, 'exhibition')
      const out = needed(line, 'out')
      const { only, paper, unit } = line.options
      const kinds = sheetKind.options.filter(kind => !notOfShow.has(kind))
      if (only !== undefined && !kinds.some(kind => kind === only)) {
        throw new WrongUsage(`--only takes one of: ${kinds.join(', ')}.`)
      }
      return withCatalogue(file, terminal, async host => {
        const wishes = {
          exhibition: await knownExhibition(host, title),
          ...(paper === undefined ? {} : { paper }),
          ...(unit === undefined ? {} : { unit }),
        }
        // First of all: a sheet that cannot be saved must not count as a revision.
        makeFolder(resolve(out), 'out')
        const { files } = await makeSheets(host, only, wishes)
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

/** Of one work, two reports or a day, so they are called for by `call`. */
const notOfShow: ReadonlySet<SheetFile['kind']> = new Set([
  'paper template',
  'condition comparison',
  'damage report',
  'movement sheet',
  'object file',
  'insured values',
])

/** Papers of a whole show that are no wall sheets, by the procedure that makes them. */
const listSheets = {
  checklist: 'sheet.checklist',
  'hang list': 'sheet.hangList',
  'label list': 'sheet.labels',
  'hardware list': 'sheet.hardware',
  'hanging order': 'sheet.hangingOrder',
  'back tags': 'sheet.hangingOrder',
  'patch list': 'sheet.patchList',
  'lock register': 'sheet.locks',
} as const

function isListed(kind: string): kind is keyof typeof listSheets {
  return Object.hasOwn(listSheets, kind)
}

/** Papers of one kind, or the whole set. Paper and unit are checked where every other host's are. */
async function makeSheets(
  host: Host,
  only: string | undefined,
  wishes: { readonly exhibition: string },
): Promise<Output<'sheet.set'>> {
  async function make(name: 'sheet.set' | 'sheet.wall' | (typeof listSheets)[keyof typeof listSheets], input: object) {
    return (await callByName(host, name, input)) as Output<'sheet.set'> // they answer alike
  }
  if (only === undefined) return make('sheet.set', wishes)
  if (only === 'plan') {
    const { storeys } = await call(host, 'plan.get', { exhibition: wishes.exhibition })
    const made: { files: SheetFile[]; findings: [] } = { files: [], findings: [] }
    for (const storey of storeys) {
      const { files } = await call(host, 'sheet.plan', { ...wishes, storey, formats: ['pdf', 'svg', 'dxf'] })
      made.files.push(...files)
    }
    return made
  }
  if (only === 'condition report') return conditionReports(host, wishes)
  if (isListed(only)) {
    const made = await make(listSheets[only], wishes)
    return { ...made, files: made.files.filter(file => file.kind === only) }
  }
  const { faces } = await call(host, 'sheet.state', { exhibition: wishes.exhibition })
  const used = faces.filter(({ works }) => works > 0).map(({ face }) => face)
  return used.length === 0 ? { files: [], findings: [] } : make('sheet.wall', { ...wishes, faces: used })
}

/** Every condition report of the show's works, drafts too; one that another sets right says so itself. */
async function conditionReports(
  host: Host,
  { exhibition, ...wishes }: { readonly exhibition: string },
): Promise<Output<'sheet.set'>> {
  const files: SheetFile[] = []
  for (let offset = 0; ; ) {
    const { reports, total } = await call(host, 'condition.list', { exhibition, offset })
    for (const { id } of reports) files.push(...(await call(host, 'sheet.condition', { ...wishes, report: id })).files)
    offset += reports.length
    if (offset >= total || reports.length === 0) return { files, findings: [] }
  }
}
