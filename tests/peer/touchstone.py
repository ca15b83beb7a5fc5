#!/usr/bin/env python3
"""Writes Touchstone files with scikit-rf, and what they hold at 75 ohm, for the reader in core/coax to be held against.

    touchstone.py FOLDER

Random invented multiports of 1 to 8 ports, reciprocal or not, in every format, unit and two reference resistances; and
version 2.0 files written by hand here in the layouts that scikit-rf reads but does not write. expected.json lists the
files with the matrices at 75 ohm, by scikit-rf's own renormalisation.
"""
import json
import os
import sys

import numpy as np
import skrf

FREQUENCIES = np.r_[5e6, 54e6, 806e6, 1002e6:1675e6:9j]
UNITS = {"hz": 1.0, "khz": 1e3, "mhz": 1e6, "ghz": 1e9}


def multiport(ports, z0, seed, reciprocal):
    """A random passive multiport: a random matrix scaled to a largest singular value of 0.9."""
    rng = np.random.default_rng(seed)
    shape = (FREQUENCIES.size, ports, ports)
    s = rng.normal(size=shape) + 1j * rng.normal(size=shape)
    if reciprocal:
        s = s + s.transpose(0, 2, 1)
    s *= 0.9 / np.linalg.norm(s, ord=2, axis=(1, 2))[:, None, None]
    return skrf.Network(frequency=skrf.Frequency.from_f(FREQUENCIES, unit="hz"), s=s, z0=z0)


def at_75(network):
    other = network.copy()
    other.renormalize(75)
    return other.s


def entry(name, network, within):
    s = at_75(network).reshape(FREQUENCIES.size, -1)
    return dict(file=name, frequencies_mhz=(FREQUENCIES / 1e6).tolist(), re=s.real.tolist(), im=s.imag.tolist(), within=within)


def written(folder):
    """Version 1 files as scikit-rf writes them."""
    seed = 0
    for ports in (1, 2, 3, 4, 5, 8):
        for z0 in (50, 75):
            for form in ("db", "ma", "ri"):
                seed += 1
                unit = list(UNITS)[seed % 4]
                network = multiport(ports, z0, seed, reciprocal=seed % 2 == 0)
                network.frequency.unit = unit
                name = f"v1_{form}_{z0}.s{ports}p"
                network.write_touchstone(filename=name.rsplit(".", 1)[0], dir=folder, form=form)
                assert os.path.exists(os.path.join(folder, name)), name
                yield entry(name, network, 1e-6)


def version_2(name, ports, resistances, layout, order, seed):
    network = multiport(ports, np.array(resistances, dtype=float), seed, reciprocal=layout != "Full")
    lines = ["[Version] 2.0", "# MHz S RI R 50", f"[Number of Ports] {ports}"]
    if ports == 2:
        lines.append(f"[Two-Port Data Order] {order}")
    lines += [f"[Number of Frequencies] {FREQUENCIES.size}", "[Reference] " + " ".join(map(str, resistances)),
              f"[Matrix Format] {layout}", "[Network Data]"]
    for f, s in zip(FREQUENCIES, network.s):
        rows = []
        for i in range(ports):
            columns = dict(Full=range(ports), Lower=range(i + 1), Upper=range(i, ports))[layout]
            if ports == 2 and layout == "Full" and order == "21_12":
                rows.append([s[j, i] for j in columns])
            else:
                rows.append([s[i, j] for j in columns])
        text = ["  ".join(f"{x.real:.12e} {x.imag:.12e}" for x in row) for row in rows]
        lines.append(f"{float(f) / 1e6!r} " + "\n".join(text))
    return network, "\n".join(lines + ["[End]", ""])


def by_hand(folder):
    seed = 1000
    for ports, resistances in ((1, [50]), (2, [50, 75]), (3, [75, 50, 100]), (4, [50, 50, 75, 75])):
        for layout in ("Full", "Lower", "Upper"):
            # A triangle holds one of S12 and S21, so there the order means nothing; scikit-rf 2.2.0 gets lost with 21_12 there.
            for order in ("12_21", "21_12") if (ports, layout) == (2, "Full") else ("12_21",):
                seed += 1
                name = f"v2_{layout.lower()}_{order}.s{ports}p"
                network, text = version_2(name, ports, resistances, layout, order, seed)
                path = os.path.join(folder, name)
                with open(path, "w") as file:
                    file.write(text)
                # scikit-rf reads the same out of it: the text is what it is meant to be.
                again = skrf.Network(path)
                assert np.abs(at_75(again) - at_75(network)).max() < 1e-9, name
                yield entry(name, network, 1e-6)


def main(folder):
    os.makedirs(folder, exist_ok=True)
    expected = [*written(folder), *by_hand(folder)]
    with open(os.path.join(folder, "expected.json"), "w") as file:
        json.dump(expected, file)
    print(f"{folder}: {len(expected)} Touchstone files by scikit-rf {skrf.__version__}")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    main(sys.argv[1])
