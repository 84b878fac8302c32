/** The host itself: which catalogue is open, who is at the desk, files that come and go, long work under way. */
import * as z from 'zod'
import { ruleGroups, ruleUnits } from '../../model/house-rules.ts'
import { procedure } from '../procedure.ts'
import { done, handle, hash, id, lengthUnit, name, paper } from '../shared.ts'

const nothing = z.strictObject({})
export const fraction = z.union([z.literal(8), z.literal(16), z.literal(32)])

/** The person at the desk and how they like their figures. */
export const person = z.strictObject({ id, name, role: z.string(), lengthUnit, paper, fraction })
export type Person = z.output<typeof person>

/** A folder of the machine that the host runs on, named by the person who sits at it. */
const folderPath = z.string().trim().min(1, 'expected a folder').max(1000)
const copied = z.strictObject({
  file: z.string(),
  bytes: z.int(),
  works: z.int(),
  files: z.int(),
  fileBytes: z.int(),
  missing: z.array(hash),
})

export const deskArea = {
  'desk.state': procedure(
    'desk',
    'Tells which catalogue is open, on which host, and who is at the desk.',
    nothing,
    z.strictObject({
      host: z.enum(['desktop', 'loopback', 'command line']),
      catalogue: z.strictObject({ name: z.string(), file: z.string(), demo: z.boolean() }).nullable(),
      person: person.nullable(),
      version: z.string(),
    }),
  ),
  'desk.recent': procedure(
    'desk',
    'Lists the catalogues opened lately on this machine, newest first.',
    nothing,
    z.strictObject({
      catalogues: z.array(
        z.strictObject({
          key: z.string(),
          name: z.string(),
          file: z.string(),
          openedAt: z.string(),
          missing: z.boolean(),
        }),
      ),
    }),
  ),
  'desk.open': procedure(
    'desk',
    'Opens one of the recent catalogues by its key.',
    z.strictObject({ key: z.string().max(100) }),
    z.strictObject({ name: z.string(), file: z.string() }),
  ),
  'desk.new': procedure(
    'desk',
    'Makes an empty catalogue in the folder for catalogues and opens it.',
    z.strictObject({ name }),
    z.strictObject({ name: z.string(), file: z.string() }),
  ),
  'desk.sit': procedure(
    'desk',
    'Says who is at the desk from now on; every edit carries the name.',
    z.strictObject({ person: id }),
    person,
  ),
  'desk.cancel': procedure(
    'desk',
    'Cancels long work that has not been committed yet.',
    z.strictObject({ job: z.string().max(64) }),
    z.strictObject({ cancelled: z.boolean() }),
  ),
  'person.list': procedure(
    'read',
    'Lists everyone who has sat at this desk.',
    nothing,
    z.strictObject({ people: z.array(person) }),
  ),
  'person.add': procedure(
    'write',
    'Adds a person: name, role and how they like their figures.',
    z.strictObject({ name, role: z.string().max(100), lengthUnit, paper, fraction }),
    person,
  ),
  'person.update': procedure(
    'write',
    'Changes a person: name, role, unit, paper, fraction.',
    z.strictObject({
      id,
      name: name.optional(),
      role: z.string().max(100).optional(),
      lengthUnit: lengthUnit.optional(),
      paper: paper.optional(),
      fraction: fraction.optional(),
    }),
    person,
  ),
  'edit.state': procedure(
    'read',
    'Tells what undo and redo would do for the person at the desk.',
    nothing,
    z.strictObject({ undo: z.string().nullable(), redo: z.string().nullable(), last: z.int() }),
  ),
  'edit.undo': procedure(
    'write',
    'Takes back the newest edit of the person at the desk.',
    nothing,
    z.strictObject({ undone: z.string() }),
  ),
  'edit.redo': procedure('write', 'Does again what was undone last.', nothing, z.strictObject({ redone: z.string() })),
  'catalogue.backups': procedure(
    'read',
    'Lists the automatic backups, newest first.',
    nothing,
    z.strictObject({
      backups: z.array(z.strictObject({ key: z.string(), at: z.string(), bytes: z.int(), why: z.string() })),
    }),
  ),
  'catalogue.backup': procedure(
    'long',
    'Makes a backup with its files folder, every hash verified.',
    z.strictObject({ name: name.optional() }),
    copied,
  ),
  'catalogue.keepBackup': procedure(
    'long',
    'Makes the automatic backup if there was an edit since the last one.',
    nothing,
    z.strictObject({ key: z.string().nullable() }),
  ),
  'catalogue.restore': procedure(
    'desk',
    'Opens a copy of a backup in place of the catalogue; what is there now is put aside first, so that this too can be taken back.',
    z.strictObject({ key: z.string().max(200) }),
    z.strictObject({ file: z.string(), putAside: z.string() }),
  ),
  'catalogue.saveCopy': procedure(
    'long',
    'Saves a copy of the catalogue with its pictures and documents in another folder of this machine, every hash verified; what is open stays open.',
    z.strictObject({ folder: folderPath, name }),
    copied,
  ),
  'catalogue.takeOut': procedure(
    'long',
    'Writes everything that the catalogue holds as one ZIP file of open forms: a table as CSV each, a data dictionary, the works as JSON, and the files where they are wanted.',
    z.strictObject({ files: z.boolean() }),
    z.strictObject({
      handle,
      name: z.string(),
      bytes: z.int(),
      tables: z.int(),
      rows: z.int(),
      files: z.int(),
    }),
  ),
  'catalogue.move': procedure(
    'desk',
    'Moves the catalogue with its pictures, documents and automatic backups to another folder of this machine or to another name, every hash verified, and goes on with it there.',
    z.strictObject({ folder: folderPath, name }),
    z.strictObject({ name: z.string(), file: z.string(), files: z.int(), missing: z.array(hash) }),
  ),
  'catalogue.check': procedure(
    'long',
    'Checks the file: integrity, references, text index, files and the rules of the model.',
    nothing,
    z.strictObject({
      ok: z.boolean(),
      integrity: z.array(z.strictObject({ code: z.string(), text: z.string() })),
    }),
  ),
  'catalogue.tidy': procedure(
    'long',
    'Removes files that neither the catalogue, its journal nor a kept backup names.',
    nothing,
    z.strictObject({ removed: z.int(), bytes: z.int() }),
  ),
  'rule.list': procedure(
    'read',
    'Lists the house rules: each with its value and the program’s own, why there is one, its bounds and its origin.',
    nothing,
    z.strictObject({
      rules: z.array(
        z.strictObject({
          key: z.string(),
          group: z.enum(ruleGroups),
          value: z.json(),
          default: z.json().meta({ description: 'what the program takes where the house sets nothing' }),
          says: z.string(),
          reason: z.string(),
          unit: z.enum(ruleUnits),
          /** Bounds of a figure; null where one chooses. */
          least: z.number().nullable(),
          most: z.number().nullable(),
          choices: z.array(z.strictObject({ value: z.string(), label: z.string() })),
          source: z.string(),
          since: z.string(),
          by: z.string(),
          changed: z.boolean(),
        }),
      ),
    }),
  ),
  'rule.set': procedure(
    'write',
    'Sets a house rule, with the reason or source for it.',
    z.strictObject({ key: z.string().max(60), was: z.json(), to: z.json(), source: z.string().max(500) }),
    done,
  ),
  'file.describe': procedure(
    'desk',
    'Tells the name and size of an uploaded or made file.',
    z.strictObject({ handle }),
    z.strictObject({ name: z.string(), bytes: z.int() }),
  ),
} as const
