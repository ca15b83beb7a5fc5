#!/usr/bin/env python3
"""Builds houses with amplifiers in scikit-rf (z0 = 75 ohm), both directions, and writes them as reference networks.

    amplifier_house.py FOLDER

The format is that of tests/vectors (check_vectors.py there states the conventions) with two additions:
- part kind "multiport": as "splitter", but x0, x1, tau and sign need not be symmetric (row: the port the wave leaves by);
- "s_full" instead of "s": per frequency the whole matrix between the external ports, row by row.
The figures of the parts are invented.
"""
import json
import os
import sys

import numpy as np
import skrf
from skrf.circuit import Circuit

C = 299792458.0
FREQUENCIES = np.unique(np.r_[5e6:42e6:5j, 54e6:1002e6:17j, 1125e6:1675e6:17j])


def cable(name, length, zc=75.0):
    return dict(id=name, kind="cable", ports=2, length_m=length, zc_ohm=zc, k1=0.65, k2=0.0012, vf=0.85)


def square(n, diagonal, entry):
    return [[diagonal if i == j else entry(i, j) for j in range(n)] for i in range(n)]


def amplifier(name, outputs, gain, back, slope=1.5):
    """Gain from port 0 to each output, another loss back, finite isolation between the outputs."""
    n = outputs + 1

    def loss(i, j):
        if j == 0:
            return -gain - 0.2 * i
        return back + 0.3 * j if i == 0 else 27.0 + i - 0.5 * j

    return dict(id=name, kind="multiport", ports=n, x0=square(n, 15.0, loss),
                x1=square(n, 0.5, lambda i, j: slope if j == 0 else 0.4),
                tau=square(n, 0.7e-9, lambda i, j: 1.1e-9 + 0.13e-9 * i + 0.07e-9 * j),
                sign=square(n, 1.0, lambda i, j: -1.0 if i > j else 1.0))


def splitter(name, legs, loss):
    n = legs + 1
    return dict(id=name, kind="splitter", ports=n, x0=square(n, 17.0, lambda i, j: loss if 0 in (i, j) else 23.0 + i + j),
                x1=square(n, 0.3, lambda i, j: 0.4), tau=square(n, 0.5e-9, lambda i, j: 0.8e-9 + 0.05e-9 * (i + j)),
                sign=square(n, 1.0, lambda i, j: 1.0 if 0 in (i, j) else -1.0))


def part_s(part, f):
    if part["kind"] == "cable":
        alpha = np.log(10) / 20 * (part["k1"] * np.sqrt(f / 1e6) + part["k2"] * f / 1e6) / 100
        e = np.exp(-(alpha + 2j * np.pi * f / (C * part["vf"])) * part["length_m"])
        r = (part["zc_ohm"] - 75) / (part["zc_ohm"] + 75)
        s11, s21 = r * (1 - e * e) / (1 - r * r * e * e), (1 - r * r) * e / (1 - r * r * e * e)
        return np.moveaxis(np.array([[s11, s21], [s21, s11]]), 2, 0)
    x0, x1, tau, sign = (np.array(part[key]) for key in ("x0", "x1", "tau", "sign"))
    f = f[:, None, None]
    return sign * 10 ** (-(x0 + x1 * f / 1e9) / 20) * np.exp(-2j * np.pi * f * tau)


def solved(house):
    """The whole matrix between the external ports, by scikit-rf's Circuit."""
    f = FREQUENCIES
    axis = skrf.Frequency.from_f(f, unit="hz")
    parts = {p["id"]: skrf.Network(frequency=axis, s=part_s(p, f), z0=75, name=p["id"]) for p in house["parts"]}
    nodes = [[(parts[a], i), (parts[b], j)] for a, i, b, j in house["connections"]]
    for number, (a, i) in enumerate(house["external"]):
        port = Circuit.Port(axis, f"port{number}", z0=75)
        nodes.append([(port, 0), (parts[a], i)])
    for number, (a, i, how) in enumerate(house["terminations"]):
        reflection = np.full((f.size, 1, 1), 1.0 if how == "open" else 0.0, dtype=complex)
        nodes.append([(parts[a], i), (skrf.Network(frequency=axis, s=reflection, z0=75, name=f"end{number}"), 0)])
    # Ports come out in the order in which they are met: those are the external ones in order.
    return Circuit(nodes).network.s


HOUSES = [
    dict(
        name="one_amplifier", description="drop, four-output amplifier, three runs, one output capped",
        parts=[cable("drop", 9.0), amplifier("amp", 4, 8.0, 24.0), cable("a", 7.5), cable("b", 14.0, 73.0), cable("c", 3.0)],
        connections=[["drop", 1, "amp", 0], ["amp", 1, "a", 0], ["amp", 2, "b", 0], ["amp", 4, "c", 0]],
        terminations=[["amp", 3, "matched"]],
        external=[["drop", 0], ["a", 1], ["b", 1], ["c", 1]]),
    dict(
        name="amplifier_below_a_splitter",
        description="a room before the amplifier, two amplifiers in cascade, splitters below, an open leg and an open stub",
        parts=[cable("drop", 5.0), splitter("two", 2, 3.6), cable("before", 11.0), cable("feed", 2.0),
               amplifier("first", 2, 6.0, 20.0), splitter("three", 3, 5.6), cable("p", 8.0), cable("q", 12.5, 77.0),
               cable("between", 20.0), amplifier("second", 1, 10.0, 30.0), splitter("last", 2, 3.7), cable("r", 6.0)],
        connections=[["drop", 1, "two", 0], ["two", 1, "before", 0], ["two", 2, "feed", 0], ["feed", 1, "first", 0],
                     ["first", 1, "three", 0], ["three", 1, "p", 0], ["three", 2, "q", 0], ["first", 2, "between", 0],
                     ["between", 1, "second", 0], ["second", 1, "last", 0], ["last", 1, "r", 0]],
        terminations=[["three", 3, "open"], ["q", 1, "open"]],
        external=[["drop", 0], ["before", 1], ["p", 1], ["r", 1], ["last", 2]]),
    dict(
        name="amplifier_hung_backwards", description="an amplifier that is met from one of its outputs",
        parts=[cable("drop", 4.0), amplifier("amp", 2, 3.0, 15.0), cable("a", 6.0), cable("b", 9.0)],
        connections=[["drop", 1, "amp", 1], ["amp", 0, "a", 0], ["amp", 2, "b", 0]],
        terminations=[],
        external=[["drop", 0], ["a", 1], ["b", 1]]),
]


def main(folder):
    os.makedirs(folder, exist_ok=True)
    for house in HOUSES:
        s = solved(house)
        asymmetry = np.abs(s - s.transpose(0, 2, 1)).max()
        assert asymmetry > 0.1, "a house with an amplifier must differ by direction"
        flat = s.reshape(len(s), -1)
        out = dict(house, made_with=f"scikit-rf {skrf.__version__}, numpy {np.__version__}",
                   frequencies_hz=FREQUENCIES.tolist(),
                   s_full=[dict(re=row.real.tolist(), im=row.imag.tolist()) for row in flat])
        path = os.path.join(folder, house["name"] + ".json")
        with open(path, "w") as file:
            json.dump(out, file)
        print(f"{path}: {s.shape[1]} outlets, {s.shape[0]} frequencies, directions differ by up to {asymmetry:.2f}")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    main(sys.argv[1])
