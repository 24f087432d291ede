"""Reads every .dxf below an output folder with ezdxf, which knows nothing of this project, and compares it with the
folder's plan.json: no audit error, the unit, closed outlines, areas within 0.01 mm2, arcs still arcs; and the
centre lines of bits round parts against the outlines in the same file.

    python3 scripts/outside/readDxf.py OUTDIR

Needs Debian's python3-ezdxf. Prints a line a file and a last line with counts; ends with 1 where anything is wrong.
"""
import json
import math
import os
import re
import sys
from pathlib import Path

try:
    import ezdxf
except ImportError:
    # The package belongs to Debian's own python, which may not be the first on the path.
    if sys.executable != "/usr/bin/python3" and os.path.exists("/usr/bin/python3"):
        os.execv("/usr/bin/python3", ["/usr/bin/python3", *sys.argv])
    sys.exit("ezdxf is not installed: apt-get install python3-ezdxf")

TOLERANCE_MM2 = 0.01
VERSIONS = {"AC1009", "AC1015"}  # R12 and 2000
CHAINS = {"POLYLINE", "LWPOLYLINE"}
MM_IN_UNIT = {4: 1.0, 1: 25.4}  # by $INSUNITS
OUTLINE = re.compile(r"^OUTLINE(-LATER)?$")
THROUGH = re.compile(r"^(OPENING|HOLE)(-LATER)?$")
MAY_BE_OPEN = re.compile(r"^(GROOVE|EDGE-WORK|TOOL)-")
TOOL_WIDTH = re.compile(r"^TOOL-(\d+) layers: .* which cuts ([0-9.]+) mm wide")
ROUND_PARTS = re.compile(r"^TOOL-(\d+)-OUTSIDE$")
CENTRE_MM = 0.002
SHARE = 0.5  # of a part's centre line that must be found at the radius: leads and relieved corners lie elsewhere


def bow(ax, ay, bx, by, bulge):
    """Area between an arc and its chord: r^2 (w - sin w) / 2, w = 4 atan(bulge), r = chord / (2 sin(w / 2))."""
    if bulge == 0:
        return 0.0
    sweep = 4 * math.atan(bulge)
    radius = math.hypot(bx - ax, by - ay) / (2 * math.sin(sweep / 2))
    return radius * radius * (sweep - math.sin(sweep)) / 2


def area_of(vertices):
    """Of a closed chain of (x, y, bulge): shoelace about its first corner, and the bows."""
    ox, oy, _ = vertices[0]
    total = 0.0
    for (ax, ay, bulge), (bx, by, _) in zip(vertices, vertices[1:] + vertices[:1]):
        total += ((ax - ox) * (by - oy) - (bx - ox) * (ay - oy)) / 2 + bow(ax, ay, bx, by, bulge)
    return abs(total)


def vertices_of_json(profile):
    return [(v["x"], v["y"], v["bulge"]) for v in profile]


def is_circle(vertices):
    """All bows turn left, together once round, about one middle."""
    if any(bulge <= 0 for _, _, bulge in vertices):
        return False
    if abs(sum(4 * math.atan(bulge) for _, _, bulge in vertices) - 2 * math.pi) > 1e-6:
        return False
    middles = []
    for (ax, ay, b), (bx, by, _) in zip(vertices, vertices[1:] + vertices[:1]):
        k = (1 - b * b) / (4 * b)
        middles.append(((ax + bx) / 2 - (by - ay) * k, (ay + by) / 2 + (bx - ax) * k))
    return all(math.dist(middle, middles[0]) < 1e-5 for middle in middles)


class Expected:
    """What plan.json says should lie in a file: area, arcs, circles and outlines of the parts' profiles."""

    def __init__(self, parts):
        self.outlines = len(parts)
        self.area = 0.0
        self.arcs = 0
        self.circles = 0
        for part in parts:
            loops = [vertices_of_json(part["profile"]["outer"])]
            loops += [vertices_of_json(hole) for hole in part["profile"]["holes"]]
            areas = [area_of(loop) for loop in loops]
            self.area += areas[0] - sum(areas[1:])
            for loop in loops:
                if is_circle(loop):
                    self.circles += 1
                else:
                    self.arcs += sum(1 for _, _, bulge in loop if bulge != 0)


