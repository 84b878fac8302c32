"""Counts the hardware of a show from the rows of its catalogue, sharing no line with the program.

How many of what a method takes is the table "fixings per work" of the trade (common practice, from memory). A hole that
finds neither stud nor backing wants an anchor in a hollow wall, a plug in masonry. Prints JSON.
"""
import json
import sqlite3
import sys
from collections import Counter, defaultdict
from fractions import Fraction

HALF_STUD = 19.05  # half of 1 1/2 in
LINE = 1480  # centre line where neither the wall nor the work says another
SCREWS_APART = 127  # 5 in, where fewer than two studs are behind a cleat
END = 25

db = sqlite3.connect(f"file:{sys.argv[1]}?mode=ro", uri=True)
db.row_factory = sqlite3.Row
show = sys.argv[2]


def studs(row):
    if row["studs"]:
        return json.loads(row["studs"])
    first, apart = row["stud_first"], row["stud_spacing"]
    return [] if first is None or not apart else [first + k * apart for k in range(200) if first + k * apart <= row["length"]]


def anchor(row, x, y, fixing):
    """What a screw that is not in wood wants besides."""
    if row["wall_type"] in ("brick", "concrete", "block"):
        return f"plug for {fixing}"
    if row["wall_type"] not in ("drywall", "drywall on ply", "plaster"):
        return None
    if any(abs(x - stud) <= HALF_STUD for stud in studs(row)):
        return None
    low, high = row["backing_from"], row["backing_to"]
    if (low is not None or high is not None) and (low or 0) <= y <= (high if high is not None else 1e9):
        return None
    return f"hollow-wall anchor for {fixing}"


def middle(row):
    """Height of the work's centre."""
    if row["y"] is not None:
        return row["y"]
    line = row["centre_line"] or LINE
    return line - row["hang_height"] / 2 if row["face_rule"] == "top" else line


def sides(row, data):
    """Left and right as seen from the front."""
    pair = (data["left"], data["right"])
    return pair[::-1] if row["seen_from"] == "back" else pair


