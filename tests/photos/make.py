"""make.py FOLDER SEED COUNT normal|hard: photos of invented labels, and beside them in `truth.json` what is printed on each.

Each is what a person would crop to the label: the label with a margin of what is around it. Print on stickers, metal, dark and
coloured plastic, foil; each photo under one or several hardships of the list for its kind, drawn at random.
"""
import json
import math
import os
import pathlib
import random as randoms
import sys

import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont

import labels

cv2.setNumThreads(1)
FONTS = "/usr/share/fonts"
FACES = [
    "truetype/dejavu/DejaVuSans-Bold.ttf", "truetype/dejavu/DejaVuSansCondensed.ttf", "truetype/dejavu/DejaVuSansCondensed-Bold.ttf",
    "truetype/roboto/unhinted/RobotoCondensed-Regular.ttf", "truetype/roboto/unhinted/RobotoCondensed-Bold.ttf",
    "truetype/open-sans/OpenSans-CondBold.ttf", "opentype/bebas-neue/BebasNeue-Bold.otf", "truetype/liberation/LiberationMono-Bold.ttf",
    "truetype/hack/Hack-Bold.ttf", "truetype/noto/NotoSansMono-Regular.ttf", "truetype/liberation/LiberationSans-Regular.ttf",
    "truetype/lato/Lato-Bold.ttf",
]
# All is drawn so many times larger, and then made smaller.
FINE = 2
# The longest side of a photo that somebody would crop to, in pixels.
WIDEST = 1600

# Hardships: the height of a capital in pixels, turns in degrees, strengths. A name is printed beside what went wrong.
NORMAL = {
    "flat24": {}, "high12": {"cap": (12, 12)}, "high16": {"cap": (16, 16)}, "high20": {"cap": (20, 20)}, "high32": {"cap": (32, 32)},
    "high40": {"cap": (40, 40)}, "turned5": {"turn": (3, 6)}, "turned15": {"turn": (12, 15)}, "turned90": {"base": 90, "turn": (0, 4)},
    "turned180": {"base": 180, "turn": (0, 4)}, "turned270": {"base": 270, "turn": (0, 4)}, "slanted": {"slant": .35, "turn": (0, 5)},
    "curved": {"curve": 1}, "blurred1.2": {"blur": (1.2, 1.2)}, "blurred2.5": {"blur": (2.5, 2.5)}, "moved": {"motion": (5, 9)},
    "jpeg40": {"jpeg": (40, 40)}, "glare": {"glare": (120, 260)}, "faint": {"surface": ["faint"], "noise": 6},
    "shadow": {"shadow": .45}, "dirt": {"dirt": 5}, "foil": {"surface": ["foil"]}, "plastic": {"surface": ["plastic"]},
    "mixed-a": {"cap": (16, 28), "turn": (0, 8), "slant": .15, "blur": (.6, 1), "jpeg": (60, 80), "noise": 5},
    "mixed-b": {"cap": (14, 24), "turn": (5, 15), "slant": .25, "blur": (1, 1.8), "jpeg": (40, 60), "noise": 7, "glare": (60, 160)},
}
HARD = {
    "high6": {"cap": (6, 6)}, "high8": {"cap": (8, 8)}, "high10": {"cap": (10, 10)},
    "high10-blurred": {"cap": (10, 10), "blur": (1, 1), "jpeg": (60, 60)}, "blurred4": {"blur": (4, 4)},
    "high16-blurred3": {"cap": (16, 16), "blur": (3, 3)}, "moved14": {"motion": (12, 16)},
    "stamped": {"surface": ["metal"], "stamp": 90, "cap": (24, 32)}, "stamped-faint": {"surface": ["metal"], "stamp": 40, "cap": (24, 32)},
    "dots": {"dots": 1}, "dense": {"dense": 1, "cap": (14, 18)}, "scratched": {"scratches": 14}, "bent": {"bend": 1.0},
    "bent-much": {"bend": 2.2}, "cable-across": {"cable": 1}, "low-light": {"light": .22, "noise": 7},
    "noisy12": {"cap": (12, 14), "jpeg": (25, 25), "noise": 14}, "foil-crumpled": {"surface": ["foil"], "crumple": 1, "glare": (60, 160)},
    "slanted-much": {"slant": .6, "turn": (5, 15)}, "turned45": {"turn": (35, 55)}, "shadow-dirt": {"shadow": .75, "dirt": 16},
}


