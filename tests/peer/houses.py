#!/usr/bin/env python3
"""Writes the houses of the speed comparison, in the format of tests/vectors without results.

    houses.py FOLDER

Each house: perhaps an entry filter, splitters of 2 to 4 legs each fed by a run, a run to every outlet. The figures are
invented; the same seed gives the same houses.
"""
import json
import os
import random
import sys

# name: entry filter?, splitters, legs of all of them together, frequencies
SIZES = {"12 parts": (1, 3, 7, 512), "30 parts": (1, 8, 20, 512), "60 parts": (0, 16, 43, 2560), "121 parts": (0, 32, 88, 512)}


def square(n, diagonal, entry):
    upper = {(i, j): entry(i, j) for i in range(n) for j in range(i + 1, n)}
    return [[diagonal if i == j else upper[min(i, j), max(i, j)] for j in range(n)] for i in range(n)]


def house(name, filtered, splitters, legs, points):
    dice = random.Random(7)
    parts, connections, external = [], [], []

    def add(part, feed):
        part["id"] = f"{part['kind']}{len(parts)}"
        parts.append(part)
        if feed is None:
            external.append([part["id"], 0])
        else:
            connections.append([*feed, part["id"], 0])
        return part["id"]

    def run(feed):
        return add(dict(kind="cable", ports=2, length_m=dice.uniform(2, 15), zc_ohm=dice.choice([75.0, 73.0, 77.0]),
                        k1=0.65, k2=0.0012, vf=0.83), feed)

    def split(count, feed):
        n, loss = count + 1, {2: 3.5, 3: 5.5, 4: 7.0}[count]
        return add(dict(kind="splitter", ports=n,
                        x0=square(n, dice.uniform(16, 20), lambda i, j: loss if i == 0 else dice.uniform(20, 28)),
                        x1=square(n, 0.0, lambda i, j: 0.3), tau=square(n, 0.4e-9, lambda i, j: dice.uniform(0.3e-9, 1e-9)),
                        sign=square(n, 1.0, lambda i, j: 1.0)), feed)

    sizes = [2] * splitters
    while sum(sizes) < legs:
        at = dice.randrange(splitters)
        sizes[at] = min(4, sizes[at] + 1)
    free = [None]
    if filtered:
        first = add(dict(kind="filter", ports=2, pass_db=0.5, stop_db=40.0, fc_hz=1063.5e6, w_hz=15e6, diss_db=0.45,
                         tau_s=0.8e-9), None)
        free = [[first, 1]]
    for count in sizes:
        feed = free.pop(dice.randrange(len(free)))
        part = split(count, [run(feed), 1])
        free += [[part, leg] for leg in range(1, count + 1)]
    for feed in free:
        external.append([run(feed), 1])
    frequencies = [5e6 + (1675e6 - 5e6) * k / (points - 1) for k in range(points)]
    return dict(name=name, frequencies_hz=frequencies, parts=parts, connections=connections, terminations=[], external=external)


def main(folder):
    os.makedirs(folder, exist_ok=True)
    for name, size in SIZES.items():
        made = house(name, *size)
        assert len(made["parts"]) == int(name.split()[0])
        with open(os.path.join(folder, name.replace(" ", "-") + ".json"), "w") as file:
            json.dump(made, file)


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    main(sys.argv[1])
