"""bounds.py FOLDER... [--held OTHER]: prints how the photos of these folders together were read, ours and the peer's, and fails where ours
breaks a bound; with OTHER, what another reader saw is held to the bounds in place of ours."""
import argparse
import collections
import pathlib
import sys

import score

# At least so many numbers of a hundred exact, and at most so many sure and wrong.
BOUNDS = {"normal": (97.0, 0.1), "hard": (88.0, 0.3)}


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folders", nargs="+", type=pathlib.Path)
    parser.add_argument("--held", default="ours")
    asked = parser.parse_args()
    broken = []
    for kind, (exact, sure_wrong) in BOUNDS.items():
        for who in (asked.held, "peer"):
            counts, wrong = collections.Counter(), []
            for folder in asked.folders:
                of_folder, wrong_there = score.score(*score.load(folder / kind / "truth.json", folder / f"{kind}.{who}"))
                counts.update(of_folder["all"])
                wrong += wrong_there
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
