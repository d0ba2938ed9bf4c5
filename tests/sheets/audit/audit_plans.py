"""audit_plans.py GANGWAY FOLDER WALLS PLAN...: draws the elevations, rooms, storey plans and lighting set-out of
plans, and the elevations of so many generated walls, and audits every page of them (sheet_audit.py). Exit 1 when
anything is found."""
import json
import multiprocessing
import os
import re
import subprocess
import sys

import sheet_audit
import walls


def pages_of(gangway, folder, plan, options):
    os.makedirs(folder, exist_ok=True)
    subprocess.run([gangway, "sheets", plan, "-o", folder] + options, check=True, stdout=subprocess.DEVNULL)
    model = subprocess.run([gangway, "inspect", plan, "--json"], check=True, capture_output=True).stdout
    # Set-outs of the model are of finished faces and floors.
    boxes = sheet_audit.boxes_of(json.loads(model)) if not options else {}
    pdf = next(os.path.join(folder, name) for name in sorted(os.listdir(folder)) if name.endswith(".pdf"))
    info = subprocess.run(["pdfinfo", pdf], check=True, capture_output=True).stdout.decode()
    return [(pdf, number + 1, boxes) for number in range(int(re.search(r"Pages:\s+(\d+)", info).group(1)))]


def plan_pages_of(gangway, folder, plan):
    """Pages of the kinds that show rooms from above. Light estimates (LX) are left out: their curves run under
    the plan's letters."""
    os.makedirs(folder, exist_ok=True)
    subprocess.run([gangway, "sheets", plan, "-o", folder, "--only", "rooms,plan,lighting"], check=True,
                   stdout=subprocess.DEVNULL)
    pages = []
    for name in sorted(os.listdir(folder)):
        pdf = os.path.join(folder, name)
        words = subprocess.run(["pdftotext", "-raw", pdf, "-"], check=True, capture_output=True).stdout.decode()
        pages += [(pdf, number + 1, {}) for number, page in enumerate(words.split("\f")[:-1]) if "LX-" not in page]
    return pages


def looked_at(page):
    pdf, number, boxes = page
    return [f"{pdf}, page {number}: {problem}" for problem in sheet_audit.audit(pdf, number, boxes)]


def main():
    gangway, folder, count = sys.argv[1], sys.argv[2], int(sys.argv[3])
    os.makedirs(folder, exist_ok=True)
    hard = os.path.join(folder, "hard-walls.plan.json")
    walls.write(hard, count)
    pages = []
    for number, plan in enumerate(sys.argv[4:] + [hard]):
        pages += pages_of(gangway, os.path.join(folder, f"plan-{number}"), plan, [])
    for number, plan in enumerate(sys.argv[4:]):
        pages += plan_pages_of(gangway, os.path.join(folder, f"rooms-{number}"), plan)
    pages += pages_of(gangway, os.path.join(folder, "bare"), sys.argv[4], ["--face", "structural", "--datum", "sfl"])
    with multiprocessing.Pool() as pool:
        problems = [problem for found in pool.imap(looked_at, pages, 4) for problem in found]
    for problem in problems:
        print(problem)
    print(f"{len(pages)} pages, {len(problems)} problems")
    return 1 if problems or not pages else 0


if __name__ == "__main__":
    sys.exit(main())
