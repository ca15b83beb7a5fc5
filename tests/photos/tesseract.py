"""tesseract.py FOLDER OUT [PLACE COUNT]: the same photos through the `tesseract` command, written as our reader writes its own.

It is given what it asks for: a photo brought to letters of some 30 pixels, one block of text. What it saw counts as seen by both looks.
"""
import csv
import io
import json
import pathlib
import subprocess
import sys

import cv2

# Its makers advise letters of 20 to 40 pixels; the photos' are of 6 to 40, most of 24.
LARGER = 2.0


def rows(photo):
    """Lines of text, each letter with its word's certainty."""
    picture = cv2.imread(str(photo))
    picture = cv2.resize(picture, None, fx=LARGER, fy=LARGER, interpolation=cv2.INTER_CUBIC)
    _, png = cv2.imencode(".png", picture)
    told = subprocess.run(["tesseract", "-", "-", "-l", "eng", "--psm", "6", "tsv"], input=png.tobytes(), capture_output=True, check=True)
    lines = {}
    for word in csv.DictReader(io.StringIO(told.stdout.decode()), delimiter="\t", quoting=csv.QUOTE_NONE):
        if word["level"] == "5" and word["text"].strip():
            lines.setdefault((word["block_num"], word["par_num"], word["line_num"]), []).append(word)
    for words in lines.values():
        letters = []
        for word in words:
            letters += [[" ", 1.0]] if letters else []
            letters += [[sign, float(word["conf"]) / 100] for sign in word["text"]]
        look = {"letters": letters, "is_cut": [False, False]}
        yield [look, look]


def main():
    photos = sorted(pathlib.Path(sys.argv[1]).glob("*.jpg"))
    place, count = map(int, sys.argv[3:5]) if len(sys.argv) > 3 else (0, 1)
    with open(sys.argv[2], "w") as out:
        for photo in photos[place::count]:
            out.write(json.dumps({"file": photo.name, "rows": list(rows(photo))}) + "\n")


if __name__ == "__main__":
    main()