class Found:
    """The same, as the file has it. Lengths are turned into mm by the file's own $INSUNITS."""

    def __init__(self, doc, unit):
        self.outlines = self.arcs = self.circles = 0
        self.area = 0.0
        self.open = []
        for entity in doc.modelspace():
            layer = entity.dxf.layer
            profile = OUTLINE.match(layer) or THROUGH.match(layer)
            if entity.dxftype() == "CIRCLE":
                if profile:
                    self.circles += 1
                    self.count(layer, math.pi * entity.dxf.radius**2 * unit**2)
            elif entity.dxftype() in CHAINS:
                if not entity.is_closed:
                    if not MAY_BE_OPEN.match(layer):
                        self.open.append(layer)
                    continue
                vertices = vertices_of(entity, 1)
                if profile:
                    self.arcs += sum(1 for _, _, bulge in vertices if bulge != 0)
                    self.count(layer, area_of(vertices) * unit**2)

    def count(self, layer, area):
        if OUTLINE.match(layer):
            self.outlines += 1
            self.area += area
        else:
            self.area -= area


def places_along(vertices, closed, step):
    """Places on a chain of (x, y, bulge), no farther apart than `step`."""
    ends = vertices[1:] + (vertices[:1] if closed else [])
    for (ax, ay, bulge), (bx, by, _) in zip(vertices, ends):
        if bulge == 0:
            count = max(1, math.ceil(math.dist((ax, ay), (bx, by)) / step))
            yield from ((ax + (bx - ax) * i / count, ay + (by - ay) * i / count) for i in range(count))
            continue
        k = (1 - bulge * bulge) / (4 * bulge)
        cx, cy = (ax + bx) / 2 - (by - ay) * k, (ay + by) / 2 + (bx - ax) * k
        radius, start, sweep = math.dist((ax, ay), (cx, cy)), math.atan2(ay - cy, ax - cx), 4 * math.atan(bulge)
        count = max(2, math.ceil(abs(sweep) * radius / step))
        for i in range(count):
            angle = start + sweep * i / count
            yield cx + radius * math.cos(angle), cy + radius * math.sin(angle)


def distance_to(loop, place):
    """From a place to a closed chain of (x, y, bulge)."""
    px, py = place
    least = math.inf
    for (ax, ay, bulge), (bx, by, _) in zip(loop, loop[1:] + loop[:1]):
        least = min(least, math.dist(place, (ax, ay)))
        if bulge == 0:
            dx, dy = bx - ax, by - ay
            square = dx * dx + dy * dy
            share = 0 if square == 0 else max(0, min(1, ((px - ax) * dx + (py - ay) * dy) / square))
            least = min(least, math.dist(place, (ax + share * dx, ay + share * dy)))
            continue
        k = (1 - bulge * bulge) / (4 * bulge)
        cx, cy = (ax + bx) / 2 - (by - ay) * k, (ay + by) / 2 + (bx - ax) * k
        start, sweep = math.atan2(ay - cy, ax - cx), 4 * math.atan(bulge)
        angle = math.atan2(py - cy, px - cx)
        turned = (angle - start) % (2 * math.pi) if sweep > 0 else (start - angle) % (2 * math.pi)
        if turned <= abs(sweep):
            least = min(least, abs(math.dist(place, (cx, cy)) - math.dist((ax, ay), (cx, cy))))
    return least


def vertices_of(entity, unit):
    if entity.dxftype() == "LWPOLYLINE":
        return [(x * unit, y * unit, bulge) for x, y, bulge in entity.get_points("xyb")]
    return [(v.dxf.location.x * unit, v.dxf.location.y * unit, v.dxf.get("bulge", 0)) for v in entity.vertices]


def outlines_of(doc, unit):
    """Finished outlines in mm; a part with an allowance is cut to its blank."""
    for entity in doc.modelspace():
        if entity.dxf.layer in ("OUTLINE", "BLANK"):
            if entity.dxftype() == "CIRCLE":
                x, y, r = entity.dxf.center.x * unit, entity.dxf.center.y * unit, entity.dxf.radius * unit
                yield [(x - r, y, 1), (x + r, y, 1)]
            elif entity.dxftype() in CHAINS:
                yield vertices_of(entity, unit)


