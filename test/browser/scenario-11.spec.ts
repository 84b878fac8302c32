/**
 * Scenario 11 on the screens: what a registrar does by hand is done by hand here (reports drawn and signed, movements,
 * receipts, damage), the rest is told by calls as a second window would. It must end in the state that calls alone come to.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import { createCatalogue } from '../../main/database/catalogue.ts'
import { answer } from '../../main/hosts/answer.ts'
import { withHandles } from '../../main/hosts/command-line/files.ts'
import { createHost } from '../../main/hosts/host.ts'
import { machineClock } from '../../main/services/clock.ts'
import type { Name, Output } from '../../src/contract/contract.ts'
import * as facts from '../contract/scenario-11/facts.ts'
import { type Ask, answerOf, type ByHand, play, stateOf } from '../contract/scenario-11/play.ts'
import * as steps from '../contract/scenario-11/steps.ts'
import { expect, type RunningHost, test } from './host.ts'

const patient = { timeout: 40_000 } as const
const photo = () =>
  sharp({ create: { width: 1200, height: 900, channels: 3, background: '#806040' } })
    .png()
    .toBuffer()

/** The same by calls alone, in a catalogue of its own: what the screens must come to. */
async function byCalls(folder: string): Promise<string> {
  const file = join(folder, 'by-calls.hangwright')
  createCatalogue(file, machineClock).close()
  const host = createHost({ kind: 'command line', data: join(folder, 'other data') })
  const picture = await photo()
  try {
    host.openFile(file)
    const give = (name: string, bytes: string | Uint8Array) => {
      const { handle, path } = host.handles.create(name)
      writeFileSync(path, bytes)
      return handle
    }
    const ask: Ask = async (name, input, files) => {
      const handles = files.map(() => give('joint.png', picture))
      const answered = await answer(host, name, withHandles(input, handles))
      return answered.ok ? { ok: true, value: answered.value } : { ok: false, code: answered.refusal.code }
    }
    const person = await ask('person.add', sitting, [])
    if (!person.ok) throw new Error('nobody sits')
    await ask('desk.sit', { person: (person.value as { id: string }).id }, []) // made
    await ask('import.accept', { handle: give('list.csv', facts.list), exhibitionTitle: facts.show.title }, [])
    await play([...before, ...steps.arrival, ...steps.examined, ...after], new steps.Keys(), ask)
  } finally {
    await host.close()
  }
  return file
}

const sitting = { name: facts.registrar, role: 'registrar', lengthUnit: 'mm', paper: 'A4', fraction: 16 } as const
const before = [steps.found, steps.house, steps.loans, steps.values, steps.agreed].flat()
const after = [steps.hung, steps.deinstalled('joint.png'), steps.goes, steps.back].flat()

/** As a field of date and time takes a moment of the facts. */
const field = (written: string) => written.replace(' ', 'T')

async function signAs(page: Page, role: string, name: string): Promise<void> {
  await page.getByRole('button', { name: 'sign', exact: true }).click()
  const form = page.getByRole('form', { name: 'Sign' })
  await form.getByLabel('as').selectOption(role)
  await form.getByLabel('name').fill(name)
  const pad = form.getByRole('img')
  await pad.scrollIntoViewIfNeeded()
  const box = await pad.boundingBox()
  if (box === null) throw new Error('there is nothing to sign in')
  await page.mouse.move(box.x + 40, box.y + 60)
  await page.mouse.down()
  await page.mouse.move(box.x + 120, box.y + 20, { steps: 5 })
  await page.mouse.move(box.x + 180, box.y + 80, { steps: 5 })
  await page.mouse.up()
  await form.getByRole('button', { name: 'sign it' }).click()
  await expect(page.getByRole('img', { name: `Signature of ${name}` })).toBeVisible(patient)
}

/** By keys, in steps of a centimetre: the cross stands in the middle of the face when it is first called for. */
class Drawing {
  private at = { x: facts.face.width / 2, y: facts.face.height / 2 }
  private called = false
  private readonly page: Page
  constructor(page: Page) {
    this.page = page
  }
  async draw(form: 'mark' | 'outline', points: readonly { x: number; y: number }[]): Promise<void> {
    const { keyboard } = this.page
    await this.page.getByRole('application').focus()
    await keyboard.press(form === 'mark' ? 'm' : 'o')
    if (!this.called) await keyboard.press('ArrowRight')
    this.called = true
    for (const to of points) {
      const right = (to.x - this.at.x) / 10
      const down = (to.y - this.at.y) / 10
      for (let n = 0; n < Math.abs(right); n++) await keyboard.press(right > 0 ? 'ArrowRight' : 'ArrowLeft')
      for (let n = 0; n < Math.abs(down); n++) await keyboard.press(down > 0 ? 'ArrowDown' : 'ArrowUp')
      await keyboard.press('Space')
      this.at = to
    }
    if (form === 'outline') await keyboard.press('Enter')
  }
}

