"""cover_code.py GANGWAY FOLDER PLAN: issues the plan, draws a set under its cover, and reads the QR code off the page with zbar, at
the page's own size and as a telephone sees an A3 page that was copied onto A4. Exit 1 when it does not say the issue's
letter, date and fingerprint."""
import os
import re
import shutil
import subprocess
import sys

DATE = "2026-05-02"
WIDTH_DOTS = (2480, 1240, 877)  # 150 dots an inch; a coarse picture; the same page on A4 at 75 dots an inch


def output_of(*command):
    return subprocess.run(command, check=True, capture_output=True).stdout.decode()


def main():
    gangway, folder, source = sys.argv[1:]
    shutil.rmtree(folder, ignore_errors=True)
    os.makedirs(folder)
    plan = os.path.join(folder, "house.plan.json")
    shutil.copy(source, plan)
    said = output_of(gangway, "issue", plan, "--date", DATE, "--by", "R. Fern")
    letter = re.search(r"issue (\w+) of", said).group(1)
    print_of_issue = re.search(r"fingerprint (\w+)", said).group(1)
    output_of(gangway, "sheets", plan, "-o", folder, "--only", "cover,elevations", "--room", "kitchen")
    wanted = f"gangway issue {letter} {DATE} {print_of_issue}"
    wrong = 0
    for dots in WIDTH_DOTS:
        picture = os.path.join(folder, f"cover-{dots}")
        output_of("pdftoppm", "-f", "1", "-l", "1", "-singlefile", "-png", "-scale-to-x", str(dots), "-scale-to-y", "-1",
                  os.path.join(folder, "house-set.pdf"), picture)
        read = subprocess.run(["zbarimg", "--raw", "-q", picture + ".png"], capture_output=True).stdout.decode().strip()
        print(f"{dots} dots: {read!r}")
        wrong += read != wanted
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
