"""Runs every program below an output folder through rs274, the stand-alone interpreter of Debian's linuxcnc-uspace,
which knows nothing of this project, and compares what it would do with what was meant: no error, each move where it
should be within 0.005 mm, in order, nothing more and nothing less. Then lets it move the outlines of parts by the bit's
radius itself (G42.1) and compares that with our own paths round them.

    node scripts/outside/ourMoves.mjs JOB > moves.json
    python3 scripts/outside/runPrograms.py OUTDIR moves.json

Prints a line a file and a last line with counts; ends with 1 where anything is wrong.
"""
import json
import math
import re
import subprocess
import sys
import tempfile
from pathlib import Path

CLOSE_MM = 0.005
CALL = re.compile(r"(STRAIGHT_TRAVERSE|STRAIGHT_FEED|ARC_FEED|USE_LENGTH_UNITS)\(([^)]*)\)")


class Segment:
    """One motion, mm; an arc has a middle and a sweep, left turns positive."""

    def __init__(self, start, end, rapid=False, middle=None, sweep=0.0):
        self.start, self.end, self.rapid, self.middle, self.sweep = start, end, rapid, middle, sweep

    def at(self, share):
        z = self.start[2] + (self.end[2] - self.start[2]) * share
        if self.middle is None:
            return tuple(a + (b - a) * share for a, b in zip(self.start[:2], self.end[:2])) + (z,)
        radius = math.dist(self.start[:2], self.middle)
        angle = math.atan2(self.start[1] - self.middle[1], self.start[0] - self.middle[0]) + self.sweep * share
        return (self.middle[0] + radius * math.cos(angle), self.middle[1] + radius * math.sin(angle), z)

    def length(self):
        flat = math.dist(self.start[:2], self.end[:2])
        if self.middle is not None:
            flat = abs(self.sweep) * math.dist(self.start[:2], self.middle)
        return math.hypot(flat, self.end[2] - self.start[2])

    def distance(self, place):
        if self.middle is None:
            along = [b - a for a, b in zip(self.start, self.end)]
            square = sum(c * c for c in along)
            share = 0.0 if square == 0 else sum((p - a) * c for p, a, c in zip(place, self.start, along)) / square
            return math.dist(place, self.at(min(1.0, max(0.0, share))))
        angle = math.atan2(place[1] - self.middle[1], place[0] - self.middle[0])
        start = math.atan2(self.start[1] - self.middle[1], self.start[0] - self.middle[0])
        turned = (angle - start) % (2 * math.pi) if self.sweep > 0 else -((start - angle) % (2 * math.pi))
        shares = [turned / self.sweep, 0.0, 1.0]
        if abs(self.sweep) > 2 * math.pi - 1e-6 and abs(self.end[2] - self.start[2]) > 1e-9:
            shares.append((place[2] - self.start[2]) / (self.end[2] - self.start[2]))
        return min(math.dist(place, self.at(share)) for share in shares if -1e-9 <= share <= 1 + 1e-9)


def interpreted(program, tools):
    """What rs274 would do with a program: its motions, mm, and what it complained of."""
    with tempfile.TemporaryDirectory() as folder:
        table = Path(folder) / "tool.tbl"
        table.write_text("".join(f"T{number} P{number} D{d}\n" for number, d in tools.items()), encoding="ascii")
        text = Path(folder) / "program.ngc"
        text.write_text(program, encoding="ascii")
        run = subprocess.run(["rs274", "-t", table, "-g", text], cwd=folder, capture_output=True, text=True, timeout=120)
    wrong = [line for line in run.stderr.splitlines() if line.strip() not in ("", "executing")]
    if run.returncode != 0:
        wrong.append(f"ended with {run.returncode}")
    if "PROGRAM_END" not in run.stdout:
        wrong.append("did not come to its end")
    segments, here, unit = [], None, 1.0
    for name, inner in CALL.findall(run.stdout):
        if name == "USE_LENGTH_UNITS":
            unit = 25.4 if "INCH" in inner else 1.0
            continue
        values = [float(value) for value in inner.split(",")]
        if name == "ARC_FEED":
            x, y, cx, cy, turns, z = values[:6]
            end = (x * unit, y * unit, z * unit)
            middle = (cx * unit, cy * unit)
            angle = [math.atan2(p[1] - middle[1], p[0] - middle[0]) for p in (here, end)]
            sweep = (angle[1] - angle[0]) % (2 * math.pi)
            if math.dist(here[:2], end[:2]) < 1e-9:
                sweep = 2 * math.pi
            elif turns < 0:
                sweep -= 2 * math.pi
            segments.append(Segment(here, end, False, middle, sweep if turns > 0 or sweep < 0 else -sweep))
        else:
            end = tuple(value * unit for value in values[:3])
            if here is not None:
                segments.append(Segment(here, end, name == "STRAIGHT_TRAVERSE"))
        here = end
    return segments, wrong


