"""bounds.py FOLDER [OTHER]: prints how the photos of a run were read, ours and the peer's, and fails where ours breaks a bound; with
OTHER, what another reader saw is held to the bounds in place of ours."""
import pathlib
import sys

import score

FOLDER = pathlib.Path(sys.argv[1])
HELD = sys.argv[2] if len(sys.argv) > 2 else "ours"
# At least so many numbers of a hundred exact, and at most so many sure and wrong.
BOUNDS = {"normal": (97.0, 0.1), "hard": (88.0, 0.3)}


def main():
    broken = []
    for kind, (exact, sure_wrong) in BOUNDS.items():
        for who in (HELD, "peer"):
            truth, seen = score.load(FOLDER / kind / "truth.json", FOLDER / f"{kind}.{who}")
            counts, wrong = score.score(truth, seen)
            counts = counts["all"]
            print(score.line(f"{kind}, {'tesseract' if who == 'peer' else who}", counts))
            if who == "peer":
                continue
            print("\n".join(score.told(wrong)), end="\n" if wrong else "")
            if 100 * counts["exact"] < exact * counts["numbers"]:
                broken.append(f"{kind}: fewer than {exact} % of the numbers are exact")
            if 100 * counts["sure_wrong"] > sure_wrong * counts["numbers"]:
                broken.append(f"{kind}: more than {sure_wrong} % of the numbers are sure and wrong")
            if 100 * counts["members_wrong"] > sure_wrong * counts["members"]:
                broken.append(f"{kind}: of what labels state more than {sure_wrong} % is sure and wrong")
            # Who doubts everything is never wrong.
            if 2 * counts["sure"] < counts["numbers"]:
                broken.append(f"{kind}: of fewer than half of the numbers the reader is sure")
    for what in broken:
        print(f"tests/photos/prove: {what}", file=sys.stderr)
    sys.exit(1 if broken else 0)


if __name__ == "__main__":
    main()
