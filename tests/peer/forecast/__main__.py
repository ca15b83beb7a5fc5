#!/usr/bin/env python3
"""A forecast of its own beside ours: the same houses, solved by scikit-rf, with throws and figures of its own.

    forecast LEGWORK ESTIMATES FLAT_RATES [--short] [--houses N] [--truths N] [--seed N] [--only rates|losses|calibration]

LEGWORK is our command; ESTIMATES and FLAT_RATES are the examples of that name of core/coax. It is written from the published
sources that docs/method.md names; what it shares on purpose is that document's ranges, as the example prints them.

Three comparisons. Rates: PHY within 2 % at equal loss, all at likely. Losses: 12 houses with the documented ranges, median loss of
each room within 1 dB, or within what chance does to medians of our 200 draws (losses.py). Calibration: 60 houses, 8 truths each: of
all that the truths give 7 to 13 % lies below our low with the documented ranges, and less than 20 % with the peer's own
(priors.py). `--short`: fewer houses, wider bounds. It ends with an error where one of them does not hold.
"""
import os

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

import argparse
import subprocess
import sys

import calibration
import losses
import priors
import rates

DOCUMENTED, OWN = (0.07, 0.13), (0.0, 0.20)
# Of few houses, whose rooms stand and fall together.
SHORT_DOCUMENTED, SHORT_OWN = (0.02, 0.22), (0.0, 0.33)


def outside(count, bounds, name):
    """Of all, whether or not much can lie below them at all."""
    low, high = bounds
    told = f"low is undercut in {count.share():.1%} with {name}, not in {low:.0%} to {high:.0%}"
    return [] if low <= count.share() <= high else [told]


def main():
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("legwork")
    asked.add_argument("estimates")
    asked.add_argument("flat_rates")
    asked.add_argument("--short", action="store_true")
    asked.add_argument("--houses", type=int)
    asked.add_argument("--truths", type=int, default=calibration.TRUTHS)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--only", choices=("rates", "losses", "calibration"))
    said = asked.parse_args()
    documented = priors.documented(subprocess.run([said.estimates], check=True, capture_output=True, text=True).stdout)
    does = lambda what: said.only in (None, what)
    faults = []
    if does("rates"):
        faults += rates.check(said.flat_rates, documented)
    if does("losses"):
        faults += losses.check(said.legwork, documented, *((4, said.seed, 600) if said.short else (12, said.seed, losses.DRAWS)))
    if does("calibration"):
        some = calibration.Calibration(said.legwork, said.houses or (12 if said.short else 60), said.seed, said.truths)
        count = some.against(documented, "the documented ranges", 2)
        faults += outside(count, SHORT_DOCUMENTED if said.short else DOCUMENTED, "the documented ranges")
        count = some.against(priors.own(documented), "the peer's own ranges", 3)
        faults += outside(count, SHORT_OWN if said.short else OWN, "the peer's own ranges")
    if faults:
        sys.exit("\n".join(faults))


if __name__ == "__main__":
    main()