def meant(moves, top):
    """Our own moves as segments, in the frame of the program."""
    segments, here = [], None
    for move in moves:
        x, y, z = move["to"]
        end = (x, y, z + top)
        if here is not None:
            middle, sweep = None, 0.0
            if move["bulge"] != 0 and math.dist(here[:2], end[:2]) > 1e-6:
                b = move["bulge"]
                k = (1 - b * b) / (4 * b)
                dx, dy = end[0] - here[0], end[1] - here[1]
                middle = ((here[0] + end[0]) / 2 - dy * k, (here[1] + end[1]) / 2 + dx * k)
                sweep = 4 * math.atan(b)
            segments.append(Segment(here, end, move["feed"] == "rapid", middle, sweep))
        here = end
    return segments


def differences(ours, theirs):
    """Walks along both in order: every place of ours on the segment of theirs that is due, none of theirs left out."""
    faults, due = [], 0
    for segment in ours:
        if segment.length() < CLOSE_MM:
            continue
        places = [segment.at(share) for share in (0.1, 0.3, 0.5, 0.7, 0.9)]
        at = due
        while at < len(theirs) and max(theirs[at].distance(place) for place in places) > CLOSE_MM:
            at += 1
        if at == len(theirs):
            faults.append(f"no move along {tuple(round(c, 3) for c in segment.at(0.5))}")
            continue
        # Going up to the safe height, once more, is all that may stand between.
        for skipped in theirs[due:at]:
            if skipped.length() > CLOSE_MM and not (skipped.rapid and skipped.end[2] >= skipped.start[2]):
                faults.append(f"a move to {skipped.end} that is not ours")
        if theirs[at].rapid != segment.rapid:
            faults.append(f"rapid where a feed was meant, or the other way round, at {segment.end}")
        # One of theirs may be two of ours: halves of a circle that is sent whole.
        due = at + 1 if math.dist(theirs[at].end, segment.end) <= CLOSE_MM else at
    return faults


def compared(folder, setup):
    path = folder / "sheets" / setup["file"]
    tools = {run["number"]: run["d"] for run in setup["runs"]}
    theirs, faults = interpreted(path.read_text(encoding="ascii"), tools)
    moves = [move for run in setup["runs"] for operation in run["operations"] for move in operation["moves"]]
    ours = meant(moves, setup["top"])
    return faults + differences(ours, theirs), len(theirs)


def middle_of(a, b, bulge):
    return ((a["x"] + b["x"]) / 2 + (b["y"] - a["y"]) * bulge / 2, (a["y"] + b["y"]) / 2 - (b["x"] - a["x"]) * bulge / 2)


def radius_of(a, b):
    chord = math.hypot(b["x"] - a["x"], b["y"] - a["y"])
    return chord * (1 + a["bulge"] ** 2) / (4 * abs(a["bulge"]))


