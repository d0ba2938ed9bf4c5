"""Reads the DXF sheets of a plan with two readers that did not write them, ezdxf and GDAL, and holds them against
`gangway inspect --json`, against the SVG of the same sheets, and against the tables of the standards."""
import collections
import json
import pathlib
import re
import subprocess
import sys

import ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode
from osgeo import gdal, ogr

KINDS = "elevations,switching,lighting,schedule,findings"
# ISO 128-2 widths (drawing-standards 1.1, R1) in the hundredths of a mm of group 370.
WIDTHS = {13, 18, 25, 35, 50, 70, 100}
# ISO 128-2 line types as multiples of the line's width (drawing-standards 1.1, R2); a dot is at most half a width.
DOT = None
PATTERNS = {2: [12, 3], 3: [12, 18], 4: [24, 3, DOT, 3], 5: [24, 3, DOT, 3, DOT, 3], 7: [DOT, 3], 10: [12, 3, DOT, 3],
            12: [12, 3, DOT, 3, DOT, 3]}
# ISO 5455, and 1:25 and 1:48, which are common in building work (drawing-standards 1.4).
SCALES = {1, 2, 5, 10, 20, 25, 48, 50, 100, 200}
A3 = (420, 297)  # ISO 216
NEAR = 0.5  # mm: the demand of the project on every length
LEAST_TEXT = 1.8  # ISO 3098-1's smallest height
problems = []


def expect(good, words):
    if not good:
        problems.append(words)


def close(a, b, by=NEAR):
    return abs(a - b) <= by


def pairs_of(file):
    lines = file.read_bytes().decode("cp1252").split("\n")
    expect(lines[-1] == "" and len(lines) % 2 == 1, f"{file.name}: not whole pairs")
    return [(int(code), value) for code, value in zip(lines[0:-1:2], lines[1::2])]


def check_handles(file):
    """Handles are unique and under the seed, and what is pointed at is there; there is no date."""
    pairs = pairs_of(file)
    handles, owners, header, name, kind = [], set(), {}, None, None
    for code, value in pairs:
        if code == 9:
            name = value
        elif name and code in (1, 5, 70, 290):
            header.setdefault(name, value)
            name = None
            continue
        if code == 0:
            kind, name = value, None
        if (code == 5 and name is None) or (code == 105 and kind == "DIMSTYLE"):
            handles.append(int(value, 16))
        if code in (330, 340, 350, 360, 390, 331) and int(value, 16) != 0:
            owners.add(int(value, 16))
    where = file.name
    expect(len(set(handles)) == len(handles), f"{where}: a handle twice")
    expect(owners <= set(handles), f"{where}: points at {sorted(owners - set(handles))[:5]}")
    expect(int(header["$HANDSEED"], 16) > max(handles), f"{where}: seed {header['$HANDSEED']}")
    # DXF reference: AC1015 is release 2000, $INSUNITS 4 mm, $MEASUREMENT 1 metric.
    expect(header["$ACADVER"] == "AC1015" and header["$INSUNITS"].strip() == "4"
           and header["$MEASUREMENT"].strip() == "1", f"{where}: header {header}")
    expect(not any(code == 9 and value.startswith("$TD") for code, value in pairs), f"{where}: a date")


def value_of(text):
    """A printed length: 1073, +2400, -12.5, (900), (3 × 300 = 900)."""
    return float(text.split("=")[-1].strip("()+ "))


def entities(doc):
    """Everything that shows: model, paper, and what blocks hold."""
    for layout in doc.layouts:
        yield from ((layout.name, entity) for entity in layout)
    for block in doc.blocks:
        if not block.is_any_layout:
            yield from ((block.name, entity) for entity in block)


def scale_of(doc, where):
    """The scale of the sheet's view by its window, or None."""
    paper = doc.layout(doc.layout_names_in_taborder()[1])
    windows = [v for v in paper.query("VIEWPORT") if v.dxf.id > 1]
    if not windows:
        expect(len(doc.modelspace()) == 0, f"{where}: a model without a view")
        return None
    scale = windows[0].dxf.view_height / windows[0].dxf.height
    expect(all(close(w.dxf.view_height / w.dxf.height, scale, 1e-6) for w in windows), f"{where}: several scales")
    expect(any(close(scale, s, 1e-4) for s in SCALES), f"{where}: 1:{scale}")
    return round(scale)


