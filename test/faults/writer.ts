/** A child process that writes edits one after the other and says each one after its commit. Arguments: file, id prefix, count. */
import { openCatalogue } from '../../main/database/catalogue.ts'
import { asRefusal } from '../../main/database/faults.ts'
import { Refusal } from '../../src/contract/refusal.ts'

const [, , file = '', prefix = 'w', count = 'Infinity'] = process.argv
const clock = { now: () => new Date().toISOString(), newId: () => prefix }

try {
  const catalogue = openCatalogue(file, clock)
  process.stdout.write('open\n')
  for (let n = 0; n < Number(count); n++) {
    const id = `${prefix}${n}`
    await catalogue.edit({ procedure: 'test.write', person: { id: prefix, name: prefix }, label: id }, ({ db }) => {
      db.prepare('INSERT INTO work(id, title, note) VALUES (?, ?, ?)').run(id, id, 'salt pans '.repeat(20))
      db.prepare(`INSERT INTO work_number(id, work, kind, text) VALUES (?, ?, 'lender', ?)`).run(`n${id}`, id, id)
    })
    process.stdout.write(`${id}\n`)
  }
  catalogue.close()
} catch (given) {
  const error = asRefusal(given, file)
  if (!(error instanceof Refusal)) throw error
  process.stdout.write(`refused ${error.code}\n`)
}
