/** The frame around every screen: who sits here, where one is, what was done, and how to find and undo it. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, sitDown, test } from './host.ts'

async function sit(page: Page, host: RunningHost, hash = '#/checklist'): Promise<void> {
  await host.open(page, hash)
  await sitDown(page)
  await page.getByRole('button', { name: 'I have read this' }).click()
  await expect(page.getByRole('form', { name: 'Who is at the desk' })).toHaveCount(0)
}

test('the first run shows the demo on its fullest wall and says how to begin', async ({ page, host }) => {
  await host.open(page)
  await expect(page.getByText('This is an invented show to try things on.')).toBeVisible()
  await expect(page).toHaveURL(/#\/walls\//)
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const { rooms } = (await host.call(page, 'room.plan', { exhibition: exhibitions[0]?.id })) as {
    rooms: readonly { walls: readonly { face: string; works: number }[] }[]
  }
  const most = Math.max(...rooms.flatMap(room => room.walls.map(wall => wall.works)))
  const shown = decodeURIComponent(new URL(page.url()).hash.split('/')[2] ?? '')
  expect(rooms.flatMap(room => room.walls).find(wall => wall.face === shown)?.works).toBe(most)
})

test('who is at the desk is asked once, and every edit carries the name', async ({ page, host }) => {
  await host.open(page, '#/checklist')
  const form = page.getByRole('form', { name: 'Who is at the desk' })
  await form.getByLabel('name').fill('Wilma Tarn')
  await form.getByLabel('role').fill('registrar')
  await form.getByLabel('figures in').selectOption('in')
  await form.getByRole('button', { name: 'sit down' }).click()
  await expect(form).toHaveCount(0)
  await expect(page.getByRole('columnheader', { name: /H × W × D, in/ })).toBeVisible()
  await page.getByRole('button', { name: 'renumber' }).click()
  await page.reload()
  await expect(page.getByRole('grid')).toBeVisible()
  await expect(form).toHaveCount(0)
  await page.getByRole('link', { name: 'history' }).click()
  await expect(page.getByRole('row').filter({ hasText: 'Wilma Tarn' }).first()).toBeVisible()
})

test('the unit turns every figure and back again', async ({ page, host }) => {
  await sit(page, host)
  const first = page.locator('[data-index="0"] .size')
  await expect(first).toHaveText('620 × 480 × 28')
  await page.getByRole('group', { name: 'Unit of length' }).getByRole('button', { name: 'in' }).click()
  // 620 mm is 24.409 in, nearest sixteenth 24 7/16; 480 is 18.898, 18 7/8; 28 is 1.102, 1 1/8 (by 25.4 mm to the inch).
  await expect(first).toHaveText('24 7/16 × 18 7/8 × 1 1/8')
  await page.getByRole('group', { name: 'Unit of length' }).getByRole('button', { name: 'mm' }).click()
  await expect(first).toHaveText('620 × 480 × 28')
})

test('one field finds a work and a wall by the keyboard alone', async ({ page, host }) => {
  await sit(page, host)
  await page.keyboard.press('/')
  await page.keyboard.type('ferry rope')
  await expect(page.getByRole('option').first()).toContainText('The ferry rope')
  await page.keyboard.press('Escape')
  await page.keyboard.press('/')
  await page.keyboard.type('mill room')
  await expect(page.getByRole('option').filter({ hasText: 'Mill Room,' }).first()).toBeVisible()
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/#\/(walls|work)\//)
})

test('the key plan leads to a wall', async ({ page, host }) => {
  await sit(page, host)
  const walls = page.getByRole('navigation', { name: 'Key plan' }).getByRole('link', { name: /Long Gallery/ })
  await walls.first().focus()
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/#\/walls\//)
})

test('the frieze moves a work by keys and says what is placed', async ({ page, host }) => {
  await sit(page, host)
  const frieze = page.getByRole('region', { name: /^Frieze/ })
  const works = frieze.locator('.work')
  const first = await works.nth(0).getAttribute('aria-label')
  expect(first).toMatch(/placed/)
  await works.nth(0).focus()
  await page.keyboard.press('Alt+ArrowRight')
  await expect(works.nth(1)).toHaveAttribute('aria-label', first ?? '')
  await page.keyboard.press('Control+z')
  await expect(works.nth(0)).toHaveAttribute('aria-label', first ?? '')
})

test('an exhibition is made, copied, renamed, closed and switched', async ({ page, host }) => {
  await sit(page, host, '#/exhibitions')
  await page.getByLabel('a new one, titled').fill('Winter hang')
  await page.getByRole('button', { name: 'make it' }).click()
  await expect(page.getByRole('banner')).toContainText('Winter hang')
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as {
    exhibitions: readonly { title: string; works: number; placed: number }[]
  }
  const copied = exhibitions.find(show => show.title === 'What the Weir Keeps')
  await page.getByRole('button', { name: 'copy What the Weir Keeps' }).click()
  await page.getByLabel('title of the copy').fill('Weir, second hang')
  await page.getByRole('form', { name: 'Copy What the Weir Keeps' }).getByRole('button', { name: 'copy' }).click()
  await expect(page.getByRole('banner')).toContainText('Weir, second hang')
  const copy = page.getByRole('listitem').filter({ has: page.getByText('on the table') })
  await expect(copy).toContainText(`${copied?.works} works, ${copied?.placed} placed`)
  await copy.getByLabel('Title of the exhibition').fill('Weir, third hang')
  await copy.getByLabel('Title of the exhibition').press('Enter')
  await expect(page.getByRole('banner')).toContainText('Weir, third hang')
  await copy.getByLabel('it is').selectOption('closed')
  await expect(copy.getByLabel('Title of the exhibition')).toBeDisabled()
  await page.getByRole('link', { name: 'Checklist' }).click()
  await expect(page.getByText('This show is closed')).toBeVisible()
  await expect(page.getByRole('button', { name: 'add a section' })).toHaveCount(0)
})

test('a house rule is set with its reason, and refused beside it where it cannot be read', async ({ page, host }) => {
  await sit(page, host, '#/rules')
  await page.getByRole('button', { name: /^Centres of works hang at this height/ }).click()
  const form = page.getByRole('form', { name: /^Centres of works/ })
  await form.getByLabel('value').fill('high')
  await form.getByLabel('reason or source').fill('for the school visits')
  await form.getByRole('button', { name: 'set the rule' }).click()
  await expect(form.getByRole('alert')).toContainText('does not start with a number')
  await form.getByLabel('value').fill('58 in')
  await form.getByRole('button', { name: 'set the rule' }).click()
  // 58 in is 1473.2 mm.
  await expect(page.getByRole('button', { name: /^Centres of works.*473\.2 mm/ })).toBeVisible()
})

test('a rule of hanging is set by the house, keeps the program’s own in sight and asks where somebody was first', async ({
  page,
  host,
}) => {
  await sit(page, host, '#/rules')
  await page.getByRole('button', { name: /^Nails under a stretcher bar/ }).click()
  const form = page.getByRole('form', { name: /^Nails under/ })
  await form.getByLabel('value').fill('1/2')
  await form.getByLabel('reason or source').fill('long bars in this show')
  await page.keyboard.press('Enter')
  await expect(form.getByRole('alert')).toContainText('from 0.05 of its width to 0.45 of its width')
  await form.getByLabel('value').fill('1/4')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: /^Nails under.*1\/4 of its width/ })).toBeVisible()
  await expect(page.getByText(/long bars in this show · set by .* the program’s own: 1\/3 of its width/)).toBeVisible()
  await expect(page.getByText(/^1 of \d+ is the house’s own\./)).toBeVisible()

  await page.getByRole('button', { name: /^A wire’s legs stand/ }).click()
  const angle = page.getByRole('form', { name: /^A wire’s legs/ })
  await angle.getByLabel('value').fill('45°')
  await angle.getByLabel('reason or source').fill('heavy frames')
  await host.call(page, 'rule.set', { key: 'leastWireAngle', was: 30, to: 35, source: 'meanwhile' })
  await angle.getByRole('button', { name: 'set the rule' }).click()
  await expect(angle.getByRole('alert')).toContainText('Meanwhile somebody set it to 35°.')
  await angle.getByRole('button', { name: 'set mine' }).click()
  await expect(page.getByRole('button', { name: /^A wire’s legs.*45°/ })).toBeVisible()

  await page.getByRole('button', { name: /^What of a work stands/ }).click()
  const choice = page.getByRole('form', { name: /^What of a work/ })
  await choice.getByLabel('value').selectOption('its top')
  await page.keyboard.press('Escape')
  await expect(choice).toHaveCount(0)
  await expect(page.getByRole('button', { name: /^What of a work.*its centre/ })).toBeVisible()

  // In inches the values turn, and what is set without being touched keeps every digit that is not shown.
  await page.getByRole('button', { name: 'in', exact: true }).click()
  await page.getByRole('button', { name: /^Works stay at least this far.*5 7\/8 in/ }).click()
  const margin = page.getByRole('form', { name: /^Works stay at least/ })
  await margin.getByLabel('reason or source').fill('as it was')
  await margin.getByRole('button', { name: 'set the rule' }).click()
  await expect(margin).toHaveCount(0)
  const { rules } = (await host.call(page, 'rule.list', {})) as { rules: readonly { key: string; value: unknown }[] }
  expect(rules.find(rule => rule.key === 'minimumMargin')?.value).toBe(150)
})

test('unit, paper and fraction follow whoever sits here, on every screen and after the program begins anew', async ({
  page,
  host,
}) => {
  const sitAnew = async (who: string, unit: string, paper: string, fraction: string) => {
    const form = page.getByRole('form', { name: 'Somebody new' })
    await form.getByLabel('name').fill(who)
    await form.getByLabel('figures in').selectOption(unit)
    await form.getByLabel('inches to').selectOption(fraction)
    await form.getByLabel('paper').selectOption(paper)
    await form.getByRole('button', { name: 'sit down' }).click()
    await expect(page.getByRole('link', { name: who })).toBeVisible()
  }
  // Paper sizes from ISO 216 and ANSI/ASME Y14.1, landscape.
  const sees = async (unit: 'in' | 'cm', paper: string, fraction: string, box: string) => {
    await page.keyboard.press('Escape')
    await page.evaluate(() => {
      location.hash = '#/checklist'
    })
    await expect(page.getByRole('columnheader', { name: `H × W × D, ${unit}` })).toBeVisible()
    await page.evaluate(() => {
      location.hash = '#/papers'
    })
    await expect(page.getByRole('img', { name: /page 1 of/ })).toHaveAttribute('viewBox', box)
    await expect(page.getByRole('combobox', { name: 'on', exact: true }).first()).toHaveValue(paper)
    await expect(page.getByRole('combobox', { name: 'inches to', exact: true }).first()).toHaveValue(fraction)
    await page.evaluate(() => {
      location.hash = '#/person'
    })
    const mine = page.getByRole('form', { name: 'You' })
    await expect(mine.getByLabel('figures in')).toHaveValue(unit)
    await expect(mine.getByLabel('paper')).toHaveValue(paper)
    await expect(mine.getByLabel('inches to')).toHaveValue(fraction)
  }
  await sit(page, host, '#/person')
  await sitAnew('Wilma Tarn', 'in', 'Tabloid', '32')
  await sees('in', 'Tabloid', '32', '0 0 431.8 279.4')
  await sitAnew('Odo Frith', 'cm', 'A3', '8')
  await sees('cm', 'A3', '8', '0 0 420 297')
  await page.getByRole('button', { name: 'sit down as Wilma Tarn' }).click()
  await expect(page.getByRole('link', { name: 'Wilma Tarn' })).toBeVisible()
  await sees('in', 'Tabloid', '32', '0 0 431.8 279.4')

  await host.restart()
  await host.open(page, '#/person')
  await expect(page.getByRole('link', { name: 'Wilma Tarn' })).toBeVisible()
  await sees('in', 'Tabloid', '32', '0 0 431.8 279.4')
  await page.getByRole('button', { name: 'sit down as Odo Frith' }).click()
  await expect(page.getByRole('link', { name: 'Odo Frith' })).toBeVisible()
  await sees('cm', 'A3', '8', '0 0 420 297')
})

test('somebody new has nothing to take back of what others did', async ({ page, host }) => {
  await host.open(page, '#/checklist')
  const form = page.getByRole('form', { name: 'Who is at the desk' })
  await form.getByLabel('name').fill('Wilma Tarn')
  await form.getByRole('button', { name: 'sit down' }).click()
  await expect(form).toHaveCount(0)
  const { edits } = (await host.call(page, 'edit.list', {})) as { edits: readonly { label: string; person: string }[] }
  const others = edits.filter(edit => edit.person !== 'Wilma Tarn').map(edit => edit.label)
  expect(others.length).toBeGreaterThan(0)
  const { undo } = (await host.call(page, 'edit.state', {})) as { undo: string | null }
  expect(others).not.toContain(undo)
  const button = page.getByRole('button', { name: /^undo/ })
  if (undo === null) await expect(button).toBeDisabled()
  else await expect(button).toHaveAttribute('title', `Take back: ${undo}`)
})

test('undo speaks of the edits of whoever has sat down, not of those shown before', async ({ page, host }) => {
  await sit(page, host)
  // The demo's coordinator planned the crew last; whoever set the demo up is somebody else.
  await expect(page.getByRole('button', { name: /^undo/ })).toHaveAttribute(
    'title',
    'Take back: Set the crew of the show',
  )
})

test('the help sheet opens and closes by its key', async ({ page, host }) => {
  await sit(page, host)
  await page.keyboard.press('?')
  await expect(page.getByRole('heading', { name: 'Keys', level: 1 })).toBeVisible()
  await page.keyboard.press('?')
  await expect(page.getByRole('grid')).toBeVisible()
})

test('light and dark are kept for this window’s person', async ({ page, host }) => {
  await sit(page, host, '#/person')
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  const light = await ground()
  await page.getByLabel('dark').check()
  const dark = await ground()
  expect(dark).not.toBe(light)
  await page.reload()
  await expect.poll(ground).toBe(dark)
})

for (const screen of [
  'checklist',
  'rooms',
  'papers',
  'exhibitions',
  'history',
  'rules',
  'catalogues',
  'person',
  'keys',
]) {
  for (const scheme of ['light', 'dark'] as const) {
    test(`${screen} passes the reader’s checks, ${scheme}`, async ({ page, host }) => {
      const faults: string[] = []
      page.on('pageerror', error => faults.push(String(error)))
      page.on('console', message => {
        if (message.type() === 'error') faults.push(message.text())
      })
      await page.emulateMedia({ colorScheme: scheme })
      await sit(page, host, `#/${screen}`)
      await expect(page.getByRole('heading').first()).toBeVisible()
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
      // The strict policy stops what it does not allow by an error on the console.
      expect(faults).toEqual([])
    })
  }
}
