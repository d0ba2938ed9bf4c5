"""What is inked on a page of a PDF, in mm from its lower left corner, as poppler sees it: pdftocairo turns the
page into SVG, whose strokes, fills and glyphs are read here. Nothing of Gangway's own code is used."""
import re
import subprocess
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass, field

PT = 25.4 / 72
SVG = "{http://www.w3.org/2000/svg}"
LINK = "{http://www.w3.org/1999/xlink}href"


@dataclass
class Box:
    left: float
    bottom: float
    right: float
    top: float

    def grown(self, by):
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def meets(self, other):
        return (self.left < other.right and other.left < self.right and
                self.bottom < other.top and other.bottom < self.top)

    def holds(self, x, y):
        return self.left <= x <= self.right and self.bottom <= y <= self.top

    def inside(self, other):
        return (self.left >= other.left and self.right <= other.right and
                self.bottom >= other.bottom and self.top <= other.top)

    @property
    def middle(self):
        return (self.left + self.right) / 2, (self.bottom + self.top) / 2


def box_of(points):
    xs = [p[0] for p in points]
    ys = [p[1] for p in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


@dataclass
class Path:
    order: int
    runs: list  # lists of points
    box: Box
    stroked: bool
    width: float
    white: bool  # filled with paper
    filled: bool


@dataclass
class Text:
    order: int
    glyphs: list  # ink boxes
    box: Box
    words: str = ""
    upright: bool = False  # read from the right


@dataclass
class Page:
    width: float
    height: float
    paths: list = field(default_factory=list)
    texts: list = field(default_factory=list)


NUMBER = re.compile(r"[MLCZHV]|-?\d*\.?\d+(?:e-?\d+)?")


def runs_of(data):
    """Polylines of a path's data; curves by eight chords."""
    runs, run, here, start = [], [], (0, 0), (0, 0)
    tokens = NUMBER.findall(data)
    i, command = 0, ""
    while i < len(tokens):
        if tokens[i].isalpha():
            command = tokens[i]
            i += 1
        if command == "M":
            if len(run) > 1:
                runs.append(run)
            here = start = (float(tokens[i]), float(tokens[i + 1]))
            run, command, i = [here], "L", i + 2
        elif command == "L":
            here = (float(tokens[i]), float(tokens[i + 1]))
            run.append(here)
            i += 2
        elif command == "C":
            a, b, c = [(float(tokens[i + k]), float(tokens[i + k + 1])) for k in (0, 2, 4)]
            for step in range(1, 9):
                t = step / 8
                weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3)
                run.append(tuple(sum(w * p[k] for w, p in zip(weights, (here, a, b, c))) for k in (0, 1)))
            here, i = c, i + 6
        elif command == "Z":
            run.append(start)
            here = start
        else:
            raise ValueError("path command " + command)
    if len(run) > 1:
        runs.append(run)
    return runs


def matrix_of(element):
    found = re.match(r"matrix\(([^)]*)\)", element.get("transform", ""))
    return tuple(float(n) for n in found.group(1).split(",")) if found else (1, 0, 0, 1, 0, 0)


def through(matrix, point):
    a, b, c, d, e, f = matrix
    return a * point[0] + c * point[1] + e, b * point[0] + d * point[1] + f


def style_of(element):
    return dict(part.split(":", 1) for part in element.get("style", "").replace(" ", "").split(";") if ":" in part)


def glyphs_of(root):
    """Ink of each glyph around its own origin, as the SVG has it; None for one without ink."""
    glyphs = {}
    for symbol in root.iter(SVG + "symbol"):
        points = [p for path in symbol.iter(SVG + "path") for run in runs_of(path.get("d")) for p in run]
        glyphs["#" + symbol.get("id")] = box_of(points) if points else None
    return glyphs


def page_of(pdf, number):
    svg = subprocess.run(["pdftocairo", "-svg", "-noshrink", "-f", str(number), "-l", str(number), pdf, "-"], check=True,
                         capture_output=True).stdout
    root = ElementTree.fromstring(svg)
    height_pt = float(root.get("viewBox").split()[3])
    page = Page(float(root.get("viewBox").split()[2]) * PT, height_pt * PT)
    glyphs = glyphs_of(root)

    def mm(point):
        return point[0] * PT, (height_pt - point[1]) * PT

    order = 0

    def walk(element):
        nonlocal order
        for child in element:
            if child.tag == SVG + "defs":
                continue
            if child.tag == SVG + "path":
                order += 1
                matrix = matrix_of(child)
                runs = [[mm(through(matrix, p)) for p in run] for run in runs_of(child.get("d"))]
                if not runs:
                    continue
                style = style_of(child)
                fill = style.get("fill", "black")
                page.paths.append(Path(order, runs, box_of([p for run in runs for p in run]),
                                       style.get("stroke", "none") != "none",
                                       float(style.get("stroke-width", 0)) * abs(matrix[0] or matrix[1]) * PT,
                                       fill == "rgb(100%,100%,100%)", fill != "none"))
            elif child.tag == SVG + "g" and len(child) and all(use.tag == SVG + "use" for use in child):
                order += 1
                inks = []
                for use in child.iter(SVG + "use"):
                    ink = glyphs.get(use.get(LINK))
                    if ink is None:
                        continue
                    x, y = float(use.get("x")), float(use.get("y"))
                    corners = [mm((x + px, y + py)) for px, py in
                               ((ink.left, ink.bottom), (ink.right, ink.top))]
                    inks.append(box_of(corners))
                if inks:
                    box = box_of([(b.left, b.bottom) for b in inks] + [(b.right, b.top) for b in inks])
                    page.texts.append(Text(order, inks, box))
            else:
                walk(child)

    walk(root)
    name_words(page, pdf, number)
    return page


def name_words(page, pdf, number):
    """Gives each text its words, by poppler's own reading of the page."""
    html = subprocess.run(["pdftotext", "-bbox", "-f", str(number), "-l", str(number), pdf, "-"], check=True,
                          capture_output=True).stdout.decode()
    words = []
    for found in re.finditer(r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>',
                             html):
        left, top, right, bottom = (float(n) * PT for n in found.groups()[:4])
        text = found.group(5)
        for entity, letter in (("&lt;", "<"), ("&gt;", ">"), ("&quot;", '"'), ("&apos;", "'"), ("&amp;", "&")):
            text = text.replace(entity, letter)
        words.append((Box(left, page.height - bottom, right, page.height - top), text))
    for text in page.texts:
        mine = []
        for box, word in words:
            x, y = box.middle
            if text.box.grown(0.6).holds(x, y) and text.box.grown(1.5).meets(box):
                mine.append((box, word))
        text.upright = text.box.top - text.box.bottom > text.box.right - text.box.left and \
            sum(len(word) for _, word in mine) > 1
        mine.sort(key=lambda one: one[0].bottom if text.upright else one[0].left)
        text.words = " ".join(word for _, word in mine)
