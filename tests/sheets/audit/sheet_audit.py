"""An audit of printed sheets from outside: poppler reads the PDF, nothing of Gangway's own code is used.

  sheet_audit.py PDF [--inspect MODEL.json] [--pages N]

Finds texts that touch each other, texts over lines, texts under 2.5 mm (ISO 3098-1: the least height on A1 to A4),
ink outside the frame (ISO 5457: 20 mm at the filing edge, 10 mm elsewhere), dimension lines whose numbers do not
say what is drawn, and, with the model that `gangway inspect --json` gives, boxes whose centres do not follow from
the printed numbers. Prints each problem; exit 0 when there is none, 1 otherwise."""
import argparse
import json
import re
import subprocess
import sys

import page_ink

LEAST_TEXT = 2.5
ROUNDING = 0.15       # a digit's ink is a little less than its capital height
FILING, BORDER = 20, 10
STROKE = 3.5          # length of the 45 degree stroke of a dimension (drawing-standards 1.2)
NUMBER = re.compile(r"-?\d+(\.5)?$")


def frame_of(page):
    return page_ink.Box(FILING, BORDER, page.width - BORDER, page.height - BORDER)


def touching(page):
    problems = []
    for i, a in enumerate(page.texts):
        for b in page.texts[i + 1:]:
            if not a.box.meets(b.box):
                continue
            if any(p.meets(q) for p in a.glyphs for q in b.glyphs):
                problems.append(f"'{a.words}' touches '{b.words}' at {at(a.box)}")
    return problems


def at(box):
    x, y = box.middle
    return f"{x:.1f}, {y:.1f}"


def clipped(a, b, box):
    """The part of a line within a box; None when there is none (Liang and Barsky, 1984)."""
    low, high = 0.0, 1.0
    dx, dy = b[0] - a[0], b[1] - a[1]
    for p, q in ((-dx, a[0] - box.left), (dx, box.right - a[0]), (-dy, a[1] - box.bottom), (dy, box.top - a[1])):
        if p == 0:
            if q < 0:
                return None
        elif p < 0:
            low = max(low, q / p)
        else:
            high = min(high, q / p)
    if low >= high:
        return None
    return [(a[0] + t * dx, a[1] + t * dy) for t in (low, (low + high) / 2, high)]


def covered(points, between, page):
    """Whether white paper was laid over all of some points between two moments."""
    return all(any(path.white and between[0] < path.order < between[1] and path.box.holds(x, y)
                   for path in page.paths) for x, y in points)


def over_lines(page):
    problems = []
    for text in page.texts:
        near = [p for p in page.paths if p.stroked and p.box.grown(0.01).meets(text.box)]
        for glyph in text.glyphs:
            ink = page_ink.Box(glyph.left + 0.1, glyph.bottom + 0.1, glyph.right - 0.1, glyph.top - 0.1)
            if ink.left >= ink.right or ink.bottom >= ink.top:
                continue
            hit = None
            for path in near:
                for run in path.runs:
                    for a, b in zip(run, run[1:]):
                        part = clipped(a, b, ink)
                        if part and not (path.order < text.order and
                                         covered(part, (path.order, text.order), page)):
                            hit = part[1]
            if hit:
                problems.append(f"'{text.words}' stands over a line at {hit[0]:.1f}, {hit[1]:.1f}")
                break
    return problems


def small(page):
    problems = []
    for text in page.texts:
        if not re.search(r"[0-9A-Z]", text.words):
            continue
        # Which way a single digit is turned can't be told from its ink: digits are higher than wide.
        turned = [True, False] if len(text.glyphs) == 1 else [text.upright]
        height = max(g.right - g.left if t else g.top - g.bottom for g in text.glyphs for t in turned)
        if height < LEAST_TEXT - ROUNDING:
            problems.append(f"'{text.words}' is {height:.2f} mm high at {at(text.box)}")
    return problems


def outside(page):
    frame = frame_of(page).grown(0.36)
    paper = page_ink.Box(0, 0, page.width, page.height)
    problems = []
    for text in page.texts:
        # Grid references stand in the border (ISO 5457): one letter or number.
        if not text.box.inside(frame) and len(text.words) > 1:
            problems.append(f"'{text.words}' is outside the frame at {at(text.box)}")
    for path in page.paths:
        if not path.box.inside(paper):
            problems.append(f"a line runs off the paper at {at(path.box)}")
    return problems


def strokes(page):
    """The crossings where a dimension's 45 degree stroke stands."""
    found = []
    for path in page.paths:
        if not path.stroked or path.filled or len(path.runs) != 1 or len(path.runs[0]) != 2:
            continue
        (ax, ay), (bx, by) = path.runs[0]
        dx, dy = bx - ax, by - ay
        if abs(abs(dx) - abs(dy)) < 0.02 and abs((dx * dx + dy * dy) ** 0.5 - STROKE) < 0.05 and \
                abs(path.width - 0.35) < 0.03:
            found.append(((ax + bx) / 2, (ay + by) / 2))
    return found


def rows_of(points, axis):
    """Points that share a line, by its place: axis 0 for columns (same x), 1 for rows (same y)."""
    rows = {}
    for point in points:
        key = next((k for k in rows if abs(k - point[axis]) < 0.05), point[axis])
        rows.setdefault(key, []).append(point)
    return {k: sorted(v, key=lambda p: p[1 - axis]) for k, v in rows.items()}