def count(row):
    """(into the wall or with the work, once for each team) of one work."""
    data = json.loads(row["data"])
    method, fixing, keeper = row["method"], row["fixing"], row["keeper"]
    width, height = row["hang_width"], row["hang_height"]
    left_edge, top = row["x"] - width / 2, middle(row) + height / 2
    bottom = top - height
    need, team, screwed = Counter(), Counter(), []

    def pair():
        left, right = sides(row, data)
        return [(left_edge + left["inset"], top - left["drop"]), (left_edge + width - right["inset"], top - right["drop"])]

    if method == "wire":
        # One hook only where a person asked for it; how the drop was measured says nothing of that.
        need[fixing] += 1 if row["hooks_apart"] == 0 else 2
        need["bottom pad"] += 2
    elif method in ("d-rings", "keyhole-plates"):
        need[fixing] += 2
        screwed += [(x, y, fixing) for x, y in pair()]
        need.update({"bottom pad": 2} if method == "d-rings" else {"template of the two slots": 1})
    elif method == "stretcher-bar":
        need[fixing] += 2
        need["bottom pad or stop"] += 2
        bar = top - data["left"]["bar"]
        screwed += [(left_edge + width * part, bar, fixing) for part in (1 / 3, 2 / 3)]
    elif method == "security-hangers":
        need.update({fixing: 2, keeper: 1, "frame bracket with its screws": 3})
        team.update({"depth gauge for the lock": 1, data["tool"].replace("-", " "): 1})
        lock = data["lock"]["left"] if row["seen_from"] == "front" else width - data["lock"]["left"]
        screwed += [(x, y, fixing) for x, y in pair()] + [(left_edge + lock, bottom + data["lock"]["up"], keeper)]
    elif method == "cleat":
        inner = data["wallLength"]
        left, right = sides(row, data)
        centre = left_edge + (left["inset"] + width - right["inset"]) / 2
        first, last = centre - inner / 2 + END, centre + inner / 2 - END
        behind = [stud for stud in studs(row) if first <= stud <= last]
        screws = 2 * len(behind) if len(behind) >= 2 else max(2, -int(-(last - first) // SCREWS_APART) + 1)
        need.update({fixing: 1, "screw for the wall part": screws, "end stop": 2})
        need[f"bottom spacer {data['depth']} mm thick"] += 1
        if len(behind) < 2:
            at = [first + (last - first) * k / (screws - 1) for k in range(screws)]
            screwed += [(x, top - data["drop"], "screw for the wall part") for x in at]
    elif method == "strap-plates":
        need[fixing] += 2
        low = [(left_edge - data["left"]["lower"]["out"], "left"), (left_edge + width + data["right"]["lower"]["out"], "right")]
        need.update({keeper: 2, "strap plate": 2, "frame screw for a plate": 4, f"block {data['block']} mm thick": 2})
        team["touch-up paint for the plates"] += 1
        screwed += [(x, bottom + data[side]["lower"]["up"], keeper) for x, side in low]
    elif method == "transit-plates":
        need.update({fixing: 2})
        need.update({keeper: 2, "hinged plate with its screws": 4})
        for out, edge in ((-data["left"]["out"], left_edge), (data["right"]["out"], left_edge + width)):
            screwed += [(edge + out, top - data["left"]["drop"], fixing), (edge + out, bottom + data["left"]["lower"]["up"], keeper)]
    elif method == "shelf":
        need.update({fixing: 2, keeper: 2, "shelf": 1, "wax or mount fixings": 1})
        x = [left_edge + width / 2 - data["spacing"] / 2, left_edge + width / 2 + data["spacing"] / 2]
        screwed += [(each, bottom, fixing) for each in x] + [(each, bottom - data["apart"], keeper) for each in x]
    elif method == "picture-rail":
        need.update({fixing: 2, data["by"]["with"]: 2, "adjuster": 2, "bottom pad": 2})
    elif method == "sheet":
        need.update({fixing: 4, "magnet in its case": 4, "isolating film": 4, "spare magnet in its case": 1})
    elif method == "plinth":
        need.update({"wedges": 4, "wax or mount fixings": 1, "ballast, in bags": 1})
    elif method == "case":
        need.update({"bonnet screw": 4, "wedges or feet": 4, "mount fixings": 1})
    else:
        raise SystemExit(f"no count for {method}")
    kinds = {each["name"]: each["kind"] for each in db.execute("SELECT name, kind FROM fixing_kind")}
    for x, y, what in screwed:
        # Nails and hooks are driven; what a cleat's method calls its screws is no row of the library.
        if kinds.get(what, "screw") not in ("hook", "nail", "rail-hook", "steel-point"):
            if row["part"]:
                raise SystemExit("a screwed part of a set: say where in its set it is before its anchors are counted")
            extra = anchor(row, x, y, what)
            if extra is not None:
                need[extra] += 1
    return need, team


boxes, total, tools = defaultdict(Counter), Counter(), Counter()
# A set is placed once; each of its parts hangs by its own back, on its own fixing or else on the set's.
for row in db.execute(
    """WITH hung AS (
         SELECT p.*, e.work AS hangs, 0 AS part FROM placement p JOIN entry e ON e.id = p.entry
         UNION ALL
         SELECT p.*, s.id, 1 FROM placement p JOIN entry e ON e.id = p.entry JOIN work s ON s.parent = e.work
       )
       SELECT p.face, p.x, p.y, p.part, coalesce(q.hooks_apart, p.hooks_apart) AS hooks_apart, b.method, b.data,
         b.seen_from, k.name AS fixing, l.name AS keeper, s.hang_width, s.hang_height, w.*, fp.centre_line,
         fp.rule AS face_rule
       FROM hung p JOIN work s ON s.id = p.hangs JOIN work_back b ON b.work = s.id
       LEFT JOIN placement_part q ON q.placement = p.id AND q.work = s.id
       JOIN face f ON f.id = p.face JOIN wall w ON w.id = f.wall
       LEFT JOIN face_plan fp ON fp.face = f.id AND fp.exhibition = p.exhibition
       LEFT JOIN fixing_kind k ON k.id = coalesce(q.fixing, p.fixing)
       LEFT JOIN fixing_kind l ON l.id = coalesce(q.keeper, p.keeper)
       WHERE p.exhibition = ?""",
    (show,),
):
    need, team = count(row)
    boxes[row["face"]].update(need)
    total.update(need)
    for what, most in team.items():
        tools[what] = max(tools[what], most)

teams, spare = db.execute("SELECT crew_teams, crew_spare FROM exhibition WHERE id = ?", (show,)).fetchone()
stock = defaultdict(int)
for name, there in db.execute("SELECT name, in_stock FROM fixing_kind"):
    stock[name] = max(stock[name], there or 0)
lines = {}
for what, needed in total.items():
    extra = -int(-(needed * Fraction(str(spare))) // 1)
    lines[what] = [needed, extra, max(0, needed + extra - stock[what])]
for what, most in tools.items():
    lines[what] = [most * teams, 0, max(0, most * teams - stock[what])]
print(json.dumps({"boxes": boxes, "lines": lines}))
