#!/usr/bin/env python3
"""docs/android/screens.png, every screen by day on one sheet, and docs/android/app.png, three of them for the README: from the
pictures of the last `tests/run android`.

    android/tools/screens.py      needs Pillow (on Debian: the package `python3-pil`)
"""
import os

from PIL import Image

ANDROID = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
PICTURES = os.path.join(ANDROID, "target/pictures")
DOCS = os.path.join(ANDROID, "../docs/android")
# A question, what to do about what was found, and the map.
FEW = ["journey/question", "journey/step", "device/map"]
WIDE = 320
GAP = 16


def save(picture, name):
    picture.save(os.path.join(DOCS, name), optimize=True)


def beside(names):
    """Windows side by side, each in a thin frame."""
    windows = []
    for name in names:
        with Image.open(os.path.join(PICTURES, name + ".png")) as window:
            windows.append(window.convert("RGB").resize((WIDE, window.height * WIDE // window.width), Image.Resampling.LANCZOS))
    row = Image.new("RGB", ((WIDE + GAP) * len(windows) - GAP, max(window.height for window in windows) + 2), "white")
    for place, window in enumerate(windows):
        left = place * (WIDE + GAP)
        row.paste("#808480", (left, 0, left + WIDE, window.height + 2))
        row.paste(window.crop((1, 0, WIDE - 1, window.height)), (left + 1, 1))
    return row


with Image.open(os.path.join(PICTURES, "contact-light.png")) as sheet:
    # So large a sheet gets by with few inks.
    save(sheet.convert("RGB").quantize(64, dither=Image.Dither.NONE), "screens.png")
save(beside(FEW), "app.png")
