/**
 * `npm test`: the checks, then every suite; what a suite needs is found or made first, and said. The last line counts
 * over all suites. Words after `--` choose among the files, as `npm test -- journal`.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildFonts } from '../fonts/build.ts'
import { findOrInstallBrowser } from './browser.ts'
import { buildDesktop, buildRenderer } from './build.ts'
import { buildWhenOld } from './fresh.ts'
import { runNode, toolOf } from './run.ts'

interface Counts {
  passed: number
  failed: number
  skipped: number
}

const chosen = process.argv.slice(2)
const reports = mkdtempSync(join(tmpdir(), 'hangwright-tests-'))
const total: Counts = { passed: 0, failed: 0, skipped: 0 }

function add(name: string, counts: Counts): void {
  console.log(`${name}: ${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`)
  total.passed += counts.passed
  total.failed += counts.failed
  total.skipped += counts.skipped
}

/** A suite that ends without its report has failed, whatever else it said. */
function reportOf<T>(file: string): T | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as T // the reporter's own form, read for its counts alone
  } catch {
    return undefined
  }
}

async function vitest(): Promise<void> {
  const file = join(reports, 'vitest.json')
  const status = await runNode([
    toolOf('vitest'),
    'run',
    '--config',
    'test/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
    ...(chosen.length > 0 ? ['--passWithNoTests', ...chosen] : []),
  ])
  const report = reportOf<{
    numPassedTests: number
    numFailedTests: number
    numPendingTests: number
    numFailedTestSuites: number
  }>(file)
  const counts = {
    passed: report?.numPassedTests ?? 0,
    failed: report?.numFailedTests ?? 1,
    skipped: report?.numPendingTests ?? 0,
  }
  // A file that could not even be read counts no test of its own.
  if (status !== 0 && counts.failed === 0) counts.failed = 1
  add('node', counts)
}

async function playwright(name: string, config: string, env: NodeJS.ProcessEnv): Promise<void> {
  const file = join(reports, `${name}.json`)
  const status = await runNode(
    [
      toolOf('@playwright/test', 'playwright'),
      'test',
      '--config',
      config,
      ...(chosen.length > 0 ? ['--pass-with-no-tests', ...chosen] : []),
    ],
    { env: { ...env, PLAYWRIGHT_JSON_OUTPUT_FILE: file } },
  )
  const report = reportOf<{ stats: { expected: number; unexpected: number; flaky: number; skipped: number } }>(file)
  const again = report?.stats.flaky ?? 0
  if (again > 0) console.log(`${name}: ${again} held only on the second try, named above as flaky. Look into each.`)
  const counts = {
    passed: (report?.stats.expected ?? 0) + again,
    failed: report === undefined ? 1 : report.stats.unexpected,
    skipped: report?.stats.skipped ?? 0,
  }
  if (status !== 0 && counts.failed === 0) counts.failed = 1
  add(name, counts)
}

console.log('Building what is old …')
await buildWhenOld('main/fonts/built', ['main/fonts'], buildFonts)
await buildWhenOld('renderer/built', ['renderer', 'src'], buildRenderer)
await buildWhenOld('main/hosts/desktop/built', ['main', 'src'], buildDesktop)
const browser = await findOrInstallBrowser()
console.log(`Tests in the browser use ${browser}.`)

if (chosen.length === 0) {
  const status = await runNode(['main/scripts/check.ts'])
  add('checks', { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1, skipped: 0 })
}
await vitest()
await playwright('browser', 'test/browser/playwright.config.ts', { HANGWRIGHT_BROWSER: browser })
await playwright('desktop', 'test/desktop/playwright.config.ts', {})

rmSync(reports, { recursive: true, force: true })
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`)
process.exitCode = total.failed === 0 ? 0 : 1
