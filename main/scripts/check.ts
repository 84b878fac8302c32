/** `npm run check`: one compile a folder with only the libraries it may see, the screens, the linter. */
import { join } from 'node:path'
import { root, runNode, toolOf } from './run.ts'

/** What was found of each folder is kept, so that the next check reads only what has changed. */
const compile = (folder: string): readonly string[] => [
  toolOf('typescript', 'tsc'),
  ...['-p', folder, '--incremental'],
  ...['--tsBuildInfoFile', join(root, 'node_modules', '.checked', `${folder.replaceAll('/', '-')}.json`)],
]
const steps: readonly (readonly [string, readonly string[]])[] = [
  ...['src', 'main', 'main/hosts/desktop', 'test'].map(folder => [folder, compile(folder)] as const),
  [
    'renderer',
    [
      toolOf('svelte-check'),
      '--workspace',
      'renderer',
      '--tsconfig',
      'tsconfig.json',
      '--fail-on-warnings',
      '--output',
      'human',
    ],
  ],
  ['lint and format', [toolOf('@biomejs/biome', 'biome'), 'check', '--error-on-warnings', root]],
]

let failed = 0
for (const [name, args] of steps) {
  const status = await runNode(args)
  console.log(`${status === 0 ? 'ok     ' : 'FAILED '} ${name}`)
  if (status !== 0) failed++
}
process.exitCode = failed === 0 ? 0 : 1
