"""All pairs of a house solved, beside scikit-rf; and beside what the machine can do."""
import json
import os
import subprocess
import tempfile

from . import machine
from .goal import Row

WAYS = "`Circuit`", "`Circuit(auto_reduce=True)`", "`connect`, leaves first"
# By house, of each way: how many times as fast; only where a goal was set.
GOALS = {"60 parts": (3_000, None, 100)}


def measured():
    with tempfile.TemporaryDirectory() as folder:
        file = os.path.join(folder, "rows.json")
        subprocess.run(["tests/bench-peer", file], check=True, stdout=subprocess.DEVNULL)
        with open(file) as told:
            rows = json.load(told)
        subprocess.run(["target/peer-venv/bin/python", "tests/peer/houses.py", folder], check=True)
        with open(os.path.join(folder, "60-parts.json")) as house:
            roof = roofline(json.load(house), next(row for row in rows if row["house"] == "60 parts"))
    goals = []
    for row in rows:
        *peers, ours = row["seconds"]
        for way, goal, peer in zip(WAYS, GOALS.get(row["house"], (None,) * 3), peers):
            for on, seconds in ("one core", ours), ("all cores", row["seconds_on_all_cores"]):
                if goal is not None:
                    what = f"all pairs of {row['house']} at {row['points']:,} frequencies, on {on}, beside {way}"
                    goals.append(Row(what, f"{goal:,} times as fast", goal, peer / seconds, "times", at_least=True))
    lines = [
        "All pairs of the same houses, both directions, in one run; the parts' matrices are there on both sides. On one core, for more "
        "of them make the others slower; ours also on all that there are.",
        "",
        f"| house | outlets | frequencies | {' | '.join(WAYS)} | ours | times as fast | ours on all cores | times as fast | greatest difference |",
        "|---|---|---|---|---|---|---|---|---|---|---|",
    ]
    for row in rows:
        *peers, ours = row["seconds"]
        took = " | ".join(f"{1e3 * peer:,.1f} ms" for peer in peers)
        on_all = row["seconds_on_all_cores"]
        times, on_all_times = (", ".join(f"{peer / own:,.0f}" for peer in peers) for own in (ours, on_all))
        lines.append(
            f"| {row['house']} | {row['outlets']} | {row['points']:,} | {took} | {1e3 * ours:.3f} ms | {times} "
            f"| {1e3 * on_all:.3f} ms | {on_all_times} | {row['difference']:.0e} |"
        )
    return goals, [*lines, "", *roof, ""]


def roofline(house, row):
    """The solution of all pairs beside what a core computes and moves at best."""
    points, outlets = row["points"], row["outlets"]
    operations = points * counted(house)
    ports = [part["ports"] for part in house["parts"]]
    read = 16 * points * sum(n * (n + 1) // 2 for n in ports)
    written = 16 * points * outlets * (outlets + 1) // 2
    peak, (reads, writes) = machine.peak_operations(), machine.memory(read, written)
    seconds = row["seconds"][-1]
    floor = operations / peak, read / reads, written / writes
    return [
        f"What bounds it, of {row['house']}, beside what one core does at best (measured in the same run: large matrices multiplied, "
        "as much memory read and filled):",
        "",
        "| | counted | one core at best | would take |",
        "|---|---|---|---|",
        f"| products and sums | {operations / 1e6:,.1f} million | {peak / 1e9:,.1f} thousand million a second | {1e3 * floor[0]:.2f} ms |",
        f"| matrices read | {read / 1e6:,.1f} MB | {reads / 1e9:,.1f} GB a second | {1e3 * floor[1]:.2f} ms |",
        f"| results written | {written / 1e6:,.1f} MB | {writes / 1e9:,.1f} GB a second | {1e3 * floor[2]:.2f} ms |",
        f"| one after the other | | | {1e3 * sum(floor):.2f} ms |",
        f"| measured | | | {1e3 * seconds:.2f} ms: {seconds / sum(floor):.1f} times that |",
    ]


def counted(house):
    """Products and sums at one frequency, as core/coax/src/solve/group.rs and fold.rs do them; a division counts as one."""
    product, added, inverse = 6, 8, 6
    ports = {part["id"]: part["ports"] for part in house["parts"]}
    below = {}
    for above, port, part, _ in house["connections"]:
        below.setdefault(above, {})[port] = part
    ends = {(part, port) for part, port in house["external"]}
    root = house["external"][0][0]

    def outlets(part):
        legs = range(1, ports[part])
        return sum(outlets(below[part][leg]) if leg in below.get(part, {}) else (part, leg) in ends for leg in legs)

    sum_of_all = 0
    for part, n in ports.items():
        width = n - 1
        if below.get(part):
            # Every port joined in turn: an echo, the shares of the other ports, their entries, the port's own.
            sum_of_all += width * (2 * product + 2 + inverse + (n - 1) * product + n * (n - 1) // 2 * added + n * product)
        if part != root:
            sum_of_all += width * product + width * (width + 1) // 2 * added
        legs = [outlets(below[part][leg]) if leg in below.get(part, {}) else 1 for leg in range(1, n)]
        # Pairs that meet here: what is sent once for each sender and port, and each receiver.
        for at, sender in enumerate(legs):
            receivers = legs[:at]
            sum_of_all += sender * sum(1 for _ in receivers) * product + sender * sum(receivers) * product
        # Ways lengthened: by this part and those of one output above it.
        if width > 1 or not below.get(part):
            sum_of_all += width * product + sum(legs) * product
    return sum_of_all
