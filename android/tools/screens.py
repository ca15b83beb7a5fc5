#!/usr/bin/env python3
"""docs/android/screens.png, every screen by day on one sheet, from the pictures of the last `tests/run android`.

    android/tools/screens.py      needs Pillow (on Debian: the package `python3-pil`)
"""
import os

from PIL import Image

ANDROID = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

with Image.open(os.path.join(ANDROID, "target/pictures/contact-light.png")) as sheet:
    few = sheet.convert("RGB").quantize(64, dither=Image.Dither.NONE)
    few.save(os.path.join(ANDROID, "../docs/android/screens.png"), optimize=True)
