"""An audit of what is taken to the wall, from outside: poppler reads the wall checks and the drilling templates,
nothing of Gangway's own code is used.

  site_audit.py GANGWAY FOLDER PLAN...

Wall checks: every box of `gangway inspect --json` stands on one row, with its tag, u and v and three squares to
tick. Templates: two bars of 100 mm with their ends marked, nothing nearer than 10 mm to an edge, every box's
centre cross once with its own u, and crosses as far from each other as the boxes on the wall. Both: texts off each
other and off lines, 2.5 mm at least (sheet_audit.py). Prints each problem; exit 0 when there is none, 1 otherwise."""
import json
import multiprocessing
import os
import re
import subprocess
import sys
from collections import Counter

import page_ink
import sheet_audit

MARGIN = 10           # printers leave no more than this (drawing-standards 1.5, common practice)
BAR = 100
TAKEN_FOR_TRUE = 0.05  # mm, of what is drawn at true size
CROSS = 10            # length of a centre cross's lines, 0.5 wide
TICK_SQUARE = 5
IN_ROW = 3            # a number with feet and inches under it stands above the middle; rows are 7.5 high at least
NEAR = 6              # from a cross to the words at it
U = re.compile(r"u (-?\d+(?:\.5)?)$")


def segments(page, width, length):
    """Straight strokes of this line width and length as (a, b)."""
    found = []
    for path in page.paths:
        if not path.stroked or abs(path.width - width) > 0.02:
            continue
        for run in path.runs:
            if len(run) == 2:
                (ax, ay), (bx, by) = run
                if abs(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 - length) < TAKEN_FOR_TRUE:
                    found.append(run)
    return found


def level(run):
    return abs(run[0][1] - run[1][1]) < 0.01


def upright(run):
    return abs(run[0][0] - run[1][0]) < 0.01


def proof_bars(page):
    bars = segments(page, 0.35, BAR)
    problems = []
    for name, way in (("level", level), ("upright", upright)):
        mine = [bar for bar in bars if way(bar)]
        if len(mine) != 1:
            problems.append(f"{len(mine)} {name} bars of 100 mm")
            continue
        ends = [end for end in mine[0] for tick in segments(page, 0.35, 4)
                if any(abs(end[0] - p[0]) < 0.02 and abs(end[1] - p[1]) < 0.02 for p in tick)]
        if len(ends) != 2:
            problems.append(f"the {name} bar has {len(ends)} marked ends")
    return problems


def outside(page):
    place = page_ink.Box(MARGIN, MARGIN, page.width - MARGIN, page.height - MARGIN)
    problems = [f"'{text.words}' is nearer than 10 mm to an edge" for text in page.texts
                if not text.box.inside(place)]
    problems += [f"a line is nearer than 10 mm to an edge at {sheet_audit.at(path.box)}" for path in page.paths
                 if not path.box.grown(path.width / 2 if path.stroked else 0).inside(place)]
    return problems