def surface(random, noise, width, height, low, high):
    """A metal or plastic surface: slow changes of brightness, and streaks."""
    across, down = np.linspace(0, 1, width)[None, :], np.linspace(0, 1, height)[:, None]
    a, b, c = random.uniform(-1, 1), random.uniform(-1, 1), random.uniform(0, 6)
    shade = 0.5 + 0.25 * np.sin(c + 4 * a * across + 4 * b * down) + 0.2 * (a * across + b * down)
    streaks = cv2.GaussianBlur(noise.normal(0, 1, (height, width)).astype(np.float32), (0, 0), 12, sigmaY=.8)
    return (low + (high - low) * np.clip(shade + 0.25 * streaks, 0, 1)).astype(np.float32)


def foil(random, noise, width, height, crumpled):
    """Foil: facets that shine and facets that do not."""
    plain = surface(random, noise, width, height, 120, 225)
    grain = noise.normal(0, 1, (max(3, height // (40 if crumpled else 110)), max(3, width // (40 if crumpled else 110)))).astype(np.float32)
    facets = cv2.resize(grain, (width, height), interpolation=cv2.INTER_CUBIC)
    return np.clip(plain + (38 if crumpled else 22) * facets, 90, 250)


def blank_label(random, noise, style, width, height, hardship):
    """The label without print, and the brightness of its ink."""
    if style == "sticker":
        return surface(random, noise, width, height, 205, 245), random.uniform(10, 50)
    if style == "metal":
        return surface(random, noise, width, height, 130, 225), random.uniform(15, 50)
    if style == "dark":
        return surface(random, noise, width, height, 20, 70), random.uniform(200, 245)
    if style == "plastic":
        low = random.uniform(60, 150)
        return surface(random, noise, width, height, low, low + 30), random.choice([min(250, low + 110), max(5, low - 75)])
    if style == "foil":
        return foil(random, noise, width, height, hardship.get("crumple")), random.uniform(5, 40)
    return surface(random, noise, width, height, 110, 170), random.choice([75, 205])


def printed(random, noise, rows, hardship, style, cap):
    """The label lying flat."""
    face = os.path.join(FONTS, random.choice(FACES))
    box = ImageFont.truetype(face, 200).getbbox("H")
    font = ImageFont.truetype(face, max(6, round(cap * 200 / (box[3] - box[1]))))
    if "Bebas" in face or random.random() < .12:
        rows = [row.upper() for row in rows]
    gap = cap * (1.38 if hardship.get("dense") else random.uniform(1.7, 2.2))
    edge = int(cap * 1.6)
    widths = [font.getlength(row) for row in rows]
    width, height = int(max(widths) + 2 * edge), int(gap * len(rows) + 2 * edge - (gap - cap))
    blank, ink = blank_label(random, noise, style, width, height, hardship)
    mask = Image.new("L", (width, height), 0)
    pen = ImageDraw.Draw(mask)
    centred = random.random() < .5
    for at, row in enumerate(rows):
        pen.text(((width - widths[at]) / 2 if centred else edge, edge + at * gap), row, font=font, fill=255)
    mask = np.asarray(mask, np.float32) / 255
    if hardship.get("dots"):
        pitch = max(3.0, cap / 9)
        down, across = np.mgrid[0:height, 0:width]
        mask = mask * (((across % pitch) - pitch / 2) ** 2 + ((down % pitch) - pitch / 2) ** 2 < (pitch * .42) ** 2)
        mask = cv2.GaussianBlur(mask.astype(np.float32), (0, 0), .8)
    if hardship.get("stamp"):
        relief, shift = cv2.GaussianBlur(mask, (0, 0), cap / 22), max(1, int(cap / 18))
        flat = blank + hardship["stamp"] * (np.roll(relief, (-shift, -shift), (0, 1)) - np.roll(relief, (shift, shift), (0, 1)))
    else:
        flat = blank * (1 - mask) + ink * mask
    return flat.astype(np.float32), os.path.basename(face)


def worn(random, noise, flat, cap, hardship):
    """Scratches, dirt, a bend of the surface, a can, a shadow, glare."""
    height, width = flat.shape
    for _ in range(hardship.get("scratches", 0)):
        ends = [(random.randrange(width), random.randrange(height)) for _ in range(2)]
        cv2.line(flat, *ends, random.uniform(40, 230), max(1, int(cap * random.uniform(.05, .14))), cv2.LINE_AA)
    for _ in range(hardship.get("dirt", 0)):
        spot = np.zeros_like(flat)
        middle, size = (random.randrange(width), random.randrange(height)), random.uniform(.15, .8) * cap
        cv2.ellipse(spot, middle, (max(1, int(size)), max(1, int(size * random.uniform(.3, 1)))), random.uniform(0, 180), 0, 360, 1.0, -1)
        spot = cv2.GaussianBlur(spot, (0, 0), max(.8, size * .25)) * random.uniform(.3, .7)
        flat = flat * (1 - spot) + random.uniform(40, 110) * spot
    if hardship.get("bend"):
        extra = int(cap * hardship["bend"]) + 1
        bow = np.linspace(-1, 1, width) ** 2 * cap * hardship["bend"]
        across = np.repeat(np.arange(width)[None], height + extra, 0).astype(np.float32)
        down = (np.arange(height + extra)[:, None] - bow[None]).astype(np.float32)
        flat = cv2.remap(flat, across, down, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
        height = flat.shape[0]
    if hardship.get("curve"):
        along, half = np.linspace(-1, 1, width), 1.15
        across = (np.arcsin(np.clip(along * np.sin(half), -1, 1)) / half * .5 + .5) * (width - 1)
        bow = (np.sqrt(1 - (along * np.sin(half)) ** 2) - np.cos(half)) * height * .18
        down = np.arange(height)[:, None] - bow[None] + height * .05
        flat = cv2.remap(flat, np.repeat(across[None], height, 0).astype(np.float32), down.astype(np.float32), cv2.INTER_LINEAR,
                         borderMode=cv2.BORDER_REPLICATE)
        flat = flat * (np.cos(along * half * .9)[None] * .6 + .4)
    down, across = np.mgrid[0:height, 0:width]
    if hardship.get("shadow"):
        angle, place = random.uniform(0, 2 * math.pi), random.uniform(.3, .7)
        depth = ((across / width - place) * math.cos(angle) + (down / height - .5) * math.sin(angle)) * width / (cap * random.uniform(.2, 1.5))
        flat = flat * (1 - hardship["shadow"] / (1 + np.exp(-np.clip(depth, -30, 30))))
    if hardship.get("glare"):
        for _ in range(2):
            angle, place = random.uniform(-.9, .9), random.uniform(.15, .85)
            far = ((across / width - place) * math.cos(angle) + (down / height - .5) * math.sin(angle) * .5) * width / cap
            flat = flat + random.uniform(*hardship["glare"]) * np.exp(-(far / random.uniform(.8, 2.0)) ** 2)
        flat = np.clip(flat, 0, 250)
    return flat.astype(np.float32)


def around(random, noise, width, height):
    """What is around the label: the part itself, out of focus."""
    ground = surface(random, noise, width, height, *random.choice([(30, 90), (60, 140), (110, 190)]))
    for _ in range(3):
        place, shade = (random.randrange(width), random.randrange(height)), random.uniform(20, 200)
        if random.random() < .5:
            cv2.circle(ground, place, random.randrange(20, 160), shade, random.choice([-1, 8, 20]), cv2.LINE_AA)
        else:
            cv2.line(ground, place, (random.randrange(width), random.randrange(height)), shade, random.randrange(10, 40), cv2.LINE_AA)
    return cv2.GaussianBlur(ground, (0, 0), 4 * FINE)


def photo(random, noise, rows, hardship):
    """One photo, cropped to its label, and the face in which it is printed."""
    cap = random.uniform(*hardship.get("cap", (24, 24))) * FINE
    style = random.choice(hardship.get("surface", ["sticker", "sticker", "metal", "dark", "plastic"]))
    flat, face = printed(random, noise, rows, hardship, style, cap)
    flat = worn(random, noise, flat, cap, hardship)
    height, width = flat.shape
    corners = np.float32([[0, 0], [width, 0], [width, height], [0, height]])
    seen = corners - [width / 2, height / 2]
    if slant := hardship.get("slant"):
        seen = seen * np.array([[1 - random.uniform(0, slant), 1 - random.uniform(0, slant)] for _ in range(4)])
    angle = math.radians(random.uniform(*hardship.get("turn", (0, 0))) * random.choice([-1, 1]) + hardship.get("base", 0))
    seen = seen @ np.array([[math.cos(angle), math.sin(angle)], [-math.sin(angle), math.cos(angle)]])
    margins = np.array([random.uniform(6, 40) for _ in range(4)]) * FINE
    least = seen.min(0) - margins[:2]
    size = seen.max(0) + margins[2:] - least
    seen = (seen - least).astype(np.float32)
    across, down = (int(math.ceil(side / FINE)) * FINE for side in size)
    turn = cv2.getPerspectiveTransform(corners, seen)
    mask = cv2.warpPerspective(np.ones((height, width), np.float32), turn, (across, down))
    picture = around(random, noise, across, down) * (1 - mask) + cv2.warpPerspective(flat, turn, (across, down)) * mask
    if hardship.get("cable"):
        slope, middle = angle + random.uniform(.9, 2.2), seen.mean(0) + noise.normal(0, size.min() * .12, 2)
        ends = [(int(middle[0] + far * math.cos(slope)), int(middle[1] + far * math.sin(slope))) for far in (-4000, 4000)]
        cv2.line(picture, *ends, 25, int(cap * 1.3), cv2.LINE_AA)
    picture = cv2.resize(picture.astype(np.float32), (across // FINE, down // FINE), interpolation=cv2.INTER_AREA)
    if hardship.get("blur"):
        picture = cv2.GaussianBlur(picture, (0, 0), random.uniform(*hardship["blur"]))
    if hardship.get("motion"):
        length, way = int(random.uniform(*hardship["motion"])), random.uniform(0, math.pi)
        smear = np.zeros((31, 31), np.float32)
        ends = [(int(15 + far * length / 2 * math.cos(way)), int(15 + far * length / 2 * math.sin(way))) for far in (-1, 1)]
        cv2.line(smear, *ends, 1.0, 1)
        picture = cv2.filter2D(picture, -1, smear / smear.sum())
    tint = np.array([random.uniform(.85, 1.1) for _ in range(3)])
    picture = picture[:, :, None] * tint * hardship.get("light", 1)
    picture = picture + noise.normal(0, hardship.get("noise", 3), picture.shape)
    return np.clip(picture, 0, 255).astype(np.uint8), face, style


def main():
    folder, seed, count, kind = pathlib.Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3]), sys.argv[4]
    folder.mkdir(parents=True, exist_ok=True)
    hardships = {"normal": NORMAL, "hard": HARD}[kind]
    names, truth = list(hardships), []
    for at in range(count):
        random = randoms.Random(f"{seed}-{kind}-{at}")
        noise = np.random.default_rng(random.getrandbits(64))
        name = names[at % len(names)]
        hardship = hardships[name]
        what, label = labels.draw(random)
        rows = label.rows
        if hardship.get("dense"):
            # Three labels' worth of print; what they state together nothing says.
            for _ in range(2):
                more = labels.draw(random)[1]
                rows = rows + more.rows[:3]
            label.states = None
        picture, face, style = photo(random, noise, [row for row, _ in rows], hardship)
        file = f"{at:04d}-{name}.jpg"
        quality = random.randint(*hardship.get("jpeg", (85, 90)))
        cv2.imwrite(str(folder / file), picture, [cv2.IMWRITE_JPEG_QUALITY, quality])
        truth.append({"file": file, "hardship": name, "kind": what, "rows": [row for row, _ in rows],
                      "numbers": sum((numbers for _, numbers in rows), []), "states": label.states,
                      "face": face, "surface": style})
    (folder / "truth.json").write_text(json.dumps(truth, indent=0))


if __name__ == "__main__":
    main()