async function choose(page: Page, label: string, option: string): Promise<void> {
  const chosen = page.getByRole('list').getByRole('combobox', { name: new RegExp(`^${label}`) })
  await chosen.selectOption({ label: option })
  await expect(chosen.locator('option:checked')).toHaveText(option)
}

async function fact(page: Page, label: string, text: string): Promise<void> {
  const written = page.getByLabel(label, { exact: true })
  await written.fill(text)
  await written.press('Enter')
  await expect(written).toHaveValue(text)
}

/** What is played on the screens. */
function byHandOn(page: Page, host: RunningHost): ByHand {
  let drawing = new Drawing(page)
  const goTo = (hash: string) => host.open(page, hash)
  const began = (kind: 'incoming' | 'outgoing', when: string) => async (keys: steps.Keys) => {
    await goTo(`#/work/${keys.of(facts.main)}`)
    await page.getByRole('button', { name: `an ${kind} report` }).click(patient)
    await page.waitForURL(/#\/condition\//)
    await expect(page.getByRole('application')).toBeVisible(patient)
    await page.getByLabel('Examined on').fill(field(when))
    await page.getByLabel('Examined on').press('Tab')
    await fact(page, 'Where', 'R2')
    drawing = new Drawing(page)
    return { id: page.url().split('#/condition/')[1] ?? '' }
  }
  const drew =
    (
      count: number,
      one: { form: 'mark' | 'outline'; points: readonly { x: number; y: number }[] },
      said: readonly string[],
    ) =>
    async () => {
      await drawing.draw(one.form, one.points)
      await expect(page.getByRole('heading', { name: count === 1 ? 'One finding' : `${count} findings` })).toBeVisible(
        patient,
      )
      const [word = '', age = '', severity = ''] = said
      await choose(page, 'Word', word)
      await choose(page, 'Age', age)
      await choose(page, 'How serious', severity)
    }
  const alone = async () => {
    await expect(page.getByText(new RegExp(`Signed by ${facts.registrar}, registrar, alone`))).toBeVisible(patient)
    await expect(page.getByRole('button', { name: 'complete it' })).toBeDisabled()
  }
  const complete = async () => {
    await page.getByRole('button', { name: 'complete it' }).click(patient)
    await expect(page.getByText(/^● Complete since/)).toBeVisible(patient)
  }
  const signing = (report: string): ByHand => ({
    [`${report} signed registrar`]: () => signAs(page, 'registrar', facts.registrar),
    [`${report} alone`]: alone,
    [`${report} signed courier`]: () => signAs(page, 'courier', facts.courier),
    [`${report} complete`]: complete,
  })
  const old = ['abrasion · painting', 'old', 'slight']
  const again = (count: number) => async () => {
    // The one that is nearest to the top of the list of those not seen yet.
    await page
      .getByRole('button', { name: /^seen again: abrasion/ })
      .first()
      .click(patient)
    await expect(page.getByRole('heading', { name: count === 1 ? 'One finding' : `${count} findings` })).toBeVisible(
      patient,
    )
  }
  async function movementForm() {
    await goTo('#/record')
    const find = page.getByLabel('find a work, a maker, a place')
    await find.fill('slack water', patient)
    const row = page.locator('main tbody tr').filter({ hasText: 'Slack water' })
    await row.getByRole('checkbox').check(patient)
    await page.keyboard.press('m')
    return page.getByRole('form', { name: 'Record a movement' })
  }
  return {
    'receipt received 0': async keys => {
      await goTo(`#/loans/${keys.of('loan 0')}`)
      const form = page.getByRole('form', { name: 'Record a receipt' })
      await form.getByLabel('all works').check(patient)
      await form.getByLabel('on', { exact: true }).fill('2025-03-02')
      await form.getByLabel('handed over by').fill(facts.courier)
      await form.getByRole('textbox', { name: 'received by' }).fill(facts.registrar)
      await form.getByLabel('place').fill('Dock')
      await form.getByRole('button', { name: 'record the receipt' }).click()
      // What comes next is chosen by itself, so that the works stay in sight.
      await expect(form.getByRole('combobox')).toHaveValue('sent', patient)
      await expect(form.locator('tbody tr')).toHaveCount(4)
      await page.getByRole('button', { name: 'close the loan' }).click()
      await expect(page.getByRole('alert')).toContainText('4 works of it are outstanding')
      await page.getByRole('button', { name: 'leave it open' }).click()
    },
    unpacked: async () => {
      const form = await movementForm()
      await form.getByLabel('to', { exact: true }).fill('R2')
      await form.getByLabel('where in it').fill('the floor')
      await form.getByLabel('when').fill(field('2025-03-03 10:00'))
      await form.getByLabel('carried by').fill(facts.crew)
      await form.getByRole('button', { name: 'record it' }).click()
      await expect(form).toBeHidden(patient)
    },
    incoming: began('incoming', '2025-03-03 10:10'),
    'abrasion 0': drew(1, facts.abrasions[0], old),
    'abrasion 1': drew(2, facts.abrasions[1], old),
    ...signing('incoming'),
    outgoing: began('outgoing', '2025-05-20 14:20'),
    'abrasion 0 again': again(1),
    'abrasion 1 again': again(2),
    joint: async () => {
      await drew(3, facts.joint, ['open joint · frame', 'new', 'marked'])()
      await page.getByRole('list').getByLabel('Across').fill(String(facts.joint.across))
      await page.keyboard.press('Enter')
      await expect(page.getByRole('heading', { name: /2 same, 0 grown, 1 new, 0 not seen/ })).toBeVisible(patient)
    },
    ...signing('outgoing'),
    'damage.add': async keys => {
      await goTo(`#/work/${keys.of(facts.main)}`)
      await page.getByRole('link', { name: 'record damage' }).click(patient)
      const form = page.getByRole('form', { name: 'Record damage' })
      await form.getByLabel('found on').fill(field('2025-05-20 14:00'))
      await form.getByLabel('reported on').fill(field('2025-05-20 14:05'))
      await form.getByLabel('reported by').fill(facts.registrar)
      await form.getByLabel('reference').fill(facts.damage.reference)
      await form.getByLabel('how it came about').fill('the lower right joint of the frame has opened')
      await form.getByLabel('condition report').selectOption(keys.of('outgoing'))
      await form.getByRole('button', { name: 'record it' }).click()
      await expect(page.getByRole('heading', { name: /^D-0007 damage of/ })).toBeVisible(patient)
      return { id: page.url().split('#/damage/')[1] ?? '' }
    },
    release: async () => {
      const form = await movementForm()
      await form.getByLabel('to', { exact: true }).fill(facts.lenders[0])
      await form.getByLabel('when').fill(field('2025-05-21 09:00'))
      await form.getByRole('button', { name: 'record it' }).click()
      await expect(form.getByRole('alert')).toContainText(facts.damage.reference, patient)
      await form.getByRole('button', { name: 'not now' }).click()
    },
  }
}

test('nine works come, are hung, looked at, one is hurt, and all go home, on the screens as by calls', async ({
  page,
  emptyHost: host,
}) => {
  test.setTimeout(600_000)
  await host.open(page, '#/checklist')
  const upload = (name: string, bytes: string) =>
    page.evaluate(
      async ([called, base64]) => {
        const body = Uint8Array.from(atob(base64), letter => letter.charCodeAt(0))
        const put = await fetch(`/upload?name=${called}`, {
          method: 'PUT',
          headers: { 'content-type': 'application/octet-stream' },
          body,
        })
        return String((await put.json()).value.handle)
      },
      [name, bytes] as const,
    )
  const picture = (await photo()).toString('base64')
  const ask: Ask = async (name: Name, input, files) => {
    const handles = await Promise.all(files.map(() => upload('joint.png', picture)))
    try {
      return { ok: true, value: await host.call(page, name, withHandles(input, handles)) }
    } catch (error) {
      return { ok: false, code: /"code":"([a-z-]+)"/.exec(String(error))?.[1] ?? String(error) }
    }
  }
  const person = (await host.call(page, 'person.add', sitting)) as { id: string } // made
  await host.call(page, 'desk.sit', { person: person.id })
  const handle = await upload('list.csv', Buffer.from(facts.list).toString('base64'))
  await host.call(page, 'import.accept', { handle, exhibitionTitle: facts.show.title })
  await host.open(page, '#/loans')
  const keys = new steps.Keys()
  await play([...before, ...steps.arrival, ...steps.examined, ...after], keys, ask, byHandOn(page, host))

  // The registrar’s question, for any day.
  await host.open(page, `#/work/${keys.of(facts.main)}`)
  const told = page.locator('section[aria-labelledby="on-day"]')
  for (const answer of facts.answers) {
    await told.getByLabel('on', { exact: true }).fill(answer.day)
    await told.getByLabel('on', { exact: true }).blur()
    await expect(told.locator('dd').first()).toContainText(answer.where ?? 'Nobody can say', patient)
    await expect(told.locator('dd').nth(1)).toContainText(
      answer.report === null ? 'No complete report' : `${answer.report} report`,
    )
    if (answer.report !== null)
      await expect(told).toContainText(`signed by ${facts.registrar}, registrar and ${facts.courier}`)
    await expect(told.locator('dd').nth(2)).toContainText(answer.loan ?? 'No loan of it has that day')
    await expect(told.locator('dd').nth(3)).toContainText(answer.luxHours.toLocaleString('en').replace(',', '\u2009'))
    const asked = await host.call(page, 'work.onDay', { work: keys.of(facts.main), day: answer.day })
    expect(answerOf(asked as Output<'work.onDay'>)).toEqual(answer)
  }
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).include('section[aria-labelledby="on-day"]').analyze()).violations
    expect(found.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
  expect(stateOf(host.file)).toEqual(stateOf(await byCalls(host.folder)))
})
