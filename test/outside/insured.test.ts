/**
 * The list of what works are worth held against another program: openpyxl reads its figures, and adding up the works by
 * the rate beside them with Python's exact decimals gives the sums of the first table.
 */
import { execFileSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { makeFixture } from '../contract/fixture.ts'
import { openOn, ownFolder } from '../contract/opened.ts'
import { python, withProgram } from './programs.ts'

const script = `
import json, sys, openpyxl
from decimal import Decimal, ROUND_HALF_EVEN
book = openpyxl.load_workbook(sys.argv[1])
def table(name):
    rows = [list(row) for row in book[name].iter_rows(values_only=True)]
    head = next(at for at, row in enumerate(rows) if row[0] in ('Sum of', 'Number', 'Day'))
    return [dict(zip(rows[head], row)) for row in rows[head + 1:] if any(row)]
total, apart = Decimal(0), {}
for work in table('Works'):
    if work['Value'] is None: continue
    value = Decimal(str(work['Value']))
    if work['Currency'] == 'CHF': total += value
    elif work['Rate']: total += value * Decimal(work['Rate'].split(' = ')[1].split(' ')[0])
    else: apart[work['Currency']] = float(value)
print(json.dumps({
    'total': float(total.quantize(Decimal('0.01'), ROUND_HALF_EVEN)), 'apart': apart,
    'sums': [[row['Which'], row['Sum, CHF'], row.get('Against it'), row.get('Over by, CHF')] for row in table('Sums')],
    'days': [[row['Day'], row['Sum, CHF']] for row in table('Days')],
}))`

withProgram('openpyxl', 'the list of what works are worth', () => {
  test('adds up to its sums, from the works and the rates that stand beside them', { timeout: 60_000 }, async () => {
    const folder = ownFolder()
    const { file, known } = await makeFixture(folder)
    const { call, host } = openOn(folder, file)
    const values = [
      [known.pans, { minor: 123_457, currency: 'EUR' }],
      [known.causeway, { minor: 9_999_999, currency: 'CHF' }],
      [known.raking, { minor: 700, currency: 'JPY' }],
    ] as const
    for (const [work, value] of values) await call('insured.addValue', { work: work ?? '', value, day: '2031-01-01' })
    await call('insured.addRate', { from: 'EUR', to: 'CHF', rate: '0.9412', day: '2031-03-01' })
    await call('insured.addLimit', { scope: 'all', amount: { minor: 10_000_000, currency: 'CHF' }, source: 'policy' })
    const { files } = await call('sheet.insured', {
      ...{ day: '2031-04-02', exhibition: known.show ?? '', currency: 'CHF', first: '2031-03-31', last: '2031-04-02' },
    })
    const workbook = files.find(({ name }) => name.endsWith('xlsx'))?.handle ?? 'no workbook'
    const told = JSON.parse(
      execFileSync(python ?? '', ['-c', script, host.handles.path(workbook) ?? ''], { encoding: 'utf8' }),
    )
    // 1 234.57 × 0.9412 = 1 161.977284, by hand.
    expect(told.total).toBe(101_161.97)
    expect(told.apart).toEqual({ JPY: 700 })
    expect(told.sums[0]).toEqual(['Everything', 101_161.97, 'over', 1161.97])
    expect(told.days).toEqual([
      ['2031-03-31', 0],
      ['2031-04-01', 101_161.97],
      ['2031-04-02', 101_161.97],
    ])
  })
})
