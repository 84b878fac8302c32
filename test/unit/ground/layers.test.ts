/**
 * The folder says what a file may import, and every package is admitted by name to one place; what is not named here
 * fails. Type-only imports count like any other: a type that crosses a layer is a crossing.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { builtinModules } from 'node:module'
import { dirname, join, relative, resolve, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../..', import.meta.url))

interface Layer {
  readonly folder: string
  /** Other layers it may import, by folder. */
  readonly may: readonly string[]
  /** Node's own modules. */
  readonly node: boolean
  readonly packages: readonly string[]
}

/** The most particular folder first. */
const layers: readonly Layer[] = [
  // Colour is a trade of its own: its kept library is pure and is used in one file.
  { folder: 'src/sequence', may: ['src'], node: false, packages: ['zod', 'culori'] },
  { folder: 'src', may: ['src'], node: false, packages: ['zod'] },
  {
    folder: 'main/hosts/desktop',
    may: ['src', 'main'],
    node: true,
    packages: ['electron', 'vite'],
  },
  {
    folder: 'main/database',
    may: ['src', 'main/database', 'main/files'],
    node: true,
    packages: ['better-sqlite3', 'zod'],
  },
  {
    folder: 'main/files/workbook',
    may: ['src', 'main/files'],
    node: true,
    packages: ['exceljs'],
  },
  {
    folder: 'main/files/tables',
    may: ['src', 'main/files'],
    node: true,
    packages: ['yauzl', 'zod'],
  },
  {
    folder: 'main/files/pdf',
    may: ['src', 'main/files', 'main/fonts'],
    node: true,
    packages: ['pdfkit', 'fontkit', 'sharp'],
  },
  {
    folder: 'main/files/dxf',
    may: ['src', 'main/files'],
    node: true,
    packages: ['dxf', '@tarikjabiri/dxf'],
  },
  { folder: 'main/files/archive', may: ['src', 'main/files'], node: true, packages: ['yazl', 'csv-stringify'] },
  { folder: 'main/files', may: ['src', 'main/files', 'main/database'], node: true, packages: ['sharp'] },
  { folder: 'main/fonts', may: ['src', 'main/fonts'], node: true, packages: ['subset-font', 'fontkit'] },
  { folder: 'main/demo', may: ['src', 'main'], node: true, packages: ['sharp'] },
  {
    folder: 'main/services',
    may: ['src', 'main/services', 'main/database', 'main/files', 'main/fonts'],
    node: true,
    packages: ['zod'],
  },
  { folder: 'main/workers', may: ['src', 'main'], node: true, packages: [] },
  { folder: 'main/scripts', may: ['src', 'main'], node: true, packages: ['vite', 'playwright-core'] },
  { folder: 'main', may: ['src', 'main'], node: true, packages: ['zod'] },
  {
    folder: 'renderer',
    may: ['src', 'renderer'],
    node: false,
    packages: ['svelte', 'd3', 'zod', 'vite', '@sveltejs/vite-plugin-svelte'],
  },
]

/** Fonts and their styles are files, not code; only the look brings them in. */
const fontPackages = [
  '@fontsource-variable/archivo',
  '@fontsource-variable/newsreader',
  '@fontsource-variable/noto-sans',
]

function files(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && /\.(ts|mjs|svelte)$/.test(entry.name) && !entry.name.endsWith('.d.ts'))
    .map(entry => join(entry.parentPath, entry.name))
    .filter(file => !file.split(sep).includes('built'))
}

function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|(^|\s)\/\/.*$/gm, '')
  const found = [
    ...text.matchAll(
      /\b(?:import|export)\s+(?:[^'"`;]*?\sfrom\s+)?['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]\s*\)/g,
    ),
  ]
  return found.map(([, still, late]) => still ?? late ?? '')
}

const builtin = new Set([...builtinModules, ...builtinModules.map(name => `node:${name}`)])

function packageOf(specifier: string): string {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/')
}

/** Node's modules that a configuration may use in a folder whose sources may not. */
function isConfiguration(file: string): boolean {
  return file.endsWith('.config.ts')
}

function complaints(layer: Layer, file: string): string[] {
  const from = relative(root, file)
  return importsOf(file).flatMap(specifier => {
    if (specifier.startsWith('.')) {
      const to = relative(root, resolve(dirname(file), specifier))
        .split(sep)
        .join('/')
      return layer.may.some(folder => to.startsWith(`${folder}/`)) ? [] : [`${from} imports ${to}`]
    }
    if (builtin.has(specifier))
      return layer.node || isConfiguration(file) ? [] : [`${from} imports Node's ${specifier}`]
    if (from.startsWith('renderer/') && fontPackages.includes(packageOf(specifier))) return []
    return layer.packages.includes(packageOf(specifier))
      ? []
      : [`${from} imports the package ${specifier}, which is not admitted there`]
  })
}

describe('layers', () => {
  const seen = new Set<string>()
  for (const layer of layers) {
    test(`${layer.folder} imports only what it may`, () => {
      const own = files(layer.folder).filter(file => !seen.has(file))
      expect(own.length).toBeGreaterThan(0)
      for (const file of own) seen.add(file)
      expect(own.flatMap(file => complaints(layer, file))).toEqual([])
    })
  }

  test('electron is imported by the desktop host alone, the screens by nobody', () => {
    const all = [...files('src'), ...files('main'), ...files('renderer')]
    const electron = all.filter(file => importsOf(file).includes('electron')).map(file => relative(root, file))
    expect(electron.every(file => file.startsWith(join('main', 'hosts', 'desktop')))).toBe(true)
    const intoScreens = [...files('src'), ...files('main')].flatMap(file =>
      importsOf(file)
        .filter(specifier => specifier.startsWith('.'))
        .map(specifier => relative(root, resolve(dirname(file), specifier)))
        .filter(to => to.startsWith(`renderer${sep}`))
        .map(to => `${relative(root, file)} imports ${to}`),
    )
    expect(intoScreens).toEqual([])
  })

  test('src has no clock, no chance and no globals of a platform', () => {
    const forbidden = /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bprocess\.|\bwindow\.|\bdocument\.|\bglobalThis\b/
    const guilty = files('src').flatMap(file =>
      readFileSync(file, 'utf8')
        .split('\n')
        .flatMap((line, index) =>
          forbidden.test(line.replace(/\/\/.*$|^\s*\*.*$/, '')) ? [`${relative(root, file)}:${index + 1}`] : [],
        ),
    )
    expect(guilty).toEqual([])
  })

  test('the rules themselves find a crossing', () => {
    const layer = { folder: 'src', may: ['src'], node: false, packages: ['zod'] }
    const file = join(root, 'test', 'unit', 'ground', 'layers.test.ts')
    expect(complaints(layer, file)).toContain("test/unit/ground/layers.test.ts imports Node's node:fs")
  })
})

describe('packages', () => {
  interface Package {
    readonly dependencies: Record<string, string>
    readonly devDependencies: Record<string, string>
    readonly optionalDependencies: Record<string, string>
  }
  // Our own file.
  const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Package

  test('every version is exact', () => {
    const all = { ...own.dependencies, ...own.devDependencies, ...own.optionalDependencies }
    for (const [name, version] of Object.entries(all)) expect(version, name).toMatch(/^\d+\.\d+\.\d+$/)
  })

  test('only native packages stay outside the bundles', () => {
    expect(Object.keys(own.dependencies).sort()).toEqual(['better-sqlite3', 'sharp'])
    expect(Object.keys(own.optionalDependencies)).toEqual(['node'])
  })
})