def outline_program(outer, d):
    """Once round a profile, counter-clockwise, the bit on its right by G42.1, from the middle of its longest straight
    edge; nothing where the interpreter would refuse: a concave corner, or a concave arc no wider than the bit."""
    n = len(outer)
    edges = [(outer[i], outer[(i + 1) % n]) for i in range(n)]
    for i, (a, b) in enumerate(edges):
        if a["bulge"] < 0 and radius_of(a, b) <= d / 2 + 0.1:
            return None
    straight = [i for i, (a, _) in enumerate(edges) if a["bulge"] == 0]
    if not straight or any(turn_at(edges[i - 1], edges[i]) < -1e-3 for i in range(n)):
        return None
    first = max(straight, key=lambda i: math.hypot(edges[i][1]["x"] - edges[i][0]["x"], edges[i][1]["y"] - edges[i][0]["y"]))
    a, b = edges[first]
    length = math.hypot(b["x"] - a["x"], b["y"] - a["y"])
    ux, uy = (b["x"] - a["x"]) / length, (b["y"] - a["y"]) / length
    start = middle_of(a, b, 0)
    lines = ["G21 G17 G40 G49 G80 G90 G94 G54", "G0 Z5", f"G0 X{start[0] + 20 * uy - 20 * ux:.5f} Y{start[1] - 20 * ux - 20 * uy:.5f}", "F1000"]
    lines += [f"G42.1 D{d:.4f}", f"G1 X{start[0]:.5f} Y{start[1]:.5f}"]
    order = [edges[(first + k) % n] for k in range(n)]
    lines.append(f"G1 X{b['x']:.5f} Y{b['y']:.5f}")
    for p, q in order[1:]:
        if p["bulge"] == 0:
            lines.append(f"G1 X{q['x']:.5f} Y{q['y']:.5f}")
        else:
            k = (1 - p["bulge"] ** 2) / (4 * p["bulge"])
            i = (q["x"] - p["x"]) / 2 - (q["y"] - p["y"]) * k
            j = (q["y"] - p["y"]) / 2 + (q["x"] - p["x"]) * k
            lines.append(f"{'G3' if p['bulge'] > 0 else 'G2'} X{q['x']:.5f} Y{q['y']:.5f} I{i:.5f} J{j:.5f}")
    lines += [f"G1 X{start[0]:.5f} Y{start[1]:.5f}", "G40", "G0 Z5", "M2"]
    return "\n".join(lines) + "\n"


def direction(a, b, end):
    """Of an edge at its start or end: the chord, turned by half its sweep."""
    half = 2 * math.atan(a["bulge"]) * (1 if end else -1)
    return math.atan2(b["y"] - a["y"], b["x"] - a["x"]) + half


def turn_at(before, after):
    turn = direction(*after, False) - direction(*before, True)
    return (turn + math.pi) % (2 * math.pi) - math.pi


def compensated(setup):
    """For each part that is cut round: how far the interpreter's own way round it is from ours, at most."""
    for run in setup["runs"]:
        for operation in run["operations"]:
            part = next((each for each in setup["parts"] if each["part"] == operation.get("part")), None)
            if operation["kind"] != "outside" or part is None:
                continue
            program = outline_program(part["outer"], run["d"])
            if program is None:
                continue
            theirs, faults = interpreted(program, {})
            round_part = [each for each in theirs if not each.rapid][1:]
            ours = [Segment(s.start[:2] + (0,), s.end[:2] + (0,), s.rapid, s.middle, s.sweep) for s in meant(operation["moves"], 0) if not s.rapid]
            worst = 0.0
            for segment in round_part:
                for share in (0.0, 0.25, 0.5, 0.75, 1.0):
                    place = segment.at(share)[:2] + (0,)
                    worst = max(worst, min(each.distance(place) for each in ours))
            yield part["part"], worst, faults


def main(folder, moves):
    setups = json.loads(Path(moves).read_text(encoding="utf-8"))
    wrong, compensations = [], 0
    for setup in setups:
        faults, count = compared(folder, setup)
        wrong += [f"{setup['file']}: {fault}" for fault in faults]
        print(f"{setup['file']}: {count} motions, {len(faults)} wrong")
        for part, worst, complaints in compensated(setup):
            compensations += 1
            print(f"  {part}: moved by the interpreter itself, at most {worst:.4f} mm from our way")
            wrong += [f"{part}: {each}" for each in complaints]
            if worst > CLOSE_MM:
                wrong.append(f"{part}: the interpreter's own way is {worst:.4f} mm from ours")
    programs = sorted(path.name for path in (folder / "sheets").glob("*.ngc"))
    if programs != sorted(setup["file"] for setup in setups):
        wrong.append(f"programs are {programs}")
    if compensations == 0:
        wrong.append("no outline to let the interpreter move")
    for line in wrong[:40]:
        print(f"WRONG {line}")
    print(f"{len(programs)} programs run by rs274, {compensations} outlines moved by it, {len(wrong)} wrong")
    return 1 if wrong or not programs else 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit("usage: runPrograms.py OUTDIR MOVES")
    sys.exit(main(Path(sys.argv[1]), sys.argv[2]))
