"""Reads a DXF by ezdxf, audits it, and says what is on each layer. usage: read_plan.py FILE. Prints JSON."""
import json
import sys

import ezdxf
from ezdxf.math import area

doc = ezdxf.readfile(sys.argv[1])
auditor = doc.audit()
layers = {}
for entity in doc.modelspace():
    own = layers.setdefault(entity.dxf.layer, {"closed": 0, "open": 0, "area": 0.0, "length": 0.0, "texts": []})
    if entity.dxftype() == "TEXT":
        own["texts"].append(entity.dxf.text)
    if entity.dxftype() == "LWPOLYLINE":
        own["closed" if entity.closed else "open"] += 1
        points = list(entity.vertices_in_wcs())
        if entity.closed:
            own["area"] += abs(area(points))
            points.append(points[0])
        own["length"] += sum((a - b).magnitude for a, b in zip(points, points[1:]))
print(json.dumps({
    "version": doc.dxfversion,
    "units": doc.units,
    "errors": [str(error.message) for error in auditor.errors],
    "fixes": [str(fix.message) for fix in auditor.fixes],
    "linetypes": {layer.dxf.name: layer.dxf.linetype for layer in doc.layers},
    "patterns": {
        each.dxf.name: [tag.value for tag in each.pattern_tags.tags if tag.code == 49] for each in doc.linetypes
    },
    "layers": layers,
}))
