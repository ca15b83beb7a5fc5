"""score.py TRUTH SEEN [--by hardship|kind|surface|face] [--each]: what was read of photos, held against what is printed on them.

A number is exact where it was read with its unit and value, sure or not: it needs a touch at most. Of what was called sure, numbers
and what the label states with them, each that is not on the label is named. As a module: `tests/photos/prove` holds the bounds.
"""
import collections
import json
import sys


def key(unit, value):
    """A number as it is compared."""
    return unit, round(float(value), 6)


def states_it(states, member, value):
    """Whether a label states this."""
    stated = states.get(member)
    if isinstance(value, list):
        return isinstance(stated, list) and [round(one, 6) for one in stated] == [round(one, 6) for one in value]
    if isinstance(value, (int, float)):
        return stated is not None and round(float(stated), 6) == round(float(value), 6)
    return stated == value


def score(truth, seen, by=None):
    """Counts, in all or for each of `by`, and what was sure and wrong."""
    counts, wrong = collections.defaultdict(collections.Counter), []
    for photo in truth:
        found = seen[photo["file"]]
        group = counts[photo[by] if by else "all"]
        left = [key(*number) for number in photo["numbers"]]
        group["photos"] += 1
        group["numbers"] += len(left)
        others = 0
        # What is sure takes what is printed first.
        for number in sorted(found["numbers"], key=lambda number: len(number["unsure"]) > 0):
            is_sure = not number["unsure"]
            one = key(number["unit"], number["value"])
            if one in left:
                left.remove(one)
                group["exact"] += 1
                group["sure"] += is_sure
            else:
                others += 1
                if is_sure:
                    group["sure_wrong"] += 1
                    wrong.append((photo, one, found))
        group["wrong"] += min(others, len(left))
        group["missing"] += max(0, len(left) - others)
        for member in found["members"] if photo["states"] is not None else []:
            # What a label states in words is not the generator's to say, but for a cable's series.
            if member["value"] is None or member["member"] == "kind":
                continue
            group["members"] += 1
            group["members_sure"] += not member["unsure"]
            if not member["unsure"] and not states_it(photo["states"], member["member"], member["value"]):
                group["members_wrong"] += 1
                wrong.append((photo, (member["member"], member["value"]), found))
    return counts, wrong


def line(name, counts):
    """One line of the table."""
    def share(what, of="numbers"):
        return 100 * counts[what] / max(1, counts[of])

    return (f"{name:22s} {counts['photos']:4d} photos, {counts['numbers']:5d} numbers: exact {share('exact'):6.2f} %, wrong "
            f"{share('wrong'):5.2f} %, missing {share('missing'):5.2f} %; sure {share('sure'):5.1f} %, sure and wrong "
            f"{counts['sure_wrong']} ({share('sure_wrong'):.2f} %); stated: {counts['members']}, sure {share('members_sure', 'members'):.1f} %, "
            f"sure and wrong {counts['members_wrong']}")


def load(truth, seen):
    """What is printed, and what was read of it."""
    with open(truth, encoding="utf-8") as file:
        truth = json.load(file)
    with open(seen, encoding="utf-8") as file:
        seen = {photo["file"]: photo for photo in map(json.loads, file)}
    return truth, seen


def told(wrong):
    """What was sure and wrong, a line each."""
    return [f"  sure and wrong: {photo['file']} {one}: printed {photo['rows']}, read {found['text'].splitlines()}" for photo, one, found in wrong]


def main():
    truth, seen = load(*sys.argv[1:3])
    by = sys.argv[sys.argv.index("--by") + 1] if "--by" in sys.argv else None
    counts, wrong = score(truth, seen, by)
    for name, group in counts.items():
        print(line(name, group))
    print("\n".join(told(wrong)))
    if "--each" in sys.argv:
        for photo in truth:
            found = seen[photo["file"]]
            print(photo["file"], photo["numbers"], [(n["unit"], n["value"], n["unsure"]) for n in found["numbers"]], found["text"].splitlines())


if __name__ == "__main__":
    main()
