"""Reads what `gangway schedule` writes with openpyxl, which did not write it, and holds it against the JSON;
counts what is to be ordered anew from the plates' CSV and the plan file alone."""
import collections
import csv
import json
import pathlib
import re
import subprocess
import sys
import zipfile

import openpyxl

problems = []


def expect(good, words):
    if not good:
        problems.append(words)


def rows_of(file):
    with open(file, encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines, strict=True))


def number(text):
    return float(text) if text else None


def check_workbook(file, tables):
    book = openpyxl.load_workbook(file)
    expect(book.sheetnames == [table["title"] for table in tables], f"worksheets {book.sheetnames}")
    numbers = 0
    for table, sheet in zip(tables, book.worksheets):
        name = f"{file.name}, {table['title']}"
        columns = table["columns"]
        last = openpyxl.utils.get_column_letter(len(columns))
        expect(sheet.freeze_panes == "A2", f"{name}: frozen at {sheet.freeze_panes}")
        expect(sheet.print_title_rows == "$1:$1", f"{name}: repeats {sheet.print_title_rows}")
        # Some versions of openpyxl give the area as text, others as a list of areas.
        printed = sheet.print_area or ""
        printed = printed if isinstance(printed, str) else ",".join(printed)
        area = re.search(r"\$A\$1:\$(\w+)\$(\d+)$", printed)
        expect(area and area[1] == last and int(area[2]) >= 1 + len(table["rows"]),
               f"{name}: prints {printed}")
        expect(sheet.page_setup.orientation == "landscape" and sheet.page_setup.paperSize in (9, "9"),
               f"{name}: page {sheet.page_setup.orientation} {sheet.page_setup.paperSize}")
        expect(sheet.sheet_properties.pageSetUpPr.fitToPage and sheet.page_setup.fitToWidth in (1, None)
               and sheet.page_setup.fitToHeight == 0, f"{name}: not one page wide")
        expect("not an electrical design" in (sheet.oddFooter.left.text or ""), f"{name}: no caution")
        for i, column in enumerate(columns):
            head = column["title"] + (f", {column['unit']}" if column["unit"] else "")
            expect(sheet.cell(1, i + 1).value == head, f"{name}: head {sheet.cell(1, i + 1).value}")
            for j, row in enumerate(table["rows"]):
                cell = sheet.cell(j + 2, i + 1)
                want = row[column["key"]]
                where = f"{name} {cell.coordinate}"
                expect((cell.value or None) == (want or None), f"{where}: {cell.value!r}, not {want!r}")
                expect(cell.data_type != "f", f"{where}: a formula")
                if want is not None and column["kind"] == "number":
                    numbers += 1
                    expect(cell.data_type == "n" and isinstance(cell.value, (int, float)), f"{where}: no number")
                    expect(cell.number_format.startswith("0"), f"{where}: format {cell.number_format}")
                    # No column shows more than two decimals.
                    expect(float(round(want, 2)).is_integer() or "." in cell.number_format.replace("_.", ""),
                           f"{where}: {want} shown as {cell.number_format}")
                elif want:
                    expect(cell.data_type == "s", f"{where}: no text")
            if column["key"] in table["totals"]:
                cell = sheet.cell(len(table["rows"]) + 2, i + 1)
                want = sum(row[column["key"]] or 0 for row in table["rows"])
                expect(table["rows"] and abs(want - table["totals"][column["key"]]) < 1e-6
                       and abs((cell.value or 0) - want) < 1e-6, f"{name}: sum {cell.value}, not {want}")
    return numbers


def check_csv(file, table):
    rows = rows_of(file)
    expect(len(rows) == len(table["rows"]), f"{file.name}: {len(rows)} rows")
    for got, want in zip(rows, table["rows"]):
        for (head, text), column in zip(got.items(), table["columns"]):
            value = want[column["key"]]
            same = number(text) == value if column["kind"] == "number" else text == (value or "")
            expect(same, f"{file.name} {head}: {text!r}, not {value!r}")