def crosses(page):
    """Centres of crosses: a level and an upright line of 10 mm with one middle."""
    middles = [[((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in segments(page, 0.5, CROSS) if way((a, b))]
               for way in (level, upright)]
    return [p for p in middles[0] if any(abs(p[0] - q[0]) < 0.01 and abs(p[1] - q[1]) < 0.01 for q in middles[1])]


def cells(page):
    """Cutting lines: closed thin rectangles that are at least 80 mm both ways."""
    found = []
    for path in page.paths:
        box = path.box
        if path.stroked and not path.filled and abs(path.width - 0.18) < 0.02 and len(path.runs) == 1 and \
                len(path.runs[0]) == 5 and min(box.right - box.left, box.top - box.bottom) > 80:
            found.append(box)
    return found


def distance_to(box, point):
    dx = max(box.left - point[0], 0, point[0] - box.right)
    dy = max(box.bottom - point[1], 0, point[1] - box.top)
    return (dx * dx + dy * dy) ** 0.5


def templates_of(page, tags):
    """[(tag, turned, [(centre, u)], heights)] of the templates on a page, and what is wrong with them."""
    found, problems = [], []
    centres = crosses(page)
    for cell in cells(page):
        texts = [t for t in page.texts if t.box.inside(cell)]
        mine = [t for t in texts if t.words in tags]
        if len(mine) != 1:
            problems.append(f"the template at {sheet_audit.at(cell)} has {len(mine)} tags")
            continue
        labels = [(t, float(U.match(t.words).group(1))) for t in texts if U.match(t.words)]
        places = []
        for centre in [c for c in centres if cell.holds(*c)]:
            near = min(labels, key=lambda one: distance_to(one[0].box, centre), default=None)
            if near is None or distance_to(near[0].box, centre) > NEAR:
                problems.append(f"{mine[0].words}: no u at the cross at {centre[0]:.1f}, {centre[1]:.1f}")
                continue
            places.append((centre, near[1]))
        heights = {float(t.words) for t in texts if sheet_audit.NUMBER.match(t.words)}
        found.append((mine[0].words, any(t.upright for t, _ in labels), places, heights))
    strays = len(centres) - sum(len(places) for _, _, places, _ in found)
    if strays and not problems:
        problems.append(f"{strays} crosses are on no template")
    return found, problems


def along_and_up(one, other, turned):
    """How far `other` is to the right of `one` and above it on the wall; a turned template is read from the right."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    return (dy, -dx) if turned else (dx, dy)


def place_problems(tag, turned, places, heights, boxes):
    """Each cross is one of the plate's boxes; returns (boxes, problems)."""
    taken, problems = [], []
    for centre, u in places:
        level_of = next(((box, c) for box, c in taken), None)
        fitting = [box for box in boxes if abs(box[0] - u) <= 0.26 and box not in [b for b, _ in taken]]
        if level_of:
            (u0, v0), c0 = level_of
            right, up = along_and_up(c0, centre, turned)
            # A ceiling is drawn from below, so that what is to the east is at the left.
            fitting = [box for box in fitting if abs(abs(box[0] - u0) - abs(right)) < TAKEN_FOR_TRUE
                       and abs(box[1] - v0 - up) < TAKEN_FOR_TRUE]
        elif len(fitting) > 1:
            # Of boxes over each other the first one drawn is the highest on this template.
            rank = sorted(places, key=lambda p: -along_and_up(centre, p[0], turned)[1])
            shown = sorted((box for box in fitting if box[1] in heights), key=lambda box: -box[1])
            fitting = shown[rank.index((centre, u)):][:1]
        if not fitting:
            problems.append(f"{tag}: no box is where u {u:g} is drawn")
            continue
        if not any(abs(fitting[0][1] - height) <= 0.26 for height in heights):
            problems.append(f"{tag}: its height of {fitting[0][1]:g} is not printed")
        taken.append((fitting[0], centre))
    return [box for box, _ in taken], problems


def template_page(pdf, number, model):
    page = page_ink.page_of(pdf, number)
    problems = sheet_audit.touching(page) + sheet_audit.over_lines(page) + sheet_audit.small(page)
    problems += outside(page) + proof_bars(page)
    found, more = templates_of(page, model)
    problems += more
    seen = []
    for tag, turned, places, heights in found:
        boxes, more = place_problems(tag, turned, places, heights, model[tag])
        problems += more
        seen += [(tag, box) for box in boxes]
    return seen, problems


def squares_beside(page, y):
    count = 0
    for path in page.paths:
        box = path.box
        if path.stroked and not path.filled and abs(box.right - box.left - TICK_SQUARE) < 0.05 and \
                abs(box.top - box.bottom - TICK_SQUARE) < 0.05 and box.bottom < y < box.top:
            count += 1
    return count


def check_page(pdf, number, model):
    problems = sheet_audit.audit(pdf, number, {})
    page = page_ink.page_of(pdf, number)
    seen = []
    for tag in [t for t in page.texts if t.words in model]:
        y = tag.box.middle[1]
        numbers = [t for t in page.texts if sheet_audit.NUMBER.match(t.words) and t.box.left > tag.box.right and
                   abs(t.box.middle[1] - y) < IN_ROW]
        numbers.sort(key=lambda t: t.box.left)
        if len(numbers) < 2:
            problems.append(f"{tag.words} has {len(numbers)} numbers")
            continue
        if squares_beside(page, y) != 3:
            problems.append(f"{tag.words} has {squares_beside(page, y)} squares to tick")
        seen.append((tag.words, tuple(float(t.words) for t in numbers[:2])))
    return seen, problems


def looked_at(job):
    kind, pdf, number, model = job
    seen, problems = (template_page if kind == "templates" else check_page)(pdf, number, model)
    return kind, seen, [f"{pdf}, page {number}: {problem}" for problem in problems]


def rounded(value):
    """As it is printed: to half a mm."""
    return round(value * 2) / 2


def model_of(gangway, plan):
    """Box centres by tag, (u, v) on what they sit in."""
    model = json.loads(subprocess.run([gangway, "inspect", plan, "--json"], check=True, capture_output=True).stdout)
    return {plate["tag"]: [(box["setOut"], box["height"]) for box in plate["boxes"]] for plate in model["plates"]}


def jobs_of(gangway, folder, plan, kind, model):
    os.makedirs(folder, exist_ok=True)
    subprocess.run([gangway, "sheets", plan, "-o", folder, "--only", kind], check=True, stdout=subprocess.DEVNULL)
    pdf = next(os.path.join(folder, name) for name in sorted(os.listdir(folder)) if name.endswith(".pdf"))
    info = subprocess.run(["pdfinfo", pdf], check=True, capture_output=True).stdout.decode()
    return [(kind, pdf, number + 1, model) for number in range(int(re.search(r"Pages:\s+(\d+)", info).group(1)))]


def once_each(kind, plan, model, seen):
    wanted = Counter((tag, rounded(u), rounded(v)) for tag, boxes in model.items() for u, v in boxes)
    got = Counter((tag, rounded(u), rounded(v)) for tag, (u, v) in seen)
    return [f"{plan}, {kind}: {tag} at u {u:g}, v {v:g} stands {got[tag, u, v]} times instead of {count}"
            for (tag, u, v), count in wanted.items() if got[tag, u, v] != count]


def main():
    gangway, folder = sys.argv[1], sys.argv[2]
    problems, pages = [], 0
    with multiprocessing.Pool() as pool:
        for number, plan in enumerate(sys.argv[3:]):
            model = model_of(gangway, plan)
            for kind in ("wallcheck", "templates"):
                jobs = jobs_of(gangway, os.path.join(folder, f"{kind}-{number}"), plan, kind, model)
                results = pool.map(looked_at, jobs, 4)
                pages += len(jobs)
                problems += [problem for _, _, found in results for problem in found]
                problems += once_each(kind, plan, model, [one for _, seen, _ in results for one in seen])
    for problem in problems:
        print(problem)
    print(f"{pages} pages, {len(problems)} problems")
    return 1 if problems or not pages else 0


if __name__ == "__main__":
    sys.exit(main())
