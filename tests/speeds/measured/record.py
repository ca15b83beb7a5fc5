"""The record: an edit, opening, listing, photos packed and taken in, by `tests/soak speed`."""
import os
import re

from .goal import Row, release, run

# What it prints: pattern, what it is, the wish, the goal, the unit, whether more is better.
GOALS = [
    (r"raw SQLite row: .*: ([\d.]+) x", "one acknowledged edit, beside a raw SQLite row", "0.8 times as fast", 0.8, "times", True),
    (r"open .* facts: ([\d.]+) ms", "open 300 parts, 2,000 photos, 20,000 facts", "under 50 ms", 50, "ms", False),
    (r"list 200 surveys: ([\d.]+) ms", "list 200 surveys", "under 50 ms", 50, "ms", False),
    (r"pack: .*s, ([\d.]+) x", "1 GB of photos packed, beside a copy with its sum", "0.8 times as fast", 0.8, "times", True),
    (r"take in: .*s, ([\d.]+) x", "1 GB of photos taken in, beside the same", "0.8 times as fast", 0.8, "times", True),
    (r"pack: .* (\d+) kB", "memory while packing", "at most 64 MB", 64, "MB", False),
    (r"take in: .* (\d+) kB", "memory while taking in", "at most 64 MB", 64, "MB", False),
]


def measured():
    os.makedirs("target/speed", exist_ok=True)
    said, _ = run(release("soak"), "speed", "--folder", "target/speed", one_core=False)
    rows = []
    for pattern, what, wish, goal, unit, at_least in GOALS:
        figure = float(re.search(pattern, said)[1])
        rows.append(Row(what, wish, goal, figure / 1024 if unit == "MB" else figure, unit, at_least))
    return rows, []