def modules_of(cell):
    """The modules of a row: 'SO-F + SW1 'hob' + blank' without their labels, with a finish of their own."""
    for one in re.split(r" \+ (?=(?:[^']*'[^']*')*[^']*$)", cell):
        parts = re.fullmatch(r"(\S+)(?: '[^']*')?(?: \(([^)]*)\))?", one)
        yield parts[1], parts[2]


def check_orders(folder, plan):
    """Orders from the plates and the plan file alone."""
    plates = rows_of(folder / "s.csv")
    modules, frames, boxes = collections.Counter(), collections.Counter(), collections.Counter()
    for plate in plates:
        for code, finish in modules_of(plate["modules in order"]):
            modules["" if code == "blank" else code, finish or plate["finish"]] += 1
        frames[plate["format"], float(plate["gangs"]), plate["finish"]] += 1
        if plate["box, mm"] != "no box":
            boxes[plate["box, mm"], number(plate["depth, mm"])] += int(plate["boxes"])
    lamps = collections.Counter(
        (lamp.get("name", ""), lamp["kind"], float(lamp.get("watts", 0)), float(lamp.get("lumens", 0)),
         float(lamp.get("kelvin", 2700)), float(lamp.get("beam", 0)),
         "yes" if lamp.get("dimmable") else "no", lamp.get("ies", "")) for lamp in plan["luminaires"])
    expect(len(plates) == len(plan["plates"]), f"{len(plates)} plates of {len(plan['plates'])}")
    expect(sorted(p["tag"] for p in plates) == sorted(p.get("tag") or p["id"] for p in plan["plates"]), "tags")

    def listed(key, key_of):
        counts = collections.Counter()
        for row in rows_of(folder / f"s-{key}.csv"):
            counts[key_of(row)] += int(row["count"])
        return counts

    for key, counted, given in (
            ("modules", modules, listed("modules", lambda row: (row["code"], row["finish"]))),
            ("frames", frames, listed("frames", lambda row: (row["format"], float(row["gangs"]), row["finish"]))),
            ("boxes", boxes, listed("boxes", lambda row: (row["box, mm"], number(row["depth, mm"])))),
            ("lamps", lamps, listed("lamps", lambda row: (
                row["name"], row["kind"], *(number(row[head]) or 0.0 for head in
                                            ("power, W", "flux, lm", "colour, K", "beam, deg")),
                row["dimmable"], row["IES file"])))):
        expect(counted and counted == given, f"{key}: {counted - given} more and {given - counted} less than listed")
    return sum(modules.values()), sum(frames.values()), sum(boxes.values()), sum(lamps.values())


def check(program, plan_file, folder):
    folder.mkdir(parents=True, exist_ok=True)
    plan = json.loads(pathlib.Path(plan_file).read_text(encoding="utf-8"))
    for ending in ("csv", "xlsx", "json"):
        for name in ("s", "again"):
            subprocess.run([program, "schedule", plan_file, "-o", folder / f"{name}.{ending}"], check=True,
                           stdout=subprocess.DEVNULL)
        expect((folder / f"s.{ending}").read_bytes() == (folder / f"again.{ending}").read_bytes(),
               f"{ending}: other bytes the second time")
    tables = json.loads((folder / "s.json").read_text(encoding="utf-8"))["tables"]
    numbers = check_workbook(folder / "s.xlsx", tables)
    expect(numbers > 100, f"only {numbers} numbers")
    for table in tables:
        check_csv(folder / ("s.csv" if table["key"] == "plates" else f"s-{table['key']}.csv"), table)
    date = plan["project"].get("date")
    core = zipfile.ZipFile(folder / "s.xlsx").read("docProps/core.xml").decode()
    expect((date or "1980-01-01") in core, f"the workbook is not of {date}")
    ordered = check_orders(folder, plan)
    print(f"{pathlib.Path(plan_file).name}: {numbers} numbers in {len(tables)} tables; modules, frames, boxes, "
          f"lamps ordered: {ordered}")


for given in sys.argv[3:]:
    check(sys.argv[1], given, pathlib.Path(sys.argv[2], pathlib.Path(given).stem))
print("\n".join(problems[:40]))
sys.exit(1 if problems or len(sys.argv) < 4 else 0)
