"""Reads what was taken out with Python's own zipfile and csv, and holds every cell against the catalogue's rows.

Prints JSON: tables, rows, the cells that differ, the names of the columns that the dictionary lacks, works of works.json.
"""
import csv
import io
import json
import sqlite3
import sys
import zipfile

packed = zipfile.ZipFile(sys.argv[1])
db = sqlite3.connect(f"file:{sys.argv[2]}?mode=ro", uri=True)


def table(name):
    return list(csv.reader(io.StringIO(packed.read(name).decode("utf-8-sig"), newline=""), strict=True))


def same(cell, stored):
    if stored is None:
        return cell == ""
    if isinstance(stored, (int, float)):
        return float(cell) == float(stored)
    return cell == stored


assert packed.testzip() is None
words = {(row[0], row[3]) for row in table("dictionary.csv")[1:]}
rows, differing, wordless, names = 0, [], [], []
for entry in packed.namelist():
    if not entry.startswith("tables/"):
        continue
    name = entry[len("tables/") : -len(".csv")]
    names.append(name)
    headings, *cells = table(entry)
    wordless += [f"{name}.{heading}" for heading in headings if (name, heading) not in words]
    columns = ", ".join(f'"{heading}"' for heading in headings)
    stored = db.execute(f'SELECT {columns} FROM "{name}" ORDER BY rowid').fetchall()
    rows += len(cells)
    if len(cells) != len(stored):
        differing.append(f"{name}: {len(cells)} rows, {len(stored)} stored")
    for line, kept in zip(cells, stored):
        differing += [f"{name}.{h}: {c!r}, stored {k!r}" for h, c, k in zip(headings, line, kept) if not same(c, k)]
works = json.loads(packed.read("works.json"))
print(
    json.dumps(
        {
            "tables": names,
            "rows": rows,
            "differing": differing[:20],
            "wordless": wordless,
            "works": works,
            "files": sorted(n[len("files/") :] for n in packed.namelist() if n.startswith("files/")),
        }
    )
)
