#!/usr/bin/env python3
"""Solves the houses of FOLDER with scikit-rf in three ways, compares its results with ours and prints the times.

    compare.py FOLDER [FILE]

FILE: the same as JSON, for tests/speed. Run through tests/bench-peer, which makes the houses and our times and results first. Matrices of the parts are made
beforehand on both sides and not timed. Every pair of outlets is solved, both directions.
"""
import os

os.environ["OPENBLAS_NUM_THREADS"] = "1"  # more threads make scikit-rf several times slower at these sizes

import glob
import json
import statistics
import sys
import time

import numpy as np
import skrf
from skrf.circuit import Circuit
from skrf.network import connect_s

C = 299792458.0
LEAST_RUNS = 7
MOST_DIFFERENCE = 1e-9


def part_s(part, f):
    if part["kind"] == "cable":
        alpha = np.log(10) / 20 * (part["k1"] * np.sqrt(f / 1e6) + part["k2"] * f / 1e6) / 100
        e = np.exp(-(alpha + 2j * np.pi * f / (C * part["vf"])) * part["length_m"])
        r = (part["zc_ohm"] - 75) / (part["zc_ohm"] + 75)
        s11, s21 = r * (1 - e * e) / (1 - r * r * e * e), (1 - r * r) * e / (1 - r * r * e * e)
        return np.ascontiguousarray(np.moveaxis(np.array([[s11, s21], [s21, s11]]), 2, 0))
    if part["kind"] == "filter":
        att = part["pass_db"] + (part["stop_db"] - part["pass_db"]) / (1 + np.exp(-(f - part["fc_hz"]) / part["w_hz"]))
        t = 10 ** (-att / 20)
        r = np.sqrt(10 ** (-part["diss_db"] / 10) - t * t)
        p = np.exp(-2j * np.pi * f * part["tau_s"])
        return np.ascontiguousarray(np.moveaxis(np.array([[r * p, -1j * t * p], [-1j * t * p, r * p]]), 2, 0))
    x0, x1, tau, sign = (np.array(part[key]) for key in ("x0", "x1", "tau", "sign"))
    f = f[:, None, None]
    return sign * 10 ** (-(x0 + x1 * f / 1e9) / 20) * np.exp(-2j * np.pi * f * tau)


def circuit(house, parts, axis, **options):
    nodes = [[(parts[a], i), (parts[b], j)] for a, i, b, j in house["connections"]]
    for number, (a, i) in enumerate(house["external"]):
        nodes.append([(Circuit.Port(axis, f"port{number}", z0=75), 0), (parts[a], i)])
    return lambda: Circuit(nodes, **options).s_external


def connected(house, matrices):
    """Joins each part to the finished branches below it, the branches farthest from the street first."""
    below = {}
    for a, i, b, j in house["connections"]:
        below.setdefault(a, []).append((i, b, j))
    external = {(a, i): number for number, (a, i) in enumerate(house["external"])}
    order, stack = [], [house["external"][0][0]]
    while stack:
        part = stack.pop()
        order.append(part)
        stack += [b for _, b, _ in below.get(part, [])]

    def solve():
        done = {}
        for part in reversed(order):
            s = matrices[part]
            ports = [external.get((part, i), ("up", i) if i == 0 else ("leg", i)) for i in range(s.shape[1])]
            for i, b, j in below.get(part, []):
                branch, branch_ports = done.pop(b)
                k, l = ports.index(("leg", i)), branch_ports.index(("up", j))
                s = connect_s(s, k, branch, l)
                rest = branch_ports[:l] + branch_ports[l + 1:]
                # connect_s puts the far port of a two-port where the joined port was, and other branches last.
                in_place = len(branch_ports) == 2 and len(ports) > 2
                ports = ports[:k] + rest + ports[k + 1:] if in_place else ports[:k] + ports[k + 1:] + rest
            done[part] = s, ports
        s, ports = done[order[0]]
        to = np.argsort(ports)
        return s[:, to[:, None], to[None, :]]

    return solve


def timed(work, runs=LEAST_RUNS):
    times = []
    for _ in range(runs):
        begun = time.perf_counter()
        result = work()
        times.append(time.perf_counter() - begun)
    return statistics.median(times), result


def main(folder, file=None):
    print(f"scikit-rf {skrf.__version__}, numpy {np.__version__}, z0 = 75 ohm, one thread; medians of {LEAST_RUNS} runs or more")
    columns = "house", "outlets", "points", "Circuit", "auto_reduce", "connect", "ours", "all cores", "ratios, one core", "greatest difference"
    print("%-10s %7s %7s %12s %12s %12s %12s %12s  %-26s %s" % columns)
    failed, rows = False, []
    for path in sorted(glob.glob(os.path.join(folder, "*.json")), key=lambda p: int(os.path.basename(p).split("-")[0])):
        house = json.load(open(path))
        f = np.array(house["frequencies_hz"])
        axis = skrf.Frequency.from_f(f, unit="hz")
        matrices = {p["id"]: part_s(p, f) for p in house["parts"]}
        parts = {name: skrf.Network(frequency=axis, s=s, z0=75, name=name) for name, s in matrices.items()}
        k = len(house["external"])
        base = path[: -len(".json")]
        ours = np.fromfile(base + ".result", dtype="<c16").reshape(len(f), k, k)
        own_time, on_all = (float(open(base + name).read()) for name in (".seconds", ".seconds_on_all"))
        ways = [circuit(house, parts, axis), circuit(house, parts, axis, auto_reduce=True), connected(house, matrices)]
        times, worst = [], 0.0
        for way in ways:
            seconds, result = timed(way)
            times.append(seconds)
            worst = max(worst, float(np.abs(result - ours).max()))
        failed |= not worst <= MOST_DIFFERENCE
        ratios = " ".join(f"{t / own_time:7.0f}x" for t in times)
        rows.append(dict(house=house["name"], outlets=k, points=len(f), seconds=[*times, own_time], seconds_on_all_cores=on_all, difference=worst))
        row = [f"{1e3 * t:.3f} ms" for t in [*times, own_time, on_all]]
        print("%-10s %7d %7d %12s %12s %12s %12s %12s  %-26s %.1e" % (house["name"], k, len(f), *row, ratios, worst), flush=True)
    if file:
        with open(file, "w") as out:
            json.dump(rows, out)
    if failed:
        sys.exit(f"the results differ by more than {MOST_DIFFERENCE}")


if __name__ == "__main__":
    if len(sys.argv) not in (2, 3):
        sys.exit(__doc__)
    main(*sys.argv[1:])
