#!/usr/bin/env python3
"""Prints reports on A4 and letter with Chromium and checks the sheets: how many there are, that no step is parted, that no
sheet is left half empty, that no words lie over others, that the PDF is tagged and has bookmarks. printed.py FOLDER MOST REPORT..."""

import os
import re
import subprocess
import sys
from pathlib import Path

# Darker than this is print; the lines for notes are lighter (tokens: --line is #B9BCB5 on paper).
INK = 130
RULE = range(INK, 225)
SIZES = {"A4": (210, 297), "letter": (216, 279)}


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def printed(report, size, folder):
    """The report as a PDF on this paper."""
    page = folder / f"{report.stem}-{size}.html"
    text = report.read_text()
    end = text.index("</style>")
    page.write_text(f"{text[:end]}@page{{size:{size}}}{text[end:]}")
    pdf = page.with_suffix(".pdf")
    run("chromium", "--headless", "--no-sandbox", "--no-pdf-header-footer", "--generate-pdf-document-outline",
        f"--print-to-pdf={pdf}", str(page))
    return pdf


def grey(pdf, page, dots=72):
    """A sheet as rows of grey bytes."""
    raw = subprocess.run(["pdftoppm", "-r", str(dots), "-gray", "-f", str(page), "-l", str(page), str(pdf)],
                         check=True, capture_output=True).stdout
    head = re.match(rb"P5\s+(\d+)\s+(\d+)\s+(\d+)\s", raw)
    width, height = int(head[1]), int(head[2])
    rows = raw[head.end():]
    return [rows[at * width:(at + 1) * width] for at in range(height)]


def filled(rows):
    """Down to which share of a sheet something is printed, and down to which it is ruled for notes; without the foot."""
    body = rows[: int(len(rows) * 0.935)]
    inked = [at for at, row in enumerate(body) if min(row) < INK]
    ruled = [at for at, row in enumerate(body) if sum(grey in RULE for grey in row) > len(row) * 0.7]
    last = lambda found: found[-1] / len(body) if found else 0.0
    return last(inked), last(ruled)


def overprinted(pdf):
    """Words that lie over others, with their sheet."""
    found = []
    text = run("pdftotext", "-bbox", str(pdf), "-")
    for sheet, page in enumerate(text.split("<page ")[1:], 1):
        words = [(*map(float, sides), word) for *sides, word in re.findall(
            r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>', page)]
        words.sort(key=lambda word: word[1])
        for at, (left, top, right, bottom, word) in enumerate(words):
            for left_2, top_2, right_2, bottom_2, other in words[at + 1:]:
                if top_2 > bottom:
                    break
                wide, high = min(right, right_2) - max(left, left_2), min(bottom, bottom_2) - top_2
                # Lines of one text may touch; letters that lie over letters overlap by half their height.
                if wide > 1 and high > 0.5 * min(bottom - top, bottom_2 - top_2):
                    found.append(f"sheet {sheet}: '{word}' and '{other}' lie over each other")
    return found


def check(report, size, folder, most):
    pdf = printed(report, size, folder)
    faults = []
    info = run("pdfinfo", str(pdf))
    pages = int(re.search(r"Pages:\s+(\d+)", info)[1])
    if pages > most:
        faults.append(f"{pages} sheets, more than {most}")
    if not re.search(r"Tagged:\s+yes", info):
        faults.append("not tagged")
    points = re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", info)
    wanted = [side * 72 / 25.4 for side in SIZES[size]]
    if any(abs(float(found) - side) > 2 for found, side in zip(points.groups(), wanted)):
        faults.append(f"printed on {points[0]}")
    outline = run("pdftohtml", "-i", "-xml", "-stdout", str(pdf))
    bookmarks = re.findall(r"<item page=\"(\d+)\">", outline)
    headings = re.findall(r"<h2 id=", report.read_text())
    if len(bookmarks) < len(headings):
        faults.append(f"{len(bookmarks)} bookmarks for {len(headings)} headings")
    faults += overprinted(pdf)[:5]
    fills, steps = [], 0
    for page in range(1, pages + 1):
        text = run("pdftotext", "-f", str(page), "-l", str(page), str(pdf), "-")
        # How long a step takes stands above its words, what to tick below them; on sheet 1 steps stand in short.
        begun, ended = len(re.findall(r"About (?:one minute|[\d,]+ minutes)\.", text)) if page > 1 else 0, text.count("photo before")
        if begun != ended:
            faults.append(f"sheet {page}: {begun} steps begin, {ended} end")
        steps += begun
        if f"of {pages}" not in text:
            faults.append(f"sheet {page} does not say which it is")
        ink, ruled = filled(grey(pdf, page))
        fills.append(ink)
        if ink < 0.5 and ruled < 0.9:
            faults.append(f"sheet {page} is printed to {ink:.0%}, ruled to {ruled:.0%}")
    wanted = len(re.findall(r'<div class="step">', report.read_text()))
    if steps != wanted:
        faults.append(f"{steps} of {wanted} steps are printed")
    told = ", ".join(f"{fill:.0%}" for fill in fills)
    print(f"{report.stem} on {size}: {pages} sheets, printed down to {told}")
    return [f"{report.stem} on {size}: {fault}" for fault in faults]


def main():
    folder, most = Path(sys.argv[1]), int(sys.argv[2])
    here = Path(__file__).parent
    os.environ["FONTCONFIG_FILE"] = str(here / "fonts.conf")
    faults = [fault for report in sys.argv[3:] for size in SIZES for fault in check(Path(report), size, folder, most)]
    for fault in faults:
        print(fault, file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