def check_window(doc, scale, where):
    """All of the model lies in a window, and the windows lie on the paper."""
    paper = doc.layout(doc.layout_names_in_taborder()[1])
    windows = [v for v in paper.query("VIEWPORT") if v.dxf.id > 1]
    for window in windows:
        middle = window.dxf.center
        expect(close(middle.x, A3[0] / 2, A3[0] / 2 - window.dxf.width / 2 + 1e-6)
               and close(middle.y, A3[1] / 2, A3[1] / 2 - window.dxf.height / 2 + 1e-6),
               f"{where}: window off the paper")
    for entity in doc.modelspace().query("LINE"):
        for p in (entity.dxf.start, entity.dxf.end):
            expect(any(close(p.x, w.dxf.view_center_point.x, w.dxf.width * scale / 2)
                       and close(p.y, w.dxf.view_center_point.y, w.dxf.height * scale / 2) for w in windows),
                   f"{where}: {p} outside its window")


def check_looks(doc, scale, where):
    """Layers, line types, weights, text heights."""
    weights = set()
    heights = collections.Counter()
    for home, entity in entities(doc):
        model = home == "Model" or not home.startswith(tuple(doc.layout_names()))
        dxf = entity.dxf
        expect(dxf.layer in doc.layers, f"{where}: layer {dxf.layer} of {entity}")
        if dxf.hasattr("lineweight"):
            weights.add(dxf.lineweight)
        linetype = dxf.get("linetype", "BYLAYER")
        if linetype.upper() not in ("BYLAYER", "CONTINUOUS"):
            expect(linetype in doc.linetypes, f"{where}: line type {linetype}")
            # Patterns are mm on paper; in the model they must grow with the scale.
            expect(close(dxf.get("ltscale", 1), scale if model and scale else 1, 1e-6),
                   f"{where}: ltscale {dxf.get('ltscale', 1)} of {entity} in {home}")
            expect(f"{dxf.lineweight:03}" == linetype[-3:], f"{where}: {linetype} at {dxf.lineweight}")
        if entity.dxftype() == "TEXT":
            expect(dxf.style == "GANGWAY", f"{where}: style {dxf.style}")
            heights[round(dxf.height / (scale if model and scale else 1), 3)] += 1
    expect(weights <= WIDTHS, f"{where}: weights {weights}")
    expect(max(weights) >= 2 * min(weights), f"{where}: weights {weights}")
    expect(min(heights) >= LEAST_TEXT, f"{where}: text heights {heights}")
    expect(doc.styles.get("GANGWAY").dxf.font == "osifont.ttf", f"{where}: font")
    for row in doc.linetypes:
        found = re.fullmatch(r"ISO(\d\d)-(\d\d\d)", row.dxf.name)
        if not found:
            continue
        width = int(found[2]) / 100
        dashes = [tag.value for tag in row.pattern_tags.tags if tag.code == 49]
        wanted = PATTERNS[int(found[1])]
        expect(len(dashes) == len(wanted), f"{where}: {row.dxf.name} {dashes}")
        for i, (got, times) in enumerate(zip(dashes, wanted)):
            good = 0 <= got <= width / 2 + 1e-6 if times is DOT else close(abs(got), times * width, 1e-6)
            expect(good and (got >= 0) == (i % 2 == 0), f"{where}: {row.dxf.name} {dashes}")
    return heights


def plain(words):
    """As it is read: what the file's code page lacks is written as \\U+XXXX (DXF reference)."""
    return decode_dxf_unicode(words)


def texts_of(doc):
    """Words as they show: in the spaces, and in the blocks that are put there."""
    words = collections.Counter()

    def add(layout):
        for entity in layout:
            if entity.dxftype() == "TEXT":
                words[plain(entity.plain_text())] += 1
            elif entity.dxftype() in ("INSERT", "DIMENSION"):
                add(doc.blocks.get(entity.dxf.name if entity.dxftype() == "INSERT" else entity.dxf.geometry))
    for layout in doc.layouts:
        add(layout)
    return words


