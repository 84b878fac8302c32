/**
 * The demo's museum: an invented house on an invented river, with invented people, lenders and show. Any likeness to a
 * real place, person, institution or work is chance.
 */
import type { Input } from '../../../src/contract/contract.ts'

export const building = 'Larkweir House'

export const people = {
  coordinator: { name: 'Orla Fenwright', role: 'exhibition coordinator', lengthUnit: 'mm', paper: 'A4', fraction: 16 },
  technician: { name: 'Dov Hasterley', role: 'technician', lengthUnit: 'mm', paper: 'A3', fraction: 16 },
  registrar: { name: 'Petra Sollen', role: 'registrar', lengthUnit: 'mm', paper: 'A4', fraction: 16 },
} as const satisfies Record<string, Input<'person.add'>>

export const exhibition = {
  title: 'What the Weir Keeps',
  venue: 'Larkweir House, Sallowford',
  note: 'A river, its mills and its cloth, 1890 to now. Two rooms can be seen seated; the Mill Room keeps a low line.',
  /** Days from today. */
  opensIn: 47,
  openFor: 126,
} as const

export const sections = ['Above the weir', 'The working bank', 'Dyed in the stream', 'After the flood'] as const

export type LenderKey = keyof typeof lenders

/** The unit in which each lender's list gives its sizes. */
export const lenders = {
  house: {
    kind: 'house',
    name: 'Larkweir House Museum',
    contact: 'Registrar, ground floor',
    creditLine: 'Larkweir House Museum, Sallowford',
    unit: 'mm',
  },
  thornquill: {
    kind: 'lender',
    name: 'Thornquill family',
    contact: 'R. Thornquill, by letter; two weeks for an answer',
    creditLine: 'Private collection, the Thornquill family',
    unit: 'in',
  },
  corvane: {
    kind: 'lender',
    name: 'Corvane Town Collection',
    contact: 'Loans desk, Corvane Town Hall',
    creditLine: 'Lent by the Corvane Town Collection',
    unit: 'cm',
  },
  wexholt: {
    kind: 'lender',
    name: 'Wexholt Bequest Trust',
    contact: 'The secretary of the trustees',
    creditLine: 'Wexholt Bequest Trust, long loan',
    unit: 'cm',
  },
  addlewick: {
    kind: 'lender',
    name: 'Addlewick Weaving Room',
    contact: 'N. Addlewick, mornings',
    creditLine: 'Courtesy of the Addlewick Weaving Room',
    unit: 'cm',
  },
  navigation: {
    kind: 'lender',
    name: 'Tamble Navigation Archive',
    contact: 'The archivist, Sallow Lock',
    creditLine: 'Tamble Navigation Archive',
    unit: 'cm',
  },
} as const satisfies Record<string, Input<'party.add'> & { readonly unit: 'mm' | 'cm' | 'in' }>

export const makers = {
  thornquill: 'Edda Thornquill (1891–1967)',
  wexholt: 'Casimir Wexholt (1903–1979)',
  penbrack: 'Isaura Penbrack (1888–1959)',
  krusemoor: 'Halvard Krusemoor (1912–1990)',
  ormerelle: 'Jonty Ormerelle (1899–1974)',
  oastway: 'Mirelle Oastway (1921–2003)',
  addlewick: 'Nerys Addlewick (born 1950)',
  blanchwell: 'Teodor Blanchwell (1906–1981)',
  dunnavore: 'Saskia Dunnavore (born 1984)',
  fullers: 'Fullers’ Yard workshop',
  unknown: 'unknown maker',
} as const
