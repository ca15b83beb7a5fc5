"""broken.py HOW <SEEN >BROKEN: what a worse reader would have seen, to show that the bounds hold something.

HOW is `swapped` (in every eighth photo a 2 is seen as a 3, clearly and in both looks) or `blind` (nothing is seen in every eighth).
"""
import json
import sys


def main():
    how = sys.argv[1]
    for at, photo in enumerate(map(json.loads, sys.stdin)):
        if how == "blind" and at % 8 == 0:
            photo["rows"] = []
        if how == "swapped" and at % 8 == 0:
            for row in photo["rows"]:
                for look in row:
                    for letter in look["letters"] if look else []:
                        letter[0] = "3" if letter[0] == "2" else letter[0]
        print(json.dumps(photo))


if __name__ == "__main__":
    main()
