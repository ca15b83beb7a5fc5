"""Forecast and work list with nothing kept, on one core: the demo, and invented houses of 60 and 270 parts."""
import os
import re
import tempfile

from .goal import Row, release, run

# By parts: the goal for the work list, and how long is waited for it, in seconds.
LARGE = {60: (1.0, 120), 270: (10.0, 180)}


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
    for parts, (goal, most) in LARGE.items():
        said, peak = run(release("soak"), "advice", "--parts", str(parts), "--rounds", "1", seconds=most)
        what = f"work list of a house of {parts} parts and 8 adapters, one core"
        if said is None:
            rows.append(Row(what, f"under {goal:g} s", goal, None, "s", instead=f"more than {most} s"))
        else:
            took, more = re.search(r"work list: ([\d.]+) ms; (.*)", said).groups()
            rows.append(Row(what, f"under {goal:g} s", goal, float(took) / 1e3, "s", instead=f" ({more})"))
        memory.append(f"{peak:.0f} MB for {parts} parts")
    return rows, [f"Most memory taken by forecast and work list: {', '.join(memory)}.", ""]
