"""Forecast and work list with nothing kept, on one core: the demo, and invented houses of 60 and 270 parts."""
import os
import re
import statistics
import tempfile

from .goal import Row, release, run

# By parts: the goal for the work list, how long is waited for it, in seconds, and of how many runs the median counts, each a
# process of its own.
LARGE = {60: (1.0, 120, 7), 270: (10.0, 180, 3)}


def measured():
    rows, memory = [], []
    with tempfile.TemporaryDirectory() as folder:
        run(release("legwork"), "demo", "--out", folder, one_core=False)
        survey = next(os.path.join(folder, name) for name in os.listdir(folder) if name.endswith(".legwork"))
        said, peak = run(release("examples/time_advice"), survey, "7")
    parts = re.search(r"(\d+) parts", said)[1]
    for what, goal in ("forecast", 0.1), ("work list", 0.5):
        took = float(re.search(rf"{what}: ([\d.]+) ms", said)[1]) / 1e3
        rows.append(Row(f"{what} of the demo ({parts} parts), one core", f"under {goal} s", goal, took, "s"))
    memory.append(f"{peak:.0f} MB for the demo")
    for parts, (goal, most, runs) in LARGE.items():
        took = []
        for _ in range(runs):
            said, peak = run(release("soak"), "advice", "--parts", str(parts), "--rounds", "1", seconds=most)
            if said is None:
                break
            milliseconds, more = re.search(r"work list: ([\d.]+) ms; (.*)", said).groups()
            took.append(float(milliseconds) / 1e3)
        what = f"work list of a house of {parts} parts and 8 adapters, one core"
        if said is None:
            rows.append(Row(what, f"under {goal:g} s", goal, None, "s", instead=f"more than {most} s"))
        else:
            rows.append(Row(what, f"under {goal:g} s", goal, statistics.median(took), "s", instead=f" ({more})"))
        memory.append(f"{peak:.0f} MB for {parts} parts")
    return rows, [f"Most memory taken by forecast and work list: {', '.join(memory)}.", ""]
