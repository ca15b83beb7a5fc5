"""command.py FOLDER: four photos, the same each time, for the tests of `legwork label --photo` and of jackets in the guide: a label, the jacket
of one cable at both its ends, and an end of another."""
import pathlib
import random as randoms
import sys

import cv2
import numpy as np

import make

ROWS = {
    "label": ["4-WAY SPLITTER", "BAND 5-1002 MHz", "OUT -7.2 dB", "ISO 25 dB"],
    "near": ["RG-6 0482 FT"],
    "far": ["RG-6 0532 FT"],
    "other": ["RG-59 075 M"],
}
HARDSHIP = {"surface": ["sticker"], "noise": 3}


def main():
    folder = pathlib.Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for name, rows in ROWS.items():
        picture, _, _ = make.photo(randoms.Random(19), np.random.default_rng(19), rows, HARDSHIP)
        cv2.imwrite(str(folder / f"{name}.jpg"), picture, [cv2.IMWRITE_JPEG_QUALITY, 88])


main()