def origins(page):
    """Open circles of about 3 mm at a running dimension's zero (ISO 129-1)."""
    return [path.box.middle for path in page.paths if path.stroked and not path.filled and
            abs(path.box.right - path.box.left - 3) < 0.1 and abs(path.box.top - path.box.bottom - 3) < 0.1 and
            len(path.runs[0]) > 16]


def running(page):
    """Each running dimension: (axis, origin, [(place, value)]), values in order as they are printed."""
    found = []
    marks = strokes(page)
    zeros = origins(page)
    for x, y in zeros:
        for axis in (1, 0):
            line = (x, y)[axis]
            low, high = stretch_of((x, y), axis, zeros)
            ticks = next((row for key, row in rows_of(marks, axis).items() if abs(key - line) < 0.05), [])
            ticks = [t[1 - axis] for t in ticks if low < t[1 - axis] < high]
            if not ticks:
                continue
            side = [t for t in page.texts if NUMBER.match(t.words) and low < t.box.middle[1 - axis] < high and
                    (t.upright or t.words == "0" if axis == 1 else not t.upright) and
                    near_line(t, axis, line, (x, y)[1 - axis], ticks)]
            side.sort(key=lambda t: t.box.middle[1 - axis])
            found.append((axis, (x, y)[1 - axis], ticks, [float(t.words) for t in side]))
    return found


def stretch_of(origin, axis, zeros):
    """What belongs to an origin of its line where pictures stand beside each other: up to where the next one's
    begins, and nothing before it where another is."""
    others = [z[1 - axis] for z in zeros if abs(z[axis] - origin[axis]) < 0.05]
    at = origin[1 - axis]
    after = [o for o in others if o > at + 0.05]
    before = [o for o in others if o < at - 0.05]
    return (at - 2 if before else float("-inf")), (min(after) - 2 if after else float("inf"))


def near_line(text, axis, line, origin, ticks):
    """Whether a number stands just beyond a dimension line, within its length."""
    across = (text.box.left, text.box.right) if axis == 0 else (text.box.bottom, text.box.top)
    along = text.box.middle[1 - axis]
    reach = 12.5
    if not (min(ticks + [origin]) - 15 <= along <= max(ticks + [origin]) + 15):
        return False
    return 0 < line - across[1] < reach if axis == 0 else (0 < line - across[1] < reach or 0 < across[0] - line < reach)


def scale_of(page):
    for text in page.texts:
        found = re.search(r"\b1:(\d+)\b", text.words)
        if found:
            return int(found.group(1))
    return None


def number_problems(page, dimensions, scale):
    problems = []
    for axis, origin, ticks, values in dimensions:
        values = [v for v in values if v != 0] if 0 in values else values
        if len(values) != len(ticks):
            problems.append(f"a running dimension has {len(ticks)} strokes for the numbers {values}")
            continue
        for place, value in zip(ticks, values):
            drawn = (place - origin) * scale
            if abs(drawn - value) > 0.02 * scale + 0.5:
                problems.append(f"the number {value} stands where {drawn:.1f} is drawn")
    return problems


def title_of(page):
    for text in page.texts:
        found = re.match(r"(.*), wall (\S+)$", text.words)
        if found:
            return found.groups()
    return None


def boxes_of(model):
    """Box centres by (room name, wall id) from the model: (u, v)."""
    names = {room["id"]: room["name"] for room in model["rooms"]}
    boxes = {}
    for plate in model["plates"]:
        for box in plate["boxes"] if "wall" in plate else []:
            key = names[plate["room"]], plate["wall"]
            boxes.setdefault(key, []).append((plate["id"], box["setOut"], box["height"]))
    return boxes


def missing(page, dimensions, boxes):
    key = title_of(page)
    if key is None or key not in boxes:
        return []
    us = [v for axis, _, _, values in dimensions if axis == 1 for v in values]
    vs = [v for axis, _, _, values in dimensions if axis == 0 for v in values]
    problems = []
    for plate, u, v in boxes[key]:
        if not any(abs(value - u) <= 0.5 for value in us):
            problems.append(f"{plate}: no printed set-out of {u}")
        if not any(abs(value - v) <= 0.5 for value in vs):
            problems.append(f"{plate}: no printed height of {v}")
    return problems


def audit(pdf, number, boxes):
    page = page_ink.page_of(pdf, number)
    problems = touching(page) + over_lines(page) + small(page) + outside(page)
    scale = scale_of(page)
    if scale:
        dimensions = running(page)
        problems += number_problems(page, dimensions, scale)
        problems += missing(page, dimensions, boxes)
    return problems


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("pdf")
    parser.add_argument("--inspect")
    parser.add_argument("--pages", type=int, default=0)
    arguments = parser.parse_args()
    boxes = boxes_of(json.load(open(arguments.inspect))) if arguments.inspect else {}
    info = subprocess.run(["pdfinfo", arguments.pdf], check=True, capture_output=True).stdout.decode()
    pages = int(re.search(r"Pages:\s+(\d+)", info).group(1))
    count = 0
    for number in range(1, min(pages, arguments.pages or pages) + 1):
        for problem in audit(arguments.pdf, number, boxes):
            print(f"page {number}: {problem}")
            count += 1
    print(f"{pages} pages, {count} problems")
    return 1 if count else 0


if __name__ == "__main__":
    sys.exit(main())