def check_dimensions(doc, scale, where):
    """Each measures what it prints, in a block of its own that shows it; elevations count from corner and floor."""
    across, up = set(), set()
    blocks = set()
    for dimension in doc.modelspace().query("DIMENSION"):
        picture = dimension.get_geometry_block()
        expect(picture is not None and dimension.dxf.geometry not in blocks, f"{where}: {dimension.dxf.geometry}")
        blocks.add(dimension.dxf.geometry)
        expect(dimension.dxf.text in [text.plain_text() for text in picture.query("TEXT")],
               f"{where}: {dimension.dxf.text} is not in its block")
        style = doc.dimstyles.get(dimension.dxf.dimstyle)
        expect(style.dxf.dimscale == scale, f"{where}: DIMSCALE {style.dxf.dimscale} at 1:{scale}")
        printed = value_of(dimension.dxf.text)
        measured = dimension.get_measurement()
        if dimension.dimtype == 6:
            along_x = bool(dimension.dxf.dimtype & 64)
            datum = dimension.dxf.defpoint
            expect(close(datum.x if along_x else datum.y, 0), f"{where}: {printed} counts from {datum}")
            measured = measured.x if along_x else measured.y
            (across if along_x else up).add(printed)
        expect(close(measured, printed) and close(dimension.dxf.actual_measurement, printed),
               f"{where}: {measured} printed as {printed}")
    return across, up


def attributes(insert):
    return {a.dxf.tag: a.dxf.text for a in insert.attribs}


def slug(name):
    return re.sub(r"[^A-Za-z0-9]+", "-", name).strip("-").lower()


def check_elevations(docs, model, folder):
    """Every box centre and plate of every wall, at its place in the wall's own mm."""
    found = 0
    rooms = {room["id"]: room for room in model["rooms"]}
    by_wall = collections.defaultdict(list)
    for plate in model["plates"]:
        if plate["on"].startswith("wall "):
            by_wall[plate["room"], plate["wall"]].append(plate)
    for (room, wall), plates in by_wall.items():
        files = [f for f in folder.glob(f"E-*-{slug(rooms[room]['name'])}-{wall}.dxf") if docs[f].modelspace()]
        expect(len(files) == 1, f"{room}/{wall}: sheets {files}")
        doc = docs[files[0]]
        where = files[0].name
        length = next(w["length"] for w in rooms[room]["walls"] if w["id"] == wall)
        outlines = [[p[:2] for p in line.get_points("xy")] for line in doc.modelspace().query("LWPOLYLINE")
                    if line.dxf.layer == "building"]
        expect(any(close(min(x for x, _ in o), 0, 0.01) and close(max(x for x, _ in o), length, 0.01)
                   and close(min(y for _, y in o), 0, 0.01) for o in outlines), f"{where}: no outline {length} long")
        inserts = collections.defaultdict(list)
        for insert in doc.modelspace().query("INSERT"):
            inserts[attributes(insert)["TAG"]].append(insert)
        across, up = check_dimensions(doc, scale_of(doc, where), where)
        for plate in plates:
            tag = plate["tag"] or plate["id"]
            spots = [("plates", plate["setOut"], plate["height"])]
            spots += [("box-centres", box["setOut"], box["height"]) for box in plate["boxes"]]
            for layer, set_out, height in spots:
                here = [i for i in inserts[tag] if i.dxf.layer == layer and close(i.dxf.insert.x, set_out)
                        and close(i.dxf.insert.y, height)]
                expect(len(here) == 1, f"{where}: {tag} {layer} at {set_out}, {height}: {here}")
                for insert in here:
                    words = attributes(insert)
                    expect(close(float(words["HEIGHT"]), height) and close(float(words["SETOUT"]), set_out),
                           f"{where}: {tag} says {words}")
                    found += layer == "box-centres"
            for box in plate["boxes"]:
                expect(any(close(box["setOut"], u) for u in across) and any(close(box["height"], v) for v in up),
                       f"{where}: box of {tag} is not dimensioned")
        expect(not doc.layers.get("box-centres").dxf.plot, f"{where}: box marks are plotted")
    return found


