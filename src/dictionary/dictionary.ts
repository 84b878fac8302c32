/** All tables of a catalogue by their names. */
import { building } from './building.ts'
import { house } from './house.ts'
import { insured } from './insured.ts'
import { loans } from './loans.ts'
import { records } from './records.ts'
import { show } from './show.ts'
import type { Tables } from './words.ts'
import { works } from './works.ts'

export const dictionary: Tables = { ...works, ...building, ...show, ...house, ...loans, ...insured, ...records }
