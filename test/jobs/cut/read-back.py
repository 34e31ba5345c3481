# Reads a DXF with ezdxf (Debian package python3-ezdxf), audits it, and says as JSON what it holds.
import json
import sys

import ezdxf
from ezdxf import bbox

drawing = ezdxf.readfile(sys.argv[1])
audit = drawing.audit()
space = drawing.modelspace()
extents = bbox.extents(space)
print(json.dumps({
    'version': drawing.dxfversion,
    'errors': [error.message for error in audit.errors],
    'fixes': [fix.message for fix in audit.fixes],
    'units': drawing.units,
    'layers': [layer.dxf.name for layer in drawing.layers],
    'order': [entity.dxf.layer for entity in space],
    'types': [entity.dxftype() for entity in space],
    'circles': [[*entity.dxf.center][:2] + [entity.dxf.radius] for entity in space.query('CIRCLE')],
    'points': [[*entity.dxf.location][:2] for entity in space.query('POINT')],
    'box': [*extents.extmin][:2] + [*extents.extmax][:2],
}))