def check_plans(docs, model):
    """Plates on plans, in the house's mm, wherever their symbols were moved to."""
    plates = {plate["tag"] or plate["id"]: plate for plate in model["plates"]}
    found = 0
    for file, doc in docs.items():
        if not file.name.startswith("S-"):
            continue
        for insert in doc.modelspace().query("INSERT"):
            if insert.dxf.layer != "plates":
                continue
            words = attributes(insert)
            at = plates[words["TAG"]]["at"]
            expect(close(insert.dxf.insert.x, at[0]) and close(insert.dxf.insert.y, at[1]),
                   f"{file.name}: {words['TAG']} at {insert.dxf.insert}, not {at}")
            found += 1
    return found


def check_gdal(file, doc, words):
    """GDAL reads the same file without a complaint, finds every text, and the model where ezdxf has it."""
    complaints = []
    gdal.PushErrorHandler(lambda level, number, message: complaints.append(message))
    gdal.SetConfigOption("DXF_INLINE_BLOCKS", "TRUE")
    source = ogr.Open(str(file))
    read = collections.Counter()
    right = None
    for feature in source.GetLayerByName("entities"):
        # Attributes and hatches have a text of their own, which does not show.
        if feature.GetField("Text") and (feature.GetField("SubClasses") or "").endswith("AcDbText"):
            read[plain(feature.GetField("Text"))] += 1
        if feature.GetField("Layer") == "building" and not feature.GetField("PaperSpace"):
            edge = feature.GetGeometryRef().GetEnvelope()[1]
            right = edge if right is None else max(right, edge)
    gdal.PopErrorHandler()
    expect(not complaints, f"{file.name}: GDAL says {complaints[:3]}")
    return read, right


def check(program, plan, folder):
    folder.mkdir(parents=True, exist_ok=True)
    again = folder / "again"
    for old in (*folder.glob("*.*"), *again.glob("*.*")):
        old.unlink()
    for place, formats in ((folder, "dxf,svg"), (again, "dxf")):
        subprocess.run([program, "sheets", plan, "-o", place, "--formats", formats, "--only", KINDS], check=True,
                       stdout=subprocess.DEVNULL)
    model = json.loads(subprocess.run([program, "inspect", plan, "--json"], check=True, capture_output=True).stdout)
    docs = {}
    for file in sorted(folder.glob("*.dxf")):
        where = file.name
        expect(file.read_bytes() == (again / where).read_bytes(), f"{where}: other bytes the second time")
        check_handles(file)
        doc = docs[file] = ezdxf.readfile(file)
        auditor = doc.audit()
        expect(not auditor.errors and not auditor.fixes,
               f"{where}: {[e.message for e in (*auditor.errors, *auditor.fixes)][:3]}")
        number = re.match(r"[A-Z]+-\d+(-\d+(?=-))?", where)[0]
        expect(doc.layout_names_in_taborder() == ["Model", number], f"{where}: layouts {doc.layout_names()}")
        paper = doc.layout(number)
        expect((paper.dxf.paper_width, paper.dxf.paper_height) == A3, f"{where}: paper {paper.dxf.paper_width}")
        scale = scale_of(doc, where)
        if scale:
            check_window(doc, scale, where)
        check_looks(doc, scale, where)
        words = texts_of(doc)
        drawn = collections.Counter(re.findall(r'data-text="([^"]*)"', file.with_suffix(".svg").read_text("utf-8")))
        drawn = collections.Counter({w.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", '"')
                                     .replace("&amp;", "&"): n for w, n in drawn.items()})
        expect(words == drawn, f"{where}: texts {list((words - drawn) + (drawn - words))[:5]}")
        read, _ = check_gdal(file, doc, words)
        expect(read == drawn, f"{where}: GDAL's texts {list((read - drawn) + (drawn - read))[:5]}")
    boxes = check_elevations(docs, model, folder)
    plates = check_plans(docs, model)
    expect(len(docs) > 5 and boxes > 5 and plates > 5, f"{plan}: only {len(docs)} sheets, {boxes} boxes, {plates} plates")
    print(f"{pathlib.Path(plan).name}: {len(docs)} sheets, {boxes} box centres, {plates} plates on plans")


def main():
    program, folder, *plans = sys.argv[1:]
    for plan in plans:
        check(program, plan, pathlib.Path(folder) / pathlib.Path(plan).name.split(".")[0])
    for problem in problems[:40]:
        print("WRONG", problem)
    sys.exit(1 if problems else 0)


main()
