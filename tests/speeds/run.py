"""Runs everything that is timed, judges it by its goal, and writes the measured section of docs/speed.md. Run by tests/speed."""
import argparse
import datetime
import os
import sys

from measured import advice, machine, physics, record

PLACE = "docs/speed.md"
BEGIN = "<!-- measured by tests/speed: what stands up to the next such mark is written by it -->\n"
END = "<!-- end of what tests/speed measured -->\n"
PARTS = {"physics": physics, "advice": advice, "record": record}


def number(value):
    """As people write it: three digits that count."""
    if value is None:
        return "–"
    digits = 0 if abs(value) >= 100 else 1 if abs(value) >= 10 else 2 if abs(value) >= 1 else 3
    return f"{value:,.{digits}f}"


def told(row):
    """One line of the table of goals."""
    if row.figure is None:
        return f"| {row.what} | {row.wish} | {row.instead} | **no** |"
    is_met = row.figure >= row.goal if row.at_least else row.figure <= row.goal
    return f"| {row.what} | {row.wish} | {number(row.figure)} {row.unit}{row.instead} | {'yes' if is_met else '**no**'} |"


def section(chosen):
    lines = [f"Measured on {datetime.date.today():%-d %B %Y}, by one run of `tests/speed`, on {machine.told()}.", ""]
    rows, others = [], []
    for name, part in PARTS.items():
        if name in chosen:
            print(f"{name} ...", file=sys.stderr, flush=True)
            found, more = part.measured()
            rows += found
            others += more
    lines += ["| what | goal | measured | met |", "|---|---|---|---|", *(told(row) for row in rows), ""]
    return "\n".join(lines + others).rstrip() + "\n"


def main():
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--dry", action="store_true", help="leave docs/speed.md as it is")
    arguments.add_argument("--only", default=",".join(PARTS), help="of " + ", ".join(PARTS))
    given = arguments.parse_args()
    chosen = given.only.split(",")
    if unknown := set(chosen) - set(PARTS):
        sys.exit(f"tests/speed does not know {', '.join(sorted(unknown))}: --only takes {', '.join(PARTS)}")
    written = section(chosen)
    print(written)
    if given.dry or set(chosen) != set(PARTS):
        print("docs/speed.md is left as it is.", file=sys.stderr)
        return
    with open(PLACE) as file:
        text = file.read()
    if text.count(BEGIN) != 1 or text.count(END) != 1:
        sys.exit(f"{PLACE} lacks the marks between which the measured section stands")
    before, rest = text.split(BEGIN)
    _, after = rest.split(END)
    # Whole, or not at all.
    with open(PLACE + ".new", "w") as file:
        file.write(before + BEGIN + "\n" + written + "\n" + END + after)
    os.replace(PLACE + ".new", PLACE)
    print(f"Written into {PLACE}.", file=sys.stderr)


if __name__ == "__main__":
    main()
