/** The command line as a program: hands its arguments to `runCommandLine` and ends with its status. */
import { fileURLToPath } from 'node:url'
import { runCommandLine } from './run.ts'

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  process.exitCode = await runCommandLine(process.argv.slice(2), {
    out: text => process.stdout.write(text),
    err: text => process.stderr.write(text),
    readIn: readStandardInput,
  })
}

async function readStandardInput(): Promise<string> {
  const chunks: Buffer[] = []
  for await (const chunk of process.stdin) chunks.push(chunk)
  return Buffer.concat(chunks).toString('utf8')
}
