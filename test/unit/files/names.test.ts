/** A person's own file names: kept as they are, but for what a system refuses or what deceives. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, onTestFinished, test } from 'vitest'
import { openHandles } from '../../../main/files/handles.ts'
import { disposition, savedName } from '../../../main/files/names.ts'

function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-names-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

test.each([
  'Leihvertrag für Ödön Kő (2. Fassung).pdf',
  'договор займа № 7.docx',
  '展示計画 三階.xlsx',
  'Salt pans, evening – “final”.jpg',
  'no ending',
  "Ada's list & notes [2031] #3 100%.csv",
])('%s stays as it was written', name => {
  expect(savedName(name)).toBe(name)
})

// Windows' own list of signs and names: "Naming Files, Paths, and Namespaces", Microsoft Learn (from memory).
test.each([
  ['Low/High: water?.pdf', 'Low-High- water-.pdf'],
  ['..\\..\\etc/passwd', '-..-etc-passwd'],
  ['../../x.sh', '-..-x.sh'],
  ['.hidden', 'hidden'],
  ['CON', '_CON'],
  ['aux.txt', '_aux.txt'],
  ['contract.pdf', 'contract.pdf'],
  ['ends with a dot. ', 'ends with a dot'],
  ['two\nlines\t\0.txt', 'two-lines--.txt'],
  ['list\u202egpj.exe', 'listgpj.exe'],
  ['e\u0301tude.txt', '\u00e9tude.txt'],
  ['', 'file'],
  [' .. ', 'file'],
])('%j is saved as %j', (given, saved) => {
  expect(savedName(given)).toBe(saved)
})

test('a long name loses its middle, never its ending, and fits every file system', () => {
  const saved = savedName(`${'Lichtempfindlichkeit 感光 '.repeat(30)}.xlsx`)
  expect(saved).toMatch(/^Lichtempfindlichkeit 感光 .*\.xlsx$/)
  expect(Buffer.byteLength(saved)).toBeLessThanOrEqual(200)
  expect(saved).not.toContain('\ufffd')
})

test('whatever is given, the name can be saved in a folder and gives itself again', () => {
  const folder = ownFolder()
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), given => {
      const name = savedName(given)
      writeFileSync(join(folder, name), '')
      expect(savedName(name)).toBe(name)
    }),
    { numRuns: 300 },
  )
})

test('a handle keeps the name over to another thread’s view of the folder, and none of it gets into the handle', () => {
  const folder = ownFolder()
  const mine = openHandles(folder)
  const { handle, path } = mine.create('Leihvertrag für Ödön.pdf')
  writeFileSync(path, 'x')
  const theirs = openHandles(folder)
  expect(theirs.name(handle)).toBe('Leihvertrag für Ödön.pdf')
  expect(handle).toMatch(/^[0-9a-f]{16}-[0-9a-zA-Z._-]+\.pdf$/)
  expect(() => theirs.path(`name-${handle}`)).toThrow('not here any more')
  mine.drop(handle)
  expect(() => theirs.name(handle)).toThrow('not here any more')
})

// RFC 6266 section 5 and RFC 8187 section 3.2.1: attr-char is what may stand unencoded.
test('a download says its name in ASCII and as it is', () => {
  const said = disposition('Ödön’s "list" (2) *.pdf')
  expect(said).toMatch(/^attachment; filename="[\x20-\x21\x23-\x5b\x5d-\x7e]+"; filename\*=UTF-8''[\w!#$&+.^`|~%-]+$/)
  const [, encoded = ''] = /filename\*=UTF-8''(.*)$/.exec(said) ?? []
  expect(decodeURIComponent(encoded)).toBe('Ödön’s "list" (2) *.pdf')
})
