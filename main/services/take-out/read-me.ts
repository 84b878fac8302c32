/** What stands beside what was taken out, for whoever opens it years later without the program. */

interface Taken {
  readonly name: string
  /** ISO 8601 in UTC. */
  readonly at: string
  /** Tables that are not in it, with the reason. */
  readonly left: Readonly<Record<string, string>>
  readonly files: boolean
}

export function readMe({ name, at, left, files }: Taken): string {
  const lines = [
    `Everything in ${name}, as it was on ${at} (UTC).`,
    '',
    'dictionary.csv   what every table and column is called and means, its type, its unit, which values it takes and to',
    '                 which table it refers',
    'tables/          a table a file, in the order in which its rows came',
    'works.json       the works with their numbers, sizes, places and condition, under the names of the units of',
    '                 information of Spectrum, the collections management standard; damage and receipts in words of our own',
    ...(files
      ? ['files/           pictures and documents, named by the SHA-256 of their bytes, as the tables name them']
      : ['                 Pictures and documents were left out; the tables name them by the SHA-256 of their bytes.']),
    '',
    'The tables are CSV by RFC 4180 in UTF-8 with a byte order mark. A field of nothing is empty; a field with "" holds a',
    'text without letters. Lengths are millimetres, masses kilograms, times UTC by ISO 8601. What a person typed stands',
    'beside the figure. 1 means yes and 0 no.',
    '',
    'Records (movements, seals, signatures, prints) are only added to; each link of a chain is a SHA-256 over its record and',
    'the link before it. The journal holds every change of every other row.',
    '',
    ...Object.entries(left).map(([table, reason]) => `Not taken out: ${table}, which ${reason}.`),
    '',
  ]
  return lines.join('\r\n')
}
