// The one way to begin. Runs on any Node from 18: installs what the lock file says when it has changed, then
// goes on with the project's own Node (the optional npm package `node`), or with the caller's where that is new enough.
import { spawn, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, lstatSync, readFileSync, writeFileSync } from 'node:fs'
import { delimiter, dirname, join, sep } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const modules = join(root, 'node_modules')
const stamp = join(modules, '.installed')
const signals = ['SIGINT', 'SIGTERM', 'SIGHUP']

const wanted = createHash('sha256')
  .update(readFileSync(join(root, 'package-lock.json')))
  .update(process.platform + process.arch)
  .digest('hex')
const installed = existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted

const outerNode = process.env.npm_node_execpath ?? process.execPath
const runsOnOwnNode = process.execPath.startsWith(modules + sep)

if (!installed && runsOnOwnNode && outerNode !== process.execPath) {
  // An install would replace the Node that runs it, so it is left to the one npm runs on.
  goOn(outerNode, process.argv.slice(1), process.env)
} else {
  if (!installed) install()
  const own = join(modules, 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node')
  const program = existsSync(own) ? own : isNewEnough(process.versions.node) ? process.execPath : undefined
  if (program === undefined) {
    stop(
      `This Node is ${process.version} and the project's own could not be installed: get Node 24 from your usual place and start again.`,
    )
  }
  const [script, ...rest] = process.argv.slice(2)
  if (script === undefined) stop('begin.mjs needs the script to run.')
  if (!existsSync(join(root, script))) stop(`There is no script ${script} in this program.`)
  goOn(program, [join(root, script), ...rest], {
    ...process.env,
    PATH: join(modules, '.bin') + delimiter + process.env.PATH,
    // Sources run as they are: what Node makes of them is kept, so that programs and workers begin twice as fast.
    NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE ?? join(modules, '.compiled'),
  })
}

/** better-sqlite3 13 needs Node-API 10. */
function isNewEnough(version) {
  const [major, minor] = version.split('.').map(Number)
  return major > 22 || (major === 22 && minor >= 14)
}

function install() {
  // npm empties what a link leads to, which may be what another copy runs on.
  if (lstatSync(modules, { throwIfNoEntry: false })?.isSymbolicLink()) {
    stop(
      'node_modules is a link, and an install would empty the folder behind it: start the copy it leads to, or take the link away and start again.',
    )
  }
  console.error(existsSync(stamp) ? 'The lock file changed: installing …' : 'First start: installing …')
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error']
  const npm = process.env.npm_execpath
  // npm's words go to standard error: standard output belongs to what the script prints.
  const options = { cwd: root, stdio: ['ignore', 2, 2] }
  const result = npm
    ? spawnSync(outerNode, [npm, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' })
  if (result.error) stop(`npm could not be started (${result.error.message}): install Node with npm and start again.`)
  if (result.status !== 0) stop('npm ci failed; its reason stands above.')
  writeFileSync(stamp, wanted)
}

function goOn(program, args, env) {
  const child = spawn(program, args, { stdio: 'inherit', env })
  for (const signal of signals) process.on(signal, () => child.kill(signal))
  child.on('error', error => stop(`${program} did not start: ${error.message}`))
  child.on('exit', (code, signal) => {
    for (const each of signals) process.removeAllListeners(each)
    if (signal) process.kill(process.pid, signal)
    else process.exit(code ?? 1)
  })
}

function stop(sentence) {
  console.error(sentence)
  process.exit(1)
}
