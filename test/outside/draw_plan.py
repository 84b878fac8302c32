"""Draws a plan by ezdxf and says how long all of its lines are, block by block taken apart by ezdxf itself.

usage: draw_plan.py VERSION FILE. Prints {"length": mm, "lines": count} as JSON.
"""
import json
import sys

import ezdxf
from ezdxf.disassemble import recursive_decompose, to_primitives

version, path = sys.argv[1:3]
doc = ezdxf.new(version)
doc.header["$INSUNITS"] = 6
space = doc.modelspace()
for name in ("WALL", "Möbel"):
    doc.layers.add(name)

chair = doc.blocks.new("CHAIR", base_point=(0.1, 0.1))
chair.add_line((0, 0), (0.5, 0))
chair.add_arc((0.25, 0.25), 0.25, 20, 200)
group = doc.blocks.new("GROUP")
group.add_blockref("CHAIR", (0, 0))
group.add_blockref("CHAIR", (1, 0), dxfattribs={"rotation": 90})

space.add_line((0, 0), (5, 0), dxfattribs={"layer": "WALL"})
space.add_polyline2d([(0, 0), (0, 4), (5, 4)], dxfattribs={"layer": "WALL"})
if version != "R12":
    corners = [(0, 0, 0), (6, 0, 0.4), (6, 5, 0), (0, 5, -0.3)]
    space.add_lwpolyline(corners, format="xyb", close=True, dxfattribs={"layer": "WALL"})
space.add_blockref("GROUP", (2, 2), dxfattribs={"layer": "Möbel", "rotation": 33, "xscale": 2, "yscale": 2})
space.add_blockref("GROUP", (3, 1), dxfattribs={"layer": "Möbel", "xscale": -1})
grid = space.add_blockref("CHAIR", (10, 0), dxfattribs={"layer": "Möbel", "rotation": 15})
grid.grid((3, 2), (1.5, 2))
space.add_arc((3, 3), 1, 350, 40, dxfattribs={"layer": "WALL", "extrusion": (0, 0, -1)})
doc.saveas(path)

total = 0.0
lefts = []
for primitive in to_primitives(recursive_decompose(space), max_flattening_distance=1e-6):
    points = list(primitive.vertices())
    lefts += [point.x for point in points]
    total += sum((a - b).magnitude for a, b in zip(points, points[1:]))
print(json.dumps({"length": total, "left": min(lefts), "right": max(lefts)}))
