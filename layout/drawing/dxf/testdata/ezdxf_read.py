"""Reads a DXF file with ezdxf and prints what it found, as JSON."""
import json
import sys

import ezdxf

doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
entities = []
for e in doc.modelspace():
    kind, d = e.dxftype(), e.dxf
    found = {"kind": kind, "layer": d.layer}
    if kind == "LINE":
        found["vertices"] = [[d.start.x, d.start.y, 0], [d.end.x, d.end.y, 0]]
    elif kind == "POLYLINE":
        found["closed"] = e.is_closed
        found["vertices"] = [[v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)] for v in e.vertices]
    elif kind in ("ARC", "CIRCLE"):
        found["centre"] = [d.center.x, d.center.y]
        found["radius"] = d.radius
        if kind == "ARC":
            found["from"], found["to"] = d.start_angle, d.end_angle
    elif kind == "TEXT":
        found["text"] = d.text
        found["height"] = d.height
    entities.append(found)
print(json.dumps({
    "mistakes": [e.message for e in audit.errors] + [e.message for e in audit.fixes],
    "release": doc.dxfversion,
    "units": doc.header["$INSUNITS"],
    "layers": [layer.dxf.name for layer in doc.layers],
    "entities": entities,
}))