def faults_of_centres(doc, unit):
    """Centre lines round parts: nowhere nearer to any outline than the bit's radius, and at it but for the leads."""
    widths = {}
    for entity in doc.modelspace():
        if entity.dxftype() == "TEXT" and (told := TOOL_WIDTH.match(entity.dxf.text)):
            widths[told[1]] = float(told[2])
    loops = list(outlines_of(doc, unit))
    faults, seen, at_radius = [], 0, 0
    for entity in doc.modelspace():
        layer = ROUND_PARTS.match(entity.dxf.layer)
        if layer is None or entity.dxftype() not in CHAINS:
            continue
        radius = widths[layer[1]] / 2
        for place in places_along(vertices_of(entity, unit), False, 5):
            off = min(distance_to(loop, place) for loop in loops)
            seen += 1
            at_radius += abs(off - radius) <= CENTRE_MM
            if off < radius - CENTRE_MM:
                faults.append(f"centre line {radius - off:.4f} mm too near at {place[0]:.3f}, {place[1]:.3f}")
    if seen > 0 and at_radius < SHARE * seen:
        faults.append(f"only {at_radius} of {seen} places of centre lines lie at the bit's radius")
    return faults[:5], seen, at_radius


def faults_of(doc, expected):
    faults = [f"audit: {error.message}" for error in doc.audit().errors]
    insunits = doc.header.get("$INSUNITS")
    if doc.dxfversion not in VERSIONS:
        faults.append(f"version {doc.dxfversion}")
    if insunits not in MM_IN_UNIT:
        return [*faults, f"$INSUNITS {insunits}"], None
    if doc.header.get("$MEASUREMENT") != (1 if insunits == 4 else 0):
        faults.append(f"$MEASUREMENT {doc.header.get('$MEASUREMENT')} with $INSUNITS {insunits}")
    known = {layer.dxf.name for layer in doc.layers}
    faults += sorted({f"layer {e.dxf.layer} not in the table" for e in doc.modelspace() if e.dxf.layer not in known})
    found = Found(doc, MM_IN_UNIT[insunits])
    faults += [f"open line on {layer}" for layer in found.open]
    for what in ("outlines", "arcs", "circles"):
        if getattr(found, what) != getattr(expected, what):
            faults.append(f"{getattr(found, what)} {what}, expected {getattr(expected, what)}")
    if abs(found.area - expected.area) > TOLERANCE_MM2:
        faults.append(f"area {found.area:.4f} mm2, expected {expected.area:.4f}")
    faults_here, found.centres, found.at_radius = faults_of_centres(doc, MM_IN_UNIT[insunits])
    return faults + faults_here, found


def expected_by_file(folder, plan):
    parts = {part["id"]: part for part in plan["plan"]["parts"]}
    expected = {}
    for entry in plan["files"]["parts"]:
        expected[folder / "parts" / f"{entry['name']}.dxf"] = Expected([parts[entry["part"]]])
    for entry, sheet in zip(plan["files"]["sheets"], plan["layout"]["sheets"]):
        placed = [parts[one["part"]] for one in sheet["placed"]]
        expected[folder / "sheets" / f"{entry['name']}.dxf"] = Expected(placed)
        turned = folder / "sheets" / f"{entry['name']}-turned.dxf"
        if turned.exists():
            expected[turned] = Expected(placed)
    return expected


def main(folder):
    plan = json.loads((folder / "plan.json").read_text(encoding="utf-8"))
    expected = expected_by_file(folder, plan)
    files = sorted(folder.rglob("*.dxf"))
    wrong = [f"{path}: missing" for path in expected if path not in files]
    units, versions = set(), set()
    for path in files:
        if path not in expected:
            wrong.append(f"{path}: not in plan.json")
            continue
        doc = ezdxf.readfile(path)
        faults, found = faults_of(doc, expected[path])
        units.add(doc.header.get("$INSUNITS"))
        versions.add(doc.dxfversion)
        if plan["hash"] not in path.read_text(encoding="ascii"):
            faults.append("without the build's hash")
        name = path.relative_to(folder)
        if faults:
            wrong.append(f"{name}: {'; '.join(faults)}")
        else:
            print(f"{name}: {found.outlines} outlines, {found.arcs} arcs, {found.circles} circles, {found.area:.3f} mm2"
                + (f", {found.at_radius} of {found.centres} places at the bit's radius" if found.centres else ""))
    if len(versions) > 1:
        wrong.append(f"files of different versions: {sorted(versions)}")
    if len(units) > 1:
        wrong.append(f"files in different units: {sorted(units)}")
    for line in wrong:
        print(f"WRONG {line}")
    print(f"{len(files)} DXF files read by ezdxf {ezdxf.__version__}, {sorted(versions)}, $INSUNITS {sorted(units)}, {len(wrong)} wrong")
    return 1 if wrong or not files else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: readDxf.py OUTDIR")
    sys.exit(main(Path(sys.argv[1])))
