/** `npm run check`: one compile a folder with only the libraries it may see, the screens, the linter. */
import { root, runNode, toolOf } from './run.ts'

const tsc = toolOf('typescript', 'tsc')
const steps: readonly (readonly [string, readonly string[]])[] = [
  ['src', [tsc, '-p', 'src']],
  ['main', [tsc, '-p', 'main']],
  ['main/hosts/desktop', [tsc, '-p', 'main/hosts/desktop']],
  ['test', [tsc, '-p', 'test']],
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
