"""Reads a DXF by ezdxf and writes it anew, in its own words. usage: rewrite_plan.py FILE TO."""
import sys

import ezdxf

doc = ezdxf.readfile(sys.argv[1])
doc.dxfversion = "R2018"
doc.saveas(sys.argv[2])
