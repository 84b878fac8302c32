/** Papers that were made just now, to be fetched: of one call, or of one after the other. */
import type { Input, NameOf, Output } from '../../src/contract/contract.ts'
import { jobs } from '../host/jobs.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'

export type MadePapers = Output<'sheet.set'>
type SheetName = Extract<NameOf<'long'>, `sheet.${string}`>
/** What makes files; a preview makes none. */
type MakingName = Exclude<SheetName, 'sheet.preview' | 'sheet.previewPlan' | 'sheet.previewPaper'>

export class Making {
  made = $state.raw<MadePapers | null>(null)

  async make<N extends MakingName>(name: N, label: string, ...inputs: readonly Input<N>[]): Promise<void> {
    this.made = null
    const files: MadePapers['files'][number][] = []
    const findings: MadePapers['findings'][number][] = []
    await frame.attempt(async () => {
      for (const [index, input] of inputs.entries()) {
        const said = inputs.length === 1 ? label : `${label}, ${index + 1} of ${inputs.length}`
        const got: MadePapers = await jobs.run(name, said, input)
        files.push(...got.files)
        findings.push(...got.findings)
        // What is made can be fetched, whatever becomes of the rest.
        this.made = { files: [...files], findings: [...findings] }
      }
    })
  }
}
